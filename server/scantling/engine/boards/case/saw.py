"""Order at the saw: which piece to cut first, so that there is always enough left to hold, and the saw seldom reset.

At a cut one hand holds the piece or the rest of the board, whichever is longer. Cutting the short pieces first, while
the board is long, keeps that above the asked length wherever any order does. Among the orders that are as safe, those
that leave for the last what is best cut last; then the one that changes the saw's setting least often. The far end's
trim is not counted as something to hold: it may be split or painted.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations, pairwise

from scantling.engine.boards.case.case import Case, PlannedBoard
from scantling.engine.boards.case.cuts import Ends, Setting, saved_between
from scantling.engine.tape.lengths import ZERO, Length

EXCHANGED_AT_MOST = 10
"""How many pieces two boards may hold together for all ways to share them out to be tried."""

ORDERED_AT_MOST = 7
"""How many pieces a board may hold for all its orders to be weighed; with more, the next piece is the likeliest."""

LOOKED_AT = 12
"""Among how many boards the next to be cut is sought: more would take as long as the plan itself."""

Toll = tuple[int, int, int, int]
"""What an order costs: unsafe cuts, then pieces cut after one that is to be last, then pairs cut against their ranks,
then changes of the saw's setting."""


def derive_board(case: Case, stock: int, places: tuple[int, ...]) -> PlannedBoard:
    """One board with its pieces in the order that is safe wherever any is."""
    return _lay_out(case, stock, _shortest_first(case, places))


def set_in_order(case: Case, boards: Sequence[PlannedBoard]) -> list[PlannedBoard]:
    """The boards with their pieces in cutting order: as safe as can be, and the saw set anew as seldom as can be.

    Board follows board: each begins with the saw as the one before it left it, and next comes the first of those that
    ask for the fewest settings more to be begun with.
    """
    if not case.last and not case.ranks and not any(ends != Ends() for ends in case.ends):
        return list(boards)
    set_up: list[PlannedBoard] = []
    standing: Setting | None = None
    waiting = list(boards)
    known: dict[tuple[PlannedBoard, Setting | None], tuple[Toll, PlannedBoard]] = {}

    def begun(board: PlannedBoard, standing: Setting | None) -> tuple[Toll, PlannedBoard]:
        key = (board, standing)
        if key not in known:
            toll, order = _order_by_settings(case, board.stock, _shortest_first(case, board.pieces), standing)
            known[key] = toll, _lay_out(case, board.stock, order)
        return known[key]

    while waiting:
        # What a board asks for by itself it asks for whenever it comes: what counts is what it asks for to begin.
        more = [begun(board, standing)[0][-1] - begun(board, None)[0][-1] for board in waiting[:LOOKED_AT]]
        board = waiting.pop(more.index(min(more)))
        set_up.append(begun(board, standing)[1])
        standing = _settings(case, set_up[-1].pieces[-1])[1]
    return set_up


def _shortest_first(case: Case, places: tuple[int, ...]) -> tuple[int, ...]:
    return tuple(sorted(places, key=lambda place: (case.pieces[place], place)))


def derive_shared_cuts(case: Case, order: tuple[int, ...]) -> tuple[int, ...]:
    """The pieces whose left end is made by the cut before it, in this order."""
    return tuple(after for before, after in pairwise(order) if saved(case, before, after) is not None)


def _lay_out(case: Case, stock: int, order: tuple[int, ...]) -> PlannedBoard:
    """The board with what is left of it, and with the cuts that two pieces share."""
    shared = derive_shared_cuts(case, order)
    left = _left_after(case, stock, order)
    for before, after in pairwise(order):
        left = left + (saved(case, before, after) or ZERO)
    return PlannedBoard(stock, order, max(ZERO, left), shared)


def saved(case: Case, before: int, after: int) -> Length | None:
    """What the board gains where these two follow each other and share a cut; None where they do not."""
    if not case.ends or not case.shared_miters:
        return None
    return saved_between(case.ends[before], case.ends[after])


def derive_changes(case: Case, board: PlannedBoard) -> int:
    """How often the saw is set anew on the way through a board."""
    settings = [setting for place in board.pieces for setting in _settings(case, place)]
    return sum(before != after for before, after in pairwise(settings))


def derive_unsafe(case: Case, board: PlannedBoard) -> tuple[int, ...]:
    """The pieces at whose cut both the piece and the rest of the board are shorter than the length to hold."""
    return derive_unsafe_from(case, board.pieces, case.stock[board.stock].length - case.end_trim)


def derive_unsafe_from(case: Case, order: tuple[int, ...], left: Length) -> tuple[int, ...]:
    """The same for pieces cut in this order from so much that is usable."""
    unsafe = []
    for place in order:
        left = left - case.pieces[place] - case.kerf
        if not _is_safe(case, place, left):
            unsafe.append(place)
    return tuple(unsafe)


