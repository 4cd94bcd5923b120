"""The page without its laptop: it opens, answers and saves, and nothing saved is lost whatever dies."""

import os
import signal
from pathlib import Path

import pytest
from playwright.sync_api import Error, Page, expect

AWAKE = "() => globalThis.services?.engine.state === 'awake'"
APPEND = "(name) => services.journal.append('device', { name })"
NAMES = "() => services.journal.entries().map((entry) => entry.body.name)"
READ = "(text) => services.engine.ask({ ask: 'read', text })"


def children(pid: int) -> list[int]:
    """The processes that a process of ours started, and theirs."""
    listed = Path(f"/proc/{pid}/task/{pid}/children").read_text().split()
    return [found for child in map(int, listed) for found in (child, *children(child))]


def browser_of(folder: Path) -> int:
    """The browser that this test opened on its own profile folder, and not the script that started it."""
    mark = f"--user-data-dir={folder}".encode()
    for pid in reversed(children(os.getpid())):
        try:
            words = Path(f"/proc/{pid}/cmdline").read_bytes().split(b"\0")
        except OSError:
            continue
        if mark in words and not any(word.startswith(b"--type=") for word in words):
            return pid
    raise AssertionError("no browser on this profile")


def read_back(page: Page, text: str) -> str:
    return page.evaluate(READ, text)["answer"]["length"]["shown"]


def test_the_page_opens_reads_and_saves_with_the_laptop_off(bare, keeper, opened):
    page = opened(keeper(), bare.url)
    bare.stop()
    page.reload()
    page.wait_for_function(AWAKE)
    assert read_back(page, "5' 3 1/4") == '63 1/4"'
    page.evaluate(APPEND, "phone in the bath")
    page.reload()
    page.wait_for_function(AWAKE)
    assert page.evaluate(NAMES) == ["phone in the bath"]


def test_the_whole_page_opens_with_the_laptop_off(laptop, keeper, opened):
    page = opened(keeper(), laptop.url)
    laptop.stop()
    page.reload()
    expect(page.locator("#page")).not_to_be_empty()
    expect(page.locator("nav")).to_contain_text("Survey")


#: When the page began to read a screen that it does not open with, and when its engine was awake, in ms; null before.
BROUGHT = """() => {
  const read = performance.getEntriesByType("resource").find((one) => one.name.endsWith("/screens/pieces/screen.js"));
  const [awake] = performance.getEntriesByName("engine awake");
  return read && awake ? [read.startTime, awake.startTime] : null;
}"""


def test_a_page_that_is_kept_wakes_its_engine_before_it_reads_its_other_screens(laptop, keeper, opened):
    page = opened(keeper(), laptop.url)
    laptop.stop()
    page.reload()
    page.wait_for_function(BROUGHT)
    read, was_awake = page.evaluate(BROUGHT)
    assert read >= was_awake


def test_the_page_opens_in_flight_mode(bare, keeper, opened):
    phone = keeper()
    page = opened(phone, bare.url)
    phone.set_offline(True)
    page.reload()
    page.wait_for_function(AWAKE)
    assert read_back(page, "1607 mm") == '63 1/4"'
    phone.set_offline(False)


def test_a_browser_opened_again_without_the_laptop_still_has_page_and_readings(bare, profile, opened):
    page = opened(profile.open(), bare.url)
    page.evaluate(APPEND, "before")
    profile.close()
    bare.stop()
    page = profile.open().new_page()
    page.goto(bare.url)
    page.wait_for_function(AWAKE)
    page.evaluate(APPEND, "after")
    assert page.evaluate(NAMES) == ["before", "after"]


def test_a_killed_browser_loses_no_reading_that_was_called_saved(bare, profile, opened, until):
    page = opened(profile.open(), bare.url)
    bare.stop()
    saved: list[str] = []
    page.expose_function("note", lambda name: saved.append(name))
    page.evaluate("""() => {
      const save = async (n) => {
        await services.journal.append("device", { name: `reading ${n}` });
        await note(`reading ${n}`);
        return save(n + 1);
      };
      save(1);
    }""")
    until(page, lambda: len(saved) >= 60)
    os.kill(browser_of(profile.folder), signal.SIGKILL)
    with pytest.raises(Error):
        page.evaluate("() => new Promise((done) => setTimeout(done, 5000))")
    profile.close()
    page = profile.open().new_page()
    page.goto(bare.url)
    page.wait_for_function("() => globalThis.services")
    assert set(saved) <= set(page.evaluate(NAMES))
    numbers = page.evaluate("() => services.journal.entries().map((entry) => entry.seq)")
    assert sorted(numbers) == list(range(1, len(numbers) + 1))


def test_an_address_that_is_not_the_page_is_not_answered_from_the_phone(bare, keeper, opened):
    page = opened(keeper(), bare.url)
    assert page.evaluate("async () => (await fetch('/api/nothing')).status") == 404
    bare.stop()
    with pytest.raises(Error, match="Failed to fetch"):
        page.evaluate("() => fetch('/api/openapi.json')")
    kept = page.evaluate("""async () => {
      const names = (await caches.keys()).filter((name) => name.startsWith("page-"));
      const shelves = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
      return shelves.flat().map((request) => new URL(request.url).pathname);
    }""")
    assert set(kept) == {path for path, _ in bare.site.precache}


def test_an_install_cut_short_goes_on_from_where_it_was(bare, new_phone, until):
    phone = new_phone(forgiving=True)
    held: list[str] = []

    def cut(route):
        held.append(route.request.url)
        route.abort()

    phone.route("**/stdlib.zip", cut)
    page = phone.new_page()
    page.goto(bare.url)
    until(page, lambda: held)
    until(page, "async () => !(await navigator.serviceWorker.getRegistration())?.installing")
    before = page.evaluate(
        """async () => {
          const name = (await caches.keys()).find((one) => one.startsWith("page-"));
          return (await (await caches.open(name)).keys()).length;
        }"""
    )
    assert 0 < before < len(bare.site.precache)
    phone.unroute("**/stdlib.zip")
    bare.requests.clear()
    asked: list[str] = []
    phone.on("request", lambda request: asked.append(request.url) if request.service_worker else None)
    page.reload()
    page.evaluate("() => navigator.serviceWorker.ready.then(() => true)")
    assert len(asked) < len(bare.site.precache) - before + 5
    bare.stop()
    page.reload()
    page.wait_for_function(AWAKE)
