"""Entries one by one: what the envelope and each kind's body must be, what is refused by name, what is passed on."""

from typing import Any

import pytest
from scantling.engine.bodies import BODIES
from scantling.engine.desk import Desk
from scantling.engine.errors import EngineError
from scantling.engine.journal import admit_entry, check_entry, fits, parse_entry

from tests.entries import Entry, House

HOUSE = House()
ID = HOUSE.entries[0]["id"]
SUBJECT = HOUSE.house
ROW = {"piece": SUBJECT, "key": "base w1", "letter": "AB", "name": "base, wall 1", "profile": "base", "cut": "253/4",
       "shown": '63 1/4"'}  # fmt: skip
CUT_FROM = {"key": "base w1", "letter": "A", "takes": "253/4", "spoilt": False}
BOARD = {"board": SUBJECT, "source": None, "length": "96", "cents": "1040", "bought": False, "pieces": [CUT_FROM]}
GOOD: dict[str, dict[str, Any]] = {
    "house": {"house": SUBJECT, "name": "the house", "built": None},
    "room": {"room": SUBJECT, "house": SUBJECT, "name": "", "closed": True},
    "wall": {"wall": SUBJECT, "room": SUBJECT, "after": None, "turn": "inside"},
    "opening": {"opening": SUBJECT, "wall": SUBJECT, "kind": "door"},
    "obstacle": {"obstacle": SUBJECT, "wall": SUBJECT, "kind": "radiator", "base": "stops"},
    "reading": {"of": SUBJECT, "what": "length", "text": "63 1/"},
    "free": {
        "free": SUBJECT,
        "room": SUBJECT,
        "name": "shelf",
        "profile": "shelf 3/4 × 9 1/2",
        "text": "wall 3 - 1/4",
        "count": "2",
    },
    "setting": {"of": SUBJECT, "name": "base.stock", "value": [{"length": "8 ft", "price": "9.50", "limit": None}]},
    "issue": {"list": SUBJECT, "room": SUBJECT, "pieces": [ROW]},
    "state": {"piece": SUBJECT, "state": "cut", "cut_to": "253/4", "left": "cope 45", "right": None, "as_cut": None},
    "plan": {"of": SUBJECT, "profile": "base 9/16 × 5 1/2", "boards": [BOARD]},
    "article": {"article": SUBJECT, "house": SUBJECT, "sort": "paper", "name": "fern"},
    "covering": {"covering": SUBJECT, "room": SUBJECT, "article": SUBJECT},
    "attachment": {
        "attachment": SUBJECT,
        "of": SUBJECT,
        "blob": "0f" * 32,
        "size": 3_000_000,
        "type": "image/jpeg",
        "name": "behind the plaster",
    },
    "stroke": {"attachment": SUBJECT, "points": [[0, 10_000], [5_000, 0]]},
    "pin": {"pin": SUBJECT, "attachment": SUBJECT, "of": SUBJECT, "what": "length", "x": 0, "y": 10_000},
    "test_cut": {"of": SUBJECT, "what": "corner", "text": "45.5 fits"},
    "sum": {"sum": SUBJECT, "of": None, "text": "63 1/4 - 2 * 3 1/2", "note": ""},
    "lot": {
        "lot": SUBJECT,
        "of": SUBJECT,
        "article": None,
        "name": "base 9/16 × 5 1/2",
        "count": "3",
        "price": "40.05",
        "date": "2026-03-14",
        "note": "",
    },
    "tick": {"of": SUBJECT, "list": "work", "key": "floor", "state": "done", "remember": ""},
    "strike": {"entry": ID, "why": ""},
    "device": {"name": "phone"},
}


def board_with(**changed: Any) -> dict[str, Any]:
    return {"boards": [{**BOARD, **changed}]}


def entry_of(kind: str, /, **changed: Any) -> Entry:
    return {**HOUSE.entries[0], "kind": kind, "body": GOOD.get(kind, {}), **changed}


def fault(entry: object) -> tuple[str, str]:
    (error,) = check_entry(entry)
    return error.key, error.field


