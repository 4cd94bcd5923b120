"""The notebook by example: strikes, statements that supersede, rows of walls, and entries that nobody here can read."""

from typing import Any

import pytest
from scantling.engine.desk import Desk
from scantling.engine.notebook import fold

from tests.entries import Device, House, four_walls

NOBODY = "00000000-0000-4000-8000-000000000000"


def ask(device: Device, name: str, **more: Any) -> dict[str, Any]:
    answered = Desk(device.entries).answer({"ask": name, **more})
    assert "answer" in answered, answered
    return answered["answer"]


def survey(house: House) -> dict[str, Any]:
    return ask(house, "survey", room=house.room)


def readings(house: House, of: str, what: str = "length") -> list[dict[str, Any]]:
    return next(row["readings"] for row in survey(house)["rows"] if (row["of"], row["what"]) == (of, what))


def row(house: House, of: str, what: str = "length") -> dict[str, Any]:
    return next(row for row in survey(house)["rows"] if (row["of"], row["what"]) == (of, what))


def numbered(house: House) -> list[str]:
    return [wall["id"] for wall in survey(house)["walls"]]


def test_every_reading_of_a_figure_is_kept_and_the_smallest_is_used_between_walls():
    house = House()
    wall = house.wall("63 1/4", "63 3/16", "63 5/16")
    assert [one["text"] for one in readings(house, wall)] == ["63 1/4", "63 3/16", "63 5/16"]
    assert row(house, wall)["figure"]["shown"] == '63 3/16"'


def test_a_struck_reading_is_still_shown_and_no_longer_counted():
    house = House()
    wall = house.wall("63 1/4", "53 1/4")
    wrong = house.entries[4]
    assert row(house, wall)["state"] == "check"
    strike = house.say("strike", entry=wrong["id"], why="misread the foot")
    assert [(one["text"], one["struck"], one["strike"]) for one in readings(house, wall)] == [
        ("63 1/4", False, None),
        ("53 1/4", True, strike),
    ]
    assert (row(house, wall)["state"], row(house, wall)["figure"]["shown"]) == ("read", '63 1/4"')


def test_striking_a_strike_restores_and_striking_that_strikes_again():
    house = House()
    wall = house.wall("63 1/4")
    last = house.entries[3]["id"]
    for count in range(1, 6):
        last = house.say("strike", entry=last, why="")
        assert readings(house, wall)[0]["struck"] == (count % 2 == 1), count


def test_two_strikes_of_one_reading_must_both_be_struck_to_restore_it():
    house = House()
    wall = house.wall("63 1/4")
    first, second = (house.say("strike", entry=house.entries[3]["id"], why="") for _ in range(2))
    house.say("strike", entry=first, why="")
    assert readings(house, wall)[0]["strike"] == second
    house.say("strike", entry=second, why="")
    assert not readings(house, wall)[0]["struck"]


def ring_of(house: House, size: int) -> None:
    """A ring of strikes, the first of which also strikes the room's first reading."""
    first = len(house.entries)
    for place in range(size):
        house.say("strike", entry=NOBODY, why="")
        if place:
            house.entries[-1]["body"]["entry"] = house.entries[-2]["id"]
    house.entries[first]["body"]["entry"] = house.entries[-1]["id"]
    house.say("strike", entry=house.entries[3]["id"], why="")
    house.say("strike", entry=house.entries[-1]["id"], why="")
    house.say("strike", entry=house.entries[-1]["id"], why="")
    house.entries[-1]["supersedes"] = []


@pytest.mark.parametrize("size", [1, 2, 3, 4])
def test_a_ring_of_strikes_is_without_force_and_stops_nothing_else(size):
    house = House()
    wall = house.wall("63 1/4")
    ring_of(house, size)
    assert readings(house, wall)[0]["struck"], "the strike, struck, and that strike struck"
    assert ask(house, "notebook")["entries"] == len(house.entries)


def test_a_long_row_of_strikes_of_strikes_is_walked_without_depth_and_in_time():
    house = House()
    wall = house.wall("63 1/4")
    last = house.entries[3]["id"]
    for _ in range(400):
        last = house.say("strike", entry=last, why="")
    assert not readings(house, wall)[0]["struck"]


