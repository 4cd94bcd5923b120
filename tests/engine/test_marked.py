"""Photos that are drawn and pinned on: a pin shows what its figure is now; the tape of sums, each as it was typed."""

from typing import Any

import pytest
from scantling.engine.desk import Desk

from tests.entries import Device, House, four_walls

NOBODY = "00000000-0000-4000-8000-000000000000"


def ask(device: Device, name: str, **more: Any) -> dict[str, Any]:
    answered = Desk(device.entries).answer({"ask": name, **more})
    assert "answer" in answered, answered
    return answered["answer"]


def photo_of(house: House, of: str, name: str = "") -> str:
    return house.new("attachment", of=of, blob="0f" * 32, size=3, type="image/jpeg", name=name)


def pin(house: House, photo: str, of: str, what: str, x: int = 2500, y: int = 7500) -> str:
    return house.new("pin", attachment=photo, of=of, what=what, x=x, y=y)


def pins(house: House, photo: str) -> list[tuple[str, str, str]]:
    found = ask(house, "photo", attachment=photo)["pins"]
    return [(one["title"], one["shown"], one["state"]) for one in found]


def test_a_pin_shows_its_figure_as_it_is_now_and_not_as_it_was_when_it_was_pinned():
    house = four_walls()
    photo = photo_of(house, house.walls[0])
    pin(house, photo, house.walls[0], "length")
    assert pins(house, photo) == [("wall 1, along the floor", '120"', "read")]
    read = next(one["id"] for one in house.entries if one["kind"] == "reading")
    house.say("strike", entry=read, why="misread the foot")
    assert pins(house, photo) == [("wall 1, along the floor", "", "wanted")]
    house.read(house.walls[0], "length", "119 7/8")
    assert pins(house, photo) == [("wall 1, along the floor", '119 7/8"', "read")]
    house.read(house.walls[0], "length", "119")
    assert pins(house, photo) == [("wall 1, along the floor", '119"', "check")]


def test_corners_and_what_is_no_length_are_pinned_in_their_own_words():
    house = four_walls()
    photo = photo_of(house, house.walls[1])
    house.read(house.walls[1], "plumb", "1/4 top")
    for what in ("corner", "sides", "plumb"):
        pin(house, photo, house.walls[1], what)
    found = ask(house, "photo", attachment=photo)["pins"]
    assert [one["what"] for one in found] == ["corner", "corner", "plumb"]
    assert [one["shown"] for one in found[:2]] == ["90.0°", "90.0°"]
    assert "1/4" in found[2]["shown"]


def test_a_photo_of_a_door_offers_its_own_figures_first_and_then_those_of_its_wall():
    house = four_walls()
    door = house.new("opening", wall=house.walls[2], kind="door")
    offered = [one["of"] for one in ask(house, "photo", attachment=photo_of(house, door))["figures"]]
    assert set(offered) == {door, house.walls[2]}
    assert offered == sorted(offered, key=lambda of: of != door)
    whole = {one["of"] for one in ask(house, "photo", attachment=photo_of(house, house.room))["figures"]}
    assert whole == {*house.walls, door}
    assert ask(house, "photo", attachment=photo_of(house, house.house))["figures"] == []


def test_a_piece_is_pinned_with_what_it_is_to_be_cut_to():
    house = four_walls()
    (body,) = ask(house, "issue", room=house.room, list=NOBODY)["bodies"]
    house.say("issue", **body)
    row = body["pieces"][0]
    photo = photo_of(house, row["piece"])
    pin(house, photo, row["piece"], "cut")
    pin(house, photo, row["piece"], "in_place")
    name = f"{row['letter']}, {row['name']}"
    cut, place = pins(house, photo)
    assert cut == (f"{name}, cut to", row["shown"], "read")
    assert place == (f"{name}, measured in place", "", "wanted")
    house.read(row["piece"], "in_place", "119 1/2")
    assert pins(house, photo)[1] == (f"{name}, measured in place", '119 1/2"', "read")


def test_a_pin_of_what_is_gone_says_so_and_comes_back_with_it():
    house = four_walls()
    door = house.new("opening", wall=house.walls[0], kind="door")
    made = house.entries[-1]["id"]
    photo = photo_of(house, house.walls[0])
    pin(house, photo, door, "width")
    pin(house, photo, NOBODY, "cut")
    gone = ("no longer in the house", "", "gone")
    assert [one[2] for one in pins(house, photo)] == ["wanted", "gone"]
    strike = house.say("strike", entry=made, why="")
    assert pins(house, photo) == [gone, gone]
    house.say("strike", entry=strike, why="")
    assert [one[2] for one in pins(house, photo)] == ["wanted", "gone"]


