"""The desk: every answer has the shape it promises, each refusal one body; a question changes only what it takes."""

import copy
import json
import subprocess
import sys
from importlib import import_module
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from marshmallow import Schema
from scantling.engine import questions
from scantling.engine.desk import QUESTIONS, Desk, answer
from scantling.engine.questions import FILES

from tests.entries import four_walls
from tests.parity_questions import make_questions
from tests.rooms import oblong, thing

ALL = make_questions()
#: Every third, after those that begin a notebook: enough of each kind where all of them are asked several times over.
SOME = [one for one in (*ALL[:3], *ALL[3::3]) if not isinstance(one, list)]
GIVES: dict[str, Schema] = {name: question.gives() for name, question in QUESTIONS.items()}


@pytest.fixture(scope="module")
def answered() -> list[tuple[Any, dict[str, Any]]]:
    desk = Desk()
    # Copies, so that a test which spoils what it was given cannot spoil what it is compared with.
    return [(question, copy.deepcopy(desk.answer(question))) for question in copy.deepcopy(ALL)]


def name_of(question: Any) -> str:
    return question.get("ask") if isinstance(question, dict) else ""


def test_there_are_questions_of_every_kind_and_enough_that_are_answered_and_refused(answered):
    assert len(ALL) >= 400
    for name in QUESTIONS:
        kinds = {next(iter(found)) for question, found in answered if name_of(question) == name}
        assert kinds == {"answer", "error"}, name


def test_the_list_of_questions_is_the_same_each_time_and_survives_json():
    assert json.loads(json.dumps(make_questions())) == ALL


def test_every_answer_has_the_shape_that_its_question_promises(answered):
    for question, found in answered:
        if "answer" in found:
            assert found.keys() == {"answer"}
            assert GIVES[question["ask"]].validate(found["answer"]) == {}, question


def test_every_refusal_has_the_one_body_and_a_sentence(answered):
    for question, found in answered:
        if "answer" not in found:
            assert found.keys() == {"error"}
            error = found["error"]
            assert error.keys() == {"key", "message", "where"}
            assert error["where"].keys() == {"field", "at"}
            assert isinstance(error["where"]["field"], str)
            assert error["where"]["at"] is None or error["where"]["at"] >= 0
            assert error["key"] == error["key"].lower().strip()
            assert error["message"].strip(), question
            assert "{" not in error["message"].replace('{"ask"', "")


def test_a_place_in_a_text_is_a_place_in_that_text(answered):
    for question, found in answered:
        if name_of(question) in ("read", "sum") and "error" in found and found["error"]["where"]["at"] is not None:
            assert found["error"]["where"]["at"] <= len(question["text"])


def lengths_in(found: Any) -> list[dict[str, Any]]:
    """Every length out, anywhere in an answer."""
    lengths, waiting = [], [found]
    while waiting:
        one = waiting.pop()
        if isinstance(one, dict):
            lengths += [one] if one.keys() == {"inches", "exact", "shown"} else []
            waiting += one.values()
        elif isinstance(one, list):
            waiting += one
    return lengths


def test_every_length_is_given_three_ways_that_agree(answered):
    seen = 0
    for question, found in answered:
        for length in lengths_in(found.get("answer")):
            seen += 1
            assert length["shown"].endswith('"')
            if length["exact"] is None:
                # Carried to a millionth and no further, so that two machines agree.
                assert length["inches"] == round(length["inches"], 6), question
            else:
                above, _, below = length["exact"].partition("/")
                assert length["inches"] == int(above) / int(below or 1)
    assert seen > 2000


def test_the_same_questions_in_json_one_by_one_or_as_a_list_give_the_same():
    by_hand, one_by_one, at_once = Desk(), Desk(), Desk()
    found = [by_hand.answer(question) for question in SOME]
    assert [json.loads(one_by_one.answer_text(json.dumps(question))) for question in SOME] == found
    assert json.loads(at_once.answer_text(json.dumps(SOME))) == found


def test_an_answer_in_json_is_pure_ascii_and_in_one_form():
    text = Desk().answer_text('{"ask": "read", "text": "sixty three \\u00bc"}')
    assert text.isascii()
    assert text == json.dumps(json.loads(text), separators=(",", ":"), sort_keys=True)


def test_a_question_is_not_changed_by_being_asked(answered):
    assert [question for question, _ in answered] == ALL


