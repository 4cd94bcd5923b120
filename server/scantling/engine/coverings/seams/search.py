"""The best start: fewest rolls for certain, then no sliver, then the fewest inches of seam seen. Every start is tried.

Round a room the last strip does not match the first. Every inside corner and every opening is tried for that mismatch,
which counts as a seam seen: over a door it is shorter than in a corner, and in clear wall it is never put.
"""

from bisect import bisect_left
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from scantling.engine.coverings.seams.cutting import cut_rolls
from scantling.engine.coverings.seams.hang import CornerWalk, Paper, RollCut, Strip, cuts_of
from scantling.engine.coverings.seams.sight import Sight
from scantling.engine.coverings.seams.start import Start
from scantling.engine.coverings.seams.stretch import Hole, Stretch
from scantling.engine.words import say

# Where a strip cannot be cut from a roll at all, any plan is as dear as this.
NO_ROLLS = 10**6


@dataclass(frozen=True, slots=True)
class Mismatch:
    """Where the last strip meets the first: how far along, and in which corner or at which opening."""

    at: int
    of: str
    name: str
    hole: bool


@dataclass(frozen=True, slots=True)
class Hung:
    """One way to hang a stretch. `rank`: rolls for certain, slivers, inches of seam seen, strips; less is better.

    `shared`: the orders of the two end strips where both are cut from one, side by side.
    """

    start: Start
    mismatch: Mismatch | None
    rank: tuple[int, int, int, int]
    strips: tuple[Strip, ...]
    shared: tuple[int, int] | None


@dataclass(frozen=True, slots=True)
class _Strip:
    """A strip by its near edge: how far it reaches, how far on the next begins, and what a seam at its near edge shows.

    `weights` are its pieces, for each place in the pattern; None until they are wanted.
    """

    reach: int
    pitch: int
    seen: int
    near: int
    weights: list[int | None]


@dataclass(slots=True)
class _Run:
    """Strips one way from a start: their near edges, and how far each reaches; and sums over the strips before each.

    Of the first strip's seam no run counts anything: it is the one at the start.
    """

    nears: list[int] = field(default_factory=list)
    reaches: list[int] = field(default_factory=list)
    seen: list[int] = field(default_factory=list)
    near: list[int] = field(default_factory=list)
    weights: list[int] = field(default_factory=list)


# Pieces alike are counted in so many bits of one whole number: sets of pieces are added and compared as numbers.
BITS = 12


