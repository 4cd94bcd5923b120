"""What is said of articles and coverings: every setting by the field of the question that it goes into."""

from typing import Any

import pytest
from marshmallow import missing
from scantling.engine.coverings.paint.surfaces import GROWTH
from scantling.engine.notebook import fold
from scantling.engine.questions.covered.said import DEFAULTS, FIELDS, check_said, collect_said
from scantling.engine.questions.said import as_asked

from tests.entries import four_walls

#: Something that each may be, and something that none may be.
SAID: dict[str, tuple[Any, Any]] = {
    "paper.width": ("20 1/2", "0"), "paper.length": ("33 ft", "fish"), "paper.repeat": ("21", "-1"),
    "paper.match": ("half-drop", "tartan"), "paper.drop": ("3", "three"), "paper.tolerance": ("1.5 %", "60"),
    "paper.hanging": ("paste the wall", "nails"), "paper.overlap": ("1/2", "x"), "paper.price": ("38.50", "dear"),
    "film.width": ("36", "0"), "film.length": ("25 ft", "0"), "film.gap": ("1/16", "x"), "film.allowance": ("1", "x"),
    "film.turnable": ("yes", "perhaps"), "film.price": ("24", "x"),
    "sheet.width": ("48", "0"), "sheet.length": ("8 ft", "0"), "sheet.kerf": ("1/8", "x"), "sheet.gap": ("0", "x"),
    "sheet.turnable": ("no", "x"), "sheet.price": ("41.00", "x"),
    "paint.coats": ("2", "0"), "paint.spread": ("10 m2/l", "far"), "paint.loss": ("5", "90"),
    "paint.keep": ("1 qt", "some"), "paint.cans": ([{"size": "1 gal", "price": "31.00"}], [{"size": "huge"}]),
    "cover.walls": ([{"wall": "w1"}, {"wall": "w2"}], [{"wall": ["w1"]}]),
    "cover.panels": (
        [{"name": "panel 1", "wall": "w1", "at": "4", "width": "24", "bottom": "36", "top": "80"}], [{"wall": "w1"}],
    ),
    "cover.height": ("96", "0"), "cover.from_floor": ("5 1/2", "x"), "cover.from_ceiling": ("0", "x"),
    "cover.trim": ("4", "x"), "cover.turn": ("1/2", "x"), "cover.sliver": ("2", "x"), "cover.mark": ("3", "x"),
    "cover.mismatch": ("corner 3", None),
    "cover.start": ([{"of": "w1", "how": "seam"}], [{"of": "w1", "how": "loose"}]),
    "cover.panes": ([{"name": "left", "widths": "20, 20 1/16", "heights": "30"}], [{"widths": "20"}]),
    "cover.sheets": (
        [{"widths": "24", "heights": "32", "count": "6"}], [{"widths": "24", "heights": "32", "count": "x"}],
    ),
    "cover.surfaces": (
        [{"name": "walls", "area": None}, {"name": "door", "area": "40"}], [{"name": "door", "area": "big"}],
    ),
    "cover.growth": ("12.5", "200"),
}  # fmt: skip


@pytest.mark.parametrize("name", FIELDS)
def test_every_setting_is_read_by_the_field_of_its_question(name):
    good, bad = SAID[name]
    assert check_said(name, good) == []
    (refusal,) = check_said(name, bad)
    assert refusal.field == name


def test_a_setting_of_a_newer_engine_is_not_judged():
    assert check_said("paper.scent", "roses") == []


def test_what_is_wrong_is_named_and_the_rest_goes_into_the_question():
    house = four_walls()
    paper = house.new("article", house=house.house, sort="paper", name="fern")
    for name, value in (("paper.width", "20 1/2"), ("paper.length", "fish"), ("paper.drop", "3"), ("reveal", "1/4")):
        house.say("setting", of=paper, name=name, value=value)
    said, wrong = collect_said(fold(house.entries), paper, "paper")
    assert said == {"width": "20 1/2", "drop": 3}
    assert [(one.name, one.error.key) for one in wrong] == [("paper.length", "unknown-word")]


def test_readings_in_a_row_are_parted_by_commas_and_empty_cells_are_nothing():
    house = four_walls()
    over = house.new("covering", room=house.room, article=house.house)
    rows = [{"name": "left", "widths": "20, 20 1/16", "heights": "30"}, {"name": "", "widths": "9", "heights": "8"}]
    house.say("setting", of=over, name="cover.panes", value=rows)
    said, wrong = collect_said(fold(house.entries), over, "cover")
    assert wrong == []
    assert said["panes"] == [{"name": "left", "widths": ["20", "20 1/16"], "heights": "30"},
                             {"widths": "9", "heights": "8"}]  # fmt: skip


def test_every_default_that_is_shown_is_the_default_of_its_field():
    for name, text in DEFAULTS.items():
        field = FIELDS[name]
        if field.load_default is not missing:
            assert field.deserialize(as_asked(field, text)) == field.load_default, name
        assert check_said(name, text) == []
    # Of those that count for nothing unless they are said.
    assert FIELDS["cover.growth"].deserialize(DEFAULTS["cover.growth"]) / 100 == GROWTH
    assert {name for name, field in FIELDS.items() if field.load_default not in (missing, [])} <= set(DEFAULTS)
