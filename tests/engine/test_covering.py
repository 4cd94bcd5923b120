"""Coverings of a room in the notebook: planned from what was said and read, listed to work by, ticked off."""

from typing import Any

import pytest
from scantling.engine.desk import Desk

from tests.covered import FILM, PAINT, PAPER, PATTERNED, SHEET, article, ask, cover, walls, write
from tests.entries import House, four_walls


@pytest.fixture
def house() -> House:
    """Walls of 120, 96, 120, 96, each 96 high; no trim but what a test asks for."""
    house = four_walls()
    for name in ("base.wanted", "casing.wanted"):
        house.say("setting", of=house.house, name=name, value="no")
    for wall in house.walls:
        house.read(wall, "height", "96")
    return house


def papered(house: House, label: dict[str, Any] = PAPER, **where: Any) -> str:
    where = {"cover.walls": walls(house.walls[0]), **{f"cover.{name}": value for name, value in where.items()}}
    return cover(house, article(house, "paper", "fern", label), where)


def test_a_wall_of_the_notebook_is_papered_as_the_question_papers_it(house):
    over = papered(house)
    found = ask(house, "covering", covering=over)
    facts = {"roll": {"width": "20", "length": "400", "tolerance": "0"}, "walls": [house.walls[0]]}
    plain = ask(house, "seams", **facts)
    assert found["seams"] == plain
    # Six strips of 100 in, four from a roll of 400 that ends where it begins: two rolls at 40 dollars.
    assert (found["amount"], found["cost"], found["where"]) == ("2 rolls", "80.00", "wall 1")
    assert [line["key"] for line in found["list"]] == ["1", "2", "3", "4", "5", "6"]
    assert found["missing"] == found["problems"] == []


def test_the_price_is_dated_by_the_day_on_which_it_was_written(house):
    over = papered(house)
    assert ask(house, "covering", covering=over)["seen"] == "1970-01-01"
    paper = house.entries[-3]["body"]["of"]
    house.clock = 0x019CEC1E0840
    house.say("setting", of=ask(house, "covering", covering=over)["article"]["id"], name="paper.price", value="41.00")
    assert ask(house, "covering", covering=over)["seen"] == "2026-03-14", paper


def test_what_is_not_said_yet_is_asked_for_and_nothing_is_guessed(house):
    paper = article(house, "paper", "fern", {"paper.width": "20 1/2"})
    over = cover(house, paper, {})
    found = ask(house, "covering", covering=over)
    assert (found["missing"], found["seams"], found["amount"], found["list"]) == (["the roll's length"], None, "", [])
    row = ask(house, "coverings")["rows"][0]
    assert (row["name"], row["where"], row["look"]) == ("fern", "all walls", True)


def test_a_label_that_cannot_be_read_is_named_and_the_rest_is_planned(house):
    over = papered(house, {**PAPER, "paper.repeat": "fish", "paper.hanging": "nails"})
    found = ask(house, "covering", covering=over)
    assert found["amount"] == "2 rolls"
    assert [one["key"] for one in found["problems"]] == ["bad-field", "unknown-word"]
    assert set(found["article"]["setting_errors"]) == {"paper.repeat", "paper.hanging"}


def test_a_repeat_that_a_match_needs_is_told_in_place_of_a_plan(house):
    found = ask(house, "covering", covering=papered(house, {**PAPER, "paper.match": "straight"}))
    assert ([one["key"] for one in found["problems"]], found["seams"]) == (["no-repeat"], None)


def test_a_wall_that_is_struck_is_told_and_not_taken_for_all_of_them(house):
    over = papered(house)
    last = house.walls[3]
    write(house, over, {"cover.walls": walls(last)})
    said = [entry for entry in house.entries if entry["kind"] == "wall" and entry["body"]["wall"] == last]
    house.say("strike", entry=said[0]["id"], why="there is none")
    found = ask(house, "covering", covering=over)
    assert ([one["key"] for one in found["problems"]], found["seams"]) == (["wall-gone"], None)


def test_a_start_on_what_is_gone_is_told_and_another_is_searched(house):
    over = papered(house, start=[{"of": house.walls[2], "how": "seam"}])
    found = ask(house, "covering", covering=over)
    assert ([one["key"] for one in found["problems"]], found["amount"]) == (["start-gone"], "2 rolls")


def test_strips_are_ticked_off_and_one_that_has_changed_since_is_told(house):
    over = papered(house)
    first, second = ask(house, "covering", covering=over)["list"][:2]
    for line, state in ((first, "hung"), (second, "cut")):
        house.say("tick", of=over, list="strips", key=line["key"], state=state, remember=line["said"])
    found = ask(house, "covering", covering=over)
    assert [line["state"] for line in found["list"]] == ["hung", "cut", "", "", "", ""]
    assert (found["done"], {line["changed"] for line in found["list"]}) == ("1 of 6 up", {""})
    house.read(house.walls[0], "height", "97 1/4")
    changed = ask(house, "covering", covering=over)["list"]
    assert [bool(line["changed"]) for line in changed] == [True, True, False, False, False, False]
    assert first["said"] in changed[0]["changed"]


