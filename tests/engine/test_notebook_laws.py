"""Laws of the notebook: neither arrival order, nor repeats, nor when one asks change an answer, and nothing is lost."""

import json
from collections.abc import Callable
from random import Random
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.cutlist.letters import derive_letters
from scantling.engine.desk import Desk
from scantling.engine.errors import EngineError
from scantling.engine.journal import admit_entry, check_entry, fits, parse_entry
from scantling.engine.notebook import SUBJECTS

from tests.entries import Device, Entry

TEXTS = ("63 1/4", "63 3/16", "1607 mm", "0", "fish", "-4", "5' 3 1/4\" shy", "90", "89.5", "24, 24, 34", "", "30", "9")
WHATS = ("length", "corner", "sides", "at", "width", "height", "studs")
VALUES: tuple[Any, ...] = (
    "5 1/2",
    "miter",
    "butt",
    "9/16",
    "no",
    "",
    [],
    [{"length": "8 ft", "price": "9.50"}],
    [{}],
    "0",
)
NAMES = ("base.inside", "base.thickness", "base.stock", "reveal", "casing.width", "crown.spring", "base.scarf", "hold")
SAID: tuple[tuple[str, Any], ...] = (
    ("paper.width", "20 1/2"), ("paper.length", "33 ft"), ("paper.repeat", "fish"), ("paper.match", "straight"),
    ("paper.price", "38.50"), ("paint.spread", "350"), ("paint.cans", [{"size": "1 gal", "price": "31.00"}]),
    ("cover.walls", []), ("cover.surfaces", [{"name": "walls", "area": None}]), ("paint.coats", "2"),
    ("cover.walls", [{"wall": "nothing"}]), ("film.width", "36"), ("cover.panes", [{"name": "a", "widths": "20"}]),
)  # fmt: skip
SPOILT: tuple[Callable[[Entry], Any], ...] = (
    lambda entry: entry["body"].pop(next(iter(entry["body"]), ""), None),
    lambda entry: entry["body"].update(more=1),
    lambda entry: entry["body"].update(dict.fromkeys(entry["body"], None)),
    lambda entry: entry["body"].update({name: [{}] for name in entry["body"]}),
    lambda entry: entry.update(version=2),
    lambda entry: entry.update(version=True),
    lambda entry: entry.update(seq=1.5),
    lambda entry: entry.update(kind="ghost"),
)
TWINS: tuple[dict[str, Any], ...] = (
    {"seq": True},
    {"seq": 1.0},
    {"version": 1.0},
    {"kind": "device", "body": {"name": "twin"}},
    {"body": {"name": "twin"}},
    {"stamp": "000000000001-0000-" + "c" * 16},
    {"supersedes": []},
    {"body": {}},
)


