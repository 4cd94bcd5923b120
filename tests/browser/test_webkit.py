"""The whole path once more in WebKit, the engine of every browser on an iPhone: Debian's WebKitGTK, on a screen that
nobody looks at.

Its driver speaks WebDriver alone, so the hand on the phone is written once more, as short as it may be. Where no WebKit
is, this is skipped and says so.
"""

import json
import os
import shutil
import subprocess
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any
from urllib.request import urlopen

import pytest
from selenium import webdriver
from selenium.common.exceptions import WebDriverException
from selenium.webdriver.webkitgtk.service import Service

from tests.browser.touch import CORNERS, asked_for

DRIVER, SCREEN = shutil.which("WebKitWebDriver"), shutil.which("Xvfb")
BROWSER = next((str(path) for path in sorted(Path("/usr/lib").glob("*/webkit2gtk-4.*/MiniBrowser"))), None)
MISSING = [name for name, found in (("webkit2gtk-driver", DRIVER and BROWSER), ("xvfb", SCREEN)) if not found]
pytestmark = [
    pytest.mark.further,
    # Its own WebKitGTK says to itself that it is called in an old way.
    pytest.mark.filterwarnings("ignore:setting remote_server_addr:DeprecationWarning"),
    pytest.mark.skipif(bool(MISSING), reason=f"no WebKit here: install the package {' and '.join(MISSING)}"),
]
PATIENCE = 90.0
#: Without its last compiler: a page lives for seconds here, and code made faster than that costs more than it gives.
QUIET = {"JSC_useOMGJIT": "0"}
LOOK_AGAIN = 0.05

#: The first that can be seen of what a selector names, with these words in it (all of them, where `exact`).
FIND = """
const [selector, words, exact] = arguments;
const said = (one) => (one.getAttribute("aria-label") ?? one.innerText ?? one.textContent).replace(/\\s+/g, " ").trim();
return [...document.querySelectorAll(selector)].find((one) => one.getClientRects().length && !one.disabled &&
  (exact ? said(one) === words : said(one).includes(words))) ?? null;
"""
LABELED = """
const [words] = arguments;
const named = (one) => one.getAttribute("aria-label") ?? one.labels?.[0]?.innerText ?? "";
return [...document.querySelectorAll("input")].find((one) => named(one).includes(words)) ?? null;
"""
READY = """
return performance.getEntriesByName("engine awake").length > 0 && Boolean(navigator.serviceWorker.controller);
"""
LISTED = """
return [...document.querySelectorAll("a.row")].filter((row) => row.querySelector(".ring")).map((row) => [
  row.querySelector(".ring").innerText, row.querySelector(".figure .heard").textContent.replace(/ in$/, "")]);
"""


class Hand:
    """A hand on a phone whose browser is WebKit."""

    def __init__(self, driver: webdriver.WebKitGTK) -> None:
        self.driver = driver

    def until(self, look: Callable[[], Any]) -> Any:
        """What a look gives as soon as it gives something. A page that is drawn anew meanwhile is looked at again."""
        end, seen, why = time.monotonic() + PATIENCE, None, ""
        while time.monotonic() < end:
            try:
                if seen := look():
                    return seen
            except WebDriverException as error:
                why = str(error.msg)
            time.sleep(LOOK_AGAIN)
        raise AssertionError(f"in vain: {why}\n{self.ask('return document.body.innerText')}")

    def ask(self, script: str, *given: Any) -> Any:
        return self.driver.execute_script(script, *given)

    def sees(self, selector: str, words: str = "", exact: bool = False) -> Any:
        return self.until(lambda: self.ask(FIND, selector, words, exact))

    def touch(self, words: str, selector: str = "button, a.button", exact: bool = False) -> None:
        def tried() -> bool:
            found = self.ask(FIND, selector, words, exact)
            if found:
                self.ask("arguments[0].scrollIntoView({ block: 'center' })", found)  # the tabs cover what is below
                found.click()
            return bool(found)

        self.until(tried)

    def fill(self, label: str, text: str) -> None:
        field = self.until(lambda: self.ask(LABELED, label))
        field.clear()
        field.send_keys(text)

    def visit(self, *place: str) -> None:
        self.ask("location.hash = arguments[0]", f"#/{'/'.join(place)}")

    def heading(self) -> str:
        return str(self.ask("return document.querySelector('h1')?.innerText ?? ''"))

    def press(self, text: str) -> None:
        """Digits on the pad, then the mark on the inch."""
        whole, _, mark = text.partition(" ")
        for digit in whole:
            self.touch(digit, "button", exact=True)
        if mark:
            self.touch("", f'[data-mark="{mark}"]')

    def listed(self) -> list[list[str]]:
        """The pieces on the screen: letter and figure, in order."""
        self.visit("pieces")
        found: list[list[str]] = self.until(lambda: self.ask(LISTED))
        return found


