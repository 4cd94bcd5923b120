"""Laws of base: what must hold in every room, shown over rooms made at random."""

import copy
import re
from fractions import Fraction
from random import Random
from typing import Any

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st
from scantling.engine.tape.lengths import parse_length

from tests.random_rooms import make_room, mirrored, odd_room
from tests.rooms import Facts, ask, inches, joints, pieces

SEEDS = st.integers(0, 10_000)
BACK_AND_FACE = ("back", "front", "cut")
ENDS = ("joint", "saw", "point", "long_edge", "turn")
CLOSE = 3e-6


def breaks_of(each: Facts) -> list[Facts]:
    return [one for one in each["openings"] if one["kind"] != "window"] + [
        one for one in each["obstacles"] if one["base"] == "stops"
    ]


def as_seen(piece: Facts, other_way: bool) -> tuple[Any, ...]:
    """A piece by its wall, lengths and ends; `other_way` swaps its hands."""
    ends = [tuple(piece[side][name] for name in ENDS) for side in ("left", "right")]
    return (piece["wall"], *(inches(piece[name]) for name in BACK_AND_FACE), *(reversed(ends) if other_way else ends))


@given(SEEDS)
def test_a_room_seen_in_a_mirror_has_the_pieces_seen_in_a_mirror(seed):
    facts = make_room(seed, 14).facts
    for each in facts["walls"]:
        each["corner"].pop("meets", None)
    # Which board runs through is settled by the one door that a person comes in by; with none or several either hand
    # may begin, and with miters it does not matter.
    runs = sum(len(breaks_of(each)) for each in facts["walls"])
    assume(facts["standard"]["base.inside"] == "miter" or (runs == 1 and len(facts["walls"]) % 2 == 0))
    there = {as_seen(piece, True) for piece in pieces(mirrored(facts))}
    here = {as_seen(piece, False) for piece in pieces(facts)}
    assert [piece[0] for piece in sorted(here)] == [piece[0] for piece in sorted(there)]
    for one, other in zip(sorted(here), sorted(there), strict=True):
        assert one[1:4] == pytest.approx(other[1:4], abs=CLOSE)
        assert one[4:] == other[4:]


@given(SEEDS, st.sampled_from((2, 3, Fraction(1, 2))))
@example(23, Fraction(1, 2))  # thin boards of two thicknesses: the setting once came from a rounded length
def test_a_room_and_its_wood_made_larger_make_every_length_larger_and_no_setting(seed, times):
    facts = make_room(seed, 14).facts
    larger = copy.deepcopy(facts)
    settings_ = larger["standard"]
    settings_.setdefault("base.height", "5 1/2")
    settings_.setdefault("cope.least", "8")
    for name in ("base.thickness", "casing.width", "reveal", "cope.least"):
        settings_[name] = scaled(settings_[name], times)
    for each in larger["walls"]:
        each["length"] = scaled(each["length"], times)
        if "meets" in each["corner"]:
            each["corner"]["meets"] = scaled(each["corner"]["meets"], times)
        for one in (*each["openings"], *each["obstacles"]):
            one |= {name: scaled(one[name], times) for name in ("at", "width")}
    for one, other in zip(pieces(facts), pieces(larger), strict=True):
        assert one["part_name"] == other["part_name"]
        for name in BACK_AND_FACE:
            assert inches(other[name]) == pytest.approx(float(times) * inches(one[name]), abs=CLOSE * 3)
        for side in ("left", "right"):
            assert other[side]["joint"] == one[side]["joint"]
            assert other[side]["saw"] == pytest.approx(one[side]["saw"], abs=1e-4)


def scaled(text: str, times: int | Fraction) -> str:
    return f"{float(parse_length(text).inches * times):.7f}"


@given(SEEDS, st.booleans())
def test_no_piece_is_coped_twice_but_in_a_closed_room_of_inside_corners_with_nothing_to_stop_at(seed, closed):
    facts = make_room(seed, 12).facts
    facts["standard"]["base.inside"] = "cope"
    facts["closed"] = closed
    found = pieces(facts)
    twice = [piece for piece in found if joints(piece) == ("cope", "cope")]
    turns = {each["corner"]["turn"] for each in facts["walls"]}
    ring = closed and turns == {"inside"} and not any(breaks_of(each) for each in facts["walls"])
    # Beside a board too short to be coped a longer one may be, at both ends.
    if ring or all(inches(piece["back"]) >= 8 for piece in found):
        assert len(twice) == (1 if ring else 0)


@given(SEEDS)
def test_a_coped_or_butted_end_meets_a_board_that_runs_through_and_is_earlier_in_the_list(seed):
    found = pieces(make_room(seed, 14).facts)
    at_corner = {(piece[side]["meets"], side): (place, piece[side]) for place, piece in enumerate(found)
                 for side in ("left", "right") if piece[side]["meets"].startswith("corner")}  # fmt: skip
    for (corner, side), (place, end) in at_corner.items():
        if end["joint"] in ("cope", "butt"):
            earlier, other = at_corner[corner, "left" if side == "right" else "right"]
            assert other["joint"] == "square"
            assert earlier < place
        if end["joint"] == "miter":
            assert at_corner[corner, "left" if side == "right" else "right"][1]["joint"] == "miter"


