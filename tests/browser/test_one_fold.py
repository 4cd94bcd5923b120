"""The page's fold against the notebook's: what JavaScript must know to write an entry is what the engine knows.

Random journals, as the notebook's own laws make them, folded by both: by CPython here and by the page's modules in a
browser. No engine runs in the page.
"""

import json
from collections.abc import Iterator
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Page
from scantling.engine.bodies import BODIES
from scantling.engine.journal import Entry, fits
from scantling.engine.notebook import SUBJECTS, Notebook, fold
from scantling.engine.questions.shown_in import find_shown_in

from tests.browser.test_screens import title
from tests.engine.test_notebook_laws import ACTIONS, family_of
from tests.parity_questions import DEMO

JOURNALS = 320
#: More that is struck, and more walls, than the notebook's laws need.
OFTEN = (*ACTIONS, "wall", "strike", "strike", "strike", "strike")
KINDS = ("house", "room", "wall", "opening", "obstacle")
TICK = ("of", "list", "key")
FOLD = """async (journals) => {
  const { build } = document.documentElement.dataset;
  const { outline } = await import(`/v/${build}/notebook/outline.js`);
  const { inForce, standing } = await import(`/v/${build}/notebook/fold.js`);
  return journals.map(({ entries, asked }) => {
    const found = outline(entries);
    return {
      houses: found.houses,
      rooms: [...found.rooms.keys()],
      readings: Object.fromEntries(found.readings),
      struck: found.struck.map(({ kind, id, strikes }) => [kind, id, strikes]),
      heads: asked.map(([kind, about]) => [inForce(entries, kind, about), standing(entries, kind, about)]),
    };
  });
}"""


@pytest.fixture
def page(laptop, new_sleeper) -> Page:
    made = new_sleeper().new_page()
    made.goto(laptop.url)
    title(made).wait_for()
    return made


def journal(seed: int) -> list[dict[str, Any]]:
    """A journal by chance, without what a device does not keep at all."""
    random = Random(seed)
    acts = [(random.choice(OFTEN), random.randrange(60), random.randrange(60)) for _ in range(random.randrange(80))]
    entries = family_of(acts).entries
    kept = fold(entries).entries
    random.shuffle(entries)
    return [entry for entry in entries if entry["id"] in kept]


def subjects(notebook: Notebook) -> list[tuple[str, dict[str, str]]]:
    """What a person may say again: each thing, each setting, each piece."""
    readable = [entry for entry in notebook.entries.values() if notebook._is_fit(entry)]
    things = {(entry.kind, entry.body[entry.kind]) for entry in readable if entry.kind in SUBJECTS}
    ticks = {tuple(entry.body[name] for name in TICK) for entry in readable if entry.kind == "tick"}
    states = {("piece", entry.body["piece"]) for entry in readable if entry.kind == "state"}
    settings = {(entry.body["of"], entry.body["name"]) for entry in readable if entry.kind == "setting"}
    return [
        *((kind, {kind: subject}) for kind, subject in sorted(things)),
        *(("state", {name: piece}) for name, piece in sorted(states)),
        *(("setting", {"of": of, "name": name}) for of, name in sorted(settings)),
        *(("tick", dict(zip(TICK, tick, strict=True))) for tick in sorted(ticks)),
    ]


def statements(notebook: Notebook, kind: str, about: dict[str, str]) -> list[Any]:
    if kind == "setting":
        return [one for one in notebook.about("setting", about["of"]) if one.body["name"] == about["name"]]
    if kind == "tick":
        said = notebook.about("tick", about["of"])
        return [one for one in said if all(one.body[name] == value for name, value in about.items())]
    return notebook.about("state", about["piece"]) if kind == "state" else notebook.about(f"the {kind}", about[kind])


