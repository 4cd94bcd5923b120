"""The page's fold against the notebook's: what JavaScript must know to write an entry is what the engine knows.

Random journals, as the notebook's own laws make them, folded by both: by CPython here and by the page's modules in a
browser. No engine runs in the page.
"""

from random import Random
from typing import Any

import pytest
from playwright.sync_api import Page
from scantling.engine.notebook import SUBJECTS, Notebook, fold
from scantling.engine.questions.shown_in import find_shown_in

from tests.browser.test_screens import title
from tests.engine.test_notebook_laws import ACTIONS, family_of

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