@pytest.mark.parametrize("kind", BODIES)
def test_every_kind_has_a_body_that_is_accepted(kind):
    assert check_entry(entry_of(kind)) == []
    assert fits(admit_entry(entry_of(kind)))


@pytest.mark.parametrize(("kind", "name"), [(kind, name) for kind, body in GOOD.items() for name in body])
def test_every_part_of_every_body_is_required_and_has_its_type(kind, name):
    without = {key: value for key, value in GOOD[kind].items() if key != name}
    assert fault(entry_of(kind, body=without)) == ("bad-field", f"body.{name}")
    assert fault(entry_of(kind, body={**GOOD[kind], name: 7.5})) == ("bad-field", f"body.{name}")
    assert fault(entry_of(kind, body={**GOOD[kind], name: {}})) == ("bad-field", f"body.{name}")


@pytest.mark.parametrize("kind", BODIES)
def test_a_body_with_a_name_too_many_is_refused(kind):
    assert fault(entry_of(kind, body={**GOOD[kind], "color": "red"})) == ("bad-field", "body.color")


WRONG: dict[str, tuple[str, dict[str, Any], str]] = {
    "a year before years": ("house", {"built": 0}, "built"),
    "a list of no rows": ("issue", {"pieces": {}}, "pieces"),
    "a row without a letter": ("issue", {"pieces": [{**ROW, "letter": ""}]}, "pieces"),
    "a letter with a figure": ("issue", {"pieces": [{**ROW, "letter": "A1"}]}, "pieces"),
    "a row with a name too many": ("issue", {"pieces": [{**ROW, "color": "red"}]}, "pieces"),
    "a row whose piece is no id": ("issue", {"pieces": [{**ROW, "piece": "A"}]}, "pieces"),
    "a list of too many rows": ("issue", {"pieces": [ROW] * 201}, "pieces"),
    "a state of our own": ("state", {"state": "sawn"}, "state"),
    "a figure without end": ("state", {"cut_to": "9" * 61}, "cut_to"),
    "boards that are no list": ("plan", {"boards": "all"}, "boards"),
    "a board without a name": ("plan", board_with(board=None), "boards"),
    "a board of no length": ("plan", board_with(length="0/16"), "boards"),
    "a board of a length in words": ("plan", board_with(length="8 ft"), "boards"),
    "a price below nothing": ("plan", board_with(cents="-1"), "boards"),
    "a board with a name too many": ("plan", board_with(color="red"), "boards"),
    "a piece that takes nothing": ("plan", board_with(pieces=[{**CUT_FROM, "takes": "0"}]), "boards"),
    "a piece spoilt a little": ("plan", board_with(pieces=[{**CUT_FROM, "spoilt": 1}]), "boards"),
    "a year as text": ("house", {"built": "1936"}, "built"),
    "a year with a fraction": ("house", {"built": 1936.0}, "built"),
    "a year that is true": ("house", {"built": True}, "built"),
    "closed as text": ("room", {"closed": "yes"}, "closed"),
    "closed as a number": ("room", {"closed": 1}, "closed"),
    "a name too long": ("room", {"name": "n" * 2001}, "name"),
    "an id in capitals": ("room", {"house": SUBJECT.upper()}, "house"),
    "an id with a line end": ("room", {"house": SUBJECT + "\n"}, "house"),
    "a turn of neither kind": ("wall", {"turn": "left"}, "turn"),
    "an opening of no kind": ("opening", {"kind": "hatch"}, "kind"),
    "a base that does nothing known": ("obstacle", {"base": "under"}, "base"),
    "a figure of no name": ("reading", {"what": "girth"}, "what"),
    "a free piece of no name": ("free", {"name": " "}, "name"),
    "no free pieces": ("free", {"count": "0"}, "count"),
    "free pieces by the thousand": ("free", {"count": "1000"}, "count"),
    "an article of no sort": ("article", {"sort": "rug"}, "sort"),
    "an article of no name": ("article", {"name": ""}, "name"),
    "a lot of a few": ("lot", {"count": "a few"}, "count"),
    "a lot by the ten thousand": ("lot", {"count": "10000"}, "count"),
    "an attachment by no digest": ("attachment", {"blob": "0F" * 32}, "blob"),
    "an attachment of nothing": ("attachment", {"size": 0}, "size"),
    "an attachment beyond all bounds": ("attachment", {"size": 32_000_001}, "size"),
    "an attachment of no kind": ("attachment", {"type": "photo"}, "type"),
    "a line of one point": ("stroke", {"points": [[0, 0]]}, "points"),
    "a line of too many points": ("stroke", {"points": [[0, 0]] * 201}, "points"),
    "a line off the photo": ("stroke", {"points": [[0, 0], [0, 10_001]]}, "points"),
    "a line before the photo": ("stroke", {"points": [[0, 0], [-1, 0]]}, "points"),
    "a line of parts of a part": ("stroke", {"points": [[0, 0], [0.5, 0]]}, "points"),
    "a line of truths": ("stroke", {"points": [[0, 0], [True, 0]]}, "points"),
    "a line of points of three figures": ("stroke", {"points": [[0, 0, 0], [1, 1, 1]]}, "points"),
    "a line of points with names": ("stroke", {"points": [{"x": 0, "y": 0}, {"x": 1, "y": 1}]}, "points"),
    "a pin off the photo": ("pin", {"x": 10_001}, "x"),
    "a pin above the photo": ("pin", {"y": -1}, "y"),
    "a pin that is true": ("pin", {"x": True}, "x"),
    "a pin of no figure": ("pin", {"what": "girth"}, "what"),
    "a test cut that showed nothing": ("test_cut", {"text": " "}, "text"),
    "a test cut of no corner": ("test_cut", {"what": "length"}, "what"),
    "a sum of nothing": ("sum", {"text": " \n "}, "text"),
    "a sum without end": ("sum", {"text": "1+" * 501}, "text"),
    "a day without its year": ("lot", {"date": "3/14"}, "date"),
    "a day in other digits": ("lot", {"date": "٢٠٢٦-٠٣-١٤"}, "date"),
    "a tick on no list": ("tick", {"list": "guests"}, "list"),
    "a tick of nothing": ("tick", {"key": ""}, "key"),
    "a tick of a state of our own": ("tick", {"state": "nearly"}, "state"),
    "a setting's name in capitals": ("setting", {"name": "Base"}, "name"),
    "a setting's name too deep": ("setting", {"name": "a.b.c.d.e"}, "name"),
    "a setting as a number": ("setting", {"value": 5.5}, "value"),
    "a setting of rows that are none": ("setting", {"value": ["8 ft"]}, "value"),
    "a setting with a number in a row": ("setting", {"value": [{"length": 96}]}, "value"),
    "a setting of too many rows": ("setting", {"value": [{}] * 201}, "value"),
}