def test_a_strike_that_strikes_nothing_here_waits_for_its_entry():
    house = House()
    wall = house.wall("63 1/4")
    house.say("strike", entry=house.entries[3]["id"], why="")
    late = house.entries.pop(3)
    desk = Desk(house.entries)
    assert desk.answer({"ask": "survey", "room": house.room})["answer"]["rows"][0]["readings"] == []
    desk.take([late])
    rows = desk.answer({"ask": "survey", "room": house.room})["answer"]["rows"]
    assert [one["struck"] for one in rows[0]["readings"]] == [True], wall


def test_a_reading_about_a_wall_that_is_not_here_yet_waits_for_it():
    house = House()
    wall = house.wall("63 1/4")
    late = [house.entries.pop(2)]
    desk = Desk(house.entries)
    assert desk.answer({"ask": "survey", "room": house.room})["answer"]["walls"] == []
    desk.take(late)
    assert desk.answer({"ask": "survey", "room": house.room})["answer"]["walls"][0]["id"] == wall


def test_a_statement_that_supersedes_replaces_and_names_itself_as_in_force():
    house = House()
    first = house.entries[1]["id"]
    second = house.say("room", [first], room=house.room, house=house.house, name="pantry", closed=True)
    assert survey(house)["room"] == {
        "id": house.room, "name": "pantry", "house": house.house, "closed": True, "entries": [second],
    }  # fmt: skip
    assert ask(house, "notebook")["conflicts"] == []


def test_two_statements_apart_are_a_conflict_with_both_choices_and_the_later_is_used():
    house = House()
    other = Device("b", house.clock + 5000)
    first = house.entries[1]["id"]
    house.say("room", [first], room=house.room, house=house.house, name="pantry", closed=True)
    other.say("room", [first], room=house.room, house=house.house, name="larder", closed=False)
    house.entries += other.entries
    (conflict,) = ask(house, "notebook")["conflicts"]
    assert (conflict["of"], conflict["name"]) == (house.room, "room")
    assert [choice["shown"] for choice in conflict["choices"]] == [
        "name pantry, closed True",
        "name larder, closed False",
    ]
    assert survey(house)["room"]["name"] == "larder"
    house.say(
        "room", [c["entry"] for c in conflict["choices"]], room=house.room, house=house.house, name="store", closed=True
    )
    assert ask(house, "notebook")["conflicts"] == []
    assert survey(house)["room"]["name"] == "store"


def test_a_struck_statement_gives_back_the_one_it_superseded():
    house = House()
    second = house.say("room", [house.entries[1]["id"]], room=house.room, house=house.house, name="pantry", closed=True)
    house.say("strike", entry=second, why="it was the other room")
    assert survey(house)["room"]["name"] == "the room"


def test_two_statements_that_supersede_each_other_both_stand():
    house = House()
    one = house.entries[1]["id"]
    two = house.say("room", [one], room=house.room, house=house.house, name="larder", closed=True)
    house.entries[1]["supersedes"] = [two]
    assert survey(house)["room"]["entries"] == [one, two]


def test_a_statement_that_names_itself_as_superseded_stands():
    house = House()
    house.entries[1]["supersedes"] = [house.entries[1]["id"]]
    assert survey(house)["room"]["entries"] == [house.entries[1]["id"]]


def test_a_statement_that_names_itself_as_superseded_still_stands_against_another():
    house = House()
    house.entries[1]["supersedes"] = [house.entries[1]["id"]]
    other = house.say("room", room=house.room, house=house.house, name="pantry", closed=True)
    assert survey(house)["room"]["entries"] == [house.entries[1]["id"], other]


def asked_before(house: House, *late: dict[str, Any]) -> tuple[Any, Any]:
    """The room's pieces after a last entry, by a desk that was asked before it too and by one asked only then."""
    one, other = Desk(house.entries), Desk([*house.entries, *late])
    question = {"ask": "pieces", "room": house.room}
    one.answer(question)
    one.take(late)
    return one.answer(question), other.answer(question)