@given(SEEDS)
def test_letters_run_in_fitting_order_and_no_two_pieces_have_one_name(seed):
    found = pieces(make_room(seed).facts)
    letters = [chr(ord("A") + place) if place < 26 else "A" + chr(ord("A") + place - 26) for place in range(len(found))]
    assert [piece["letter"] for piece in found] == letters
    assert len({piece["part_name"] for piece in found}) == len(found)


@given(SEEDS)
def test_cut_and_which_edge_follow_from_back_face_and_ends(seed):
    for piece in pieces(make_room(seed, 14).facts):
        # A lean that moves an edge by less than 1/64 is not told, and either edge will do.
        edges = {piece[side]["long_edge"] for side in ("left", "right") if piece[side]["leans"]} - {"none"}
        back, front, cut = (inches(piece[name]) for name in BACK_AND_FACE)
        if edges == {"back"}:
            assert (cut, piece["cut_from"]) == (pytest.approx(back, abs=1 / 64), "along the back")
        elif edges == {"front"}:
            assert (cut, piece["cut_from"]) == (pytest.approx(front, abs=1 / 64), "along the face")
        elif edges:
            assert cut > max(back, front)
            assert piece["cut_from"].startswith("long point to long point")
        else:
            assert piece["cut_from"] == "square, either edge"
            assert back == pytest.approx(cut, abs=1 / 32)
            assert front == pytest.approx(cut, abs=1 / 32)


SIGNED = {"+": 1, "−": -1}


@given(SEEDS)
@example(3203)  # an end so nearly square that the saw's scale does not show it
def test_the_steps_of_a_working_add_up_to_the_back_and_the_face_that_it_claims(seed):
    for piece in pieces(make_room(seed, 14).facts):
        along = taken = grows = 0.0
        claimed: dict[str, float] = {}
        for step in piece["working"]:
            value, text = step["value"] and inches(step["value"]), step["text"]
            if text.startswith("="):
                claimed[text] = value
            elif text.startswith("− the board it butts"):
                taken += value
            elif text[0] in SIGNED:
                along += SIGNED[text[0]] * value
            elif value is not None:
                grows += {"longer": 1, "shorter": -1}[re.search(r"face (longer|shorter) by$", text)[1]] * value
        assert claimed.get("= along the wall", along) == pytest.approx(along, abs=CLOSE)
        assert claimed["= back"] == inches(piece["back"]) == pytest.approx(along - taken, abs=CLOSE)
        assert claimed["= face"] == inches(piece["front"]) == pytest.approx(along - taken + grows, abs=CLOSE)


@given(SEEDS)
def test_every_reading_in_a_working_is_one_that_was_typed_and_every_figure_of_the_wall_is_there(seed):
    facts = make_room(seed, 14).facts
    typed = {each["id"]: {each["length"], *(one[name] for one in breaks_of(each) for name in ("at", "width"))}
             for each in facts["walls"]}  # fmt: skip
    for piece in pieces(facts):
        read = [text for step in piece["working"] for text in step["readings"]]
        assert read
        assert set(read) <= typed[piece["wall"]]


@given(SEEDS)
def test_the_oddest_room_gives_pieces_of_some_length_or_problems_and_says_which_are_not_to_be_cut(seed):
    facts = odd_room(Random(seed))
    answered = ask("pieces", facts)
    for piece in answered["pieces"]:
        if piece["part"] == "base return":
            # A triangle: it comes to nothing at its back, and no reading is in it.
            assert (inches(piece["back"]), inches(piece["front"])) == (0, 9 / 16)
            continue
        assert min(inches(piece[name]) for name in BACK_AND_FACE) > 0
        assert inches(piece["plus_minus"]) > 1 / 32  # a reading and a mark at the least
        corners = {piece[side]["meets"].removeprefix("corner ") for side in ("left", "right")}
        unread = {
            str(number) for number, each in enumerate(facts["walls"], start=1) if not each["corner"].get("corner")
        }
        unread -= {str(n) for n, each in enumerate(facts["walls"], start=1) if each["corner"].get("sides")}
        flagged = {flag["key"] for flag in piece["flags"]}
        assert "corner-unread" in flagged or not corners & unread
    assert {problem["wall"] for problem in answered["problems"]} <= {each["id"] for each in facts["walls"]}


@given(SEEDS, SEEDS)
def test_what_is_wrong_with_one_wall_changes_no_piece_of_a_wall_that_shares_no_corner_with_it(seed, spoilt):
    facts = make_room(seed, 16).facts
    facts["standard"]["base.inside"] = "miter"  # with miters no board waits for another
    count = len(facts["walls"])
    assume(count >= 5)
    place = spoilt % count
    before = {piece["part_name"]: {**piece, "letter": "", "drawing": ""} for piece in pieces(facts)}
    facts["walls"][place]["length"] = ["fish"]
    near = {f"w{(place + step) % count + 1}" for step in (-1, 0, 1)}
    for piece in ask("pieces", facts)["pieces"]:
        if piece["wall"] not in near:
            assert {**piece, "letter": "", "drawing": ""} == before[piece["part_name"]]