def expected(notebook: Notebook) -> dict[str, Any]:
    houses = [
        {
            **facts("house", house, shown),
            "lengths": find_shown_in({"house": house}, notebook),
            "rooms": [room_of(notebook, *room) for room in notebook.children("room", house)],
        }
        for house, shown, _ in notebook.houses()
    ]
    asked = subjects(notebook)
    readings: dict[str, list[dict[str, Any]]] = {}
    for of in sorted({str(one.body.get("of")) for one in notebook.entries.values() if one.kind == "reading"}):
        if found := notebook.about("reading", of):
            readings[of] = [{"of": of, "entry": one.id, "text": one.body["text"], "what": one.body["what"],
                             "struck": notebook.strike_of(one.id) is not None, "strike": notebook.strike_of(one.id)}
                            for one in found]  # fmt: skip
    return {
        "houses": houses,
        "rooms": [room["id"] for house in houses for room in house["rooms"]],
        "readings": readings,
        "struck": [
            [kind, about[kind], [notebook.strike_of(one.id) for one in said]]
            for kind, about in asked
            if kind in KINDS
            for said in [statements(notebook, kind, about)]
            if all(notebook.strike_of(one.id) for one in said)
        ],
        "heads": [
            [[one.id for one in notebook.heads(said)], [one.id for one in said if not notebook.strike_of(one.id)]]
            for said in (statements(notebook, *one) for one in asked)
        ],
    }


def facts(kind: str, subject: str, shown: Any) -> dict[str, Any]:
    return {**{name: value for name, value in shown.body.items() if name != kind}, "id": subject}


def room_of(notebook: Notebook, room: str, shown: Any, _: object) -> dict[str, Any]:
    walls = [
        {
            **facts("wall", wall, said),
            "number": number,
            **{f"{kind}s": [facts(kind, one, head) for one, head, _ in notebook.children(kind, wall)]
               for kind in ("opening", "obstacle")},
        }
        for number, (wall, said, _) in enumerate(notebook.walls(room), start=1)
    ]  # fmt: skip
    return {**facts("room", room, shown), "walls": walls}


def test_the_page_folds_every_journal_as_the_notebook_does(page):
    journals = [journal(seed) for seed in range(JOURNALS)]
    notebooks = [fold(entries) for entries in journals]
    given = [
        {"entries": entries, "asked": subjects(notebook)} for entries, notebook in zip(journals, notebooks, strict=True)
    ]
    found = page.evaluate(FOLD, given)
    for seed, (one, notebook) in enumerate(zip(found, notebooks, strict=True)):
        one["struck"].sort(key=lambda struck: (struck[0], struck[1]))
        wanted = expected(notebook)
        wanted["struck"].sort(key=lambda struck: (struck[0], struck[1]))
        assert one == wanted, f"the journal of seed {seed}"
    assert sum(len(room["walls"]) for one in found for house in one["houses"] for room in house["rooms"]) > 250
    assert sum(len(one["struck"]) for one in found) > 50


IDS = ("0190aaaa-0000-7000-8000-00000000000a", "00000001-0000-4000-8000-aaaaaaaaaaaa")
#: What the page writes as the engine gives it, and never reads.
UNREAD = {"device", "plan"}
#: A body of each kind that the demo house has none of, or that others have more of.
BODY = {
    "article": {"article": IDS[0], "house": IDS[1], "sort": "paper", "name": "Fern"},
    "attachment": {"attachment": IDS[0], "of": IDS[1], "blob": "0a" * 32, "size": 1, "type": "image/jpeg", "name": ""},
    "covering": {"covering": IDS[0], "room": IDS[1], "article": IDS[1]},
    "free": {"free": IDS[0], "room": IDS[1], "name": "shelf", "profile": "pine", "text": "12", "count": "3"},
    "issue": {"list": IDS[0], "room": IDS[1], "pieces": [
        {"piece": IDS[0], "key": "k", "letter": "A", "name": "base", "profile": "", "cut": "12", "shown": "12"},
    ]},
    "lot": {"lot": IDS[0], "of": IDS[1], "article": None, "name": "roll", "count": "2", "price": "", "date": "",
            "note": ""},
    "pin": {"pin": IDS[0], "attachment": IDS[1], "of": IDS[1], "what": "length", "x": 0, "y": 10_000},
    "setting": {"of": IDS[0], "name": "base.stock", "value": [{"length": "8 ft", "limit": None}]},
    "state": {"piece": IDS[0], "state": "cut", "cut_to": "12", "left": None, "right": None, "as_cut": None},
    "strike": {"entry": IDS[0], "why": ""},
    "stroke": {"attachment": IDS[0], "points": [[0, 0], [1, 10_000]]},
    "sum": {"sum": IDS[0], "of": None, "text": "1 + 1", "note": ""},
    "test_cut": {"of": IDS[0], "what": "corner", "text": "45.5 fits"},
    "tick": {"of": IDS[0], "list": "work", "key": "k", "state": "done", "remember": ""},
}  # fmt: skip
#: What stands in a field that ought not to, or just may.
ODD = (
    None, True, 0, 1, -1, 1.5, 9_999, 10_000, 10_001, 32_000_001, {}, [], [[0, 0]], [[0, 0], [1, 10_001]], [None],
    [{}], [{"length": "8 ft"}], [{"length": 8}], [{"length": "8" * 2001}], "", " ", "\n", "\u2028", "\x85", "\ufeff",
    "0", "007", "7", "1234", "12 1/2", "12\n", "a\nb", "٣", "2026-02-30", "٢٠٢٦-٠٢-٠٣", "A", "a.b", "a.b.c.d.e",
    "image/jpeg", "image/JPEG", "width", "salvaged", "no such", "ceiling_corner", "cut", "hung", "paper", "cased",
    "outside", "over",
    IDS[1], IDS[1].upper(), IDS[1] + "\n", "0b" * 32, "😀" * 60, "😀" * 61, "x" * 80, "x" * 81, "x" * 200, "x" * 201,
    "x" * 500, "x" * 501, "x" * 1000, "x" * 1001, "😀" * 2000, "x" * 2001,
)  # fmt: skip