def test_a_pin_is_put_elsewhere_by_saying_it_anew_and_two_devices_keep_the_later():
    house = four_walls()
    photo = photo_of(house, house.walls[0])
    one = pin(house, photo, house.walls[0], "length", 1, 2)
    first = house.entries[-1]["id"]
    said = {"pin": one, "attachment": photo, "of": house.walls[0], "what": "length"}
    house.say("pin", [first], **said, x=10_000, y=0)
    (found,) = ask(house, "photo", attachment=photo)["pins"]
    assert (found["x"], found["y"], found["entries"]) == (10_000, 0, [house.entries[-1]["id"]])
    apart = Device("b", house.clock)
    apart.say("pin", [first], **said, x=7, y=7)
    house.entries += apart.entries
    (found,) = ask(house, "photo", attachment=photo)["pins"]
    assert (found["x"], found["y"], len(found["entries"])) == (7, 7, 2)


def test_lines_are_drawn_in_the_order_of_their_stamps_and_a_struck_one_comes_back():
    house = four_walls()
    photo, other = photo_of(house, house.walls[0], "the crack"), photo_of(house, house.walls[0])
    lines = [[[place, 0], [place, 10_000]] for place in range(3)]
    entries = [house.say("stroke", attachment=photo, points=line) for line in lines]
    house.entries[-3:] = reversed(house.entries[-3:])

    def drawn(of: str) -> list[Any]:
        return [one["points"] for one in ask(house, "photo", attachment=of)["strokes"]]

    assert (drawn(photo), drawn(other)) == (lines, [])
    strike = house.say("strike", entry=entries[1], why="taken back")
    assert drawn(photo) == [lines[0], lines[2]]
    house.say("strike", entry=strike, why="")
    assert drawn(photo) == lines
    assert ask(house, "photo", attachment=photo)["caption"] == "the crack"


def test_a_photo_that_is_struck_or_was_never_here_is_refused_by_name():
    house = four_walls()
    photo = photo_of(house, house.walls[0])
    house.say("strike", entry=house.entries[-1]["id"], why="")
    for of in (photo, "nobody"):
        error = Desk(house.entries).answer({"ask": "photo", "attachment": of})["error"]
        assert (error["key"], error["where"]["field"]) == ("no-such-photo", "attachment")


def keep(house: Device, text: str, note: str = "", of: str | None = None) -> str:
    return house.new("sum", of=of, text=text, note=note)


def test_the_tape_shows_the_newest_first_as_typed_with_what_it_comes_to_and_its_working():
    house = four_walls()
    keep(house, "63 1/4 - 2*(3 1/2 + 3/16)", "between the casings", house.room)
    keep(house, "7 × 3 sq ft / 2 ft")
    later, first = ask(house, "tape")["sums"]
    assert (first["text"], first["note"], first["room"]) == (
        "63 1/4 - 2*(3 1/2 + 3/16)", "between the casings", "the room",
    )  # fmt: skip
    assert first["worked"]["length"]["exact"] == "447/8"  # by hand: 63 4/16 - 2 × 3 11/16 = 63 2/8 - 7 3/8
    assert [step["text"] for step in first["worked"]["working"]][-1] == "63 1/4 - 7 3/8"
    assert first["reading"] == '55 7/8"'
    assert later["room"] == ""


@pytest.mark.parametrize(
    ("text", "reading"),
    [
        pytest.param("63 1/4 / 2", '31 5/8"', id="on the tape"),
        pytest.param("127 / 3", '42 1/3"', id="thirds, exactly"),
        pytest.param("63 1/4 / 64", '63/64"', id="finer than can be written: 253/256"),
        pytest.param("1 m / 3", '13 1/8"', id="no fraction of an inch: 13.1234"),
        pytest.param("2 - 2", None, id="nothing"),
        pytest.param("2 - 3", None, id="less than nothing"),
        pytest.param("1 / 1000", None, id="less than the finest mark"),
        pytest.param("3 in × 4 in", None, id="an area"),
        pytest.param("10 in / 5 in", None, id="a plain number"),
    ],
)
def test_what_a_tape_can_read_of_a_sum_may_be_a_reading(text, reading):
    house = House()
    keep(house, text)
    (kept,) = ask(house, "tape")["sums"]
    assert kept["reading"] == reading
    assert kept["rounded"] == (reading in ('63/64"', '13 1/8"'))
    if reading:
        assert ask(house, "read", text=reading)["length"]["shown"] != '0"'


