"""Seam plans against a hanging done cell by cell, every start and every cutting tried, on small walls."""

import itertools
import math
from dataclasses import dataclass
from functools import cache
from random import Random

import pytest
from scantling.engine.coverings.seams.cutting import advance, cut_rolls
from scantling.engine.coverings.seams.hang import Paper, RollCut
from scantling.engine.coverings.seams.search import SeamSearch, derive_mismatches
from scantling.engine.coverings.seams.start import Start
from scantling.engine.coverings.seams.stretch import Hole, Part, Turn, lay_out_stretch

SEEDS = range(30)


@dataclass
class Walls:
    """Walls in whole inches: lengths, heights, whether the corner at each right end is inside, and openings."""

    lengths: list[int]
    heights: list[int]
    inside: list[bool]
    holes: list[Hole]
    closed: bool
    paper: Paper

    @property
    def end(self):
        return sum(self.lengths)

    def wall(self, cell):
        cell %= self.end
        return next(n for n in range(len(self.lengths)) if cell < sum(self.lengths[: n + 1]))

    @property
    def openings(self):
        return [hole for hole in self.holes if not hole.is_thing]

    def free(self, cell):
        """Every inch down that is papered there."""
        cell %= self.end
        here = [hole for hole in self.holes if hole.start <= cell < hole.end]
        return {down for down in range(self.heights[self.wall(cell)])
                if not any(hole.over <= down < hole.under for hole in here)}  # fmt: skip

    @property
    def corners(self):
        """Where inside corners are, and where any is."""
        ends = [sum(self.lengths[: n + 1]) for n in range(len(self.lengths) if self.closed else len(self.lengths) - 1)]
        inside = [at % self.end for at, inside in zip(ends, self.inside, strict=False) if inside]
        return inside, [at % self.end for at in ends]


def make_walls(seed, closed):
    random = Random(seed)
    count = random.randint(2, 3)
    lengths = [random.randint(8, 16) for _ in range(count)]
    heights = [random.choice((30, 30, 34)) for _ in range(count)]
    inside = [random.random() < 0.7 for _ in range(count)]
    inside[0] = True
    holes, at = [], 0
    for number, length in enumerate(lengths):
        if random.random() < 0.6 and length >= 12:
            start = random.randint(1, 4)
            end = random.randint(start + 5, length - 1)
            over = random.randint(2, 8)
            under = heights[number] if random.random() < 0.5 else random.randint(12, 25)
            holes.append(Hole(f"h{number}", f"h{number}", at + start, at + end, over, under))
        # What is tiled, often up to a corner, and what hangs above it; over or beside an opening too.
        for high in random.choice(([], [], [True], [True, False])):
            start = random.choice((0, 0, random.randint(0, length - 4)))
            end = random.choice((length, random.randint(start + 2, length)))
            over, under = (random.choice((8, 12)), 34) if high else (random.randint(0, 4), random.randint(5, 9))
            name = f"t{number}{high}"
            holes.append(Hole(name, name, at + start, at + end, over, min(under, heights[number]), is_thing=True))
        at += length
    drop = random.choice((1, 2, 3))
    step = random.randint(1, 5)
    paper = Paper(width=random.randint(8, 12), lap=0, turn=1, trim=2, repeat=step * drop, step=step, drop=drop,
                  sure=random.randint(75, 150), labeled=160, sliver=2)  # fmt: skip
    return Walls(lengths, heights, inside, holes, closed, paper)


def stretch_of(walls):
    parts, at = [], 0
    for number, (length, height) in enumerate(zip(walls.lengths, walls.heights, strict=True)):
        parts.append(Part(f"w{number}", f"wall {number}", str(number), at, at + length, height))
        at += length
    ends = parts if walls.closed else parts[:-1]
    turns = [Turn(part.end, inside, n) for n, (part, inside) in enumerate(zip(ends, walls.inside, strict=False))]
    return lay_out_stretch(parts, walls.holes, turns, walls.closed)


def hang(walls, start, limit, way):
    """Strips from a start one way, cell by cell: a corner takes what turns it, if anything is left to turn."""
    inside = walls.corners[0]
    strips, at = [], start
    while (limit - at) * way > 0:
        near, paper = at, walls.paper.width
        while paper > 0:
            at, paper = at + way, paper - 1
            if paper and (walls.closed or 0 < at < walls.end) and at % walls.end in inside:
                paper = max(0, paper - walls.paper.turn)
        strips.append((near, at))
    return strips


def seam(walls, at):
    """How much of a seam is seen, and whether it is too near something."""
    cells = range(0 if walls.closed else 1, walls.end)
    seen = len(walls.free(at - 1) | walls.free(at))
    edges = [*walls.corners[1], *(cell for cell in cells if walls.free(cell - 1) != walls.free(cell))]
    edges += [] if walls.closed else [0, walls.end]
    away = [abs(at - edge) for edge in edges]
    if walls.closed:
        around = [abs(at % walls.end - edge % walls.end) for edge in edges]
        away = [min(one, walls.end - one) for one in around]
    return seen, int(min(away, default=99) < walls.paper.sliver)


def pieces(walls, order, left, right):
    """From every inch down that is papered anywhere across a strip: as many pieces as there are runs of them."""
    free = set().union(*(walls.free(cell) for cell in range(left, right)))
    tops = sorted(down for down in free if down - 1 not in free)
    long = [next(n for n in itertools.count(1) if top + n not in free) for top in tops]
    return [(tall + 2, top - 1 - order * walls.paper.step) for top, tall in zip(tops, long, strict=True)]


