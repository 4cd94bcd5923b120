"""The fewest sheets for panels, by straight cuts: each sheet into bands, each band into panels. The saw takes a kerf.

Rip first, with the bands along the sheet, and crosscut first, with the bands across it, are both planned and the better
kept; one plan does not mix the two. Best first, by the area that is left to cut; steps are counted.
"""

import heapq
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from scantling.engine.coverings.panes.bands import BlankKind, Left, PaneBand, StepsLeft, derive_bands, take
from scantling.engine.coverings.panes.off_roll import (
    GREEDY_AT_MOST,
    STEPS_AT_MOST,
    derive_some,
    first_fit,
    fullness,
    hardest,
)

Sheet = tuple[PaneBand, ...]


@dataclass(frozen=True, slots=True)
class SheetPlan:
    """Each sheet's bands, and a number of sheets that none can do with fewer of.

    `along`: ripped first, with the bands along the sheet. `kinds` are what the bands hold, a kerf in each size; ripped
    first, their width lies along the sheet.
    """

    sheets: tuple[Sheet, ...]
    bound: int
    along: bool
    kinds: tuple[BlankKind, ...]


@dataclass(frozen=True, slots=True)
class _State:
    """`spare`: what the sheet in hand has left along; `lead`: the kind that its last band had to hold."""

    left: Left
    spare: int
    lead: int
    sheets: tuple[Sheet, ...]

    @property
    def key(self) -> tuple[Left, int, int, int]:
        return self.left, self.spare, self.lead, len(self.sheets)


def plan_sheets(kinds: Sequence[BlankKind], across: int, along: int, kerf: int) -> SheetPlan:
    """The fewest sheets; every kind must fit one. Sizes are whole numbers of any one unit."""
    plans = []
    for rip, (room, long) in ((False, (across, along)), (True, (along, across))):
        # A panel and the kerf beside it fit a sheet and one kerf more.
        grown = [BlankKind(*_lying(kind, rip, kerf), kind.count, kind.turnable) for kind in kinds]
        if all(fits_on_sheet(kind, room + kerf, long + kerf) for kind in grown):
            plans.append(_plan(grown, room + kerf, long + kerf, rip))
    return min(plans, key=lambda plan: (len(plan.sheets), plan.along))


def _lying(kind: BlankKind, rip: bool, kerf: int) -> tuple[int, int]:
    width, height = (kind.height, kind.width) if rip else (kind.width, kind.height)
    return width + kerf, height + kerf


def fits_on_sheet(kind: BlankKind, room: int, long: int) -> bool:
    return any(across <= room and along <= long for across, along in kind.ways)


def _plan(kinds: Sequence[BlankKind], room: int, long: int, rip: bool) -> SheetPlan:
    start = _State(tuple(kind.count for kind in kinds), 0, 0, ())
    bands = first_fit(kinds, start.left, room).bands
    best = min(_stack(bands, long), _stack(_greedy(kinds, start.left, room, long), long), key=len)
    order = 0
    waiting = [(_bound(kinds, start, room, long), 0, order, start)]
    seen = {start.key}
    bound = waiting[0][0]
    patience = StepsLeft(STEPS_AT_MOST)
    while waiting and not patience.spent:
        bound, _, _, state = heapq.heappop(waiting)
        if bound >= len(best):
            break
        if not any(state.left):
            best = state.sheets
            break
        for after in _steps(kinds, state, room, long, patience):
            order += 1
            if after.key not in seen:
                seen.add(after.key)
                heapq.heappush(waiting, (_bound(kinds, after, room, long), sum(after.left), order, after))
    return SheetPlan(best, min(bound, len(best)), rip, tuple(kinds))


def _steps(kinds: Sequence[BlankKind], state: _State, room: int, long: int, patience: StepsLeft) -> Iterator[_State]:
    """One band more in the sheet in hand, those after the first in the order of what leads them; or a new sheet."""
    first = hardest(kinds, state.left)
    for band in derive_bands(kinds, state.left, room, first, patience, long):
        yield _State(take(state.left, band.counts), long - band.height, 0, (*state.sheets, (band,)))
    for lead in range(state.lead, len(kinds) if state.sheets else 0):
        if state.left[lead]:
            for band in derive_bands(kinds, state.left, room, lead, patience, state.spare):
                grown = (*state.sheets[:-1], (*state.sheets[-1], band))
                yield _State(take(state.left, band.counts), state.spare - band.height, lead, grown)


def _bound(kinds: Sequence[BlankKind], state: _State, room: int, long: int) -> int:
    area = sum(kind.width * kind.height * count for kind, count in zip(kinds, state.left, strict=True))
    return len(state.sheets) + max(0, -(-(area - state.spare * room) // (room * long)))


def _greedy(kinds: Sequence[BlankKind], left: Left, room: int, long: int) -> tuple[PaneBand, ...]:
    """Band after band, each the fullest that holds the hardest panel."""
    if len(kinds) > GREEDY_AT_MOST:
        return first_fit(kinds, left, room).bands
    bands: list[PaneBand] = []
    while any(left):
        some = derive_some(kinds, left, room, long)
        bands.append(max(some, key=lambda one: (fullness(one) / one.height, one.counts)))
        left = take(left, bands[-1].counts)
    return tuple(bands)


def _stack(bands: Sequence[PaneBand], long: int) -> tuple[Sheet, ...]:
    """The highest band first, each onto the first sheet with room for it."""
    sheets: list[list[PaneBand]] = []
    for band in sorted(bands, key=lambda one: -one.height):
        open_sheet = next((sheet for sheet in sheets if sum(one.height for one in sheet) + band.height <= long), None)
        if open_sheet is None:
            sheets.append([band])
        else:
            open_sheet.append(band)
    return tuple(tuple(sheet) for sheet in sheets)
