"""What is derived is kept while what it leans on stands: no answer is old, and nothing is derived that need not be."""

import json
from fractions import Fraction
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine import shapes
from scantling.engine.desk import Desk
from scantling.engine.kept import REMEMBERED_AT_MOST, Kept, remembered
from scantling.engine.notebook import Notebook
from scantling.engine.questions import facts
from scantling.engine.shown import shown_in
from scantling.engine.shown.shown_in import FEET, MILLIMETERS, SHOWN_IN, showing
from scantling.engine.survey import facts as survey
from scantling.engine.tape import lengths
from scantling.engine.tape.angles import parse_degrees
from scantling.engine.tape.lengths import Length, LengthError, format_length, parse_length, parse_reading, say_length
from scantling.engine.trim import doubt

from tests.cut_lists import issue, mark
from tests.engine.test_notebook_laws import ACTS, LISTING, family_of
from tests.entries import House, four_walls

ASKED = ("survey", "pieces", "piece_rows", "needs", "plan", "closure", "free", "battens", "notebook", "coverings",
         "supplies", "shopping", "work")  # fmt: skip
LIST = "00000000-1111-4000-8000-000000000000"


def question(name: str, room: str) -> str:
    if name == "notebook":
        return json.dumps({"ask": name})
    more = {"list": LIST} if name == "issue" else {}
    return json.dumps({"ask": name, "room": room, **more})


@given(ACTS | LISTING, st.randoms(use_true_random=False))
def test_a_desk_asked_anything_at_any_moment_answers_as_a_fresh_one(acts, random: Random):
    family = family_of(acts)
    arrived = [*family.entries, *family.twins]
    random.shuffle(arrived)
    desk = Desk()
    taken = []
    while arrived:
        some = [arrived.pop() for _ in range(min(len(arrived), random.randint(1, 6)))]
        desk.take(some)
        taken += some
        for _ in range(random.randint(0, 3)):
            asked = question(random.choice((*ASKED, "issue")), random.choice(family.subjects["room"]))
            assert desk.answer_text(asked) == Desk(taken).answer_text(asked)


