"""Packing: do these pieces come out of exactly these boards? A search that can answer yes, no, or not within the steps.

The largest piece left must go somewhere, so every node of the search tries the ways to fill one board around it, least
waste first. A way is passed over when exchanging pieces gives another at least as good: one with room for a smaller
piece left over, one where a piece could be exchanged for a longer one, one that would fit the next smaller board.
States that failed are remembered. Each rule (`Rule`) gives a budget: the points that the boards can hold beyond what
the pieces need; a way that wastes more than is left of any budget cannot belong to a packing.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from scantling.engine.boards.case.case import Rule
from scantling.engine.boards.case.grid import Grid
from scantling.engine.boards.case.rules import derive_total
from scantling.engine.boards.ways.steps import Steps

Way = tuple[int, tuple[int, ...]]
"""A filled board: its stock entry, and the kinds of its pieces, longest first."""

PackingState = tuple[tuple[int, ...], tuple[int, ...]]
"""Pieces left of every kind, and boards left of every stock entry."""

REMEMBERED_AT_MOST = 60_000


@dataclass(frozen=True, slots=True)
class Packed:
    """`ways` when the answer is yes; otherwise `certain` says whether it is no or merely not found.

    `tried_all` says that the search came to its end: the same search with more steps would find no more.
    """

    ways: tuple[Way, ...] | None
    certain: bool
    tried_all: bool = False


def pack(
    grid: Grid, boards: Sequence[int], rules: Sequence[Rule], steps: Steps, allowance: int, lean: int = 0
) -> Packed:
    """Pack all pieces into at most `boards[t]` of every stock entry t, within `allowance` steps.

    `lean` varies the order of trying, for another throw at a case that did not come out; it changes no certain answer.
    """
    return _Search(grid, boards, rules, steps, allowance, lean).run()


@dataclass(slots=True)
class _Offer:
    """One stock entry that the largest piece fits: `fits` are the sums beside the piece still to try, less `base`."""

    waste: int
    rank: int
    stock: int
    base: int
    fits: int


class _Search:
    """One search; its state is the pieces and boards left, and the stack of choices that led there."""

    def __init__(
        self, grid: Grid, boards: Sequence[int], rules: Sequence[Rule], steps: Steps, allowance: int, lean: int
    ) -> None:
        self.grid, self.rules, self.steps, self.lean = grid, rules, steps, lean
        self.left = list(grid.demand)
        self.boards = list(boards)
        self.by_room = sorted((t for t in range(len(boards)) if boards[t]), key=lambda t: (grid.capacity[t], t))
        self.budgets = [
            sum([most * count for most, count in zip(rule.most, boards, strict=True)]) - derive_total(rule, grid)
            for rule in rules
        ]
        self.size_left = sum([size * count for size, count in zip(grid.sizes, grid.demand, strict=True)])
        self.stop = steps.used + allowance
        self.failed: set[PackingState] = set()

    def run(self) -> Packed:
        if any(budget < 0 for budget in self.budgets):
            return Packed(None, certain=True, tried_all=True)
        path: list[tuple[Iterator[Way], Way | None]] = [(self._ways(), None)]
        while path:
            if self.steps.out or self.steps.used >= self.stop:
                return Packed(None, certain=False)
            way = next(path[-1][0], None)
            if way is None:
                self._leave(path.pop()[1])
            elif self._place(way):
                if not self.size_left:
                    return Packed((*[placed for _, placed in path if placed], way), certain=True)
                path.append((self._ways(), way))
        # A generator ends early when the steps are out: then nothing is certain.
        return Packed(None, certain=not self.steps.out, tried_all=True)

    def _state(self) -> PackingState:
        return tuple(self.left), tuple(self.boards)

    def _leave(self, placed: Way | None) -> None:
        """Every way onward from here has failed: remember that, and take back the way that led here."""
        if len(self.failed) < REMEMBERED_AT_MOST:
            self.failed.add(self._state())
        if placed:
            self._move(placed, 1)

    def _place(self, way: Way) -> bool:
        """Fill one board; False, and nothing changed, when that leaves a state that is known to fail."""
        self._move(way, -1)
        if min(self.budgets, default=0) < 0 or self._state() in self.failed:
            self._move(way, 1)
            return False
        return True

    def _move(self, way: Way, sign: int) -> None:
        """Take a way's board and pieces (-1), or give them back (1)."""
        stock, kinds = way
        self.boards[stock] += sign
        for kind in kinds:
            self.left[kind] += sign
            self.size_left += sign * self.grid.sizes[kind]
        for j, rule in enumerate(self.rules):
            self.budgets[j] += sign * (rule.most[stock] - sum([rule.points[kind] for kind in kinds]))

    def _ways(self) -> Iterator[Way]:
        """The ways to fill one board around the largest piece left, least waste first."""
        sizes = self.grid.sizes
        present = [kind for kind, count in enumerate(self.left) if count]
        counts = [self.left[kind] for kind in present]
        counts[0] -= 1
        reach = derive_sums([sizes[kind] for kind in present], counts)
        self.steps.take(5 + len(present))
        offers = self._offers(reach[0], sizes[present[0]])
        while offers:
            offer = min(offers, key=lambda o: (o.waste, o.rank))
            top = offer.fits.bit_length() - 1
            target, waste = offer.base + top, offer.waste
            offer.fits ^= 1 << top
            offer.waste += top - offer.fits.bit_length() + 1
            if not offer.fits:
                offers.remove(offer)
            for beside in _Sums([sizes[kind] for kind in present], counts, reach, target, self.steps):
                kinds = (present[0], *[present[at] for at, count in beside for _ in range(count)])
                if not self._is_beaten(kinds, present, waste):
                    yield offer.stock, kinds
                    if self.steps.out:
                        return

    def _offers(self, sums: int, largest: int) -> list[_Offer]:
        """What to try: a sum is left out if boards filled so little could not hold the pieces left, even at their best.

        A way that would fit the next smaller board is left to that one.
        """
        stock = [t for t in self.by_room if self.boards[t]]
        all_sums = sums | sums << largest
        tops = [(all_sums & ((1 << (self.grid.capacity[t] + 1)) - 1)).bit_length() - 1 for t in stock]
        spare = sum([self.boards[t] * top for t, top in zip(stock, tops, strict=True)]) - self.size_left
        offers = []
        smaller = largest - 1
        for t, top in zip(stock, tops, strict=True):
            room = self.grid.capacity[t]
            if room > smaller:
                base = max(smaller + 1, top - spare, largest) - largest
                fits = (sums & ((1 << (room - largest + 1)) - 1)) >> base
                if fits:
                    waste = room - largest - base - fits.bit_length() + 1
                    offers.append(_Offer(waste, t if self.lean & 1 else -room, t, base, fits))
                smaller = room
        return offers

    def _is_beaten(self, kinds: tuple[int, ...], present: list[int], waste: int) -> bool:
        """Whether a piece left over would still fit, or would fit in place of a shorter one beside the largest."""
        sizes = self.grid.sizes
        taken: dict[int, int] = {}
        for kind in kinds:
            taken[kind] = taken.get(kind, 0) + 1
        over = [kind for kind in present if self.left[kind] > taken.get(kind, 0)]
        if not over:
            return False
        if sizes[over[-1]] <= waste:
            return True
        at, longer = 0, -1
        for kind in kinds[1:]:
            while at < len(over) and over[at] < kind:
                longer = over[at]
                at += 1
            if longer >= 0 and sizes[longer] - sizes[kind] <= waste:
                return True
        return False


