"""Exact solvers of other kinds, asked for the same boards by a model of their own: which piece comes from which board.

OR-Tools CP-SAT and HiGHS, both open source, neither of them part of what is installed for a user.
"""

from dataclasses import dataclass

import highspy
from ortools.sat.python import cp_model
from scantling.engine.boards.case.case import Case

#: Steps of an inch in these models: every length of the cases asked is a whole number of them.
GRAIN = 64


@dataclass(frozen=True, slots=True)
class Found:
    """The least money that a solver found in cents, and whether it says that none is less."""

    cents: int
    proven: bool


def rooms_of(case: Case) -> list[int]:
    return [int((stock.length.inches - case.end_trim.inches + case.kerf.inches) * GRAIN) for stock in case.stock]


def sizes_of(case: Case) -> list[int]:
    return [int((piece.inches + case.kerf.inches) * GRAIN) for piece in case.pieces]


def solve_with_cp_sat(case: Case, boards: int, at_most: int, seconds: float) -> Found | None:
    """The least money with at most so many boards; None where nothing is found in the time."""
    model = cp_model.CpModel()
    rooms, sizes = rooms_of(case), sizes_of(case)
    takes = {(b, t): model.new_bool_var("") for b in range(boards) for t in range(len(rooms))}
    holds = {(b, p): model.new_bool_var("") for b in range(boards) for p in range(len(sizes))}
    room = [sum(size * takes[b, t] for t, size in enumerate(rooms)) for b in range(boards)]
    for b in range(boards):
        model.add(sum(takes[b, t] for t in range(len(rooms))) <= 1)
        model.add(sum(size * holds[b, p] for p, size in enumerate(sizes)) <= room[b])
        if b:
            model.add(room[b - 1] >= room[b])  # boards of one plan in one order: the others would be the same plan
    for p in range(len(sizes)):
        model.add(sum(holds[b, p] for b in range(boards)) == 1)
    for t, stock in enumerate(case.stock):
        if stock.limit is not None:
            model.add(sum(takes[b, t] for b in range(boards)) <= stock.limit)
    money = sum(stock.price_cents * takes[b, t] for b in range(boards) for t, stock in enumerate(case.stock))
    model.add(money <= at_most)
    model.minimize(money)
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = seconds
    solver.parameters.num_workers = 1
    status = solver.solve(model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return None
    return Found(int(solver.objective_value), status == cp_model.OPTIMAL)


def solve_with_highs(case: Case, boards: int, at_most: int, seconds: float) -> Found | None:
    """The same by mixed-integer programming."""
    highs = highspy.Highs()
    highs.setOptionValue("output_flag", False)
    highs.setOptionValue("time_limit", seconds)
    highs.setOptionValue("threads", 1)
    highs.setOptionValue("mip_rel_gap", 0.0)
    rooms, sizes = rooms_of(case), sizes_of(case)
    takes = {(b, t): highs.addBinary() for b in range(boards) for t in range(len(rooms))}
    holds = {(b, p): highs.addBinary() for b in range(boards) for p in range(len(sizes))}
    room = [highs.qsum(size * takes[b, t] for t, size in enumerate(rooms)) for b in range(boards)]
    for b in range(boards):
        highs.addConstr(highs.qsum(takes[b, t] for t in range(len(rooms))) <= 1)
        highs.addConstr(highs.qsum(size * holds[b, p] for p, size in enumerate(sizes)) <= room[b])
        if b:
            highs.addConstr(room[b - 1] >= room[b])
    for p in range(len(sizes)):
        highs.addConstr(highs.qsum(holds[b, p] for b in range(boards)) == 1)
    for t, stock in enumerate(case.stock):
        if stock.limit is not None:
            highs.addConstr(highs.qsum(takes[b, t] for b in range(boards)) <= stock.limit)
    money = highs.qsum(stock.price_cents * takes[b, t] for b in range(boards) for t, stock in enumerate(case.stock))
    highs.addConstr(money <= at_most)
    highs.minimize(money)
    if highs.getModelStatus() != highspy.HighsModelStatus.kOptimal:
        return None
    return Found(int(highs.getObjectiveValue() + 0.5), proven=True)