def derive_blank(case: Case, place: int) -> Length:
    """The least board to cut a piece from safely: the piece, its kerf, and enough to hold."""
    return case.pieces[place] + case.kerf + case.hold


def _is_safe(case: Case, place: int, left: Length) -> bool:
    drops_off_uncut = case.end_trim == ZERO and left == -case.kerf
    return max(left, case.pieces[place]) >= case.hold or drops_off_uncut


def _settings(case: Case, place: int) -> tuple[Setting, Setting]:
    return (case.ends[place] if case.ends else Ends()).settings


def _toll(case: Case, standing: Setting | None, order: tuple[int, ...], place: int, left: Length) -> Toll:
    """What cutting a piece after those costs, with the saw standing so, when so much is left of the board after it."""
    first, second = _settings(case, place)
    changes = int(first != second) + (standing not in (None, first))
    late = place not in case.last and any(before in case.last for before in order)
    against = sum(case.ranks[before] > case.ranks[place] for before in order) if case.ranks else 0
    return int(not _is_safe(case, place, left)), int(late), against, changes


def add_tolls(one: Toll, other: Toll) -> Toll:
    """Both, part by part."""
    return one[0] + other[0], one[1] + other[1], one[2] + other[2], one[3] + other[3]


def _order_by_settings(
    case: Case, stock: int, places: tuple[int, ...], standing: Setting | None
) -> tuple[Toll, tuple[int, ...]]:
    """The least toll and the pieces in the order of it; of orders as good, the one that begins with the shortest."""
    usable = case.stock[stock].length - case.end_trim
    beam: list[tuple[Toll, tuple[int, ...], Length]] = [((0, 0, 0, 0), (), usable)]
    all_orders = len(places) <= ORDERED_AT_MOST
    for _ in places:
        longer: dict[object, tuple[Toll, tuple[int, ...], Length]] = {}
        for before, order, left in beam:
            for rank, place in enumerate(places):
                if place in order:
                    continue
                rest = left - case.pieces[place] - case.kerf
                toll = _toll(case, _settings(case, order[-1])[1] if order else standing, order, place, rest)
                found = (add_tolls(before, toll), (*order, place), rest)
                key = (frozenset(found[1]), place) if all_orders else rank
                if key not in longer or found[:2] < longer[key][:2]:
                    longer[key] = found
        beam = list(longer.values())
    return min(beam, key=lambda found: (found[0], [places.index(place) for place in found[1]]))[:2]


def derive_safer(case: Case, boards: list[PlannedBoard]) -> list[PlannedBoard]:
    """The same boards, pieces exchanged between an unsafe board and another where that leaves fewer unsafe cuts.

    The longest offcut stays as long as it was.
    """
    boards = list(boards)
    for risky in range(len(boards)):
        for other in range(len(boards)):
            if not derive_unsafe(case, boards[risky]):
                break
            if other != risky:
                boards[risky], boards[other] = _exchange(case, boards, risky, other)
    return boards


def _exchange(case: Case, boards: list[PlannedBoard], risky: int, other: int) -> tuple[PlannedBoard, PlannedBoard]:
    """The safest way to share out two boards' pieces among them."""
    pool = boards[risky].pieces + boards[other].pieces
    best = boards[risky], boards[other]
    if len(pool) > EXCHANGED_AT_MOST:
        return best
    longest = max(board.offcut for board in boards)
    kept = max((board.offcut for at, board in enumerate(boards) if at not in (risky, other)), default=ZERO)
    least = sum(len(derive_unsafe(case, board)) for board in best)
    for count in range(1, len(pool)):
        for chosen in combinations(pool, count):
            rest = tuple(place for place in pool if place not in chosen)
            if _fits(case, best[0].stock, chosen) and _fits(case, best[1].stock, rest):
                trial = derive_board(case, best[0].stock, chosen), derive_board(case, best[1].stock, rest)
                unsafe = sum(len(derive_unsafe(case, board)) for board in trial)
                if unsafe < least and max(kept, trial[0].offcut, trial[1].offcut) >= longest:
                    best, least = trial, unsafe
    return best


def _fits(case: Case, stock: int, places: tuple[int, ...]) -> bool:
    """Whether the pieces come out of the board: the last one needs no kerf of its own."""
    return _left_after(case, stock, places) + case.kerf >= ZERO


def _left_after(case: Case, stock: int, places: tuple[int, ...]) -> Length:
    """What is left of the board after these cuts; less than nothing where the last kerf runs out of the board."""
    left = case.stock[stock].length - case.end_trim
    for place in places:
        left = left - case.pieces[place] - case.kerf
    return left
