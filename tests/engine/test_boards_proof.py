"""Proofs of board plans: gone through again by a checker that trusts nothing, and refused when they claim too much."""

import copy
from fractions import Fraction
from random import Random

import pytest
from scantling.engine.boards.case.case import Case, Stock
from scantling.engine.boards.case.sound import check_boards
from scantling.engine.boards.proof.patience import OutOfPatience, Patience
from scantling.engine.boards.proof.trial import comes_out
from scantling.engine.tape.lengths import ZERO, Length

from tests.asked import ask, refusal

CASE = {
    "kerf": "1/8",
    "end_trim": "1/2",
    "hold": "0",
    "stock": [{"length": "96", "price": "10.40"}, {"length": "144", "price": "15.70"}],
    "pieces": ["63 1/4", "14 3/16", "54 5/16", "44 11/16", "40 1/8", "75 1/4", "27 7/8", "9 3/8", "36 1/8"],
}


@pytest.fixture
def given():
    return copy.deepcopy(ask("boards", **CASE))


def prove(given, **case):
    return ask("prove", **{**CASE, **case}, answer=given)


def test_a_proof_holds_and_says_so_in_words(given):
    found = prove(given)

    assert given["proven"]
    assert found["holds"]
    assert found["sentences"] == [
        f"It holds: no plan under ${given['cost']} exists, nor one at that price with fewer boards."
    ]


def test_a_bound_alone_is_proved_as_a_bound(given):
    found = prove({**given, "proven": False})

    assert found["holds"]
    assert found["sentences"][0] == f"It holds: no plan under ${given['bound']} exists."


@pytest.mark.parametrize("rule", ["points", "most"])
def test_a_rule_that_was_tampered_with_is_named(given, rule):
    first = given["proof"]["rules"][0]
    # Pieces that are worth more, or boards that are said to hold less: either would prove too much.
    first[rule] = [figure * 2 if rule == "points" else figure - 1 for figure in first[rule]]
    found = prove(given)

    assert not found["holds"]
    assert "rule 1" in found["sentences"][0]


def test_a_proof_without_its_rules_is_not_believed(given):
    given["proof"]["rules"] = []

    assert "nothing speaks against" in prove(given)["sentences"][0]


def test_a_list_that_would_do_is_not_believed_to_have_been_tried_in_vain(given):
    # One board more than the plan has: the pieces come out of it, and a proof that denies that is found out.
    dearer = {**given, "cost": "99.00", "proof": {**given["proof"], "searched": [[0, 6]]}}
    sentences = prove(dearer)["sentences"]

    assert any(sentence.startswith("The boards cost") for sentence in sentences)
    assert any("nothing speaks against" in sentence for sentence in sentences)


def test_a_plan_that_is_none_is_told_piece_by_piece(given):
    given["boards"][0]["pieces"] = given["boards"][0]["pieces"][1:]
    sentences = " ".join(prove(given)["sentences"])

    assert "is cut 0 times" in sentences


def test_a_proof_of_another_case_does_not_hold(given):
    assert not prove(given, pieces=[*CASE["pieces"], "90"])["holds"]


@pytest.mark.parametrize(
    "proof",
    [
        {"rules": [{"points": [1], "most": [1], "up_to": None, "given": None}], "searched": []},
        {"rules": [{"points": [], "most": [], "up_to": 5, "given": {"points": [], "most": []}}], "searched": [[]]},
        {"rules": [], "searched": [[10**17, -1]]},
    ],
)
def test_a_proof_of_any_shape_is_answered_and_never_believed(given, proof):
    assert not prove({**given, "proof": proof})["holds"]


def test_a_proof_made_to_be_endless_ends_unconfirmed():
    pieces = [f"{20 + number} {number % 7}/8" for number in range(60)]
    stock = [{"length": f"{length}", "price": "10"} for length in range(90, 190, 5)]
    case = {"stock": stock, "pieces": pieces, "kerf": "1/8", "hold": "0"}
    given = ask("boards", **case, time_limit=0.05)
    nothing = {"points": [1] * 60, "most": [60] * len(stock), "up_to": None, "given": None}
    found = ask("prove", **case, answer={**given, "proof": {"rules": [nothing] * 50, "searched": []}})

    assert not found["holds"]


def test_an_answer_that_is_none_is_refused_by_its_field():
    assert refusal("prove", **CASE, answer={"boards": 3})[1].startswith("answer.")


def brute_force(sizes, rooms):
    if not sizes:
        return True
    return any(
        rooms[at] >= sizes[0] and brute_force(sizes[1:], [*rooms[:at], rooms[at] - sizes[0], *rooms[at + 1 :]])
        for at in range(len(rooms))
    )


@pytest.mark.parametrize("seed", range(40))
def test_a_trial_says_what_trying_everything_says(seed):
    rng = Random(seed)
    sizes = [rng.randint(2, 9) for _ in range(rng.randint(3, 7))]
    rooms = [rng.randint(5, 14) for _ in range(rng.randint(1, 4))]

    assert comes_out(sizes, rooms, Patience(10_000)) == brute_force(sizes, rooms)


def test_a_trial_gives_up_rather_than_guess():
    with pytest.raises(OutOfPatience):
        comes_out([7, 6, 5, 4, 3], [13, 13], Patience(2))


def test_what_makes_boards_no_plan_is_named():
    stock = (Stock(Length(Fraction(40)), 0, 1), Stock(Length(Fraction(96)), 1000))
    pieces = tuple(Length(Fraction(inches)) for inches in (47, 48, 39, 20))
    case = Case(Length(Fraction(1, 8)), Length(Fraction(1, 4)), stock, pieces, ZERO)

    def keys(*boards):
        return [fault.key for fault in check_boards(case, boards)]

    assert keys((1, (0, 1)), (0, (2,)), (1, (3,))) == []
    assert keys((1, (0, 1)), (0, (2,)), (0, (3,))) == ["over-limit"]
    assert keys((1, (0, 1, 3)), (0, (2,))) == ["board-too-short"]
    assert keys((1, (0, 1)), (0, (2,))) == ["piece-not-cut-once"]
    assert keys((1, (0, 1)), (0, (2,)), (1, (3, 3))) == ["piece-not-cut-once"]
    assert keys((2, (0, 1)), (0, (2,)), (1, (3,)), (1, ())) == ["unknown-board", "empty-board"]
    assert keys((1, (0, 1)), (0, (2,)), (1, (3, 9))) == ["unknown-piece"]