LATE: dict[str, Any] = {
    "a reading": lambda house: house.read(house.walls[0], "length", "119"),
    "a strike": lambda house: house.say("strike", entry=reading_of(house, "120"), why=""),
    "a turn": lambda house: house.say(
        "wall", wall=house.walls[1], room=house.room, after=house.walls[0], turn="outside"
    ),
    "a door": lambda house: house.new("opening", wall=house.walls[0], kind="door"),
    "a door's place": lambda house: house.read(door_of(house), "at", "30"),
    "a cabinet": lambda house: house.new("obstacle", wall=house.walls[0], kind="cabinet", base="stops"),
    "a setting": lambda house: house.say("setting", of=house.house, name="base.inside", value="miter"),
    "an opened room": lambda house: house.say("room", room=house.room, house=house.house, name="", closed=False),
    "a wall gone to another room": lambda house: house.say(
        "wall", wall=house.walls[1], room=NOBODY, after=None, turn="inside"
    ),
    "a door gone to a wall elsewhere": lambda house: house.say(
        "opening", opening=door_of(house), wall=NOBODY, kind="door"
    ),
}


def reading_of(house: House, text: str) -> str:
    return next(entry["id"] for entry in house.entries if entry["body"].get("text") == text)


def door_of(house: House) -> str:
    return next(entry["body"]["opening"] for entry in house.entries if entry["kind"] == "opening")


@pytest.mark.parametrize("late", LATE.values(), ids=LATE)
def test_having_asked_before_keeps_nothing_old(late):
    house = four_walls()
    door = house.new("opening", wall=house.walls[2], kind="door")
    house.read(door, "width", "30")
    before = len(house.entries)
    first = ask(house, "pieces", room=house.room)
    late(house)
    added = house.entries[before:]
    del house.entries[before:]
    asked, fresh = asked_before(house, *added)
    assert asked == fresh
    assert fresh["answer"] != first, "the late entry matters, or it shows nothing"


def test_having_asked_before_keeps_no_text_that_another_of_its_id_has_replaced():
    house = four_walls()
    reading = next(entry for entry in house.entries if entry["body"].get("text") == "120")
    asked, fresh = asked_before(house, {**reading, "body": {**reading["body"], "text": "100"}})
    assert asked == fresh
    assert '100"' in str(fresh)


def test_an_entry_of_another_thing_cannot_supersede():
    house = House()
    house.say("device", [house.entries[1]["id"]], name="phone")
    other = house.new("room", house=house.house, name="hall", closed=True)
    house.entries[-1]["supersedes"] = [house.entries[1]["id"]]
    names = [room["name"] for room in ask(house, "notebook")["houses"][0]["rooms"]]
    assert names == ["the room", "hall"], other


def test_a_struck_house_takes_its_rooms_out_of_sight_and_they_come_back():
    house = four_walls()
    strike = house.say("strike", entry=house.entries[0]["id"], why="")
    assert ask(house, "notebook")["houses"] == []
    house.say("strike", entry=strike, why="")
    assert [room["walls"] for room in ask(house, "notebook")["houses"][0]["rooms"]] == [4]


def test_a_door_said_to_be_on_another_wall_is_no_longer_on_the_first():
    house = four_walls()
    door = house.new("opening", wall=house.walls[0], kind="door")
    first = house.entries[-1]["id"]
    house.read(door, "at", "30")
    house.read(door, "width", "30")
    house.say("opening", [first], opening=door, wall=house.walls[1], kind="door")
    walls = survey(house)["walls"]
    assert [[opening["id"] for opening in wall["openings"]] for wall in walls] == [[], [door], [], []]


def test_a_wall_said_to_be_in_another_room_is_no_longer_in_the_first():
    house = four_walls()
    hall = house.new("room", house=house.house, name="hall", closed=False)
    first = next(entry["id"] for entry in house.entries if entry["body"].get("wall") == house.walls[1])
    house.say("wall", [first], wall=house.walls[1], room=hall, after=None, turn="inside")
    assert numbered(house) == [house.walls[0], house.walls[2], house.walls[3]]
    assert [wall["id"] for wall in ask(house, "survey", room=hall)["walls"]] == [house.walls[1]]


def test_walls_stand_in_the_order_they_name_whatever_the_order_of_writing():
    house = House()
    first, second = house.wall("10"), house.wall("20")
    between = house.wall("15", after=first)
    start = house.wall("5", after=None)
    assert numbered(house) == [start, first, between, second]


def test_walls_keep_their_order_when_one_between_them_is_struck():
    house = four_walls()
    house.say("strike", entry=next(e["id"] for e in house.entries if e["body"].get("wall") == house.walls[1]), why="")
    assert numbered(house) == [house.walls[0], house.walls[2], house.walls[3]]