def bodies() -> Iterator[tuple[str, dict[str, Any]]]:
    """Sound bodies of every kind, and each with a field that is odd, missing or too much."""
    demo = json.loads(DEMO.read_text(encoding="utf-8"))["entries"]
    sound = {**{entry["kind"]: entry["body"] for entry in demo}, **BODY}
    for kind in sorted(BODIES.keys() - UNREAD):
        body = sound[kind]
        yield kind, body
        yield kind, {**body, "more": ""}
        for name in body:
            yield kind, {each: value for each, value in body.items() if each != name}
            yield from ((kind, {**body, name: odd}) for odd in ODD)


def test_the_page_reads_what_the_notebook_reads_and_nothing_else(page):
    made = [
        {"id": f"{place:08x}-0000-7000-8000-000000000000", "device": "0" * 16, "seq": place + 1, "version": 1,
         "stamp": f"{place:012x}-0000-{'0' * 16}", "kind": kind, "body": body, "supersedes": []}
        for place, (kind, body) in enumerate(bodies())
    ]  # fmt: skip
    read = set(page.evaluate(
        """async (entries) => {
          const { build } = document.documentElement.dataset;
          const { readable } = await import(`/v/${build}/notebook/fold.js`);
          return readable(entries).map(({ id }) => id);
        }""",
        made,
    ))  # fmt: skip
    wanted = {one["id"] for one in made if fits(Entry(**{**one, "supersedes": ()}))}
    differ = [(one["kind"], one["body"]) for one in made if (one["id"] in wanted) != (one["id"] in read)]
    assert differ == []
    assert 400 < len(wanted) < len(made) / 2


def test_the_outline_of_a_large_house_takes_no_longer_by_its_square(page):
    """Rooms of walls that follow each other: four times the walls may not take ten times as long."""
    took = page.evaluate(
        """async () => {
          const { build } = document.documentElement.dataset;
          const { outline } = await import(`/v/${build}/notebook/outline.js`);
          const id = (n) => `00000000-0000-7000-8000-${n.toString(16).padStart(12, "0")}`;
          const journalOf = (rooms, walls) => {
            const entries = [];
            const say = (kind, body) => entries.push({ id: id(1e6 + entries.length), version: 1, kind, body,
              stamp: (1e12 + entries.length).toString(16), supersedes: [] });
            say("house", { house: id(1), name: "h", built: null });
            for (let r = 0; r < rooms; r += 1) {
              say("room", { room: id(1000 + r), house: id(1), name: "r", closed: true });
              for (let w = 0; w < walls; w += 1) {
                const wall = 1e5 + r * walls + w;
                say("wall", { wall: id(wall), room: id(1000 + r), after: w ? id(wall - 1) : null, turn: "inside" });
              }
            }
            return entries;
          };
          const best = (entries) => Math.min(...Array.from({ length: 7 }, () => {
            const begun = performance.now();
            outline(entries);
            return performance.now() - begun;
          }));
          best(journalOf(10, 50));
          return [best(journalOf(20, 50)), best(journalOf(80, 50)), best(journalOf(5, 800))];
        }"""
    )
    small, more_rooms, longer_rows = took
    assert more_rooms < 10 * small
    assert longer_rows < 10 * small