def test_an_answer_that_a_caller_changes_changes_no_later_one():
    first, again, fresh = Desk(), Desk(), Desk()
    found = [copy.deepcopy(first.answer(question)) for question in SOME]
    for question, expected in zip(SOME, found, strict=True):
        answered = again.answer(question)
        assert answered == expected
        spoil(answered)
    assert [fresh.answer(question) for question in SOME] == found


def spoil(found: Any) -> None:
    """Change everything in an answer that can be changed."""
    waiting = [found]
    while waiting:
        one = waiting.pop()
        below = list(one.values()) if isinstance(one, dict) else list(one)
        waiting += [each for each in below if isinstance(each, dict | list)]
        one.clear()


def test_no_question_but_take_changes_what_another_is_answered():
    # In turn, each question between two askings of all the others about the notebook.
    desk = Desk(next(question["entries"] for question in ALL if name_of(question) == "take"))
    about = [
        question for question in ALL if name_of(question) in ("notebook", "survey") or "room" in repr(question)[:40]
    ][:30]
    before = [desk.answer(question) for question in about]
    for question in SOME:
        if name_of(question) != "take":
            desk.answer(question)
    assert [desk.answer(question) for question in about] == before


def test_a_desk_knows_nothing_of_another_desk():
    one = Desk(next(question["entries"] for question in ALL if name_of(question) == "take"))
    assert one.answer({"ask": "notebook"})["answer"]["entries"] > 100
    assert Desk().answer({"ask": "notebook"})["answer"]["entries"] == 0
    assert answer({"ask": "notebook"})["answer"]["entries"] == 0


NO_QUESTIONS = [None, 17, "read", [], {}, {"ask": None}, {"ask": 5}, {"ASK": "read"}]


@pytest.mark.parametrize("question", NO_QUESTIONS, ids=repr)
def test_what_is_no_question_is_told_what_one_looks_like(question):
    error = answer(question)["error"]
    assert (error["key"], error["where"]["field"]) == ("not-a-question", "ask")
    assert '"ask": "read"' in error["message"]


def test_a_question_of_no_name_is_told_the_names():
    error = answer({"ask": "weigh" * 100})["error"]
    assert error["key"] == "no-such-question"
    assert all(name in error["message"] for name in QUESTIONS)
    assert len(error["message"]) < len(", ".join(QUESTIONS)) + 100


@pytest.mark.parametrize(
    "text", ["", "{", "nonsense", '{"ask": "read",}', "[" * 100_000, '{"a":' * 5000, "\ud800", "1" * 5000],
    ids=["empty", "cut off", "words", "comma", "deep list", "deep object", "half a character", "a long number"],
)  # fmt: skip
def test_what_is_not_json_is_refused_and_not_raised(text):
    found = json.loads(Desk().answer_text(text))
    assert found["error"]["key"] in ("not-json", "not-a-question")


def test_an_empty_list_of_questions_gives_an_empty_list_of_answers():
    assert Desk().answer_text("[]") == "[]"


FIELDS: dict[str, tuple[dict[str, Any], str]] = {
    "a wrong nearest": ({"ask": "read", "text": "1", "nearest": "1/3"}, "nearest"),
    "a name too many": ({"ask": "read", "text": "1", "colour": "red"}, "colour"),
    "a text that is none": ({"ask": "read", "text": 5}, "text"),
    "nothing to read": ({"ask": "read"}, "text"),
    "a wall without an id": ({"ask": "pieces", "room": {"walls": [{"id": "a"}, {"length": "1"}]}}, "room.walls.1.id"),
    "two walls of one id": ({"ask": "pieces", "room": {"walls": [{"id": "a"}, {"id": "a"}]}}, "room.walls"),
    "walls past counting": ({"ask": "pieces", "room": {"walls": [{"id": str(n)} for n in range(201)]}}, "room.walls"),
    "a length that is none": ({"ask": "boards", "stock": [], "pieces": ["10", "fish"]}, "pieces.1"),
    "an angle that is none": ({"ask": "corner", "corner": "x", "thickness": "1"}, "corner"),
    "both gauge and sides": ({"ask": "corner", "corner": "90", "sides": ["3", "4", "5"], "thickness": "1"}, "corner"),
    "a setting that cannot be": ({"ask": "pieces", "room": oblong(reveal="x")}, "reveal"),
}