def test_the_start_that_was_found_can_be_kept(house):
    over = papered(house, PATTERNED)
    found = ask(house, "covering", covering=over)
    house.say("setting", of=over, name="cover.start", value=[one["keep"] for one in found["seams"]["stretches"]])
    again = ask(house, "covering", covering=over)
    assert again["list"] == found["list"]
    assert again["seams"]["stretches"][0]["tried"] == 1


def test_an_article_that_is_struck_leaves_its_covering_to_be_covered_with_another(house):
    over = papered(house)
    said = next(entry for entry in house.entries if entry["kind"] == "article")
    house.say("strike", entry=said["id"], why="sold out")
    found = ask(house, "covering", covering=over)
    assert ([one["key"] for one in found["problems"]], found["seams"]) == (["no-article"], None)
    other = article(house, "paper", "stripe", PAPER)
    before = [entry["id"] for entry in house.entries if entry["kind"] == "covering"]
    house.say("covering", before, covering=over, room=house.room, article=other)
    assert ask(house, "covering", covering=over)["amount"] == "2 rolls"
    assert [one["name"] for one in ask(house, "coverings")["articles"]] == ["stripe"]


def test_walls_are_painted_by_the_areas_of_the_survey(house):
    both = {"cover.surfaces": [{"name": "walls"}, {"name": "ceiling"}]}
    over = cover(house, article(house, "paint", "oat", PAINT), both)
    found = ask(house, "covering", covering=over)
    # 432 x 96 in is 288 sq ft, and 120 x 96 in of ceiling 80: two coats at 350 a gallon are 2.10 gal.
    assert [surface["shown"] for surface in found["surfaces"]] == ["288 sq ft", "80 sq ft"]
    assert (found["amount"], found["cost"]) == ("2.10 gal", "95.00")
    assert [line["key"] for line in found["list"]] == ["walls 1", "ceiling 1", "walls 2", "ceiling 2"]
    assert (found["where"], found["problems"]) == ("all walls, ceiling", [])


def test_of_some_walls_tile_and_what_stands_in_their_corners_is_taken_off(house):
    one, other = house.walls[0], house.walls[1]
    tub = house.new("obstacle", wall=one, kind="tub", base="stops")
    for what, text in (("at", "60"), ("width", "60"), ("height", "18"), ("depth", "30")):
        house.read(tub, what, text)
    tile = house.new("obstacle", wall=other, kind="tile", base="stops")
    for what, text in (("at", "0"), ("width", "32"), ("height", "72")):
        house.read(tile, what, text)
    where = {"cover.walls": walls(other), "cover.from_floor": "12"}
    found = ask(house, "covering", covering=cover(house, article(house, "paint", "oat", PAINT), where))
    # Wall 2 from 12 up: 96 by 84, less tile of 32 by 60, within which the tub's side lies.
    (surface,) = found["surfaces"]
    assert surface["square_feet"] == pytest.approx((96 * 84 - 32 * 60) / 144)
    assert found["problems"] == []


def test_some_walls_are_painted_and_something_of_ones_own(house):
    rows = [{"name": "walls", "area": None}, {"name": "door, both sides", "area": "40"}]
    where = {"cover.surfaces": rows, "cover.walls": walls(house.walls[1])}
    found = ask(house, "covering", covering=cover(house, article(house, "paint", "oat", PAINT), where))
    assert [surface["shown"] for surface in found["surfaces"]] == ["64 sq ft", "40 sq ft"]
    assert found["where"] == "wall 2, door, both sides"


def test_what_was_not_read_is_not_painted_and_says_so(house):
    wall = house.wall("50")
    found = ask(house, "covering", covering=cover(house, article(house, "paint", "oat", PAINT), {}))
    assert [one["message"] for one in found["problems"]] == ["Wall 5: its height is not read."], wall


def test_film_is_cut_to_panes_by_the_foot_or_from_rolls(house):
    panes = [{"name": "left", "widths": "20, 20 1/8", "heights": "30"},
             {"name": "right", "widths": "20", "heights": "30"}]  # fmt: skip
    film = article(house, "film", "frosted", FILM)
    over = cover(house, film, {"cover.panes": panes})
    found = ask(house, "covering", covering=over)
    # Two blanks of 31 in, one behind the other on a roll 36 wide: 62 in, six feet begun.
    assert (found["panes"]["length"]["shown"], found["amount"], found["cost"]) == ('62"', "6 ft", "19.20")
    assert [line["said"] for line in found["list"]] == ['left: 21 1/8" × 31"', 'right: 21" × 31"']
    write(house, film, {"film.length": "5 ft", "film.price": "18.00"})
    found = ask(house, "covering", covering=over)
    assert (found["amount"], found["cost"]) == ("2 rolls", "36.00")