class SeamSearch:
    """One stretch and one paper; what was worked out of a strip, or of a set of pieces, is kept."""

    def __init__(self, stretch: Stretch, paper: Paper) -> None:
        self.stretch, self.paper = stretch, paper
        self.sight = Sight(stretch, paper)
        self.walks = {sign: CornerWalk(stretch, paper, sign < 0) for sign in (1, -1)}
        self.strips: dict[int, dict[int, _Strip]] = {1: {}, -1: {}}
        self.numbers: dict[RollCut, int] = {}
        self.known: dict[tuple[int, int, int], int] = {}
        self.rolls: dict[int, int] = {}

    def best(self, starts: Iterable[Start], mismatches: Sequence[Mismatch]) -> Hung | None:
        """The best of every start with every place for the mismatch; the first of equals."""
        found: tuple[tuple[int, int, int, int], Start, Mismatch | None, _Run, _Run] | None = None
        for start in starts:
            right, left = self._runs(start.along)
            places = self._places(mismatches, start.along, right, left) if self.stretch.closed else [None]
            for place in places:
                rank = self._rank(start.along, place, right, left)
                if found is None or rank < found[0]:
                    found = rank, start, place, right, left
        return self._hung(*found) if found else None

    def _runs(self, along: int) -> tuple[_Run, _Run]:
        end = self.stretch.end
        if self.stretch.closed:
            return self._run(1, along, along + end), self._run(-1, -along - end, -along)
        return self._run(1, along, end), self._run(-1, -along, 0)

    def _run(self, sign: int, start: int, limit: int) -> _Run:
        run, strips, drop = _Run(), self.strips[sign], self.paper.drop
        seen = close = weight = 0
        at, order = start, 0 if sign > 0 else -1
        while at < limit:
            strip = strips.get(at) or self._strip(sign, at)
            if run.nears:
                seen, close = seen + strip.seen, close + strip.near
            run.nears.append(at)
            run.reaches.append(strip.reach)
            run.seen.append(seen)
            run.near.append(close)
            run.weights.append(weight)
            own = strip.weights[order % drop]
            if own is None:
                own = strip.weights[order % drop] = self._weight(order, *_span(sign, at, at + strip.reach))
            weight += own
            at += strip.pitch
            order += sign
        return run

    def _strip(self, sign: int, at: int) -> _Strip:
        """A strip worked out once: runs from other starts come by the same edges."""
        far, after = self.walks[sign].step(at)
        strip = _Strip(far - at, after - at, *self.sight.at(sign * at), [None] * self.paper.drop)
        self.strips[sign][at] = strip
        return strip

    def _weight(self, order: int, left: int, right: int) -> int:
        """The pieces of a strip; alike wherever it lies over the same columns, at one place in the pattern."""
        key = (*self.stretch.columns_over(left, right), order % self.paper.drop)
        if key not in self.known:
            cuts = cuts_of(self.stretch, self.paper, order, left, right)
            self.known[key] = sum(1 << BITS * self.numbers.setdefault(cut, len(self.numbers)) for _, _, cut in cuts)
        return self.known[key]

    def _places(self, mismatches: Sequence[Mismatch], along: int, right: _Run, left: _Run) -> list[Mismatch | None]:
        """Each place a little past the start; over an opening where a seam falls by itself, else at its middle."""
        end = self.stretch.end
        found: list[Mismatch | None] = []
        for one in mismatches:
            at = one.at if one.at > along else one.at + end
            if one.hole:
                at = self._over(self._hole(one, at), right, left, at)
            if along < at <= along + end:
                found.append(Mismatch(at, one.of, one.name, one.hole))
        return found

    def _hole(self, one: Mismatch, at: int) -> Hole | None:
        return next((hole for hole in self.stretch.holes if hole.id == one.of and hole.start < at < hole.end), None)

    def _over(self, hole: Hole | None, right: _Run, left: _Run, middle: int) -> int:
        if hole is None:
            return middle
        place = bisect_left(right.nears, hole.start + self.paper.sliver)
        if place < len(right.nears) and right.nears[place] <= hole.end - self.paper.sliver:
            return right.nears[place]
        place = bisect_left(left.nears, -hole.end + self.paper.sliver)
        if place < len(left.nears) and -left.nears[place] >= hole.start + self.paper.sliver:
            return -left.nears[place]
        return middle

    def _limits(self, place: Mismatch | None) -> tuple[int, int]:
        return (place.at, place.at) if place else (self.stretch.end, 0)

    def _rank(self, along: int, place: Mismatch | None, right: _Run, left: _Run) -> tuple[int, int, int, int]:
        stop_right, stop_left = self._limits(place)
        many, more = bisect_left(right.nears, stop_right), bisect_left(left.nears, -stop_left)
        seen = close = 0
        if many and more:
            seen, close = self.sight.at(along)
        for run, count in ((right, many), (left, more)):
            if count:
                seen, close = seen + run.seen[count - 1], close + run.near[count - 1]
        if place:
            shows, tight = self.sight.at(place.at)
            seen, close = seen + shows, close + (tight if place.hole else 0)
            close += sum(0 < stop - run.nears[count - 1] < self.paper.sliver
                         for run, count, stop in ((right, many, stop_right), (left, more, -stop_left)) if count
                         and place.hole)  # fmt: skip
        return self._rolls(right, left, many, more, stop_right, stop_left), close, seen, many + more

    def _rolls(self, right: _Run, left: _Run, many: int, more: int, stop_right: int, stop_left: int) -> int:
        weight = 0
        ends = self._ends(right, left, many, more, stop_right, stop_left)
        if many:
            weight += right.weights[many - 1] + self._weight(many - 1, *ends[0])
        if more:
            weight += left.weights[more - 1]
            weight += 0 if self._shares(ends, many, more) else self._weight(-more, *ends[1])
        if weight not in self.rolls:
            cuts = [cut for cut, place in self.numbers.items() for _ in range(weight >> BITS * place & (1 << BITS) - 1)]
            cutting = cut_rolls(cuts, self.paper.sure, self.paper.repeat)
            self.rolls[weight] = len(cutting.rolls) if cutting else NO_ROLLS + len(cuts)
        return self.rolls[weight]

    def _ends(
        self, right: _Run, left: _Run, many: int, more: int, stop_right: int, stop_left: int
    ) -> tuple[tuple[int, int], tuple[int, int]]:
        """From and to of the last strip to the right and of the last to the left, each cut off where it ends."""
        ends = [(0, 0), (0, 0)]
        if many:
            near = right.nears[many - 1]
            ends[0] = near, min(near + right.reaches[many - 1], stop_right)
        if more:
            near = left.nears[more - 1]
            ends[1] = max(-near - left.reaches[more - 1], stop_left), -near
        return ends[0], ends[1]

    def _shares(self, ends: tuple[tuple[int, int], tuple[int, int]], many: int, more: int) -> bool:
        """Whether both end strips come side by side from one: whole, as tall, at one place, together no wider."""
        if not (many and more) or (many - 1 + more) % self.paper.drop:
            return False
        (left, right), (other_left, other_right) = ends
        if right - left + other_right - other_left > self.paper.width:
            return False
        used = self.walks[1].used(left, right) + self.walks[-1].used(-other_right, -other_left)
        if used > self.paper.width or not all(self._is_whole(*end) for end in ends):
            return False
        return self._weight(many - 1, *ends[0]) == self._weight(-more, *ends[1])

    def _is_whole(self, left: int, right: int) -> bool:
        gaps = self.stretch.gaps(left, right)
        return len(gaps) == 1 and not (gaps[0].above or gaps[0].below)

    def _hung(
        self, rank: tuple[int, int, int, int], start: Start, place: Mismatch | None, right: _Run, left: _Run
    ) -> Hung:
        stop_right, stop_left = self._limits(place)
        many, more = bisect_left(right.nears, stop_right), bisect_left(left.nears, -stop_left)
        ends = self._ends(right, left, many, more, stop_right, stop_left)
        strips = [Strip(order, near, near + right.reaches[order]) for order, near in enumerate(right.nears[:many])]
        others = [Strip(-order - 1, -near - left.reaches[order], -near) for order, near in enumerate(left.nears[:more])]
        strips[-1:] = [Strip(many - 1, *ends[0])] if many else []
        others[-1:] = [Strip(-more, *ends[1])] if more else []
        shared = (many - 1, -more) if self._shares(ends, many, more) else None
        return Hung(start, place, rank, (*strips, *others), shared)


def _span(sign: int, near: int, far: int) -> tuple[int, int]:
    return (near, far) if sign > 0 else (-far, -near)


def derive_mismatches(stretch: Stretch) -> list[Mismatch]:
    """Every inside corner, and the middle of every opening, once round; at what hides a wall none is sought."""
    end = stretch.end
    inside = [turn for turn in stretch.turns if turn.inside and turn.at <= end]
    corners = [
        Mismatch(turn.at, f"corner {turn.number}", say("corner", number=turn.number), False) for turn in inside
    ]
    holes = [hole for hole in stretch.holes if hole.start < end and not hole.is_thing]
    over = [Mismatch((hole.start + hole.end) // 2, hole.id, hole.name, True) for hole in holes]
    return [*corners, *over] if stretch.closed else []
