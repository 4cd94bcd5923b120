"""How soon a room answers after something of it changed: in a real browser, in the demo house's larger room.

Each figure is the middle one of several changes, each a new reading that no answer was ever made of.
"""

import json
import statistics
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from page_bench import bare_folder, calibrated, kept_page, served, show, slowed, start
from playwright.sync_api import Browser, Page
from row import Row

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.entries import Device, House

DEMO = Path(__file__).resolve().parents[2] / "demo" / "house.json"
CHANGES = 7
ROOMS = 20
LARGE = 96

#: Takes each list of entries in turn, asks the same questions after each; ms for every question, and for asking again.
ASK = """async ([changes, questions]) => {
  const { engine } = services;
  const took = questions.map(() => []);
  const again = questions.map(() => []);
  for (const entries of changes) {
    await engine.ask({ ask: "take", entries });
    for (const into of [took, again]) {
      for (const [place, question] of questions.entries()) {
        const begun = performance.now();
        const { answer } = await engine.ask(question);
        if (!answer) throw new Error(JSON.stringify(question));
        into[place].push(performance.now() - begun);
      }
    }
  }
  const middle = (list) => list.sort((a, b) => a - b)[list.length >> 1];
  return [took.map(middle), again.map(middle)];
}"""


def changes_of(device: Device, count: int, say: Any) -> list[list[dict[str, Any]]]:
    """So many lists of new entries, one entry each."""
    made = []
    for place in range(count):
        before = len(device.entries)
        say(place)
        made.append(device.entries[before:])
    return made


def ask(page: Page, entries: list[Any], changes: list[Any], questions: list[Any]) -> tuple[list[float], list[float]]:
    """Milliseconds for each question after a change, and for the same question again."""
    for start_at in range(0, len(entries), 1000):
        some = entries[start_at : start_at + 1000]
        page.evaluate("(entries) => services.engine.ask({ ask: 'take', entries })", some)
    first, *rest = changes
    page.evaluate(ASK, [[first], questions])  # what is loaded when it is first asked is loaded
    took, again = page.evaluate(ASK, [rest, questions])
    return took, again


def demo_room() -> tuple[list[Any], str, str]:
    """The demo house's entries, the room of most walls, and one of them."""
    entries = json.loads(DEMO.read_text(encoding="utf-8"))["entries"]
    walls = [entry["body"] for entry in entries if entry["kind"] == "wall"]
    rooms = [wall["room"] for wall in walls]
    room = max(rooms, key=rooms.count)
    return entries, room, next(wall["wall"] for wall in walls if wall["room"] == room)


def house_of(rooms: int) -> House:
    """A house of closed rooms of eight walls."""
    house = House()
    for place in range(rooms):
        if place:
            house.walls, house.room = [], house.new("room", house=house.house, name=f"room {place}", closed=True)
        for number in range(8):
            house.wall(("120", "96")[number % 2], turn=("inside", "inside", "inside", "outside")[number % 4])
    return house


def measure_demo(page: Page, slow: bool) -> Iterator[Row]:
    entries, room, wall = demo_room()
    device = Device("d", 0x1A0000000000 + slow)
    changes = changes_of(device, CHANGES, lambda place: device.read(wall, "length", f"14{place} 3/{16 << slow}"))
    questions = [{"ask": name, "room": room} for name in ("survey", "pieces", "piece_rows")]
    (survey, pieces, rows), again = ask(page, entries, changes, questions)
    if slow:
        yield Row("survey and pieces after a reading, slowed", survey + pieces, "ms", 400)
        return
    yield Row("survey after a reading", survey, "ms", 60)
    yield Row("pieces after that", pieces, "ms", 100)
    yield Row("rows of pieces after that", rows, "ms", 100)
    yield Row("the same survey again", again[0], "ms", 5)
    yield Row("the same pieces again", again[1], "ms", 5)


def measure_house(page: Page) -> Iterator[Row]:
    house = house_of(ROOMS)
    known = list(house.entries)

    def say(place: int) -> None:
        house.say("setting", of=house.house, name="base.thickness", value=f"{place + 5}/16")

    questions = [{"ask": "survey", "room": house.room}, {"ask": "piece_rows", "room": house.room}, {"ask": "notebook"}]
    (survey, rows, notebook), _ = ask(page, known, changes_of(house, CHANGES, say), questions)
    yield Row(f"a setting in a house of {ROOMS} rooms: the room in hand", survey + rows, "ms", 150)
    yield Row("and all its rooms by name, with what each still wants", notebook, "ms")


def seams_of(room: str) -> dict[str, Any]:
    """A seam plan all round: a half-drop, every start tried."""
    roll = {"width": "20 1/2", "length": "33 ft", "repeat": "21", "match": "half-drop"}
    return {"ask": "seams", "room": room, "height": "96 1/4", "roll": roll}


def measure_seams(page: Page) -> Iterator[Row]:
    """By the processor's time under CPython, for nothing waits there; and as it is waited for in the browser."""
    from scantling.engine.desk import Desk

    entries, room, wall = demo_room()
    desk, took = Desk(entries), []
    desk.answer(seams_of(room))
    for _ in range(CHANGES):
        begun = time.process_time()
        desk.answer(seams_of(room))
        took.append(time.process_time() - begun)
    yield Row("a seam plan of 16 walls, CPython", 1000 * statistics.median(took), "ms", 100)
    device = Device("e", 0x1B0000000000)
    changes = changes_of(device, CHANGES, lambda place: device.read(wall, "length", f"14{place} 5/16"))
    (seams,), _ = ask(page, entries, changes, [seams_of(room)])
    yield Row("a seam plan of 16 walls, in the browser", seams, "ms", 300)


def measure_sizes() -> Iterator[Row]:
    from scantling.engine.desk import Desk

    house = House(closed=False)
    for _ in range(LARGE):
        house.wall("120", corner="89.9")
    desk = Desk(house.entries)
    for name in ("pieces", "piece_rows"):
        text = desk.answer_text(json.dumps({"ask": name, "room": house.room}))
        most = 60 if name == "piece_rows" else None
        yield Row(f"{name} of a room of {LARGE} walls", len(text) / 1000, "kB", most)


def measure(browser: Browser, work: Path) -> Iterator[Row]:
    yield from measure_sizes()
    with served(work, "bare", bare_folder(work)) as laptop:
        page = kept_page(browser, laptop)
        start(page)
        yield from measure_demo(page, slow=False)
        yield from measure_house(page)
        yield from measure_seams(page)
        rate, factor = calibrated(page)
        yield Row("how much slower the slowed processor was", factor, "x")
        with slowed(rate):
            yield from measure_demo(page, slow=True)
        page.context.close()


def main() -> int:
    """Prints the table; the exit status says whether a target was missed."""
    return show(measure)


if __name__ == "__main__":
    sys.exit(main())