@pytest.fixture
def hand(monkeypatch: pytest.MonkeyPatch) -> Iterator[Hand]:
    assert SCREEN
    assert DRIVER
    command = [SCREEN, "-displayfd", "1", "-screen", "0", "1280x1024x24", "-nolisten", "tcp"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True) as screen:
        try:
            assert screen.stdout
            monkeypatch.setenv("DISPLAY", f":{screen.stdout.readline().strip()}")
            options = webdriver.WebKitGTKOptions()
            options.binary_location = str(BROWSER)
            options.add_argument("--automation")
            driver = webdriver.WebKitGTK(options=options, service=Service(DRIVER, env=os.environ | QUIET))
            try:
                driver.set_window_size(390, 844)
                yield Hand(driver)
            finally:
                driver.quit()
        finally:
            screen.terminate()


def walk(hand: Hand) -> None:
    """As `touch.walk` does it."""
    hand.touch("Door in this wall")
    hand.sees("button", "Strike the door")
    for number, turn in enumerate(CORNERS, start=2):
        hand.touch(f"Next wall: {turn} corner")
        hand.sees("h1, h2, h3", f"You face wall {number}", exact=True)
        if number == 2:
            hand.touch("Cabinet, tub, tile or other thing")
            hand.touch("Save")
            hand.sees("button", "Strike the cabinet")
    hand.touch("Back at the first wall")


def read_everything(hand: Hand) -> int:
    """How many figures the screen asked for, each read once."""
    hand.sees("h2", "Next: ")  # the plan has come, and nothing moves under the finger any more
    hand.touch("Read it", exact=True)
    hand.sees("[data-mark]")
    count = 0
    while "/read/" in hand.driver.current_url:
        asked = hand.heading()
        hand.press(asked_for(asked))
        hand.touch("Save")
        hand.until(lambda: hand.heading() not in ("", asked))  # noqa: B023  # looked at before the next one is asked
        count += 1
        assert count < 60, "the screen asks without end"
    return count


def test_a_room_measured_with_no_signal_is_the_same_house_on_the_laptop_in_webkit_too(laptop, hand):
    hand.driver.get(laptop.url)
    hand.until(lambda: hand.ask(READY))
    hand.until(lambda: "opens offline" in hand.ask("return document.body.innerText"))
    laptop.stop()
    hand.driver.refresh()

    hand.touch("Name the house, and its year", "summary, button")
    hand.fill("Name of the house", "Alder Street")
    hand.fill("Year it was built", "1936")
    hand.fill("The first room", "Sewing room")
    hand.touch("Start at the door")
    walk(hand)
    assert read_everything(hand) > 20
    hand.visit("house", "standard")
    hand.fill("length, board 1", "16 ft")
    hand.fill("price, board 1", "21.95")
    hand.touch("Save the boards")
    on_the_phone = hand.listed()
    hand.visit("boards")
    price = hand.sees(".money").text

    # What was saved is there after the page was loaded anew, with nobody to ask.
    hand.driver.refresh()
    assert hand.sees(".money").text == price
    hand.until(lambda: hand.listed() == on_the_phone)

    laptop.start()
    hand.visit("house")
    hand.touch("Sync now")
    hand.sees(".status", "shared")
    with urlopen(f"{laptop.url}api/houses") as reply:
        room = json.load(reply)["houses"][0]["rooms"][0]["id"]
    with urlopen(f"{laptop.url}api/rooms/{room}/pieces") as reply:
        pieces = json.load(reply)["pieces"]
    assert [[piece["letter"], piece["cut"]["shown"].removesuffix('"')] for piece in pieces] == on_the_phone
