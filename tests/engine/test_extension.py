"""Jamb extension: strips ripped to what was read at many points, and what those readings say of the wall."""

import pytest

from tests.asked import ask
from tests.engine.test_window import window

EVEN = {"left": ["5/8", "5/8", "5/8"], "right": ["5/8", "5/8", "5/8"], "head": ["5/8", "5/8"], "sill": ["5/8", "5/8"]}


def extension(depths, **more):
    return ask("window", **window(depths=depths, **more))


def strips(depths, **more):
    return {piece["part"]: piece for piece in extension(depths, **more)["pieces"] if piece["widths"]}


def test_an_even_depth_is_ripped_parallel_and_warned_of_by_nothing():
    found = extension(EVEN)
    left = next(piece for piece in found["pieces"] if piece["part"] == "left extension")
    assert left["ripping"] == 'Rip to 5/8", parallel.'
    assert (left["taper"]["shown"], left["bow"]["shown"], found["twist"]["shown"]) == ('0"', '0"', '0"')
    assert found["warnings"] == []


TO_MARKS = "mark the width at each point, and plane to the marks."
RIPPED = {
    "wider below": (
        ["1/2", "5/8", "3/4"],
        '1/4"',
        '0"',
        'Rip to 3/4", then taper in a straight line from 1/2" to 3/4".',
    ),
    "wider above": (
        ["3/4", "5/8", "1/2"],
        '-1/4"',
        '0"',
        'Rip to 3/4", then taper in a straight line from 3/4" to 1/2".',
    ),
    "hollow": (["1/2", "3/4", "1/2"], '0"', '1/4"', f'Rip to 3/4", {TO_MARKS}'),
    "proud in the middle": (["3/4", "1/2", "3/4"], '0"', '-1/4"', f'Rip to 3/4", {TO_MARKS}'),
    "as near as one reads": (["1/2", "17/32", "1/2"], '0"', '1/32"',
                             'Rip to 17/32", parallel. It then stands 1/32" proud at point 1 and 1/32" proud at point '
                             "3."),
    "hollow and proud": (["1/2", "5/8", "1/4", "1/2"], '0"', '-1/4"', f'Rip to 5/8", {TO_MARKS}'),
    "read once": (["5/8"], '0"', '0"', 'Rip to 5/8", parallel.'),
    "five points": (["1/2", "1/2", "7/8", "1/2", "3/4"], '1/4"', '1/4"', f'Rip to 7/8", {TO_MARKS}'),
}


@pytest.mark.parametrize(("depths", "taper", "bow", "ripping"), RIPPED.values(), ids=RIPPED)
def test_a_strip_is_ripped_to_its_taper_and_its_bow(depths, taper, bow, ripping):
    left = strips({"left": depths}, nearest="1/32")["left extension"]
    assert (left["taper"]["shown"], left["bow"]["shown"], left["ripping"]) == (taper, bow, ripping)
    assert len(left["widths"]) == len(depths)


def test_twist_is_top_left_and_bottom_right_less_the_other_two():
    found = extension({**EVEN, "right": ["1/2", "5/8", "3/4"]})
    assert found["twist"]["exact"] == "1/4"
    assert any(told.startswith('The wall is twisted by 1/4"') for told in found["warnings"])


def test_head_and_sill_tell_the_twist_where_the_sides_do_not():
    assert extension({"left": "1/2", "head": ["1/2", "3/4"], "sill": ["1/2", "1/2"]})["twist"]["exact"] == "-1/4"
    assert extension({"left": ["1/2", "3/4"], "head": ["1/2", "3/4"]})["twist"] is None


def test_side_strips_stand_on_the_stool_and_the_head_strip_lies_over_their_ends():
    found = strips(EVEN)
    assert found["left extension"]["long"]["shown"] == '54"'
    assert found["head extension"]["long"]["shown"] == '33 1/2"'
    assert "sill extension" not in found


def test_in_a_picture_frame_the_sill_has_a_strip_too():
    assert list(strips(EVEN, style="picture")) == [
        "left extension",
        "right extension",
        "sill extension",
        "head extension",
    ]


def test_the_head_strip_reaches_only_over_strips_that_are_there():
    assert strips({"left": "5/8", "head": "5/8"})["head extension"]["long"]["shown"] == '32 3/4"'


def test_a_strip_set_back_from_the_jamb_moves_the_casing_with_it():
    found = {piece["part"]: piece for piece in extension(EVEN, extension_step="3/16")["pieces"]}
    assert found["left extension"]["long"]["shown"] == '54 3/16"'
    assert found["head extension"]["long"]["shown"] == '33 7/8"'
    assert found["head"]["short"]["shown"] == '32 7/8"'
    assert found["left leg"]["short"]["shown"] == '54 7/16"'
    assert found["stool"]["long"]["shown"] == '40 3/8"'


def test_a_step_without_any_extension_moves_nothing():
    assert ask("window", **window(extension_step="3/16")) == ask("window", **window())
    flush = {"left": ["0", "0"], "right": ["0", "0"]}
    assert extension(flush, extension_step="3/16") == extension(flush)


def test_a_jamb_flush_with_the_wall_gets_no_strip():
    assert "left extension" not in strips({**EVEN, "left": ["0", "0", "0"]})


def test_on_a_leaning_side_the_strip_is_cut_to_its_corners():
    question = window({"head_corners": ["93", "87"]}, depths=EVEN)
    left = next(piece for piece in ask("window", **question)["pieces"] if piece["part"] == "left extension")
    assert left["saw_top"] == pytest.approx(3)
    assert left["first"]["shown"] == "butt, 3°, long at the inner edge"


TOLD = {
    "proud a little": ({"left": ["-1/8", "0"]}, 'The left jamb stands proud of the wall by 1/8": plane it flush.'),
    "proud a lot": ({"left": ["-1/4", "0"]}, 'The left jamb stands proud of the wall by 1/4": bring the wall out'),
    "thin": ({"head": ["1/4", "3/16"]}, 'The head strip is 1/4" at most and would split: relieve the casing'),
    "out to nothing": ({"right": ["0", "1/2"]}, "The right strip runs out to nothing: plane the jamb there"),
    "a corner read twice": (
        {"left": ["1/2", "1/2"], "head": ["5/8", "5/8"]},
        'Where left and head meet, 1/2" and 5/8" were read: read both again.',
    ),
}


@pytest.mark.parametrize(("depths", "told"), TOLD.values(), ids=TOLD)
def test_what_the_depths_say_of_the_wall_is_told(depths, told):
    assert any(found.startswith(told) for found in extension(depths)["warnings"])


def test_corners_read_twice_within_a_sixteenth_are_let_be():
    assert not any("read both again" in told for told in extension({**EVEN, "head": ["11/16", "9/16"]})["warnings"])


def test_a_side_read_once_is_not_taken_for_its_corner():
    found = extension({"left": "1/2", "head": ["3/4", "3/4"]})
    assert not any("read both again" in told for told in found["warnings"])


def test_a_thin_sill_is_the_stools_business():
    assert extension({**EVEN, "sill": ["1/8", "1/8"]})["warnings"][0].startswith("Where left and sill meet")
    assert not any("sill strip" in told for told in extension({**EVEN, "sill": ["1/8", "1/8"]})["warnings"])
