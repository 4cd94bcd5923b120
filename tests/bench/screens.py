"""The page under a finger: how long it stands still, how far it moves by itself, how many touches a room takes.

The demo house on a processor slowed by the browser's own throttle, which reaches the page and not its workers: what is
slowed is what draws, and what could make a touch wait. Nothing of Playwright's own looks into the page meanwhile, for
what reads a page to a test takes longer than the page does.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from playwright.sync_api import Browser, Page, expect
from row import Row  # a folder, not a package
from scantling.site import Site

from tests.browser.conftest import CONTROLLED, PATIENCE, Laptop
from tests.browser.still import WATCH_SHIFTS, worst_window
from tests.browser.touch import press, title, touch
from tests.look.places import fill

SLOWED = 4
PHONE = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True, "device_scale_factor": 2}
AWAKE = "() => performance.getEntriesByName('engine awake').length > 0"
#: Long tasks as the W3C's Long Tasks defines them.
WATCH = f"""{WATCH_SHIFTS}
globalThis.tasks = [];
new PerformanceObserver((list) => {{
  for (const {{ duration }} of list.getEntries()) tasks.push(duration);
}}).observe({{ type: "longtask", buffered: true }});
"""
SEEN = "() => { const was = { tasks, shifts }; globalThis.tasks = []; globalThis.shifts = []; return was; }"
#: Where to touch for the way to a place, once it is on the screen.
WAY = """(place) => {
  const way = document.querySelector(`a[href="#/${place}"]`);
  way?.scrollIntoView({ block: "center" });
  const { x, y, width, height } = way?.getBoundingClientRect() ?? {};
  return way ? [x + width / 2, y + height / 2] : null;
}"""
THERE = """(place) => location.hash === `#/${place}` && document.querySelectorAll("main *").length > 2
  && !/being worked out/.test(document.querySelector("main").textContent)"""
#: From the survey round the main screens, as a person goes: by the tabs, and back from what fills the screen.
ROUND = ("pieces", "pieces/A", "boards", "cover", "supplies", "sums", "house", "house/money", "survey", "survey/walk")
TOUCHES = "addEventListener('pointerdown', () => { globalThis.touched = (globalThis.touched ?? 0) + 1; }, true);"


@dataclass(slots=True)
class Seen:
    """What a page did by itself, by screen: how long it stood still (ms), and its shifts (when, how much)."""

    tasks: dict[str, list[float]] = field(default_factory=dict)
    shifts: dict[str, list[list[float]]] = field(default_factory=dict)

    def note(self, page: Page, place: str) -> None:
        page.wait_for_timeout(1500)  # what still comes of a screen comes now
        said = page.evaluate(SEEN)
        self.tasks[place], self.shifts[place] = said["tasks"], said["shifts"]


def go_round(page: Page) -> Seen:
    """Opens the page with what the phone has, and goes through its main screens by touch."""
    seen = Seen()
    page.reload()
    page.wait_for_function(AWAKE)
    seen.note(page, "opening the page")
    for place in ROUND:
        if not (way := page.evaluate(WAY, place)):
            page.evaluate("history.back()")
            page.wait_for_function(f"({WAY})({place!r})")
            way = page.evaluate(WAY, place)
        page.touchscreen.tap(*way)
        page.wait_for_function(THERE, arg=place)
        seen.note(page, place)
    return seen


def measure_stillness(browser: Browser, work: Path) -> Iterator[Row]:
    """The longest time that the page answers nothing, and how far it moves by itself, at the worst of its screens.

    Of several rounds the least time at each screen: what else the machine does can only add to it. The most movement.
    """
    laptop = Laptop(work / "data-round", Site())
    fill(laptop.data)
    laptop.start()
    try:
        page = browser.new_context(**PHONE).new_page()
        page.set_default_timeout(PATIENCE)
        page.goto(laptop.url)
        page.evaluate(CONTROLLED)
        page.wait_for_selector("main svg")  # the engine has answered: from now on there is something to be kept
        page.wait_for_timeout(3000)
        page.add_init_script(WATCH)
        page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
        rounds = [go_round(page) for _ in range(3)]
        page.context.close()
    finally:
        laptop.stop()
    tasks = {place: min(max(seen.tasks[place], default=0) for seen in rounds) for place in rounds[0].tasks}
    shifts = {place: max(1000 * worst_window(seen.shifts[place]) for seen in rounds) for place in rounds[0].shifts}
    yield Row(f"longest stand of the page, slowed {SLOWED} times: {most(tasks)}", max(tasks.values()), "ms", 200)
    yield Row(f"how far it moves by itself, in thousandths: {most(shifts)}", max(shifts.values()), "", 50)


def most(figures: dict[str, float]) -> str:
    return max(figures, key=lambda place: figures[place])


#: The corners of an invented room of twelve walls, round a chimney breast and past two closets.
IN, OUT = "inside", "outside"
TURNS = (IN, IN, IN, OUT, OUT, IN, IN, OUT, IN, IN, OUT)
FIGURE = "63 1/4"
READINGS = 40


def walk_round(page: Page) -> None:
    """From the door of an empty notebook round twelve walls: a door and two windows on the way."""
    page.get_by_label("The first room").fill("Landing")
    touch(page, "Start at the door")
    touch(page, "Door in this wall")
    expect(page.get_by_role("button", name="Strike the door")).to_be_visible()
    for number, turn in enumerate(TURNS, start=2):
        touch(page, f"Next wall: {turn} corner")
        expect(page.get_by_role("heading", name=f"You face wall {number}", exact=True)).to_be_visible()
        if number in (3, 8):
            touch(page, "Window in this wall")
            expect(page.get_by_role("button", name="Strike the window")).to_be_visible()
    touch(page, "Back at the first wall")


def touches_of(page: Page) -> list[int]:
    """Reads whatever the screen asks for, and gives how many touches each reading took: the figures, the mark, Save."""
    touches: list[int] = []
    touch(page, "Read it")
    expect(page.get_by_role("button", name="Rub out")).to_be_visible()
    while "/read/" in page.url and len(touches) < READINGS:
        heading = title(page).inner_text()
        before = page.evaluate("touched")
        press(page, "90" if heading.startswith("corner") else FIGURE)
        touch(page, "Save")
        expect(title(page)).not_to_have_text(heading)
        touches.append(page.evaluate("touched") - before)
    return touches


def measure_touches(browser: Browser, work: Path) -> Iterator[Row]:
    """A whole room by touch alone: 12 walls, 3 openings and all that is wanted of them, up to 40 readings."""
    laptop = Laptop(work / "data-touched", Site()).start()
    try:
        page = browser.new_context(**PHONE).new_page()
        page.set_default_timeout(PATIENCE)
        page.add_init_script(TOUCHES)
        page.goto(laptop.url)
        walk_round(page)
        walked = page.evaluate("touched")
        touches = touches_of(page)
        page.context.close()
    finally:
        laptop.stop()
    yield Row("touches to walk round 12 walls with 3 openings", walked, "")
    yield Row("readings taken of it by touch", len(touches), "")
    yield Row(f"most touches for one of them, {FIGURE} or a corner of 90", max(touches), "", 4)
