"""What is struck: the page may not think otherwise than the engine, whatever order the stamps would put strikes in."""

from random import Random

import pytest
from scantling.engine.notebook import fold

STRIKES = """async (entries) => {
  const { readable, strikesIn } = await import(`/v/${document.documentElement.dataset.build}/notebook/fold.js`);
  return [...strikesIn(readable(entries))];
}"""


def entry(number, stamp, kind="device", **body):
    return {
        "id": f"{number:08x}-0000-4000-8000-000000000000", "device": "a" * 16, "seq": number, "version": 1,
        "stamp": f"{stamp:012x}-0000-{'a' * 16}", "kind": kind, "body": body, "supersedes": [],
    }  # fmt: skip


def strikes_among(chance, count):
    """Strikes of strikes, some in rings, none in the order of its stamp."""
    made = [entry(0, 500, name="x")]
    for number in range(1, count):
        struck = entry(chance.randrange(count), 0)["id"]
        made.append(entry(number, chance.randrange(1000), "strike", entry=struck, why=""))
    return sorted(made, key=lambda one: (one["stamp"], one["id"]))


@pytest.fixture
def page(bare, new_sleeper):
    made = new_sleeper().new_page()
    made.goto(bare.url)
    made.wait_for_function("() => globalThis.services")
    return made


def test_a_room_restored_by_a_phone_with_a_slow_clock_is_restored_on_the_page_too(page):
    struck = entry(1, 900, "strike", entry=entry(0, 0)["id"], why="")
    restored = entry(2, 100, "strike", entry=struck["id"], why="")
    assert page.evaluate(STRIKES, [restored, entry(0, 800, name="x"), struck]) == [[struck["id"], restored["id"]]]


def test_the_page_takes_for_struck_what_the_engine_does(page):
    for seed in range(60):
        entries = strikes_among(Random(seed), 12)
        notebook = fold(entries)
        here = {one["id"]: notebook.strike_of(one["id"]) for one in entries}
        there = dict(page.evaluate(STRIKES, entries))
        assert {key: strike for key, strike in here.items() if strike} == there, seed