def test_panels_are_cut_from_sheets(house):
    rows = [{"name": "under the window", "widths": "23", "heights": "30", "count": "5"}]
    over = cover(house, article(house, "sheet", "beadboard", SHEET), {"cover.sheets": rows})
    found = ask(house, "covering", covering=over)
    assert (found["amount"], found["cost"], found["where"]) == ("1 sheet", "31.00", "5 panels")
    assert [line["key"] for line in found["list"]] == ["1.1", "1.2", "1.3", "1.4", "1.5"]


def test_a_pane_that_cannot_be_cut_is_told_and_the_others_are(house):
    panes = [{"name": "large", "widths": "50", "heights": "60"}, {"name": "small", "widths": "10", "heights": "12"}]
    over = cover(house, article(house, "film", "frosted", FILM), {"cover.panes": panes})
    found = ask(house, "covering", covering=over)
    assert [one["key"] for one in found["problems"]] == ["too-wide"]
    assert [line["key"] for line in found["list"]] == ["2"]


@pytest.mark.parametrize(
    ("sort", "label", "where", "words", "silent"),
    [
        ("paper", PAPER, {}, {"Old walls", "Plates", "Ladder"}, {"Fumes"}),
        ("paint", PAINT, {}, {"Old paint", "Fumes", "Ladder"}, {"Rags", "Plates"}),
        ("paint", PAINT, {"cover.surfaces": [{"name": "door", "area": "40"}]}, {"Fumes"}, {"Ladder"}),
        ("film", FILM, {"cover.panes": [{"name": "sash", "widths": "9", "heights": "9"}]}, {"Film"}, {"Glass"}),
        ("film", FILM, {"cover.panes": [{"name": "door", "widths": "9", "heights": "9"}]}, {"Film", "Glass"}, set()),
        ("sheet", SHEET, {"cover.sheets": [{"widths": "9", "heights": "9"}]}, {"Outlets", "Saw", "Dust"}, {"Film"}),
    ],
    ids=["paper", "paint on walls", "paint on a door", "film in a sash", "film in a door", "panels"],
)  # fmt: skip
def test_cautions_are_those_whose_trigger_is_met(house, sort, label, where, words, silent):
    found = ask(house, "covering", covering=cover(house, article(house, sort, "it", label), where))["cautions"]
    told = {line.partition(":")[0] for line in found}
    assert words <= told
    assert not silent & told
    assert found[-1].startswith("General information")


def test_a_house_of_this_century_is_not_warned_of_old_paint_and_a_tub_makes_glass_wet(house):
    house.say("house", [house.entries[0]["id"]], house=house.house, name="the house", built=2004)
    house.new("obstacle", wall=house.walls[0], kind="alcove tub", base="stops")
    oil = cover(house, article(house, "paint", "linseed oil paint", PAINT), {})
    told = {line.partition(":")[0] for line in ask(house, "covering", covering=oil)["cautions"]}
    assert "Rags" in told
    assert not {"Old paint", "Old walls"} & told
    panes = {"cover.panes": [{"name": "sash", "widths": "9", "heights": "9"}]}
    film = cover(house, article(house, "film", "frosted", FILM), panes)
    assert any(line.startswith("Glass") for line in ask(house, "covering", covering=film)["cautions"])


def test_a_covering_of_another_room_or_of_none_is_refused(house):
    over = papered(house)
    other = house.new("room", house=house.house, name="pantry", closed=False)
    for room, which in ((other, over), (house.room, house.room)):
        refused = Desk(house.entries).answer({"ask": "covering", "room": room, "covering": which})["error"]
        assert (refused["key"], refused["where"]["field"]) == ("no-such-covering", "covering")


def test_a_tick_does_not_plan_the_paper_again(house, monkeypatch):
    from scantling.engine.questions.coverings import seams

    over = papered(house)
    desk = Desk(house.entries)
    question = {"ask": "covering", "room": house.room, "covering": over}
    desk.answer(question)
    monkeypatch.setattr(seams, "plan_seams", None)
    house.say("tick", of=over, list="strips", key="1", state="cut", remember="")
    desk.take(house.entries[-1:])
    assert desk.answer(question)["answer"]["list"][0]["state"] == "cut"


def test_a_panel_stands_on_a_wall_by_the_number_that_a_person_writes(house):
    rows = [{"name": "left of the door", "wall": "2", "at": "6", "width": "30", "bottom": "36", "top": "84"}]
    found = ask(house, "covering", covering=papered(house, panels=rows))
    assert (found["where"], found["problems"]) == ("left of the door", [])
    assert {where["wall"] for line in found["seams"]["stretches"][0]["strips"] for where in line["walls"]} == {
        house.walls[1]
    }
