"""A hand on the phone: what a person touches to record a room, so that each test can say what it is about.

Also the same room ready made, as another phone would have sent it to the laptop, for tests of something else.
"""

import json
from collections.abc import Mapping, Sequence
from itertools import count
from typing import Any
from urllib.request import Request, urlopen

from playwright.sync_api import Locator, Page, TimeoutError, expect

#: An invented room of eight walls, from the door round to the right: opposite the door stands a chimney breast.
CORNERS = ("inside", "inside", "inside", "outside", "outside", "inside", "inside")
#: What the tape and the gauge read, by how the screen asks for it. Corner 2 is not square.
READ: Mapping[str, str] = {
    "wall 1, left corner to the door": "30 1/4",
    "wall 1, door, jamb to jamb": "32 1/8",
    "wall 1, door, height at the left": "80 3/16",
    "wall 1, door, height at the right": "80 1/8",
    "wall 1, along the floor": "143 7/8",
    "wall 2, left corner to the cabinet": "84",
    "wall 2, cabinet": "24 1/2",
    "wall 2, along the floor": "120 1/16",
    "wall 3, along the floor": "42 1/8",
    "wall 4, along the floor": "16 3/16",
    "wall 5, along the floor": "59 7/8",
    "wall 6, along the floor": "16 1/4",
    "wall 7, along the floor": "41 15/16",
    "wall 8, along the floor": "119 7/8",
    "corner 2": "91",
    "corner": "90",
}


def button(page: Page, name: str) -> Locator:
    """The button with these words in it: some carry what comes next on a second line."""
    return page.get_by_role("button", name=name)


def touch(page: Page, name: str) -> None:
    button(page, name).first.tap()


def unfold(page: Page, words: str, shows: Locator) -> None:
    """Opens what is folded away under these words; once more where the page moved under the finger."""
    for _ in range(5):
        page.get_by_text(words, exact=True).tap()
        try:
            return shows.wait_for(timeout=5_000)
        except TimeoutError:
            continue
    raise AssertionError(f"nothing unfolds under {words}")


def title(page: Page) -> Locator:
    return page.get_by_role("heading", level=1)


def visit(page: Page, *place: str) -> None:
    """To another place of the page, as its tabs and links do, without loading it again."""
    page.evaluate("place => { location.hash = place; }", f"#/{'/'.join(place)}")


def awake(page: Page) -> None:
    expect(page.locator(".status")).not_to_contain_text("engine", timeout=60_000)


def current(page: Page) -> None:
    """Until what is shown is no longer what was worked out before the last entries."""
    expect(page.locator(".older:not(.no-more)")).to_have_count(0)


def start_house(page: Page, house: str = "Alder Street", built: str = "1936", room: str = "Sewing room") -> None:
    page.get_by_text("Name the house, and its year").click()
    page.get_by_label("Name of the house").fill(house)
    page.get_by_label("Year it was built").fill(built)
    page.get_by_label("The first room").fill(room)
    touch(page, "Start at the door")


def walk(page: Page, corners: Sequence[str] = CORNERS) -> None:
    """Round the room with a door in the first wall and a cabinet in the second, back to the first."""
    touch(page, "Door in this wall")
    expect(page.get_by_role("button", name="Strike the door")).to_be_visible()
    for number, turn in enumerate(corners, start=2):
        touch(page, f"Next wall: {turn} corner")
        expect(page.get_by_role("heading", name=f"You face wall {number}", exact=True)).to_be_visible()
        if number == 2:
            touch(page, "Cabinet, tub, tile or other thing")
            touch(page, "Save")
            expect(page.get_by_role("button", name="Strike the cabinet")).to_be_visible()
    touch(page, "Back at the first wall")


def press(page: Page, text: str) -> None:
    """Digits on the pad, then the mark on the inch, for a text such as 63 5/16."""
    whole, _, mark = text.partition(" ")
    for digit in whole:
        page.get_by_role("button", name=digit, exact=True).tap()
    if mark:
        page.locator(f'[data-mark="{mark}"]').tap()


def asked_for(heading: str) -> str:
    """What there is to read at the place that the screen names."""
    return next(text for place, text in READ.items() if heading.startswith(place))


def read_everything(page: Page) -> list[str]:
    """Reads whatever the screen asks for, until it asks for nothing. Gives what was asked for, in order."""
    asked: list[str] = []
    touch(page, "Read it")
    expect(page.get_by_role("button", name="Rub out")).to_be_visible()
    while "/read/" in page.url:
        heading = title(page).inner_text()
        asked.append(heading)
        press(page, asked_for(heading))
        touch(page, "Save")
        expect(title(page)).not_to_have_text(heading)
        assert len(asked) < 60, "the screen asks without end"
    return asked


#: A busy machine may take this long to wake the engine and answer.
expect.set_options(timeout=30_000)

OTHER_PHONE = "00000000000000d1"


def entity(number: int) -> str:
    return f"00000000-0000-7000-8000-{number:012x}"


def walked_room(*, read: bool = False) -> list[dict[str, Any]]:
    """The entries of the invented room, walked round as `walk` does it; with `read`, every figure once."""
    numbers = count(1)

    def entry(said: str, **body: Any) -> dict[str, Any]:
        seq = next(numbers)
        stamp = f"{0x19A00000000 + seq:012x}-0000-{OTHER_PHONE}"
        return {"id": entity(1000 + seq), "device": OTHER_PHONE, "seq": seq, "stamp": stamp, "version": 1, "kind": said,
                "body": body, "supersedes": []}  # fmt: skip

    house, room, door, cabinet = (entity(number) for number in (900, 901, 902, 903))
    walls = [entity(number) for number in range(1, 9)]
    entries = [
        entry("house", house=house, name="Alder Street", built=1936),
        entry("room", room=room, house=house, name="Sewing room", closed=True),
    ]
    for wall, after, turn in zip(walls, [None, *walls], [*CORNERS, "inside"], strict=False):
        entries.append(entry("wall", wall=wall, room=room, after=after, turn=turn))
    entries.append(entry("opening", opening=door, wall=walls[0], kind="door"))
    entries.append(entry("obstacle", obstacle=cabinet, wall=walls[1], kind="cabinet", base="stops"))
    if read:
        things = {
            door: {"at": "left corner to the door", "width": "door, jamb to jamb", "left": "door, height at the left",
                   "right": "door, height at the right"},
            cabinet: {"at": "left corner to the cabinet", "width": "cabinet"},
        }  # fmt: skip
        for (thing, figures), number in zip(things.items(), (1, 2), strict=True):
            for what, place in figures.items():
                entries.append(entry("reading", of=thing, what=what, text=READ[f"wall {number}, {place}"]))
        for number, wall in enumerate(walls, start=1):
            entries += [entry("reading", of=wall, what="length", text=READ[f"wall {number}, along the floor"]),
                        entry("reading", of=wall, what="corner", text=asked_for(f"corner {number}"))]  # fmt: skip
    return entries


def send(url: str, entries: Sequence[dict[str, Any]]) -> None:
    """Entries to the laptop, from a phone that is not in the test."""
    body = {"protocol": 2, "device": OTHER_PHONE, "database": None, "cursor": 0}
    for _ in range(2):  # the first exchange only learns which database this is
        said = json.dumps({**body, "entries": list(entries)}).encode()
        with urlopen(Request(f"{url}api/sync", data=said, headers={"Content-Type": "application/json"})) as reply:
            answer = json.load(reply)
        body["database"] = answer["database"]
    assert answer["rejected"] == []
