"""The order of work: what waits for what, what is ready, and what a step upstream puts in doubt."""

from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.work.steps import BY_KEY, STEPS

from tests.asked import ask, refusal
from tests.covered import ask as ask_house
from tests.entries import four_walls

KEYS = [step.key for step in STEPS]
some = st.sets(st.sampled_from(KEYS)).map(sorted)


def states(**more):
    return {step["key"]: step["state"] for step in ask("work", **more)["steps"]}


def test_work_begins_with_looking_for_hazards_and_nothing_else():
    assert ask("work")["today"] == ["hazards"]


def test_casing_waits_for_jambs_and_base_for_casing():
    waits = {step["key"]: step["waits_for"] for step in ask("work", done=["hazards", "strip"])["steps"]}
    assert "jambs" in waits["casing"]
    assert "casing" in waits["base"]


def test_what_a_room_does_without_is_waited_for_by_nothing():
    done = KEYS[: KEYS.index("base")]
    without = [key for key in done if key not in ("built_in", "wainscot")]
    assert states(done=without)["base"] == "waits"
    assert states(done=without, skipped=["built_in", "wainscot"])["base"] == "ready"


def test_what_a_skipped_step_waited_for_is_still_waited_for():
    found = ask("work", done=["hazards"], skipped=["boxes", "walls"])
    assert "strip" in next(step for step in found["steps"] if step["key"] == "ceiling")["waits_for"]


def test_a_step_done_before_its_time_says_so():
    assert states(done=["hazards", "base"])["base"] == "early"


def test_a_new_floor_puts_the_legs_in_doubt_and_plaster_the_corners():
    found = {doubt["what"]: doubt["because"] for doubt in ask("work", since=["floor", "walls"])["doubts"]}
    assert found["leg heights of doors"] == "floor"
    assert found["corner angles"] == "walls"
    assert ask("work", since=["casing"])["doubts"] == []


def test_paper_waits_for_walls_that_are_leveled_and_sealed():
    assert BY_KEY["paper"].after == ("seal",)
    assert "jambs" in BY_KEY["casing"].after


def test_a_step_that_is_none_is_refused_by_its_place():
    assert refusal("work", done=["hazards", "dance"])[:2] == ("no-such-step", "done.1")


def test_every_step_stands_after_all_that_it_waits_for():
    for place, step in enumerate(STEPS):
        assert all(KEYS.index(key) < place for key in step.after), step.key


@given(some, some)
def test_while_anything_is_left_something_can_be_done(done, skipped):
    found = ask("work", done=done, skipped=skipped)
    left = [step for step in found["steps"] if step["state"] in ("ready", "waits")]
    assert bool(found["today"]) == bool(left)


@given(some, st.sampled_from(KEYS))
def test_doing_one_step_more_never_makes_another_wait(done, more):
    before, after = states(done=done), states(done=[*done, *({more} - set(done))])
    for key in KEYS:
        if before[key] == "ready" and key != more:
            assert after[key] == "ready"


def worked_room():
    """Four walls, a door in the first; read, and then whatever the test does."""
    house = four_walls()
    door = house.new("opening", wall=house.walls[0], kind="door")
    for what, text in (("at", "20"), ("width", "30"), ("left", "80"), ("right", "80"), ("left_corner", "90")):
        house.read(door, what, text)
    return house, door


def done(house, key, state="done"):
    return house.say("tick", of=house.room, list="work", key=key, state=state, remember="")


def in_doubt(house):
    return [(one["of"], one["what"], one["because"]) for one in ask_house(house, "work", room=house.room)["in_doubt"]]


def test_a_rooms_steps_are_those_that_were_ticked_off_in_it():
    house, _ = worked_room()
    assert ask_house(house, "work", room=house.room)["today"] == ["hazards"]
    for key in ("hazards", "strip"):
        done(house, key)
    done(house, "boxes", "skipped")
    found = ask_house(house, "work", room=house.room)
    assert {step["key"]: step["state"] for step in found["steps"]}["boxes"] == "skipped"
    assert found["today"] == ["walls", "floor"]


def test_a_new_floor_puts_what_was_read_before_it_in_doubt_until_it_is_read_again():
    house, door = worked_room()
    assert in_doubt(house) == []
    floor = done(house, "floor")
    assert in_doubt(house) == [(door, "left", "floor"), (door, "right", "floor")]
    house.read(door, "left", "79 1/4")
    assert in_doubt(house) == [(door, "right", "floor")]
    house.say("strike", entry=floor, why="only half of it is laid")
    assert in_doubt(house) == []


def test_plaster_puts_corners_and_lengths_in_doubt_and_a_struck_reading_says_nothing():
    house, _ = worked_room()
    done(house, "walls")
    found = in_doubt(house)
    assert {what for _, what, _ in found} == {"length", "corner"}
    assert len(found) == 8
    again = house.read(house.walls[0], "length", "119 1/2")[0]
    assert (house.walls[0], "length", "walls") not in in_doubt(house)
    house.say("strike", entry=again, why="misread")
    assert (house.walls[0], "length", "walls") in in_doubt(house)


def test_old_trim_is_cautioned_of_until_it_is_off():
    house, _ = worked_room()
    found = ask_house(house, "work", room=house.room)["cautions"]
    assert {line.partition(":")[0] for line in found} >= {"Old paint", "Lead rule", "Pulling", "Old walls"}
    done(house, "strip")
    assert ask_house(house, "work", room=house.room)["cautions"] == []


def read_in_place(house):
    found = ask_house(house, "work", room=house.room)["in_place"]
    return {one["part_name"]: (one["of"], one["hint"]) for one in found}


def test_once_the_casing_is_up_what_goes_from_it_to_a_corner_may_be_read_in_place_without_a_list():
    house, _ = worked_room()
    assert read_in_place(house) == {}
    done(house, "casing")
    found = read_in_place(house)
    assert list(found) == ["base, wall 1, left of the door", "base, wall 1, right of the door"]
    of, hint = found["base, wall 1, left of the door"]
    assert hint == "Once the casing is up: from corner 4 to the casing of the door, where the back will lie."
    house.read(of, "in_place", "17 5/8")
    assert list(read_in_place(house)) == ["base, wall 1, right of the door"]
    rows = {row["part_name"]: row for row in ask_house(house, "pieces", room=house.room)["pieces"]}
    read = rows["base, wall 1, left of the door"]
    assert (read["id"], read["in_place"], read["back"]["shown"]) == (None, True, '17 5/8"')
    done(house, "base")
    assert read_in_place(house) == {}