def test_a_wall_restated_keeps_its_place_and_its_readings():
    house = four_walls()
    first = next(entry["id"] for entry in house.entries if entry["body"].get("wall") == house.walls[1])
    house.say("wall", [first], wall=house.walls[1], room=house.room, after=house.walls[0], turn="outside")
    assert numbered(house) == house.walls
    assert [wall["turn"] for wall in survey(house)["walls"]] == ["inside", "outside", "inside", "inside"]
    assert row(house, house.walls[1])["figure"]["shown"] == '96"'


def test_walls_that_only_name_each_other_all_stand_somewhere():
    house = House()
    one, two = house.wall("10"), house.wall("20")
    for entry in house.entries:
        if entry["body"].get("wall") == one:
            entry["body"]["after"] = two
    assert sorted(numbered(house)) == sorted([one, two])


def test_a_wall_that_names_itself_or_a_wall_of_no_room_stands_at_the_start():
    house = House()
    one, two = house.wall("10", after=NOBODY), house.wall("20")
    for entry in house.entries:
        if entry["body"].get("wall") == one:
            entry["body"]["after"] = one
    assert numbered(house) == [one, two]


def test_what_a_newer_engine_wrote_is_kept_and_counted_and_changes_nothing():
    house = four_walls()
    before = survey(house)
    house.say("hinge", side="left")
    house.say("reading", of=house.walls[0], what="length", text="9")
    house.entries[-1]["version"] = 2
    assert survey(house) == before
    notebook = ask(house, "notebook")
    assert (notebook["kept_unread"], notebook["entries"]) == (2, len(house.entries))


@pytest.mark.parametrize(
    "body",
    [
        {},
        {"of": NOBODY},
        {"of": [], "what": "length", "text": "9"},
        {"of": "@", "what": {}, "text": None},
        {"x": {"y": [1]}},
    ],
    ids=["empty", "half", "of a list", "wrong types", "other names"],
)
def test_a_body_that_is_not_as_its_kind_says_is_kept_and_does_no_harm(body):
    house = four_walls()
    before = survey(house)
    for kind in ("house", "room", "wall", "opening", "obstacle", "reading", "setting", "strike", "device"):
        house.say(kind, **{"of": house.walls[0], **body})
    assert survey(house)["rows"] == before["rows"]
    assert ask(house, "notebook")["entries"] == len(house.entries)


@pytest.mark.parametrize(
    "name",
    ["n" * 2000, "寝室 🛏", "غرفة", "\u202egnir", "<b>&'\"", "\x00\x07\x1b[31m", "", "\u2028", "\ufffe"],
    ids=["long", "other scripts", "right to left", "turned", "markup", "control", "empty", "line part", "no character"],
)
def test_any_name_a_person_can_store_comes_back_as_it_was(name):
    house = House()
    house.say("room", [house.entries[1]["id"]], room=house.room, house=house.house, name=name, closed=True)
    assert survey(house)["room"]["name"] == name


@pytest.mark.parametrize("name", ["n" * 10_000, "half \ud800 of it"], ids=["ten thousand letters", "lone surrogate"])
def test_a_name_that_cannot_be_stored_leaves_the_one_before(name):
    house = House()
    house.say("room", [house.entries[1]["id"]], room=house.room, house=house.house, name=name, closed=True)
    assert survey(house)["room"]["name"] == "the room"
    (refused,) = Desk().answer({"ask": "check", "entries": house.entries})["answer"]["refused"]
    assert refused["id"] == house.entries[-1]["id"]


def test_devices_are_named_by_their_latest_word_and_counted_without_one():
    house = House()
    other = Device("b", house.clock)
    house.say("device", name="phone")
    house.say("device", name="the old phone")
    other.say("hinge")
    house.entries += other.entries
    assert ask(house, "notebook")["devices"] == [
        {"device": "a" * 16, "name": "the old phone", "entries": 4},
        {"device": "b" * 16, "name": None, "entries": 1},
    ]


def test_a_room_goes_by_its_house_and_differs_where_it_says_so():
    house = four_walls()
    house.say("setting", of=house.house, name="base.inside", value="butt")
    assert {
        end["joint"]
        for piece in ask(house, "pieces", room=house.room)["pieces"]
        for end in (piece["left"], piece["right"])
    } == {"butt", "square"}
    house.say("setting", of=house.room, name="base.inside", value="miter")
    assert {
        end["joint"]
        for piece in ask(house, "pieces", room=house.room)["pieces"]
        for end in (piece["left"], piece["right"])
    } == {"miter"}