@cache
def fewest_rolls(cuts, paper):
    """Every order of every piece: of the same pieces cut, and the same one last, less of a roll used is never worse."""
    if any(cut.length > paper.sure for cut in cuts):
        return None
    best = {(1 << n, n): (1, 0) for n in range(len(cuts))}
    for mask in range(1, 1 << len(cuts)):
        for last in range(len(cuts)):
            if (mask, last) not in best:
                continue
            rolls, at = best[mask, last]
            for n, cut in enumerate(cuts):
                if mask >> n & 1:
                    continue
                top = at + advance(cuts[last], cut, paper.repeat)
                after = (rolls, top) if top + cut.length <= paper.sure else (rolls + 1, 0)
                key = (mask | 1 << n, n)
                best[key] = min(best.get(key, (math.inf, 0)), after)
    return min((best[key][0] for key in best if key[0] == (1 << len(cuts)) - 1), default=0)


def ranks(walls, start):
    """What every place for the mismatch comes to, from one start."""
    end, sliver = walls.end, walls.paper.sliver
    right = hang(walls, start, start + end if walls.closed else end, 1)
    left = hang(walls, start + end if walls.closed else start, start if walls.closed else 0, -1)
    places = [(end, 0, None)]
    if walls.closed:
        places = [(at if at > start else at + end, None) for at in (corner or end for corner in walls.corners[0])]
        for hole in walls.openings:
            middle = (hole.start + hole.end) // 2
            by = 0 if middle > start else end
            own = [near for near, _ in right if hole.start + by + sliver <= near <= hole.end + by - sliver]
            other = [near for near, _ in left if hole.start + by + sliver <= near <= hole.end + by - sliver]
            places.append(((own or other or [middle + by])[0], hole))
        places = [(at, at, hole) for at, hole in places if start < at <= start + end]
    for stop_right, stop_left, hole in places:
        ours = [(near, min(far, stop_right)) for near, far in right if near < stop_right]
        others = [(max(far, stop_left), near) for near, far in left if near > stop_left]
        seams = [near for near, _ in ours[1:]] + [near for _, near in others[1:]]
        seams += [start] if ours and others else []
        shown = [seam(walls, at) for at in seams]
        seen, near = sum(one for one, _ in shown), sum(tight for _, tight in shown)
        if walls.closed:
            last, tight = seam(walls, stop_right)
            seen += last
            if hole:
                near += tight + sum(0 < stop_right - one[0] < sliver for one in ours[-1:])
                near += sum(0 < one[1] - stop_left < sliver for one in others[-1:])
        yield (*cost(walls, ours, others), near, seen, len(ours) + len(others))


def cost(walls, ours, others):
    lists = [pieces(walls, order, *strip) for order, strip in enumerate(ours)]
    lists += [pieces(walls, -order - 1, *strip) for order, strip in enumerate(others)]
    if ours and others and shares(walls, ours, others):
        lists.pop()
    repeat = walls.paper.repeat
    cuts = [RollCut(length, phase % repeat) for one in lists for length, phase in one]
    return (fewest_rolls(tuple(sorted(cuts, key=str)), walls.paper),)


def used(walls, strip):
    inside = walls.corners[0]
    return strip[1] - strip[0] + walls.paper.turn * sum(
        at % walls.end in inside for at in range(strip[0] + 1, strip[1]) if walls.closed or 0 < at < walls.end
    )


def shares(walls, ours, others):
    orders = len(ours) - 1, -len(others)
    first, second = ours[-1], others[-1]
    one, other = pieces(walls, orders[0], *first), pieces(walls, orders[1], *second)
    whole = all(tall - 2 == max(walls.heights[walls.wall(cell)] for cell in range(*strip))
                for strip, some in ((first, one), (second, other)) for tall, _ in some)  # fmt: skip
    alike = one[0][0] == other[0][0] and (one[0][1] - other[0][1]) % walls.paper.repeat == 0 if one and other else False
    return whole and alike and used(walls, first) + used(walls, second) <= walls.paper.width


def outcome(walls):
    """The engine's best and the best of all, over every inch as a start; None where there would be too much to try."""
    starts = range(walls.end)
    every = [rank for start in starts for rank in ranks(walls, start)]
    stretch = stretch_of(walls)
    found = SeamSearch(stretch, walls.paper).best([Start(at, "plumb", "") for at in starts], derive_mismatches(stretch))
    return found.rank, min(every)


@pytest.mark.parametrize("closed", [False, True], ids=["from end to end", "round a room"])
@pytest.mark.parametrize("seed", SEEDS)
def test_the_plan_is_the_best_of_every_start_hung_cell_by_cell(seed, closed):
    # Source: hanging, cell by cell; every start, every place for the mismatch, every order of cutting.
    walls = make_walls(seed, closed)
    found, best = outcome(walls)
    assert found == best


@pytest.mark.parametrize("seed", range(60))
def test_rolls_are_as_few_as_trying_every_order_of_cutting_finds(seed):
    # Source: every order of cutting every piece.
    random = Random(seed)
    paper = Paper(10, 0, 1, 2, random.choice((0, 6, 12)), 3, 2, random.randint(60, 140), 150, 2)
    sizes = [random.choice((28, 32, 8, 11)) for _ in range(random.randint(1, 8))]
    cuts = [RollCut(size, random.randrange(paper.repeat) if paper.repeat else 0) for size in sizes]
    found, least = cut_rolls(cuts, paper.sure, paper.repeat), fewest_rolls(tuple(cuts), paper)
    assert found.bound <= least <= len(found.rolls)
    if len(found.rolls) == found.bound:
        assert len(found.rolls) == least
    assert len(found.rolls) - least <= 1
    for roll in found.rolls:
        at = sum(advance(one, other, paper.repeat) for one, other in itertools.pairwise(roll))
        assert at + roll[-1].length <= paper.sure
    assert sorted((cut for roll in found.rolls for cut in roll), key=str) == sorted(cuts, key=str)
