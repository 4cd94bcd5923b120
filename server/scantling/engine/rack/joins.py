"""Joins: on which studs the boards of a run are joined, with all the room's boards of its profile in view.

Of the studs that would do, the one that makes the plan cheapest; of several, the one that leaves the longest board to
keep. A joint is moved along its wall while the others stay, one after the other: each stud is tried once, so many plans
in all and no more. A joint that is on a board already, lettered, planned or cut, stays where it is. Common practice, no
source.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import islice

from scantling.engine.boards.case.case import BoardsError
from scantling.engine.boards.search.plan import plan_boards
from scantling.engine.cutlist.letters import id_of, whole_key
from scantling.engine.cutlist.states import derive_state
from scantling.engine.notebook import Notebook
from scantling.engine.rack.accepted import derive_accepted
from scantling.engine.rack.of_house import house_of
from scantling.engine.rack.slack import keep_slack
from scantling.engine.rack.wanted import derive_case
from scantling.engine.standard import BY_PLAN, Standard, format_price
from scantling.engine.survey.room import Joined, Room
from scantling.engine.tape.figures import parse_figure
from scantling.engine.tape.lengths import ZERO, Length, format_length
from scantling.engine.trim.moldings.every import wanted_moldings
from scantling.engine.trim.moldings.molding import Molding, Scarfed, derive_molding, scarfed_in
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.runs.scarf import say_rule, say_studs
from scantling.engine.trim.told.stock import is_too_long
from scantling.engine.words import say

PLANS_AT_MOST = 40
"""How many plans the joints of a room are tried with: of each run the studs that would do, some nine to a wall. What
comes after, in a room of many long walls, is joined by the rule."""

SEARCH = 0.004
"""Seconds' worth of search for each: a room's boards are few, and a plan that is not the best is none the worse."""

STAYS = say("join-as-lettered")

Studs = tuple[Length, ...]
JoinRank = tuple[int, int, Length]
"""What a plan comes to: cents, boards, and the longest that is left to keep, below nothing."""


def join_boards(room: Room, known: Callable[[], Mapping[str, Length]]) -> Room:
    """The room with its joints where they are cheapest. `known` gives the lengths of pieces that joints stay for.

    Where a person has said by which rule boards are joined, they are joined by that.
    """
    if room.standard.scarf_place != BY_PLAN:
        return room
    left = PLANS_AT_MOST
    for molding in wanted_moldings(room.standard):
        for one in scarfed_in(room, molding):
            kept = _kept(room, molding, one, known())
            if kept is not None:
                room = room.join(one.piece.key, Joined(kept, STAYS))
            elif left > 1:
                found = _cheapest(room, molding, one, left)
                left -= found.tried
                room = room.join(one.piece.key, found.joined)
    return room


def known_lengths(notebook: Notebook, room: str) -> dict[str, Length]:
    """By key, how long the pieces are that a person was given to cut: as planned, as lettered, or as cut."""
    found: dict[str, Length] = {}
    for of, prefix in ((house_of(notebook, room), whole_key(room, "")), (room, "")):
        for plan in derive_accepted(notebook, of).values():
            lines = (line for stick in plan.sticks for line in stick.lines)
            found |= {line.key.removeprefix(prefix): line.takes for line in lines if line.key.startswith(prefix)}
    for entry in notebook.about("issue", room):
        rows = entry.body["pieces"] if notebook.strike_of(entry.id) is None else ()
        found |= {row["key"]: length for row in rows if (length := parse_figure(row["cut"])) is not None}
    for key in found:
        made = derive_state(notebook, id_of(whole_key(room, key))).made
        found[key] = made.cut_to if made and made.cut_to is not None else found[key]
    return found


def _ways(room: Room, one: Scarfed) -> Iterator[Studs]:
    """The joints as the rule has them, then each joint moved by itself."""
    yield one.joints
    for number in range(len(one.joints)):
        yield from one.moves(room.standard, number)


def _kept(room: Room, molding: Molding, one: Scarfed, known: Mapping[str, Length]) -> Studs | None:
    """The joints of the boards that there are already: those whose boards come nearest to them."""
    boards = _boards_of(room, molding, one, one.joints)
    if not any(board.key in known for board in boards):
        return None
    best = one.joints
    for number in range(len(best)):
        moved = [(*best[:number], *way[number:]) for way in one.moves(room.standard, number)]
        best = min((best, *moved), key=lambda way: _off(_boards_of(room, molding, one, way), known))
    return best


def _off(boards: Sequence[Piece], known: Mapping[str, Length]) -> Length:
    return sum((abs(board.cut - known[board.key]) for board in boards if board.key in known), start=ZERO)


def _boards_of(room: Room, molding: Molding, one: Scarfed, joints: Studs) -> list[Piece]:
    """The boards of one run, joined so."""
    return one.boards(room.join(one.piece.key, Joined(joints, "")), molding)


@dataclass(frozen=True, slots=True)
class _Found:
    joined: Joined
    tried: int


def _cheapest(room: Room, molding: Molding, one: Scarfed, at_most: int) -> _Found:
    """Joints that make the plan cheapest, then leave most; where nothing is gained, those of the rule."""
    ranks: dict[Studs, JoinRank] = {}
    ways = list(islice(_ways(room, one), at_most))
    own = {board.key for board in _boards_of(room, molding, one, one.joints)}
    others = [piece for piece in derive_molding(room, molding)[0]
              if piece.key not in own and piece.profile == one.piece.profile]  # fmt: skip
    for way in ways if len(ways) > 1 else ():
        rank = _rank(room.standard, [*others, *_boards_of(room, molding, one, way)])
        ranks |= {way: rank} if rank else {}
    if one.joints not in ranks:
        why = say_rule(room.standard) if len(ways) > 1 else say("join-only-way")
        return _Found(Joined(one.joints, why), len(ways))
    best = min(ranks, key=lambda way: ranks[way])
    return _Found(Joined(best, _say(ranks, one.joints, best)), len(ways))


def _rank(standard: Standard, pieces: Sequence[Piece]) -> JoinRank | None:
    """What the pieces of a profile come to, those that no board is so long for left out; None where nothing does."""
    fit = [piece for piece in pieces if not is_too_long(standard, piece)]
    case = keep_slack(derive_case(standard, standard.stock_of(pieces[0].profile), fit), standard.slack)
    try:
        plan = plan_boards(case, None, SEARCH)
    except BoardsError:
        return None
    left = max(board.offcut for board in plan.boards)
    return plan.cost, plan.count, -left if left >= standard.hold else ZERO


def _say(ranks: Mapping[Studs, JoinRank], rule: Studs, best: Studs) -> str:
    """Why these joints and not those that the rule would have."""
    ways = len(ranks)
    if best == rule:
        return say("join-none-better", ways=ways)
    other = say_studs(rule)
    (cost, count, left), (cost_by_rule, count_by_rule, left_by_rule) = ranks[best], ranks[rule]
    if cost != cost_by_rule:
        prices = {"cost": format_price(cost), "other_cost": format_price(cost_by_rule)}
        return say("join-cheaper", ways=ways, other=other, **prices)
    if count != count_by_rule:
        return say("join-fewer", ways=ways, other=other, count=count, other_count=count_by_rule)
    if not left_by_rule:
        return say("join-leaves", ways=ways, other=other, left=format_length(-left))
    lengths = {"left": format_length(-left), "other_left": format_length(-left_by_rule)}
    return say("join-leaves-more", ways=ways, other=other, **lengths)