class Counted:
    """How often each room was read, and its pieces derived, since the last look."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.read: list[str] = []
        self.derived: list[str] = []
        read_room, derive_pieces = survey.read_room, facts.derive_pieces
        monkeypatch.setattr(
            survey, "read_room", lambda found, *told: self.read.append(found["name"]) or read_room(found, *told)
        )
        monkeypatch.setattr(facts, "derive_pieces", lambda room: self.derived.append(room.name) or derive_pieces(room))

    def since(self) -> tuple[list[str], list[str]]:
        found = self.read[:], self.derived[:]
        self.read.clear()
        self.derived.clear()
        return found


@pytest.fixture
def counted(monkeypatch) -> Counted:
    return Counted(monkeypatch)


def two_rooms() -> tuple[House, Desk]:
    """A house of two rooms of four walls, asked about once."""
    house = four_walls()
    other = house.new("room", house=house.house, name="the other", closed=True)
    first, house.room, house.walls = house.room, other, []
    for length in ("80", "90", "80", "90"):
        house.wall(length)
    house.room = first
    desk = Desk(house.entries)
    ask_all(desk, house, other)
    return house, desk


def rooms_of(house: House) -> list[str]:
    return [entry["body"]["room"] for entry in house.entries if entry["kind"] == "room"]


def ask_all(desk: Desk, house: House, *rooms: str) -> None:
    for room in (house.room, *rooms):
        for name in (*ASKED, "issue"):
            desk.answer_text(question(name, room))  # closure may refuse a room that is not all read


def test_all_questions_about_a_room_read_it_and_derive_its_pieces_once(counted):
    two_rooms()
    assert counted.since() == (["the room", "the other"], ["the room", "the other"])


def test_a_reading_of_one_room_derives_no_other_anew(counted):
    house, desk = two_rooms()
    counted.since()
    before = len(house.entries)
    house.read(house.walls[0], "length", "79 1/2")  # a wall of the other room
    desk.take(house.entries[before:])
    ask_all(desk, house, rooms_of(house)[1])
    assert counted.since() == (["the other"], ["the other"])


def test_a_setting_of_one_room_or_a_struck_reading_in_it_derives_no_other_anew(counted):
    house, desk = two_rooms()
    last = next(entry for entry in reversed(house.entries) if entry["kind"] == "reading")
    for say in (
        lambda: house.say("setting", of=rooms_of(house)[1], name="base.inside", value="miter"),
        lambda: house.say("strike", entry=last["id"], why=""),
        lambda: house.say("strike", entry=house.entries[-1]["id"], why="restored"),
    ):
        counted.since()
        before = len(house.entries)
        say()
        desk.take(house.entries[before:])
        ask_all(desk, house, rooms_of(house)[1])
        assert counted.since() == (["the other"], ["the other"])


def test_a_setting_of_the_house_is_paid_for_by_the_room_that_is_asked_about(counted):
    house, desk = two_rooms()
    counted.since()
    before = len(house.entries)
    house.say("setting", of=house.house, name="base.inside", value="miter")
    desk.take(house.entries[before:])
    assert "miter" in desk.answer_text(question("pieces", house.room))
    assert counted.since() == (["the room"], ["the room"])


def test_what_is_said_of_a_piece_reads_no_room_and_derives_no_pieces_anew(counted):
    house = four_walls()
    issue(house, house.room)
    desk = Desk(house.entries)
    ask_all(desk, house)
    counted.since()
    before = len(house.entries)
    mark(house, house.room, "A", "cut")
    desk.take(house.entries[before:])
    counted.since()
    assert '"state":"cut"' in desk.answer_text(question("pieces", house.room))
    assert counted.since() == ([], [])


def test_strikes_of_strikes_cost_by_their_number_and_not_by_its_square(monkeypatch):
    house = four_walls()
    last = first = next(entry["id"] for entry in house.entries if entry["kind"] == "reading")
    for _ in range(2000):
        last = house.say("strike", entry=last, why="")
    looked: list[str] = []
    find = Notebook._fit_strikes
    monkeypatch.setattr(Notebook, "_fit_strikes", lambda self, entry: looked.append(entry) or find(self, entry))
    assert Desk(house.entries).context.notebook.strike_of(first) is None
    assert 2000 <= len(looked) <= 2 * 2000  # each is looked at once, or twice where it was not asked about


def test_only_so_many_are_kept_and_those_asked_for_least_lately_go():
    kept, made = Kept(), []
    for name in ("a", "b", "a", "c", "a", "b"):
        kept.derive("what", name, lambda name=name: made.append(name), at_most=2)
    assert made == ["a", "b", "c", "b"]


def test_what_caught_a_refusal_leans_on_what_was_refused():
    kept = Kept()
    bad = [True]

    def inner() -> str:
        kept.note(("setting", "room"))
        if bad:
            raise ValueError
        return "good"

    def outer() -> str:
        try:
            return kept.derive("inner", "room", inner)
        except ValueError:
            return "bad"

    assert kept.derive("outer", "room", outer) == "bad"
    bad.clear()
    assert kept.derive("outer", "room", outer) == "bad"  # nothing was said: what was found stands
    kept.change(("setting", "room"))
    assert kept.derive("outer", "room", outer) == "good"


def test_what_was_written_in_one_unit_is_not_remembered_in_another():
    length = Length(Fraction(253, 4))
    for _ in range(2):
        texts = []
        for shown in SHOWN_IN:
            with showing(shown):
                texts.append((format_length(length), say_length(length)))
        assert [text for text, _ in texts] == ['63 1/4"', "5' 3 1/4\"", "1606.5 mm"]
        assert len({said for _, said in texts}) == 3


def test_what_is_remembered_does_not_ask_what_lengths_are_shown_in(monkeypatch):
    monkeypatch.setattr(shown_in, "_SHOWN_IN", None)  # who asked would be told nothing
    assert parse_length.__wrapped__("17 5/16 strong") == Length(Fraction(555, 32))
    assert parse_reading.__wrapped__("17 5/16 strong").lean == "strong"
    assert parse_degrees.__wrapped__("88.25") == Fraction(353, 4)
    assert lengths._format.__wrapped__(253, 4, 1, 16, MILLIMETERS) == "1606.5 mm"
    assert shapes._figure.__wrapped__(253, 4, True) == (63.25, "253/4")
    assert doubt._weigh.__wrapped__((1, 32), (1, 32))[0] == Fraction(1, 16)


def test_a_length_in_words_is_remembered_for_every_house():
    # Words ask what lengths are shown in, for the examples in them: in these there are none.
    for shown in SHOWN_IN:
        with showing(shown):
            assert lengths._say.__wrapped__(253, 4, 1, 16, FEET) == "five feet three and one quarter inches"


def test_a_text_is_read_alike_however_often_and_refused_each_time():
    assert parse_length("14 3/16") == parse_length("14 3/16") == Length(Fraction(227, 16))
    assert parse_length("-1/2", allow_negative=True).inches == Fraction(-1, 2)
    for _ in range(2):
        with pytest.raises(LengthError, match="less than nothing"):
            parse_length("-1/2")


def test_only_so_much_is_remembered():
    made = []
    double = remembered(lambda number: made.append(number) or 2 * number)
    assert [double(number) for number in (*range(REMEMBERED_AT_MOST + 1), 0, REMEMBERED_AT_MOST)][-2:] == [0, 8000]
    assert made == [*range(REMEMBERED_AT_MOST + 1), 0]


def test_readings_that_were_handed_out_can_be_changed_by_nobody_who_has_them():
    house = four_walls()
    notebook = Desk(house.entries).context.notebook
    readings = notebook.about("reading", house.walls[0])
    assert readings
    readings.clear()
    assert notebook.about("reading", house.walls[0])
    assert notebook.about("reading", "nothing of this house") == []
    assert not any(subject == "nothing of this house" for _, subject in notebook._in_order)
