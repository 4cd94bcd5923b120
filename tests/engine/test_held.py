"""Pictures of where the tape is held: one for every reading that the walk asks for, no two alike that differ."""

import itertools

import pytest
from scantling.engine.bodies import ReadingBody
from scantling.engine.drawings.held import CORNERS, OPENINGS, draw_held

from tests.asked import ask, refusal

WHATS = ReadingBody().fields["what"].validators[0].choices
OF = ("wall", *OPENINGS, "thing")


def test_every_reading_has_a_picture_of_something_but_those_of_a_piece():
    without = {what for what in WHATS if not any(draw_held(of, what) for of in OF)}
    assert without == {"in_place", "salvaged"}


@pytest.mark.parametrize("of", OF)
def test_what_is_held_is_drawn_in_hand_and_inside_the_picture(of):
    for what in WHATS:
        drawing = ask("held", of=of, what=what)["drawing"]
        assert not drawing or 'class="hand"' in drawing


def test_pictures_of_one_thing_differ():
    for of in OF:
        drawn = [picture for what in WHATS if (picture := draw_held(of, what))]
        assert all(one != other for one, other in itertools.combinations(drawn, 2))
    assert all(draw_held("wall", what) != draw_held("wall", what, "outside") for what in CORNERS)


def test_what_is_no_reading_is_refused():
    assert refusal("held", of="roof", what="length")[1] == "of"
    assert refusal("held", of="wall", what="girth")[1] == "what"
