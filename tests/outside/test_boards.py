"""Board plans against an exact solver of another kind, and against a check that shares nothing with the planner.

Reference: OR-Tools CP-SAT, asked for the same boards as a model of its own (a piece to a board, capacity with kerfs).
"""

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from random import Random

import pytest
from ortools.sat.python import cp_model
from scantling.engine.boards.case import Case, Plan
from scantling.engine.boards.plan import plan_boards
from scantling.engine.boards.proof import confirm, derive_claim

from tests.bench.boards_cases import room, two_rooms

SEEDS = range(24)


def faults(case: Case, plan: Plan) -> list[str]:
    """What is wrong with a plan by the convention itself: every piece once, every board long enough, limits kept."""
    found = []
    cut = Counter(place for board in plan.boards for place in board.pieces)
    if cut != Counter(range(len(case.pieces))):
        found.append("a piece is not cut just once")
    for board in plan.boards:
        lengths = sum((case.pieces[place].inches for place in board.pieces), start=Fraction(0))
        usable = case.stock[board.stock].length.inches - case.end_trim.inches
        if lengths + case.kerf.inches * (len(board.pieces) - 1) > usable:
            found.append("a board is too short for its pieces")
        if board.offcut.inches != max(Fraction(0), usable - lengths - case.kerf.inches * len(board.pieces)):
            found.append("an offcut is not what is left")
    used = Counter(board.stock for board in plan.boards)
    found += ["a limit is broken" for t, s in enumerate(case.stock) if s.limit is not None and used[t] > s.limit]
    if plan.cost != sum(case.stock[board.stock].price_cents for board in plan.boards):
        found.append("the cost is not the boards'")
    return found


def least_money(case: Case, at_most: int) -> int | None:
    """The least money by CP-SAT, which is told that `at_most` is enough; None where it runs out of time."""
    grain = 64
    model = cp_model.CpModel()
    rooms = [int((s.length.inches - case.end_trim.inches + case.kerf.inches) * grain) for s in case.stock]
    needs = [int((piece.inches + case.kerf.inches) * grain) for piece in case.pieces]
    boards = range(len(case.pieces))
    takes = {(b, t): model.new_bool_var(f"board {b} is {t}") for b in boards for t in range(len(rooms))}
    holds = {(b, p): model.new_bool_var(f"board {b} holds {p}") for b in boards for p in range(len(needs))}
    for b in boards:
        model.add(sum(takes[b, t] for t in range(len(rooms))) <= 1)
        room_of = sum(size * takes[b, t] for t, size in enumerate(rooms))
        model.add(sum(need * holds[b, p] for p, need in enumerate(needs)) <= room_of)
    for p in range(len(needs)):
        model.add(sum(holds[b, p] for b in boards) == 1)
    money = sum(s.price_cents * takes[b, t] for b in boards for t, s in enumerate(case.stock))
    model.add(money <= at_most)
    model.minimize(money)
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = 4
    solver.parameters.num_workers = 1
    return int(solver.objective_value) if solver.solve(model) == cp_model.OPTIMAL else None


@pytest.mark.parametrize("seed", SEEDS)
def test_a_plan_is_sound_and_what_it_proves_is_confirmed_without_the_search(seed):
    for make in (room, two_rooms):
        case = make(Random(seed))
        plan = plan_boards(case)

        assert faults(case, plan) == []
        assert plan.bound <= plan.cost
        assert confirm(case, derive_claim(plan)).holds


@pytest.mark.parametrize("seed", range(6))
def test_a_proof_that_claims_too_much_is_not_confirmed(seed):
    case = room(Random(seed))
    plan = plan_boards(case)
    dearer = replace(plan, cost=plan.cost + min(s.price_cents for s in case.stock if s.price_cents), proven=True)
    rules = plan.proof.rules
    tighter = tuple(replace(rule, most=tuple(most - 1 for most in rule.most)) for rule in rules)

    assert plan.proven
    assert rules
    assert not confirm(case, derive_claim(replace(dearer, proof=replace(plan.proof, rules=rules)))).holds
    assert not confirm(case, derive_claim(replace(plan, proof=replace(plan.proof, rules=())))).holds
    assert confirm(case, derive_claim(replace(plan, proof=replace(plan.proof, rules=tighter)))).broken


def test_no_plan_of_another_solver_is_cheaper_than_one_that_is_proven():
    compared = 0
    for seed in range(8):
        case = room(Random(1000 + seed))
        if len(case.pieces) > 10 or any(s.limit is not None for s in case.stock):
            continue
        plan = plan_boards(case)
        best = least_money(case, plan.cost)
        if best is not None and plan.proven:
            compared += 1
            assert plan.cost == best
    assert compared >= 2
