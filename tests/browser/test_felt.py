"""A save that can be felt or heard, for who wants it: when it is on the disk, not when the button is pressed."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.touch import entity, send, title, touch, unfold, visit, walked_room

#: What the device is made to do, and when a transaction that writes is completed, in their order.
NOTED = """
  globalThis.noted = [];
  const { transaction } = IDBDatabase.prototype;
  IDBDatabase.prototype.transaction = function (names, mode, ...more) {
    const made = transaction.call(this, names, mode, ...more);
    if (mode === "readwrite") made.addEventListener("complete", () => noted.push("saved"));
    return made;
  };
"""
SHAKES = "Navigator.prototype.vibrate = (pattern) => { noted.push('vibrates'); return true; };"
SHAKES_NOT = "delete Navigator.prototype.vibrate;"
SOUNDS = """
  const level = { setValueAtTime() {}, linearRampToValueAtTime() {} };
  const part = () => ({ connect: (next) => next, frequency: {}, gain: level });
  globalThis.AudioContext = class {
    state = "suspended"; currentTime = 0; destination = {};
    resume() { noted.push("wakes"); this.state = "running"; return Promise.resolve(); }
    createGain() { return part(); }
    createOscillator() { return { ...part(), start: () => noted.push("sounds"), stop() {} }; }
  };
"""
REFUSE = "() => { IDBObjectStore.prototype.add = () => { throw new DOMException('full', 'QuotaExceededError'); }; }"


@pytest.fixture
def room(laptop, new_sleeper):
    """Opens the invented room on a device that can do what a script says."""

    def make(script: str) -> Page:
        send(laptop.url, walked_room())
        page = new_sleeper().new_page()
        page.add_init_script(NOTED + script)
        page.goto(f"{laptop.url}#/house")
        expect(title(page)).to_have_text("House")
        expect(page.get_by_role("heading", name="Alder Street")).to_be_visible()
        return page

    return make


def choose(page: Page, words: str) -> None:
    visit(page, "house")
    choice = page.get_by_role("radio", name=words, exact=True)
    unfold(page, "When something is saved", choice)
    choice.check()


def save(page: Page) -> list[str]:
    """What the device does from the press on."""
    visit(page, "survey", "read", entity(1), "length")
    page.get_by_label("type it or say it").fill("143 7/8")
    page.evaluate("() => { noted.length = 0; }")
    touch(page, "Save")
    expect(title(page)).not_to_have_text("wall 1, along the floor")
    return page.evaluate("() => noted")


def test_nothing_is_felt_or_heard_unless_that_is_wanted(room):
    assert set(save(room(SHAKES + SOUNDS))) == {"saved"}


def test_a_vibration_comes_when_the_reading_is_on_the_disk(room):
    page = room(SHAKES + SOUNDS)
    choose(page, "vibration")
    assert page.evaluate("() => noted").count("vibrates") == 1, "what was chosen is shown at once"
    page.reload()
    done = save(page)
    assert done.count("vibrates") == 1
    assert "saved" in done[: done.index("vibrates")]
    choose(page, "nothing")
    assert "vibrates" not in save(page)


def test_a_sound_is_woken_by_the_press_and_heard_after_the_save(room):
    page = room(SHAKES_NOT + SOUNDS)
    choose(page, "a short sound")
    expect(page.get_by_text("vibration", exact=True)).to_have_count(0)
    page.reload()
    done = save(page)
    assert (done.count("wakes"), done.count("sounds")) == (1, 1)
    assert "saved" in done[done.index("wakes") : done.index("sounds")]


def test_what_is_not_saved_is_neither_felt_nor_heard(room):
    page = room(SHAKES)
    choose(page, "vibration")
    visit(page, "survey", "read", entity(1), "length")
    page.get_by_label("type it or say it").fill("143 7/8")
    page.evaluate("() => { noted.length = 0; }")
    page.evaluate(REFUSE)
    touch(page, "Save")
    expect(page.get_by_role("alert")).to_contain_text("Not saved.")
    assert "vibrates" not in page.evaluate("() => noted")


def test_a_device_that_can_do_neither_is_offered_nothing(room):
    page = room(SHAKES_NOT + "delete globalThis.AudioContext;")
    expect(page.get_by_role("button", name="Sync now")).to_be_visible()
    expect(page.get_by_text("When something is saved")).to_have_count(0)
