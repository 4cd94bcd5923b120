"""Layouts of film and of sheets against an exact solver of another kind, on small cases.

Reference: OR-Tools CP-SAT, asked for the same bands by a model of its own: each blank in one band, lying one way.
"""

import itertools
from random import Random

import pytest
from ortools.sat.python import cp_model
from scantling.engine.coverings.panes.bands import BlankKind
from scantling.engine.coverings.panes.off_roll import plan_off_roll
from scantling.engine.coverings.panes.sheets import plan_sheets

SEEDS = range(12)
SECONDS = 20


def blanks_of(kinds):
    return [kind for kind in kinds for _ in range(kind.count)]


def make_kinds(random, most, largest, turnable):
    kinds = {}
    for _ in range(most):
        size = (random.randint(3, largest), random.randint(3, largest))
        kinds[size] = kinds.get(size, 0) + 1
    return [BlankKind(*size, count, turnable) for size, count in kinds.items()]


class Model:
    """Blanks in bands: whether blank b lies in band n in way w, and how high each band is."""

    def __init__(self, kinds, room):
        self.model = cp_model.CpModel()
        blanks = blanks_of(kinds)
        tallest = max(max(kind.width, kind.height) for kind in kinds)
        self.heights = [self.model.new_int_var(0, tallest, "") for _ in blanks]
        lies = {
            (blank, band, way): self.model.new_bool_var("")
            for blank, kind in enumerate(blanks)
            for band in range(len(blanks))
            for way in kind.ways
        }
        for blank in range(len(blanks)):
            self.model.add_exactly_one(here for (which, _, _), here in lies.items() if which == blank)
        for band in range(len(blanks)):
            inside = [(way, here) for (_, which, way), here in lies.items() if which == band]
            self.model.add(sum(way[0] * here for way, here in inside) <= room)
            for way, here in inside:
                self.model.add(self.heights[band] >= way[1]).only_enforce_if(here)

    def solve(self, least):
        self.model.minimize(least)
        solver = cp_model.CpSolver()
        solver.parameters.max_time_in_seconds = SECONDS
        solver.parameters.num_workers = 1
        found = solver.solve(self.model)
        assert found == cp_model.OPTIMAL
        return round(solver.objective_value)


def least_length(kinds, room):
    model = Model(kinds, room)
    return model.solve(sum(model.heights))


def fewest_sheets(kinds, room, long):
    model = Model(kinds, room)
    bands = range(len(model.heights))
    on = {(band, sheet): model.model.new_bool_var("") for band in bands for sheet in bands}
    used = [model.model.new_bool_var("") for _ in bands]
    for band in bands:
        model.model.add_exactly_one(on[band, sheet] for sheet in bands)
    for sheet in bands:
        high = []
        for band in bands:
            here = model.model.new_int_var(0, long, "")
            model.model.add(here >= model.heights[band] - long * 2 * (1 - on[band, sheet]))
            high.append(here)
            model.model.add_implication(on[band, sheet], used[sheet])
        model.model.add(sum(high) <= long)
    # A band with nothing in it stands on a sheet too: it must stand on one that is used, so any blank opens one.
    return model.solve(sum(used))


@pytest.mark.parametrize("turnable", [False, True])
@pytest.mark.parametrize("seed", SEEDS)
def test_the_length_off_the_roll_is_the_solvers(seed, turnable):
    random = Random(seed)
    kinds = make_kinds(random, random.randint(2, 6), 20, turnable)
    plan = plan_off_roll(kinds, 24)
    assert plan.length == plan.bound == least_length(kinds, 24)


@pytest.mark.parametrize("turnable", [False, True])
@pytest.mark.parametrize("seed", SEEDS)
def test_the_sheets_are_the_solvers(seed, turnable):
    random = Random(seed)
    kinds = make_kinds(random, random.randint(2, 6), 20, turnable)
    plan = plan_sheets(kinds, 24, 40, 1)
    grown = [BlankKind(kind.width + 1, kind.height + 1, kind.count, turnable) for kind in kinds]
    lying = [BlankKind(kind.height, kind.width, kind.count, turnable) for kind in grown]
    assert len(plan.sheets) == plan.bound == min(fewest_sheets(grown, 25, 41), fewest_sheets(lying, 41, 25))


@pytest.mark.parametrize("seed", SEEDS)
def test_no_layout_at_all_is_shorter_than_the_area_lets_it_be(seed):
    # Reference: CP-SAT's rectangles that do not overlap, free of bands: ours may be longer, and never shorter.
    random = Random(seed)
    kinds = make_kinds(random, 5, 16, False)
    model = cp_model.CpModel()
    end = model.new_int_var(0, 200, "")
    across, along = [], []
    for kind in blanks_of(kinds):
        x, y = model.new_int_var(0, 24 - kind.width, ""), model.new_int_var(0, 200, "")
        across.append(model.new_fixed_size_interval_var(x, kind.width, ""))
        along.append(model.new_fixed_size_interval_var(y, kind.height, ""))
        model.add(end >= y + kind.height)
    model.add_no_overlap_2d(across, along)
    model.minimize(end)
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = SECONDS
    solver.parameters.num_workers = 1
    assert solver.solve(model) == cp_model.OPTIMAL
    assert plan_off_roll(kinds, 24).length >= round(solver.objective_value)


def partitions(things):
    """Every way to part a few things into groups."""
    groups = [[]]
    for thing in things:
        groups = [
            [*(group for place, group in enumerate(one) if place != here), (*one[here], thing)] if here < len(one)
            else [*one, (thing,)]
            for one in groups
            for here in range(len(one) + 1)
        ]  # fmt: skip
    return groups


@pytest.mark.parametrize("seed", SEEDS)
def test_the_length_off_the_roll_is_that_of_trying_every_way_to_group_the_blanks(seed):
    # Source: every grouping into bands, with every blank lying either way.
    kinds = make_kinds(Random(seed), 4, 20, True)
    blanks = blanks_of(kinds)
    best = min(
        sum(max(lying[one][1] for one in group) for group in groups)
        for groups in partitions(range(len(blanks)))
        for lying in itertools.product(*(kind.ways for kind in blanks))
        if all(sum(lying[one][0] for one in group) <= 24 for group in groups)
    )
    assert plan_off_roll(kinds, 24).length == best
