"""Board plans against exact solvers of other kinds, and against checks that share nothing with the planner.

References: OR-Tools CP-SAT and HiGHS, asked for the same boards by a model of their own (tests/solvers.py).
"""

from dataclasses import replace
from fractions import Fraction
from random import Random

import pytest
from scantling.engine.boards.case.case import Case, Plan
from scantling.engine.boards.case.sound import check_boards, derive_cost
from scantling.engine.boards.proof.proof import confirm, derive_claim
from scantling.engine.boards.search.plan import plan_boards

from tests.bench.boards_bench import first_fit, measure_case, rows_of
from tests.bench.boards_cases import (
    house_of_base,
    house_of_casing,
    kerf_just_misses,
    make_cases,
    offcuts,
    room,
    two_rooms,
)
from tests.solvers import solve_with_cp_sat, solve_with_highs

SEEDS = range(24)
SMALL = 11
SECONDS = 4


def taken(plan: Plan):
    return [(board.stock, board.pieces) for board in plan.boards]


@pytest.mark.parametrize("seed", SEEDS)
def test_a_plan_is_sound_and_what_it_proves_is_confirmed_without_the_search(seed):
    for make in (room, two_rooms):
        case = make(Random(seed))
        plan = plan_boards(case)

        assert check_boards(case, taken(plan)) == []
        assert derive_cost(case, taken(plan)) == plan.cost
        assert plan.bound <= plan.cost
        assert confirm(case, derive_claim(plan)).holds


@pytest.mark.parametrize("make", [house_of_base, house_of_casing])
@pytest.mark.parametrize("seed", range(3))
def test_a_house_comes_near_the_best_possible_the_same_at_every_time(make, seed):
    case = make(Random(seed))
    plan = plan_boards(case)

    assert plan == plan_boards(case)
    assert check_boards(case, taken(plan)) == []
    assert plan.gap <= Fraction(1, 100)
    assert not confirm(case, derive_claim(plan)).broken


@pytest.mark.parametrize("seed", range(6))
def test_a_proof_that_claims_too_much_is_not_confirmed(seed):
    case = room(Random(seed))
    plan = plan_boards(case)
    dearer = replace(plan, cost=plan.cost + min(s.price_cents for s in case.stock if s.price_cents), proven=True)
    rules = plan.proof.rules
    tighter = tuple(replace(rule, most=tuple(most - 1 for most in rule.most)) for rule in rules)

    assert plan.proven
    assert rules
    for claimed in (dearer, replace(plan, proof=replace(plan.proof, rules=()))):
        assert not confirm(case, derive_claim(claimed)).holds
    assert confirm(case, derive_claim(replace(plan, proof=replace(plan.proof, rules=tighter)))).broken


def small_cases(make) -> list[Case]:
    made = (make(Random(1000 + seed)) for seed in range(40))
    return [case for case in made if len(case.pieces) <= SMALL][:4]


@pytest.mark.parametrize("solve", [solve_with_cp_sat, solve_with_highs])
@pytest.mark.parametrize("make", [room, kerf_just_misses, offcuts])
def test_no_plan_of_another_solver_is_cheaper_than_one_that_is_proven(make, solve):
    compared = 0
    for case in small_cases(make):
        plan = plan_boards(case)
        found = solve(case, plan.count + 1, plan.cost, SECONDS)
        if plan.proven and found is not None and found.proven:
            compared += 1
            assert found.cents == plan.cost
    assert compared >= 2


def test_the_bench_measures_plans_and_finds_them_sound():
    found = [measure_case(name, case) for name, case in make_cases(3, 1) if len(case.pieces) < 30]
    rows = {row.what: row.figure for row in rows_of(found)}

    assert rows["cases"] == len(found) >= 5
    assert rows["proofs refuted"] == 0
    assert all(first_fit(one.case) is None or first_fit(one.case) >= one.long.cost for one in found)