class _Sums:
    """All choices of pieces that add up to one sum, as (place, how many); long pieces first, as many as can be.

    `reach` must say that the sum can be made. It is asked at every turn, so that no choice leads to a dead end.
    """

    def __init__(
        self, sizes: Sequence[int], counts: Sequence[int], reach: Sequence[int], target: int, steps: Steps
    ) -> None:
        self.sizes, self.counts, self.reach, self.target, self.steps = sizes, counts, reach, target, steps
        self.chosen: list[tuple[int, int]] = []

    def __iter__(self) -> Iterator[list[tuple[int, int]]]:
        place, rest = 0, self.target
        while place >= 0:
            self._complete(place, rest)
            yield self.chosen
            place, rest = self._step_back()

    def _complete(self, place: int, rest: int) -> None:
        self.steps.take(3)
        while rest:
            size = self.sizes[place]
            count = min(rest // size, self.counts[place])
            while not self.reach[place + 1] >> (rest - count * size) & 1:
                count -= 1
            if count:
                self.chosen.append((place, count))
                rest -= count * size
            place += 1

    def _step_back(self) -> tuple[int, int]:
        """One fewer of the last kind that can do with fewer: the place to go on from and the rest, or -1."""
        rest = 0
        while self.chosen:
            place, count = self.chosen.pop()
            size = self.sizes[place]
            rest += count * size
            for fewer in range(count - 1, -1, -1):
                if self.reach[place + 1] >> (rest - fewer * size) & 1:
                    if fewer:
                        self.chosen.append((place, fewer))
                    return place + 1, rest - fewer * size
        return -1, 0


def derive_sums(sizes: Sequence[int], counts: Sequence[int]) -> list[int]:
    """For every place, the sums that the kinds from there on can make, as the bits of one whole number."""
    sums = 1
    reach = [1]
    for size, count in zip(reversed(sizes), reversed(counts), strict=True):
        for _ in range(count):
            sums |= sums << size
        reach.append(sums)
    reach.reverse()
    return reach


def derive_fullest(
    sizes: Sequence[int], counts: Sequence[int], reach: Sequence[int], place: int, room: int
) -> list[int]:
    """Places, from `place` on, of pieces that fill the room as far as any choice can; long ones first."""
    rest = (reach[place] & ((1 << (room + 1)) - 1)).bit_length() - 1
    chosen = []
    while rest:
        count = min(rest // sizes[place], counts[place])
        while not reach[place + 1] >> (rest - count * sizes[place]) & 1:
            count -= 1
        chosen += [place] * count
        rest -= count * sizes[place]
        place += 1
    return chosen