@pytest.mark.parametrize(("question", "field"), FIELDS.values(), ids=FIELDS)
def test_a_refusal_names_the_field_that_was_wrong(question, field):
    assert answer(question)["error"]["where"]["field"] == field


VALUES = st.recursive(
    st.none() | st.booleans() | st.integers(-(10**20), 10**20) | st.floats() | st.text(max_size=12)
    | st.sampled_from(("63 1/4", "90", "inside", "cope", "9/16", "\ud800")),
    lambda below: st.lists(below, max_size=3) | st.dictionaries(st.text(max_size=6), below, max_size=3),
    max_leaves=6,
)  # fmt: skip
ASKABLE = [question for question in ALL if isinstance(question, dict) and question.get("ask") in QUESTIONS]


@given(st.sampled_from(ASKABLE), st.lists(st.integers(0, 50), min_size=1, max_size=5), VALUES)
def test_anything_at_all_in_place_of_any_part_of_a_question_is_answered_or_refused(question, path, value):
    asked = copy.deepcopy({**question, "time_limit": 0.5} if question["ask"] == "boards" else question)
    holder: Any = asked
    for step in path:
        keys = sorted(holder) if isinstance(holder, dict) else range(len(holder))
        if not keys:
            break
        key = keys[step % len(keys)]
        if step == path[-1] or not isinstance(holder[key], dict | list):
            holder[key] = value
            break
        holder = holder[key]
    found = Desk().answer(asked)
    assert found.keys() in ({"answer"}, {"error"})
    if "answer" in found:
        assert GIVES[asked["ask"]].validate(found["answer"]) == {}
    json.dumps(found, allow_nan=False)


def test_a_clock_may_only_cut_a_search_off_and_is_told_of():
    ticks = iter(range(10**9))
    case = {"ask": "boards", "stock": [{"length": "96", "price": "9.50"}], "pieces": ["20", "30", "40"]}
    assert Desk().answer(case)["answer"]["seconds"] is None
    timed = Desk(clock=lambda: next(ticks) / 1e6).answer(case)["answer"]
    assert timed["seconds"] > 0
    assert timed["boards"] == Desk().answer(case)["answer"]["boards"]


def test_every_file_of_questions_is_in_the_list_with_the_names_it_answers():
    folder = Path(questions.__file__).parent
    files = [path for path in folder.rglob("*.py") if "\nQUESTIONS = (" in path.read_text(encoding="utf-8")]
    assert {".".join(path.relative_to(folder).with_suffix("").parts) for path in files} == set(FILES)
    for file, names in FILES.items():
        module = import_module(f"{questions.__name__}.{file}")
        assert tuple(question.name for question in module.QUESTIONS) == names, file


def test_a_desk_that_wakes_and_takes_entries_has_loaded_neither_the_trade_nor_the_boards():
    """In a Python of its own: this one has loaded everything."""
    woken = "from scantling.engine.desk import Desk; import sys; Desk().answer({'ask': 'take', 'entries': []}); "
    told = "print(*(name for name in sys.modules if name.startswith('scantling.engine.')))"
    done = subprocess.run([sys.executable, "-c", woken + told], capture_output=True, text=True, check=True)
    loaded = done.stdout.split()
    assert "scantling.engine.questions.notebook.entries" in loaded
    late = ("boards", "trim", "survey", "drawings", "walk", "cutlist", "coverings", "rack", "standard", "settings")
    assert [name for name in loaded if name.split(".")[2] in late] == []


@pytest.mark.parametrize("name", QUESTIONS)
def test_every_question_says_what_it_is_in_one_sentence(name):
    question = QUESTIONS[name]
    assert question.name == name
    assert question.doc.endswith(".")
    assert question.loader is question.loader


def test_a_room_of_the_notebook_and_the_same_room_as_a_question_have_the_same_pieces():
    house = four_walls()
    door = house.new("opening", wall=house.walls[0], kind="door")
    house.read(door, "at", "30")
    house.read(door, "width", "30 1/8")
    desk = Desk(house.entries)
    by_id = desk.answer({"ask": "pieces", "room": house.room})["answer"]["pieces"]
    facts = oblong(thing("door", "30", "30 1/8", name=door))
    for each, name in zip(facts["walls"], house.walls, strict=True):
        each["id"] = name
    as_question = desk.answer({"ask": "pieces", "room": facts})["answer"]["pieces"]
    # Only what is kept can be read in its place.
    assert as_question == [{**piece, "place_of": None} for piece in by_id]
