"""Laws of every molding that runs along walls: mirrors, scale, working, and what no room may do to a list."""

import copy
import re
from fractions import Fraction
from random import Random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scantling.engine.tape.lengths import parse_length

from tests.random_rooms import make_room, mirrored, odd_room
from tests.rooms import Facts, ask, inches

SEEDS = st.integers(0, 10_000)
NAMES = ("base", "cap", "shoe", "chair_rail", "picture_rail", "crown")
SIZES = {
    "cap.thickness": "1/2", "cap.width": "1 1/8", "shoe.thickness": "1/2", "shoe.height": "3/4",
    "chair_rail.thickness": "11/16", "chair_rail.width": "2 1/2", "chair_rail.height": "32",
    "picture_rail.thickness": "3/4", "picture_rail.width": "1 3/4", "picture_rail.height": "84",
    "crown.width": "3 5/8", "base.height": "5 1/2", "casing.thickness": "11/16", "hold": "12", "joint.gap": "1/16",
    "thing.clearance": "1/8",
}  # fmt: skip
LENGTHS = ("back", "front", "cut")
ENDS = ("joint", "saw", "bevel", "nested", "point", "long_edge", "turn")
CLOSE = 5e-6

#: Each of these derives every piece of a room twice, with all that is told of it.
HALF = settings(max_examples=settings.default.max_examples // 2)


def every_molding(seed: int, inside: str = "miter") -> Facts:
    """A room made at random, given all there is, with every thing in it as tall as a chair rail or not."""
    facts = make_room(seed, 12).facts
    rng = Random(seed)
    facts["standard"] |= (
        SIZES | {f"{name}.wanted": "yes" for name in NAMES} | {f"{name}.inside": inside for name in NAMES}
    )
    for each in facts["walls"]:
        each["corner"].pop("meets", None)
        for thing in each["obstacles"]:
            thing["height"] = rng.choice(("18", "30", "48", "96"))
    return facts


def every_piece(facts: Facts) -> list[Facts]:
    """Its pieces; a wall may be too short for the joints of one molding or another, and is then named."""
    answered = ask("pieces", facts)
    assert {problem["key"] for problem in answered["problems"]} <= {"too-short", "no-wall-left"}
    return answered["pieces"]


def as_seen(piece: Facts, other_way: bool) -> tuple[Any, ...]:
    ends = [tuple(str(piece[side][name]) for name in ENDS) for side in ("left", "right")]
    figures = tuple(round(inches(piece[name]), 4) for name in LENGTHS)
    return (piece["part"], piece["wall"], figures, *(reversed(ends) if other_way else ends))


@HALF
@given(SEEDS)
def test_a_room_seen_in_a_mirror_has_every_molding_seen_in_a_mirror(seed):
    facts = every_molding(seed)
    here = sorted(as_seen(piece, False) for piece in every_piece(facts))
    there = sorted(as_seen(piece, True) for piece in every_piece(mirrored(facts)))
    assert len(here) == len(there)
    for one, other in zip(here, there, strict=True):
        assert (one[:2], one[3:]) == (other[:2], other[3:])
        assert one[2] == pytest.approx(other[2], abs=2e-4)


@HALF
@given(SEEDS, st.sampled_from((2, 3, Fraction(1, 2))))
def test_a_room_and_its_wood_made_larger_make_every_length_larger_and_no_setting(seed, times):
    facts = every_molding(seed, "cope")
    facts["standard"] |= {"cope.least": "8", "crown.spring_in": "0"}
    larger = copy.deepcopy(facts)
    for name in (*SIZES, "base.thickness", "casing.width", "reveal", "cope.least"):
        larger["standard"][name] = scaled(larger["standard"][name], times)
    for each in larger["walls"]:
        each["length"] = scaled(each["length"], times)
        for one in (*each["openings"], *each["obstacles"]):
            one |= {name: scaled(one[name], times) for name in ("at", "width", "height") if name in one}
    for one, other in zip(every_piece(facts), every_piece(larger), strict=True):
        assert one["part_name"] == other["part_name"]
        for name in LENGTHS:
            assert inches(other[name]) == pytest.approx(float(times) * inches(one[name]), abs=4 * CLOSE)
        for side in ("left", "right"):
            assert other[side]["joint"] == one[side]["joint"]
            for angle in ("saw", "bevel", "nested"):
                assert other[side][angle] == pytest.approx(one[side][angle], abs=1e-4)


def scaled(text: str, times: int | Fraction) -> str:
    return f"{float(parse_length(text).inches * times):.7f}"


SIGNED = {"+": 1, "−": -1}
GAINS = re.compile(r"(longer|shorter) by$")


@HALF
@given(SEEDS, st.sampled_from(("cope", "miter")), st.booleans())
def test_the_steps_of_every_working_add_up_to_both_edges(seed, inside, joined):
    facts = every_molding(seed, inside)
    if joined:
        facts["standard"] |= {"base.stock": [{"length": "5 ft", "price": "1"}]}
        for each in facts["walls"]:
            each["studs"] = "3, every 8"
    for piece in every_piece(facts):
        if piece["part"].endswith("return"):
            continue
        first = second = 0.0
        claimed = []
        for step in piece["working"]:
            value, text = step["value"] and inches(step["value"]), step["text"]
            if text.startswith("="):
                claimed.append((text, value))
            elif text[0] in SIGNED:
                first += SIGNED[text[0]] * value
            elif gains := GAINS.search(text):
                second += {"longer": 1, "shorter": -1}[gains[1]] * value
        back, face = claimed[-2:]
        assert [back[0], face[0]] == [f"= {edge}" for edge in piece["edges"]]
        assert back[1] == inches(piece["back"]) == pytest.approx(first, abs=CLOSE)
        assert face[1] == inches(piece["front"]) == pytest.approx(first + second, abs=CLOSE)


@given(SEEDS)
def test_the_oddest_room_given_every_molding_has_pieces_of_some_length_and_names_all_its_own(seed):
    facts = odd_room(Random(seed))
    facts["standard"] |= {f"{name}.wanted": "yes" for name in NAMES}
    facts["standard"]["base.stock"] = [{"length": "4 ft", "price": "1"}]
    for each in facts["walls"]:
        each["studs"], each["plumb"] = "7 1/2, every 12", "3/8 foot"
    answered = ask("pieces", facts)
    for piece in answered["pieces"]:
        assert inches(piece["front"]) > 0
        assert inches(piece["back"]) > 0 or piece["part"].endswith("return")
    assert {problem["wall"] for problem in answered["problems"]} <= {each["id"] for each in facts["walls"]}
    for name in ("part_name", "key", "letter"):
        assert len({piece[name] for piece in answered["pieces"]}) == len(answered["pieces"])
    ask("needs", facts)
