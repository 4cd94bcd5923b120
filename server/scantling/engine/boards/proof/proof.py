"""Proof: confirm that no better plan exists, without trusting the search that says so.

A plan comes with rules: points for the pieces, and the most points that a board can hold. Here every rule is gone
through again in whole multiples of the finest step that the case has, and then every list of boards that would be
better is shown to break one; lists that the plan names as tried out in full are tried out here once more. Nothing is
shared with the search but the words for a case and a plan; it is slow, and simple enough to be read in one sitting.
What it cannot confirm it names.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import lcm

from scantling.engine.boards.case.case import Case, Plan, Proof, Rule
from scantling.engine.boards.proof.patience import OutOfPatience, Patience
from scantling.engine.boards.proof.trial import comes_out

PieceCounts = tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Claim:
    """What is to be confirmed: no plan costs less than `cents`, nor that much with fewer than `boards`."""

    cents: int
    boards: int
    proof: Proof


@dataclass(frozen=True, slots=True)
class Confirmed:
    """`broken` are the places of rules that do not hold; `unexplained` lists that nothing speaks against, first few.

    `resting` are better lists that pass every rule, that the plan says were tried out in full, and that could not be
    tried out here in the time: for them alone the search must be taken at its word. `finished` is False when the check
    ran out of patience before it came to its end.
    """

    broken: tuple[int, ...] = ()
    unexplained: tuple[PieceCounts, ...] = ()
    resting: tuple[PieceCounts, ...] = ()
    finished: bool = True

    @property
    def holds(self) -> bool:
        """Whether the claim is confirmed, without taking the search at its word for anything."""
        return self.finished and not self.broken and not self.unexplained and not self.resting


def derive_claim(plan: Plan) -> Claim:
    """What a plan says of itself: that it is the best, or only that nothing costs less than its bound."""
    if plan.proven:
        return Claim(plan.cost, plan.count, plan.proof)
    return Claim(plan.bound, 0, plan.proof)


UNEXPLAINED_AT_MOST = 5
USUAL_PATIENCE = 6_000_000
TRIAL_PATIENCE = 200_000
TURNS_A_LIST = 20

FINEST = 20_000
PLACES_A_TURN = 20
"""The longest board in steps for which points are tabled, place by place, and how many places count as one turn."""


def confirm(case: Case, claim: Claim, turns: int = USUAL_PATIENCE) -> Confirmed:
    """Go through the proof of a claim, for so many turns at most."""
    facts = _derive_facts(case, Patience(turns))
    broken: list[int] = []
    rules: list[Rule] = []
    try:
        for place, rule in enumerate(claim.proof.rules):
            if _holds(facts, rule):
                rules.append(rule)
            else:
                broken.append(place)
        unexplained, resting = _sort_out(facts, claim, rules)
    except OutOfPatience:
        return Confirmed(tuple(broken), finished=False)
    return Confirmed(tuple(broken), tuple(unexplained), tuple(resting))


def _sort_out(facts: _Facts, claim: Claim, rules: Sequence[Rule]) -> tuple[list[PieceCounts], list[PieceCounts]]:
    """The better lists that nothing speaks against, and those for which only the search does."""
    unexplained: list[PieceCounts] = []
    resting: list[PieceCounts] = []
    searched = set(claim.proof.searched)
    for boards in _lists_below(facts, rules, (claim.cents, claim.boards)):
        tried = _comes_out(facts, boards) if boards in searched else True
        if tried:
            unexplained.append(boards)
        elif tried is None:
            resting.append(boards)
        if len(unexplained) == UNEXPLAINED_AT_MOST:
            break
    return unexplained, resting


def _comes_out(facts: _Facts, boards: PieceCounts) -> bool | None:
    """Whether all pieces come out of these boards; None when that takes too long to tell."""
    sizes = [size for size, count in zip(facts.sizes, facts.counts, strict=True) for _ in range(count)]
    rooms = [room for room, count in zip(facts.rooms, boards, strict=True) for _ in range(count)]
    try:
        return comes_out(sizes, rooms, Patience(TRIAL_PATIENCE))
    except OutOfPatience:
        return None


@dataclass(frozen=True, slots=True)
class _Facts:
    """Different sizes (piece and kerf), longest first, and how many; per board its room, price and limit."""

    sizes: PieceCounts
    counts: PieceCounts
    rooms: PieceCounts
    prices: PieceCounts
    limits: PieceCounts
    patience: Patience


def _derive_facts(case: Case, patience: Patience) -> _Facts:
    kerf = case.kerf.inches
    counted = Counter(piece.inches + kerf for piece in case.pieces)
    sizes = tuple(sorted(counted, reverse=True))
    rooms = tuple(stock.length.inches - case.end_trim.inches + kerf for stock in case.stock)
    fine = lcm(*(length.denominator for length in (*sizes, *rooms)))
    wanted = len(case.pieces)
    limits = [wanted if stock.limit is None else min(stock.limit, wanted) for stock in case.stock]
    return _Facts(
        tuple(int(size * fine) for size in sizes),
        tuple(counted[size] for size in sizes),
        tuple(int(room * fine) for room in rooms),
        tuple(stock.price_cents for stock in case.stock),
        tuple(0 if room < sizes[-1] else limit for room, limit in zip(rooms, limits, strict=True)),
        patience,
    )


def _need(facts: _Facts, rule: Rule) -> int:
    return sum(points * count for points, count in zip(rule.points, facts.counts, strict=True))


def _holds(facts: _Facts, rule: Rule) -> bool:
    """Whether no board can hold more points than the rule says."""
    given = rule.given
    if given is None:
        return _holds_alone(facts, rule)
    return _has_shape(facts, rule) and _holds_alone(facts, given) and _holds_given(facts, rule, given)


def _has_shape(facts: _Facts, rule: Rule) -> bool:
    return len(rule.points) == len(facts.sizes) and len(rule.most) == len(facts.rooms)


def _holds_alone(facts: _Facts, rule: Rule) -> bool:
    if not _has_shape(facts, rule) or rule.given is not None or rule.up_to is not None:
        return False
    if max(facts.rooms) <= FINEST:
        worth = _derive_worth(facts, rule.points)
        return all(
            worth[room] <= most for room, most, limit in zip(facts.rooms, rule.most, facts.limits, strict=True) if limit
        )
    return all(
        next(_fillings(facts, room, rule.points, most + 1), None) is None
        for room, most, limit in zip(facts.rooms, rule.most, facts.limits, strict=True)
        if limit
    )


def _derive_worth(facts: _Facts, points: PieceCounts) -> list[int]:
    """For every room up to the largest, the most points that fit: piece after piece is left out or put in."""
    worth = [0] * (max(facts.rooms) + 1)
    for size, count, value in zip(facts.sizes, facts.counts, points, strict=True):
        if value > 0:
            for _ in range(min(count, max(facts.rooms) // size)):
                facts.patience.spend(len(worth) // PLACES_A_TURN)
                put_in = [so_far + value for so_far in worth[: len(worth) - size]]
                worth[size:] = map(max, worth[size:], put_in)
    return worth


def _holds_given(facts: _Facts, rule: Rule, given: Rule) -> bool:
    """The same for boards filled as plans of so little money can fill them: wasting few points of the given rule."""
    if rule.up_to is None or not all(points > 0 for points in given.points):
        return False
    spare = _most_points(facts, given, rule.up_to) - _need(facts, given)
    for room, most, most_given, limit in zip(facts.rooms, rule.most, given.most, facts.limits, strict=True):
        if limit:
            for filling in _fillings(facts, room, given.points, most_given - spare):
                if sum(rule.points[kind] * count for kind, count in enumerate(filling)) > most:
                    return False
    return True


def _most_points(facts: _Facts, rule: Rule, cents: int) -> int:
    """At least the most points that boards for so much money hold: the last one may be bought in part."""
    free = [t for t, price in enumerate(facts.prices) if not price and rule.most[t] > 0]
    points = sum(rule.most[t] * facts.limits[t] for t in free)
    paid = [t for t, price in enumerate(facts.prices) if price and rule.most[t] > 0]
    for t in sorted(paid, key=lambda t: Fraction(-rule.most[t], facts.prices[t])):
        bought = min(Fraction(cents, facts.prices[t]), Fraction(facts.limits[t]))
        points += int(bought * rule.most[t])
        cents -= int(bought * facts.prices[t])
    return points


def _fillings(facts: _Facts, room: int, points: PieceCounts, least: int) -> Iterator[list[int]]:
    """Every choice of pieces that fits the room and is worth at least `least`, as a count of each kind.

    Kinds with points, best for their size first; a branch ends when the rest of the room, filled with the best that is
    still to come, is not worth enough. Kinds without points are left out.
    """
    order = sorted((k for k, p in enumerate(points) if p > 0), key=lambda k: Fraction(-points[k], facts.sizes[k]))
    chosen = [0] * len(points)
    at, value = 0, 0
    while True:
        facts.patience.spend()
        while at < len(order):
            kind = order[at]
            if room * points[kind] < (least - value) * facts.sizes[kind]:
                break
            facts.patience.spend()
            chosen[kind] = min(facts.counts[kind], room // facts.sizes[kind])
            room -= chosen[kind] * facts.sizes[kind]
            value += chosen[kind] * points[kind]
            at += 1
        if value >= least:
            yield chosen
        at -= 1
        while at >= 0 and not chosen[order[at]]:
            at -= 1
        if at < 0:
            return
        chosen[order[at]] -= 1
        room += facts.sizes[order[at]]
        value -= points[order[at]]
        at += 1


def _lists_below(facts: _Facts, rules: Sequence[Rule], below: tuple[int, int]) -> Iterator[PieceCounts]:
    """Every list of boards that ranks below (cents, boards) and passes the rules, depth first."""
    stack: list[PieceCounts] = [()]
    while stack:
        facts.patience.spend(TURNS_A_LIST)
        taken = stack.pop()
        spent = sum(price * n for price, n in zip(facts.prices, taken, strict=False))
        if (spent, sum(taken)) >= below or not _may_pass(facts, rules, taken, spent, below[0]):
            continue
        if len(taken) == len(facts.prices):
            yield taken
        else:
            least, most = _least_of_last(facts, rules, taken), facts.limits[len(taken)]
            if facts.prices[len(taken)]:
                most = min(most, (below[0] - spent) // facts.prices[len(taken)])
            stack += [(*taken, count) for count in range(most, least - 1, -1)]


def _least_of_last(facts: _Facts, rules: Sequence[Rule], taken: PieceCounts) -> int:
    """How many boards of the last entry it takes at least: with fewer, a rule that always holds is not passed."""
    if len(taken) + 1 < len(facts.prices):
        return 0
    least = 0
    for rule in rules:
        lacking = _need(facts, rule) - sum(most * n for most, n in zip(rule.most, taken, strict=False))
        if rule.up_to is None and lacking > 0:
            least = max(least, -(-lacking // rule.most[-1]) if rule.most[-1] > 0 else facts.limits[-1] + 1)
    return least


def _may_pass(facts: _Facts, rules: Sequence[Rule], taken: PieceCounts, spent: int, cents: int) -> bool:
    """Whether boards bought for the rest of the money could still bring every rule's points together."""
    limits = tuple(0 if t < len(taken) else limit for t, limit in enumerate(facts.limits))
    rest = replace(facts, limits=limits)
    for rule in rules:
        have = sum(most * n for most, n in zip(rule.most, taken, strict=False))
        dearest = spent if len(taken) == len(facts.prices) else cents
        if rule.up_to is not None and dearest > rule.up_to:
            continue  # the list may come to cost more than the rule speaks of
        if have + _most_points(rest, rule, cents - spent) < _need(facts, rule):
            return False
    return True