def test_the_lengths_of_a_room_are_told_whole_for_a_sum_and_what_is_no_length_is_left_out():
    house = four_walls()
    house.read(house.walls[0], "height", "96 1/4 strong")
    house.read(house.walls[0], "plumb", "1/4 top")
    figures = ask(house, "figures", room=house.room)["figures"]
    told = {(one["of"], one["what"]): one for one in figures}
    assert {what for _, what in told} == {"length", "height"}
    height = told[house.walls[0], "height"]
    assert (height["title"], height["shown"]) == ("wall 1, height", '96 1/4"')
    assert height["text"] == '96 9/32"'  # a hair is 1/32: common practice, no source
    house.say("strike", entry=next(one["id"] for one in house.entries if one["kind"] == "reading"), why="")
    wanted = ask(house, "figures", room=house.room)["figures"][0]
    assert (wanted["state"], wanted["shown"], wanted["text"]) == ("wanted", "", None)
    refused = Desk().answer({"ask": "figures", "room": NOBODY})["error"]
    assert (refused["key"], refused["where"]["field"]) == ("no-such-room", "room")


def test_a_sum_that_came_from_elsewhere_and_cannot_be_worked_stands_with_why():
    house = House()
    keep(house, "63 1/4 - fish")
    keep(house, "1 / 0")
    over, odd = ask(house, "tape")["sums"]
    assert (odd["worked"], over["worked"], over["reading"]) == (None, None, None)
    assert "fish" in odd["error"]
    assert "divides by nothing" in over["error"]


def test_a_note_changes_a_sum_and_not_its_place_and_a_struck_sum_comes_back_to_it():
    house = House()
    old = keep(house, "9 + 1")
    said = house.entries[-1]["id"]
    keep(house, "9 + 2")
    house.say("sum", [said], sum=old, of=None, text="9 + 1", note="the shelf")
    assert [(one["text"], one["note"]) for one in ask(house, "tape")["sums"]] == [("9 + 2", ""), ("9 + 1", "the shelf")]
    strikes = [house.say("strike", entry=one, why="") for one in (said, house.entries[-1]["id"])]
    tape = ask(house, "tape")
    assert [one["text"] for one in tape["sums"]] == ["9 + 2"]
    assert tape["struck"] == [{"sum": old, "text": "9 + 1", "note": "the shelf", "strikes": strikes}]
    for strike in strikes:
        house.say("strike", entry=strike, why="")
    assert [one["note"] for one in ask(house, "tape")["sums"]] == ["", "the shelf"]


def test_a_house_in_millimeters_has_its_tape_and_its_pins_in_them():
    house = four_walls()
    house.say("setting", of=house.house, name="lengths", value="millimeters")
    kept = keep(house, "1607 mm - 7 mm", of=house.room)
    for named in ({"room": house.room}, {"sum": kept}):
        (told,) = ask(house, "tape", **named)["sums"]
        assert (told["worked"]["length"]["shown"], told["reading"], told["rounded"]) == ("1600 mm", "1600 mm", False)
    assert ask(house, "tape", sum=keep(house, "9"))["sums"][0]["reading"] == '9"'
    photo = photo_of(house, house.walls[0])
    pin(house, photo, house.walls[0], "length")
    assert pins(house, photo) == [("wall 1, along the floor", "3048 mm", "read")]
    (body,) = ask(house, "issue", room=house.room, list=NOBODY)["bodies"]
    house.say("issue", **body)
    of_piece = photo_of(house, body["pieces"][0]["piece"])
    for figure in ask(house, "photo", attachment=of_piece, room=house.room)["figures"]:
        assert figure["shown"].endswith(" mm") == (figure["what"] == "cut")


def test_a_long_tape_is_told_in_parts():
    house = House()
    for place in range(75):
        keep(house, f"{place} + 1")
    tape = ask(house, "tape")
    assert (len(tape["sums"]), tape["total"]) == (30, 75)
    assert [one["text"] for one in ask(house, "tape", skip=70)["sums"]] == [f"{place} + 1" for place in (4, 3, 2, 1, 0)]
    assert ask(house, "tape", skip=75)["sums"] == []
    one = ask(house, "tape", sum=tape["sums"][7]["sum"])
    assert (one["sums"], one["total"]) == ([tape["sums"][7]], 75)
    assert ask(house, "tape", sum=NOBODY)["sums"] == []
    for part in ({"most": 0}, {"most": 201}, {"skip": -1}, {"most": "all"}):
        assert Desk().answer({"ask": "tape", **part})["error"]["key"] == "bad-field"


def test_an_old_sum_is_begun_anew_in_a_metric_house_with_its_inches_written():
    house = four_walls()
    keep(house, "63 1/4 - 2")
    assert ask(house, "tape")["sums"][0]["again"] == "63 1/4 - 2"
    house.say("setting", of=house.house, name="lengths", value="millimeters")
    assert ask(house, "tape", room=house.room)["sums"][0]["again"] == '63 1/4" - 2"'
