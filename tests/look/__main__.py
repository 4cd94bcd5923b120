"""`python3 tests look`: pictures of every screen at every size and in both themes, for a person to look at."""

import sys
import tempfile
from pathlib import Path

from playwright.sync_api import Browser, Page, sync_playwright

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "bench")]

from scantling.site import Site  # noqa: E402

from tests.browser.conftest import QUIET, Laptop, browser_path  # noqa: E402
from tests.browser.touch import awake  # noqa: E402
from tests.look.places import SCHEMES, SIZES, fill, go_to, places  # noqa: E402

FOLDER = ROOT / "test-results" / "look"
#: What the README shows: name, address, size.
FOR_README = (("room", "survey", 390, 844), ("saw", "pieces/saw/A", 390, 844), ("boards", "boards", 390, 844))


def main(arguments: list[str]) -> int:
    """Writes the pictures, or with `readme` the three that the README shows."""
    with tempfile.TemporaryDirectory() as work, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=browser_path(), args=QUIET)
        full, empty = (Laptop(Path(work) / name, Site()) for name in ("full", "empty"))
        fill(full.data)
        for laptop in (full, empty):
            laptop.start()
        page = open_page(browser, full)
        if arguments[:1] == ["readme"]:
            for_readme(page)
        else:
            take_all(page, open_page(browser, empty))
            print(f"{len(list(FOLDER.glob('*.png')))} pictures in {FOLDER}")
        browser.close()
        for laptop in (full, empty):
            laptop.stop()
    return 0


def open_page(browser: Browser, laptop: Laptop) -> Page:
    page = browser.new_context(service_workers="block").new_page()
    page.goto(laptop.url)
    awake(page)
    return page


def take_all(page: Page, empty: Page) -> None:
    FOLDER.mkdir(parents=True, exist_ok=True)
    for width, height in SIZES:
        for one in (page, empty):
            one.set_viewport_size({"width": width, "height": height})
        for name, place in places().items():
            go_to(page, place)
            take(page, f"{width} {name}")
        go_to(page, "survey")
        page.keyboard.press("?")
        take(page, f"{width} keys")
        page.keyboard.press("Escape")
        for place in ("survey", "pieces", "boards", "house"):
            empty.evaluate("place => { location.hash = place; }", f"#/{place}")
            empty.wait_for_timeout(200)
            take(empty, f"{width} nothing yet, {place}")


def take(page: Page, name: str) -> None:
    for scheme in SCHEMES:
        page.emulate_media(color_scheme=scheme)
        page.screenshot(path=FOLDER / f"{name}, {scheme}.png")


def for_readme(page: Page) -> None:
    page.mouse.move(0, 0)
    for name, place, width, height in FOR_README:
        page.set_viewport_size({"width": width, "height": height})
        go_to(page, place)
        page.wait_for_timeout(300)
        page.screenshot(path=ROOT / "demo" / "pictures" / f"{name}.png")


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