@pytest.mark.parametrize(("kind", "change", "where"), WRONG.values(), ids=WRONG)
def test_a_value_that_a_kind_does_not_allow_is_refused_where_it_stands(kind, change, where):
    entry = entry_of(kind, body=GOOD[kind] | change)
    assert fault(entry) == ("bad-field", f"body.{where}")
    assert not fits(admit_entry(entry))


ENVELOPES: dict[str, tuple[dict[str, Any], str]] = {
    "id that is no UUID": ({"id": "7"}, "id"),
    "no id": ({"id": None}, "id"),
    "device of another length": ({"device": "a" * 15}, "device"),
    "seq before the first": ({"seq": 0}, "seq"),
    "seq past what a page can count": ({"seq": 2**53 + 1}, "seq"),
    "seq that is true": ({"seq": True}, "seq"),
    "seq with a fraction": ({"seq": 1.0}, "seq"),
    "stamp of another form": ({"stamp": "2026-11-25T09:00"}, "stamp"),
    "version before the first": ({"version": 0}, "version"),
    "version as text": ({"version": "1"}, "version"),
    "kind in capitals": ({"kind": "Wall"}, "kind"),
    "body that is a list": ({"body": []}, "body"),
    "supersedes that is none": ({"supersedes": None}, "supersedes"),
    "supersedes what is no id": ({"supersedes": ["x"]}, "supersedes.0"),
    "supersedes a list": ({"supersedes": [[]]}, "supersedes.0"),
    "supersedes too many": ({"supersedes": [ID] * 201}, "supersedes"),
    "a part too many": ({"mood": "good"}, "mood"),
}


