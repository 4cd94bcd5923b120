"""Offline cover in words: ready, being made ready, or not and why; a browser that keeps nothing or does not answer."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.touch import entity, send, title, touch, visit, walked_room

pytestmark = pytest.mark.further

NO_WORKER = "Object.defineProperty(Navigator.prototype, 'serviceWorker', { get: () => undefined });"
NOT_TRUSTED = "Object.defineProperty(globalThis, 'isSecureContext', { value: false });"
HOLD = """() => new Promise((done) => {
  const asked = indexedDB.open("scantling", 1);
  asked.onupgradeneeded = () => asked.result.createObjectStore("entries", { keyPath: "id" })
    .createIndex("standing", ["standing", "entry.seq"]) && asked.result.createObjectStore("facts");
  asked.onsuccess = () => { globalThis.held = asked.result; done(true); };
})"""


def test_it_says_how_far_it_has_come_and_then_that_the_page_opens_offline(laptop, phone):
    laptop.slow["pyodide.asm.wasm"] = 1.5
    page = phone.new_page()
    page.goto(f"{laptop.url}#/house")
    expect(page.locator(".status")).to_contain_text(re.compile(r"\d+ of \d+ files kept"))
    expect(page.get_by_text("Being made ready for no signal")).to_be_visible()
    expect(page.get_by_text("Ready for no signal: this device has the whole page.")).to_be_visible()
    expect(page.locator(".status")).to_contain_text("opens offline")


@pytest.mark.parametrize(
    ("script", "short", "words"),
    [
        (NOT_TRUSTED, "not kept: address not trusted", "Open the page by the laptop's https address"),
        (NO_WORKER, "not kept by this browser", "A private window keeps nothing: readings go when it is closed."),
    ],
    ids=["an address that is not trusted", "an old browser or a private window"],
)
def test_where_the_page_cannot_be_kept_it_says_why_and_what_to_do(laptop, new_sleeper, script, short, words):
    page = new_sleeper().new_page()
    page.add_init_script(script)
    page.goto(f"{laptop.url}#/house")
    expect(page.locator(".status")).to_contain_text(short)
    expect(page.get_by_text(words)).to_be_visible()


def test_a_device_with_no_room_left_says_so_and_has_it_once_there_is(laptop, phone):
    page = phone.new_page()
    storage = phone.new_cdp_session(page)
    room = {"origin": laptop.url.rstrip("/")}
    storage.send("Storage.overrideQuotaForOrigin", {**room, "quotaSize": 8_000_000})
    page.goto(f"{laptop.url}#/house")
    expect(page.locator(".status")).to_contain_text("not kept: no room left")
    expect(page.get_by_text("Free some space, then open the page again near the laptop.")).to_be_visible()
    storage.send("Storage.overrideQuotaForOrigin", room)
    page.reload()
    expect(page.locator(".status")).to_contain_text("opens offline")


def test_storage_that_does_not_answer_is_told_and_the_page_comes_when_it_does(laptop, new_sleeper):
    context = new_sleeper()
    context.route("**/nothing", lambda route: route.fulfill(body="", content_type="text/html"))
    other = context.new_page()
    other.goto(f"{laptop.url}nothing")
    other.evaluate(HOLD)  # another tab that will not let go of an older database
    page = context.new_page()
    page.goto(laptop.url)
    expect(page.get_by_role("alert")).to_contain_text("storage does not answer")
    expect(page.get_by_role("alert")).to_contain_text("What was saved is still there")
    other.close()
    expect(title(page)).to_have_text("A new notebook")
    expect(page.get_by_role("alert")).to_have_count(0)


def test_after_the_sites_data_was_cleared_offline_all_is_back_as_soon_as_the_laptop_is(laptop, phone, opened):
    send(laptop.url, walked_room(read=True))
    page = opened(phone, laptop.url)
    expect(title(page)).to_have_text("Sewing room")
    laptop.stop()
    storage = phone.new_cdp_session(page)
    storage.send("Storage.clearDataForOrigin", {"origin": laptop.url.rstrip("/"), "storageTypes": "all"})
    visit(page, "survey", "read", entity(1), "length")  # the page that is still open goes on
    page.get_by_label("type it or say it").fill("144")
    touch(page, "Save")
    expect(title(page)).not_to_have_text("wall 1, along the floor")
    laptop.start()
    page.goto(laptop.url)
    expect(title(page)).to_have_text("Sewing room")
    visit(page, "survey")
    expect(page.get_by_role("link", name="wall 1, along the floor")).to_contain_text("read twice")
    visit(page, "house")
    expect(page.get_by_text("Ready for no signal")).to_be_visible()


@pytest.mark.parametrize(
    ("promised", "words"),
    [(True, "This browser has promised to keep it."), (False, "a private window keeps nothing once it is closed")],
)
def test_what_the_browser_promises_is_said(laptop, new_sleeper, promised, words):
    page = new_sleeper().new_page()
    page.add_init_script(f"StorageManager.prototype.persisted = async () => {str(promised).lower()};")
    page.goto(f"{laptop.url}#/house")
    expect(page.get_by_text(words)).to_be_visible()