class Family:
    """Two devices that write about one house, each choice by a number, so that a failing list can be made short."""

    def __init__(self) -> None:
        self.devices = (Device("a"), Device("b", 1_000_500))
        self.device = self.devices[0]
        self.twins: list[Entry] = []
        kinds = ("house", "room", "wall", "opening", "obstacle", "piece", "article", "covering", "lot", "attachment",
                 "pin", "sum")  # fmt: skip
        self.subjects: dict[str, list[str]] = {kind: [] for kind in kinds}
        for kind in ("house", "room", "wall"):
            self.state(kind, 0, 0)

    @property
    def entries(self) -> list[Entry]:
        return [*self.devices[0].entries, *self.devices[1].entries]

    def pick(self, kind: str, number: int) -> str:
        return self.subjects[kind][number % len(self.subjects[kind])] if self.subjects[kind] else "nothing"

    def body(self, kind: str, number: int) -> dict[str, Any]:
        walls = self.subjects["wall"]
        return {
            "house": lambda: {"name": f"house {number}", "built": (None, 1936, 1990)[number % 3]},
            "room": lambda: {
                "house": self.pick("house", number // 4), "name": f"room {number}", "closed": number % 3 > 0,
            },
            "wall": lambda: {
                "room": self.pick("room", number // 4),
                "after": walls[number % len(walls)] if walls and number % 5 else None,
                "turn": ("inside", "inside", "outside")[number % 3],
            },
            "opening": lambda: {
                "wall": self.pick("wall", number // 3), "kind": ("door", "window", "cased")[number % 3],
            },
            "obstacle": lambda: {
                "wall": self.pick("wall", number // 3), "kind": f"thing {number}",
                "base": ("stops", "notch", "over")[number % 3],
            },
            "article": lambda: {
                "house": self.pick("house", number // 4), "sort": ("paper", "paint", "film", "sheet")[number % 4],
                "name": f"article {number}",
            },
            "covering": lambda: {
                "room": self.pick("room", number // 4), "article": self.pick("article", number // 2),
            },
            "attachment": lambda: {
                "of": self.pick(("room", "wall")[number % 2], number // 4), "name": f"photo {number}",
                "blob": f"{number:064x}", "size": number + 1, "type": ("image/jpeg", "text/plain")[number % 2],
            },
            "pin": lambda: {
                "attachment": self.pick("attachment", number // 4), "x": number, "y": 10_000 - number,
                "of": self.pick(("wall", "piece")[number % 2], number // 2),
                "what": ("length", "corner", "cut")[number % 3],
            },
            "sum": lambda: {
                "of": self.pick("room", number // 4) if number % 2 else None, "note": f"note {number}",
                "text": ("63 1/4 - 2", "half of 9", "fish", "3 × 4", "127 / 3", "0")[number % 6],
            },
            "lot": lambda: {
                "of": self.pick(("room", "house")[number % 2], number // 4), "name": f"lot {number}",
                "article": self.pick("article", number // 2) if number % 3 and self.subjects["article"] else None,
                "count": str(number), "price": ("19.98", "", "fish")[number % 3], "date": "2026-03-14", "note": "",
            },
        }[kind]()  # fmt: skip

    def state(self, kind: str, number: int, again: int) -> None:
        """Say something of a house, room, wall or thing: of a new one, or again of one that is there."""
        body = self.body(kind, number)
        if again and self.subjects[kind]:
            subject = self.pick(kind, again)
            said = [entry["id"] for entry in self.entries if entry["body"].get(kind) == subject]
            self.device.say(kind, said[: again % 3], **{kind: subject}, **body)
        else:
            self.subjects[kind].append(self.device.new(kind, **body))

    def issue(self, room: str, number: int) -> None:
        """The list of a room as one device, or both together, would issue it; with `number`, some keys of nobody."""
        known = self.device.entries if number % 2 else self.entries
        asked = {"ask": "issue", "room": room, "list": "00000000-1111-4000-8000-000000000000"}
        for body in Desk(known).answer(asked).get("answer", {}).get("bodies", ()):
            self.device.say("issue", **body)
            self.subjects["piece"] += [row["piece"] for row in body["pieces"]]
        if number % 2 == 0:
            piece = f"{number % 5:08x}-2222-4000-8000-000000000000"
            row = dict.fromkeys(("name", "profile", "cut", "shown"), "")
            row |= {"piece": piece, "key": f"nobody {number % 5}", "letter": "ABCD"[number // 10 % 4]}
            self.device.say("issue", list=piece, room=room, pieces=[row])
            self.subjects["piece"].append(piece)

    def cover(self, one: int, other: int) -> None:
        """Say how something is covered, or tick off a line of a list."""
        if other % 2:
            of = self.pick(("article", "covering")[one % 2], one // 2)
            name, value = SAID[other // 2 % len(SAID)]
            self.device.say("setting", of=of, name=name, value=value)
            return
        kind, list_, state = (("room", "work", "done"), ("room", "supplies", "bought"), ("house", "cautions",
                              "dismissed"), ("covering", "strips", "hung"))[one % 4]  # fmt: skip
        of, key = self.pick(kind, one // 4), ("floor", "Saw", "3", "caulk")[other // 2 % 4]
        said = [entry["id"] for entry in self.entries if entry["body"].get("key") == key]
        self.device.say("tick", said[: other % 3], of=of, list=list_, key=key, state=state, remember="")

    def draw(self, one: int, other: int) -> None:
        """Draw a line on a photo."""
        points = [[one, other], [other, 60 - one]]
        self.device.say("stroke", attachment=self.pick("attachment", one // 4), points=points)

    def act(self, action: str, one: int, other: int) -> None:
        self.device = self.devices[one % 2]
        if action in SUBJECTS:
            self.state(action, one, other)
        elif action == "read":
            kinds = ("wall", "wall", "opening", "obstacle")
            text = TEXTS[other % len(TEXTS)]
            self.device.say("reading", of=self.pick(kinds[one % 4], one // 4), what=WHATS[(one + other) % 7], text=text)
        elif action == "set":
            of = self.pick(("house", "room")[one % 2], one // 2)
            self.device.say("setting", of=of, name=NAMES[other % len(NAMES)], value=VALUES[one % len(VALUES)])
        elif action in ("cover", "draw"):
            getattr(self, action)(one, other)
        elif action == "issue":
            self.issue(self.pick("room", one), other)
        elif action == "mark":
            states = ("cut", "cut", "fitted", "recut", "to cut")
            as_cut = (None, "63 1/4", "fish")[other % 3]
            said = [entry["id"] for entry in self.entries if entry["body"].get("piece") == self.pick("piece", one)]
            self.device.say("state", said[: other % 3], piece=self.pick("piece", one), state=states[other % 5],
                            as_cut=as_cut, cut_to=("63", None, "1/0")[one % 3], left="cope 45", right=None)  # fmt: skip
        elif action == "place":
            text = TEXTS[other % len(TEXTS)]
            self.device.say("reading", of=self.pick("piece", one), what="in_place", text=text)
        elif action == "strike":
            entries = self.entries
            self.device.say("strike", entry=entries[(one * 7 + other) % len(entries)]["id"], why="")
        elif action == "spoil":
            SPOILT[other % len(SPOILT)](self.entries[one % len(self.entries)])
        else:
            self.twins.append({**self.entries[one % len(self.entries)], **TWINS[other % len(TWINS)]})


ACTIONS = (
    "house",
    "room",
    "wall",
    "wall",
    "opening",
    "obstacle",
    "read",
    "read",
    "read",
    "set",
    "issue",
    "mark",
    "mark",
    "place",
    "article",
    "covering",
    "lot",
    "attachment",
    "pin",
    "draw",
    "sum",
    "cover",
    "cover",
    "cover",
    "strike",
    "spoil",
    "twin",
)
ACTS = st.lists(st.tuples(st.sampled_from(ACTIONS), st.integers(0, 59), st.integers(0, 59)), max_size=40)

# Of a cut list: three walls that are read, then lists, what was said of pieces, and what takes either back.
READ = [("wall", 0, 0), ("wall", 3, 0), *(("read", place * 4, text) for place in range(3) for text in (0, 7))]
LISTING = st.lists(
    st.tuples(
        st.sampled_from(("issue", "issue", "mark", "mark", "place", "strike", "read", "opening")),
        st.integers(0, 59),
        st.integers(0, 59),
    ),
    max_size=25,
).map(lambda acts: [*READ, *acts])


def family_of(acts: list[tuple[str, int, int]]) -> Family:
    family = Family()
    for act in acts:
        family.act(*act)
    return family


def everything(desk: Desk) -> str:
    """Every answer about the notebook, as one text."""
    notebook = desk.answer_text('{"ask":"notebook"}')
    houses = json.loads(notebook)["answer"]["houses"]
    rooms = [room["id"] for house in houses for room in house["rooms"]]
    names = ("survey", "pieces", "needs", "plan", "supplies", "coverings", "shopping", "work")
    asked = [{"ask": name, "room": room} for room in rooms for name in names]
    covered = [desk.answer({"ask": "coverings", "room": room}).get("answer", {"rows": []}) for room in rooms]
    asked += [{"ask": "covering", "room": room, "covering": row["id"]}
              for room, found in zip(rooms, covered, strict=True) for row in found["rows"]]  # fmt: skip
    asked += [{"ask": "tape"}, *({"ask": "photo", "attachment": photo} for photo in photos(desk))]
    of_house = ("spent", "stock", "next_rooms", "cautions")
    asked += [{"ask": name, "house": house["id"]} for house in houses for name in of_house]
    return notebook + desk.answer_text(json.dumps(asked))


def photos(desk: Desk) -> list[str]:
    return sorted({str(one.body.get("attachment")) for one in desk.context.notebook.entries.values()})


@given(ACTS | LISTING, st.randoms(use_true_random=False))
def test_any_arrival_order_and_any_repeats_give_the_same_answers(acts, random: Random):
    family = family_of(acts)
    written = [*family.entries, *family.twins]
    arrived = [*written, *random.sample(written, len(written) // 2)]
    random.shuffle(arrived)
    assert everything(Desk(arrived)) == everything(Desk(written))


@given(LISTING)
def test_no_two_pieces_of_a_room_ever_have_one_letter_and_none_that_was_issued_is_lost(acts):
    desk = Desk(family_of(acts).entries)
    notebook = desk.context.notebook
    houses = desk.answer({"ask": "notebook"})["answer"]["houses"]
    for room in (room["id"] for house in houses for room in house["rooms"]):
        answered = desk.answer({"ask": "pieces", "room": room})
        if "error" in answered:  # a standard that cannot be
            continue
        shown = [*answered["answer"]["pieces"], *answered["answer"]["gone"]]
        assert len({one["letter"] for one in shown}) == len(shown)
        lists = notebook.about("issue", room)
        first = {row["key"]: row["piece"] for one in reversed(lists) for row in reversed(one.body["pieces"])}
        standing = [one for one in lists if notebook.strike_of(one.id) is None]
        issued = {first[row["key"]] for one in standing for row in one.body["pieces"]}
        assert issued == {one["id"] for one in shown if one["id"]}


@given(LISTING, st.randoms(use_true_random=False))
def test_a_letter_that_was_settled_is_not_moved_by_entries_with_later_stamps(acts, random: Random):
    family = family_of(acts)
    entries = sorted(family.entries, key=lambda entry: (entry["stamp"], entry["id"]))
    now = random.randrange(len(entries) + 1)
    before, after = Desk(entries[:now]).context.notebook, Desk(entries).context.notebook
    for room in family.subjects["room"]:
        settled = {key: one.letter for key, one in derive_letters(before, room).by_key.items()}
        assert settled.items() <= {key: one.letter for key, one in derive_letters(after, room).by_key.items()}.items()


@given(ACTS, st.randoms(use_true_random=False))
def test_asking_in_between_changes_no_later_answer(acts, random: Random):
    family = family_of(acts)
    arrived = [*family.entries, *family.twins]
    random.shuffle(arrived)
    desk = Desk()
    while arrived:
        desk.take(arrived[:4])
        del arrived[:4]
        asked = everything(desk)
    assert asked == everything(Desk([*family.entries, *family.twins]))


@given(ACTS)
def test_taking_again_all_that_is_there_takes_nothing(acts):
    family = family_of(acts)
    desk = Desk(family.entries)
    before = everything(desk)
    taken = desk.take(json.loads(json.dumps(family.entries)))
    assert taken["taken"] == 0
    assert everything(desk) == before


@given(ACTS)
def test_no_reading_of_a_figure_that_is_asked_for_is_ever_lost_or_changed(acts):
    family = family_of(acts)
    desk = Desk(family.entries)
    sound = [entry for entry in family.entries if not check_entry(entry) and entry["version"] == 1]
    kept = [entry for entry in sound if entry["kind"] == "reading"]
    houses = desk.answer({"ask": "notebook"})["answer"]["houses"]
    for room in (room for house in houses for room in house["rooms"]):
        rows = desk.answer({"ask": "survey", "room": room["id"]}).get("answer", {}).get("rows", ())
        for row in rows:
            whats = {"corner", "sides"} if row["what"] == "corner" else {row["what"]}
            said = {entry["id"]: entry["body"]["text"] for entry in kept
                    if entry["body"]["of"] == row["of"] and entry["body"]["what"] in whats}  # fmt: skip
            # One whose envelope was spoilt may be shown besides: what was read is never hidden for its envelope's sake.
            assert said.items() <= {one["entry"]: one["text"] for one in row["readings"]}.items()


@given(ACTS)
def test_taking_more_never_takes_anything_away(acts):
    desk, seen = Desk(), 0
    for entry in family_of(acts).entries:
        desk.take([entry])
        held = desk.answer({"ask": "notebook"})["answer"]["entries"]
        assert held == seen + 1
        seen = held


def refusals_in_full(data: object) -> list[EngineError]:
    """What the schemas themselves say, without any quick look before them."""
    try:
        parse_entry(data)
    except EngineError as error:
        return [error]
    return []


@given(ACTS)
def test_the_quick_look_at_an_entry_finds_what_the_full_check_finds(acts):
    for data in family_of(acts).entries:
        full = [error.body() for error in refusals_in_full(data)]
        assert [error.body() for error in check_entry(data)] == full, data


@given(ACTS)
def test_the_quick_look_at_a_body_finds_what_the_full_check_finds(acts):
    for data in family_of(acts).entries:
        entry = admit_entry(data)
        if entry.known and type(data["seq"]) is int and type(data["version"]) is int:
            assert fits(entry) == (not refusals_in_full(data)), data


JSON = st.recursive(
    st.none() | st.booleans() | st.integers(-(2**70), 2**70) | st.floats() | st.text(max_size=8) | st.just("\ud800"),
    lambda below: st.lists(below, max_size=3) | st.dictionaries(st.text(max_size=5), below, max_size=3),
    max_leaves=8,
)
PLACES = ("id", "device", "seq", "stamp", "version", "kind", "body", "supersedes", "more")


@given(ACTS.filter(len), st.integers(0, 40), st.sampled_from(PLACES), JSON, st.booleans())
def test_anything_at_all_in_place_of_any_part_of_an_entry_does_no_harm(acts, number, place, value, below):
    entries = json.loads(json.dumps(family_of(acts).entries))
    entry = entries[number % len(entries)]
    if below and entry["body"]:
        entry["body"][sorted(entry["body"])[number % len(entry["body"])]] = value
    else:
        entry[place] = value
    assert len(check_entry(entry)) == len(refusals_in_full(entry))
    desk = Desk()
    for name in ("take", "check"):
        answered = desk.answer({"ask": name, "entries": entries})
        assert answered.keys() <= {"answer", "error"}
    everything(desk)


@pytest.mark.parametrize("junk", [None, 5, "entry", [], [[]], True, {}], ids=repr)
def test_what_is_no_entry_is_named_and_left_out(junk):
    answered = Desk().take([junk])
    assert answered["taken"] == 0
    assert [one["key"] for one in answered["refused"]] == ["not-an-entry"]