@pytest.mark.parametrize(("change", "where"), ENVELOPES.values(), ids=ENVELOPES)
def test_an_envelope_that_is_not_as_it_must_be_is_refused_where_it_is_wrong(change, where):
    assert fault(entry_of("device", **change)) == ("bad-field", where)


@pytest.mark.parametrize("part", entry_of("device"))
def test_every_part_of_the_envelope_is_required(part):
    assert fault({name: value for name, value in entry_of("device").items() if name != part}) == ("bad-field", part)


@pytest.mark.parametrize(
    "change",
    [{"kind": "hinge"}, {"version": 2}, {"kind": "wall", "version": 1000}],
    ids=["a kind to come", "a version to come", "a known kind's version to come"],
)
def test_what_a_newer_engine_writes_is_not_judged(change):
    entry = entry_of("device", body={"anything": [{"at": None}]}, **change)
    assert check_entry(entry) == []
    assert not parse_entry(entry).known


@pytest.mark.parametrize(
    "where",
    [{"body": {"name": "half \udc00"}}, {"kind": "hinge", "body": {"half \ud800": 1}},
     {"kind": "hinge", "body": {"deep": [{"er": ["\udfff"]}]}}],
    ids=["in a name", "in an unknown body's name", "deep in an unknown body"],
)  # fmt: skip
def test_half_a_character_anywhere_is_refused_by_its_own_key(where):
    assert fault(entry_of("device", **where))[0] == "not-text"


@pytest.mark.parametrize("junk", [None, 5, "entry", [], True], ids=repr)
def test_what_is_no_object_is_refused_and_does_not_stop_a_notebook(junk):
    assert fault(junk)[0] == "not-an-entry"
    with pytest.raises(EngineError, match="journal entry is an object"):
        admit_entry(junk)


ALL_WRONG = [
    *(entry_of(kind, body=GOOD[kind] | change) for kind, change, _ in WRONG.values()),
    *(entry_of("device", **change) for change, _ in ENVELOPES.values()),
]


@pytest.mark.parametrize("entry", ALL_WRONG, ids=[*WRONG, *ENVELOPES])
def test_what_the_check_refuses_may_be_taken_and_only_adds_itself(entry):
    # A phone folds what it holds before anything was checked: an old page's mistake must not keep it from starting.
    desk = Desk(HOUSE.entries[1:])
    before = desk.answer({"ask": "notebook"})["answer"]
    taken = desk.answer({"ask": "take", "entries": [entry]})["answer"]
    after = desk.answer({"ask": "notebook"})["answer"]
    assert (after["houses"], after["conflicts"]) == (before["houses"], before["conflicts"])
    assert after["entries"] == before["entries"] + taken["taken"]
    assert taken["taken"] + len(taken["refused"]) == 1


@pytest.mark.parametrize("older", [[[]], [{}], [None], [5], {}, "ids"], ids=repr)
def test_what_cannot_be_superseded_stops_no_notebook(older):
    desk = Desk([{**entry, "supersedes": older} for entry in HOUSE.entries])
    assert "answer" in desk.answer({"ask": "notebook"})


def test_the_check_names_every_refused_entry_and_no_other():
    refused = Desk().answer({"ask": "check", "entries": [*ALL_WRONG, *HOUSE.entries, 5]})["answer"]["refused"]
    assert len(refused) == len(ALL_WRONG) + 1
    assert all(one["key"] and one["message"] for one in refused)


def test_a_reading_that_cannot_be_understood_is_a_sound_entry():
    assert check_entry(entry_of("reading", body={**GOOD["reading"], "text": "sixty\x00fish 1/"})) == []
