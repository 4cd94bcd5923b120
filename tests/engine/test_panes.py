"""Panes and panels: sizes from several readings, layouts that can be cut, and what cannot be."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.asked import ask, refusal

SASH = {"name": "upper sash", "widths": ["20", "20 1/16", "19 15/16"], "heights": ["30", "30 1/8", "30 1/8"]}


def shown(lengths):
    return [length["shown"] for length in lengths]


def test_a_blank_covers_the_largest_reading_and_is_trimmed_to_each():
    (blank,) = ask("panes", panes=[SASH], gap="1/16", allowance="1", roll_width="36")["blanks"]
    assert (blank["width"]["shown"], blank["height"]["shown"]) == ('21 1/16"', '31 1/8"')
    assert shown(blank["widths"]) == ['19 7/8"', '19 15/16"', '19 13/16"']
    assert shown(blank["heights"]) == ['29 7/8"', '30"', '30"']
    assert blank["working"][0] == "width: 20 1/16 (largest of 3) + 1 to trim = 21 1/16"


def test_a_pane_is_turned_only_where_the_film_allows_it():
    wide = {"widths": "40", "heights": "20"}
    assert [one["key"] for one in ask("panes", panes=[wide], roll_width="36")["impossible"]] == ["not-turned"]
    found = ask("panes", panes=[wide], roll_width="36", turnable=True)
    assert found["impossible"] == []
    (place,) = found["layout"]
    assert place["turned"]
    assert place["marks"] == {"top": "right", "left": "far", "right": "near"}
    # And one pane may be kept from it by itself.
    own = ask("panes", panes=[{**wide, "turnable": False}], roll_width="36", turnable=True)
    assert [one["key"] for one in own["impossible"]] == ["not-turned"]


def test_a_pane_larger_than_the_roll_is_told_and_the_others_are_laid_out():
    found = ask("panes", panes=[SASH, {"widths": "50", "heights": "60"}, SASH], roll_width="48", turnable=True)
    assert [(one["item"], one["key"]) for one in found["impossible"]] == [(1, "too-wide")]
    assert 'Pane 2 wants a blank 51" wide' in found["impossible"][0]["message"]
    assert [place["pane"] for place in found["layout"]] == [0, 2]
    assert len(found["blanks"]) == 3


def test_a_gap_that_leaves_nothing_is_told_of_its_pane():
    found = ask("panes", panes=[SASH, {"widths": "1", "heights": "9"}], gap="1/2", roll_width="36")
    assert [(one["item"], one["key"]) for one in found["impossible"]] == [(1, "all-gap")]
    assert len(found["layout"]) == 1


def test_nothing_that_can_be_cut_takes_nothing_off_the_roll():
    found = ask("panes", panes=[{"widths": "50", "heights": "60"}], roll_width="36")
    assert (found["length"]["inches"], found["drawing"]) == (0, None)


def test_two_panes_side_by_side_take_no_more_length_than_one():
    one, two = (ask("panes", panes=[SASH] * count, roll_width="48")["length"]["inches"] for count in (1, 2))
    assert one == two == 31.125


def test_the_name_of_a_pane_is_escaped_in_the_drawing():
    found = ask("panes", panes=[{"name": "<b>&", "widths": "20", "heights": "30"}], roll_width="36")
    assert "&lt;b&gt;&amp;" in found["drawing"]
    assert "<b>" not in found["drawing"]


def test_a_panel_goes_between_so_it_is_cut_to_the_smallest_reading():
    panel = {"widths": ["15 1/4", "15 3/8"], "heights": ["32", "31 15/16"]}
    (found,) = ask("sheets", panels=[panel], gap="1/16", sheet={"width": "48", "length": "96"})["panels"]
    assert (found["width"]["shown"], found["height"]["shown"]) == ('15 1/8"', '31 13/16"')


def test_a_kerf_too_many_takes_another_sheet():
    panel = {"widths": "16", "heights": "32", "count": 9}
    sheet = {"width": "48", "length": "96", "price": "41.20"}
    assert ask("sheets", panels=[panel], kerf="0", sheet=sheet)["count"] == 1
    found = ask("sheets", panels=[panel], kerf="1/8", sheet=sheet)
    assert (found["count"], found["cost"], found["proven"]) == (3, "123.60", True)


def test_a_panel_larger_than_a_sheet_is_told_and_the_others_are_cut():
    found = ask("sheets", panels=[{"widths": "49", "heights": "30"}, {"widths": "20", "heights": "30"}],
                sheet={"width": "48", "length": "96"})  # fmt: skip
    assert [(one["item"], one["key"]) for one in found["impossible"]] == [(0, "off-the-sheet")]
    assert found["count"] == 1


def test_panels_along_the_grain_are_not_turned():
    panel = {"widths": "50", "heights": "40"}
    sheet = {"width": "48", "length": "96"}
    assert ask("sheets", panels=[panel], sheet=sheet)["count"] == 0
    assert ask("sheets", panels=[panel], sheet=sheet, turnable=True)["count"] == 1


@pytest.mark.parametrize("price", ["", "-1", "free"])
def test_a_price_that_is_none_is_refused(price):
    sheet = {"width": "48", "length": "96", "price": price}
    assert refusal("sheets", panels=[SASH], sheet=sheet)[:2] == ("not-money", "sheet.price")


inches = st.integers(8, 160).map(lambda n: str(n / 4))


def check_no_overlap(places, room, long):
    boxes = [tuple(place[side]["inches"] for side in ("x", "y", "across", "along")) for place in places]
    for number, (x, y, across, along) in enumerate(boxes):
        assert x >= 0
        assert y >= 0
        assert x + across <= room
        assert y + along <= long
        for other_x, other_y, other_across, other_along in boxes[:number]:
            apart_x = x >= other_x + other_across or other_x >= x + across
            assert apart_x or y >= other_y + other_along or other_y >= y + along


@given(st.lists(st.tuples(inches, inches), min_size=1, max_size=9), st.booleans())
def test_every_pane_that_can_be_cut_is_laid_out_once_and_none_on_another(sizes, turnable):
    panes = [{"widths": width, "heights": height} for width, height in sizes]
    found = ask("panes", panes=panes, roll_width="36", allowance="1/2", turnable=turnable)
    impossible = {one["item"] for one in found["impossible"]}
    assert sorted(place["pane"] for place in found["layout"]) == [n for n in range(len(panes)) if n not in impossible]
    check_no_overlap(found["layout"], 36, found["length"]["inches"])
    assert found["bound"]["inches"] <= found["length"]["inches"]


@given(st.lists(st.tuples(inches, inches, st.integers(1, 3)), min_size=1, max_size=5), st.booleans())
def test_every_panel_that_can_be_cut_is_on_a_sheet_once_and_none_on_another(sizes, turnable):
    panels = [{"widths": width, "heights": height, "count": count} for width, height, count in sizes]
    found = ask("sheets", panels=panels, sheet={"width": "36", "length": "60"}, turnable=turnable)
    impossible = {one["item"] for one in found["impossible"]}
    cut = [place["panel"] for sheet in found["sheets"] for place in sheet["cuts"]]
    wanted = [n for n, (_, _, count) in enumerate(sizes) if n not in impossible for _ in range(count)]
    assert sorted(cut) == wanted
    for sheet in found["sheets"]:
        check_no_overlap(sheet["cuts"], 36, 60)
        for place in sheet["cuts"]:
            size = [found["panels"][place["panel"]][way]["inches"] for way in ("width", "height")]
            lying = [place[way]["inches"] for way in ("across", "along")]
            assert lying == (size[::-1] if place["turned"] else size)
    assert found["bound"] <= found["count"]