def test_a_setting_said_apart_is_a_conflict_by_its_name():
    house = four_walls()
    one = house.say("setting", of=house.house, name="base.inside", value="butt")
    two = house.say("setting", of=house.house, name="base.inside", value="miter")
    (conflict,) = ask(house, "notebook")["conflicts"]
    assert conflict == {
        "of": house.house, "name": "base.inside",
        "choices": [{"entry": one, "shown": "butt"}, {"entry": two, "shown": "miter"}],
    }  # fmt: skip


def test_a_setting_that_cannot_be_is_named_by_the_house_and_its_rooms_and_the_default_stands_in():
    house = four_walls()
    house.say("setting", of=house.house, name="base.thickness", value="thick")
    house.say("setting", of=house.house, name="base.height", value=[{"a": "b"}])
    shown = ask(house, "notebook")["houses"][0]
    assert set(shown["setting_errors"]) == {"base.thickness", "base.height"}
    assert (shown["rooms"][0]["walls"], shown["rooms"][0]["problems"]) == (4, 2)
    answered = Desk(house.entries).answer({"ask": "pieces", "room": house.room})["answer"]
    assert {piece["profile"] for piece in answered["pieces"]} == {"base 9/16 × 5 1/2"}
    told = [problem["message"] for problem in answered["problems"]]
    assert len(told) == 2
    assert all(one.startswith("A setting of the house cannot be read: base.") for one in told)
    assert all(one.endswith("Set it anew. Until it is, the default stands.") for one in told)


def test_where_a_rooms_own_setting_cannot_be_read_the_houses_stands_in():
    house = four_walls()
    house.say("setting", of=house.house, name="base.thickness", value="3/4")
    house.say("setting", of=house.room, name="base.thickness", value="thick")
    answered = Desk(house.entries).answer({"ask": "pieces", "room": house.room})["answer"]
    assert {piece["profile"] for piece in answered["pieces"]} == {"base 3/4 × 5 1/2"}
    (problem,) = answered["problems"]
    assert problem["message"].startswith("A setting of the room cannot be read: base.thickness: ")
    assert problem["message"].endswith("Set it anew. Until it is, the house's stands.")


def test_a_setting_of_a_newer_engine_is_kept_and_shown_and_not_judged():
    house = four_walls()
    house.say("setting", of=house.house, name="crown.spring", value="38")
    shown = ask(house, "notebook")["houses"][0]
    assert shown["settings"]["crown.spring"] == "38"
    assert shown["setting_errors"] == {}


def test_a_line_is_ticked_off_on_its_own_list_and_the_last_word_counts():
    house = four_walls()
    first = house.say("tick", of=house.room, list="work", key="strip", state="done", remember="")
    house.say("tick", of=house.room, list="supplies", key="strip", state="bought", remember="")
    found = fold(house.entries).ticks(house.room, "work")
    assert {key: entry.id for key, (entry, _) in found.items()} == {"strip": first}
    second = house.say("tick", [first], of=house.room, list="work", key="strip", state="skipped", remember="")
    (found, heads) = fold(house.entries).ticks(house.room, "work")["strip"]
    assert (found.body["state"], [one.id for one in heads]) == ("skipped", [second])
    house.say("strike", entry=second, why="it is done after all")
    assert fold(house.entries).ticks(house.room, "work")["strip"][0].id == first


def test_articles_coverings_and_lots_are_gathered_under_their_house_or_room():
    house = four_walls()
    paper = house.new("article", house=house.house, sort="paper", name="fern")
    over = house.new("covering", room=house.room, article=paper)
    lot = {"article": paper, "name": "fern", "count": "3", "price": "", "date": "", "note": "batch 4"}
    mine, ours = (house.new("lot", of=of, **lot) for of in (house.room, house.house))
    notebook = fold(house.entries)
    found = [[one for one, _, _ in notebook.children(*about)] for about in (
        ("article", house.house), ("covering", house.room), ("lot", house.room), ("lot", house.house),
    )]  # fmt: skip
    assert found == [[paper], [over], [mine], [ours]]
