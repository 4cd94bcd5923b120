"""The page when something goes wrong, comes late or is odd: nothing is swallowed, nothing is lost, and it says so."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.test_screens import journal, readings
from tests.browser.touch import awake, button, entity, send, start_house, title, touch, visit, walked_room

pytestmark = pytest.mark.further

WALL = entity(1)
#: From now on a question of this name is not answered until `letGo()` is called.
HOLD = """(name) => {
  const post = Worker.prototype.postMessage;
  const held = [];
  globalThis.letGo = () => { Worker.prototype.postMessage = post; held.splice(0).forEach((go) => go()); };
  Worker.prototype.postMessage = function (message, ...more) {
    const go = () => post.call(this, message, ...more);
    return message.ask?.includes(`"ask":"${name}"`) ? void held.push(go) : go();
  };
}"""


@pytest.fixture
def room(laptop, used_phone):
    """The invented room, read, on a phone that keeps nothing for later."""
    send(laptop.url, walked_room(read=True))
    page = used_phone().new_page()
    page.goto(laptop.url)
    expect(title(page)).to_have_text("Sewing room")
    return page


@pytest.fixture
def sleeper(laptop, new_sleeper):
    """The same room on a phone whose engine does not start."""
    send(laptop.url, walked_room(read=True))
    page = new_sleeper().new_page()
    page.goto(laptop.url)
    expect(title(page)).to_have_text("Sewing room")
    return page


def test_a_reading_is_saved_while_the_issue_of_a_list_waits_for_the_engine(room):
    awake(room)
    visit(room, "pieces")
    expect(button(room, "Issue the list")).to_be_visible()
    room.evaluate(HOLD, "issue")
    touch(room, "Issue the list")
    visit(room, "survey", "read", WALL, "length")
    room.get_by_label("type it or say it").fill("143 7/8")
    touch(room, "Save")

    expect(title(room)).not_to_have_text("wall 1, along the floor")
    assert readings(room) == ["143 7/8"]
    room.evaluate("() => letGo()")
    room.wait_for_function("() => document.querySelector('p.heard[role=status]').textContent.startsWith('The list')")
    assert [entry["kind"] for entry in journal(room)].count("issue") == 1


def test_two_acts_at_once_are_both_written_and_a_finger_that_bounces_writes_once(sleeper):
    visit(sleeper, "survey", "walk", WALL)
    expect(button(sleeper, "Window in this wall")).to_be_visible()
    sleeper.evaluate(
        """() => {
          const named = (words) => [...document.querySelectorAll("button")].find((one) => one.textContent === words);
          for (const words of ["Window in this wall", "Window in this wall", "Opening without a door"]) {
            named(words).click();
          }
        }"""
    )
    expect(button(sleeper, "Strike the cased opening")).to_be_visible()
    assert [entry["body"]["kind"] for entry in journal(sleeper) if entry["kind"] == "opening"] == [
        "door", "window", "cased",
    ]  # fmt: skip


def test_what_was_picked_stays_picked_while_what_was_touched_before_is_written(sleeper):
    """The page is drawn anew by that: a choice that turned back meanwhile would be touched again."""
    visit(sleeper, "survey", "walk", WALL)
    expect(button(sleeper, "Window in this wall")).to_be_visible()
    sleeper.evaluate(
        """() => {
          const [inside, outside] = document.querySelectorAll("input[name=turn]");
          const { get, set } = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "checked");
          globalThis.turned = [];
          Object.defineProperty(inside, "checked", { get, set(on) { turned.push(on); set.call(this, on); } });
          [...document.querySelectorAll("button")].find((one) => one.textContent === "Window in this wall").click();
          outside.click();
        }"""
    )
    expect(button(sleeper, "Strike the window")).to_be_visible()
    expect(sleeper.locator("p.heard[role=status]")).to_contain_text("outside corner, saved here")
    assert sleeper.get_by_label("outside").is_checked()
    assert True not in sleeper.evaluate("() => turned")


def test_a_choice_that_could_not_be_written_shows_what_stands(sleeper):
    visit(sleeper, "survey", "walk", WALL)
    expect(sleeper.get_by_label("inside")).to_be_checked()
    sleeper.evaluate("""() => { IDBObjectStore.prototype.add = () => { throw new Error("the disk is full"); }; }""")
    sleeper.get_by_label("outside").tap()
    expect(sleeper.get_by_role("alert")).to_contain_text("the disk is full")
    expect(sleeper.get_by_label("inside")).to_be_checked()


def test_a_press_that_comes_to_nothing_says_why(laptop, new_phone):
    """What was touched threw before anything was asked or written: nobody else would hear of it."""
    send(laptop.url, walked_room(read=True))
    page = new_phone(forgiving=True, service_workers="block").new_page()
    page.goto(laptop.url)
    awake(page)
    visit(page, "pieces")
    expect(button(page, "Issue the list")).to_be_visible()
    page.evaluate("""() => { crypto.getRandomValues = () => { throw new Error("nothing at random here"); }; }""")
    touch(page, "Issue the list")
    expect(page.get_by_role("alert")).to_have_text("That came to nothing: nothing at random here")
    page.evaluate("() => { delete crypto.getRandomValues; }")
    touch(page, "Issue the list")
    expect(page.get_by_role("alert")).to_have_count(0)
    page.wait_for_function("() => document.querySelector('p.heard[role=status]').textContent.startsWith('The list')")


def test_a_save_that_ends_late_does_not_pull_the_person_back(sleeper):
    visit(sleeper, "survey", "read", WALL, "length")
    sleeper.get_by_label("type it or say it").fill("143 7/8")
    sleeper.evaluate(
        """() => {
          const put = IDBObjectStore.prototype.add;
          IDBObjectStore.prototype.add = function (...given) {
            location.hash = "#/sums";  // the person goes on while it is being written
            return put.apply(this, given);
          };
        }"""
    )
    touch(sleeper, "Save")
    expect(sleeper.locator("p.heard[role=status]")).to_contain_text("saved here")
    expect(title(sleeper)).to_have_text("Sums")
    sleeper.wait_for_timeout(300)
    expect(title(sleeper)).to_have_text("Sums")
    assert readings(sleeper) == ["143 7/8"]


def test_a_screen_that_throws_says_so_and_offers_the_way_back(laptop, new_sleeper):
    send(laptop.url, walked_room(read=True))
    page = new_sleeper().new_page()

    def throwing(route):
        answer = route.fetch()
        text = re.sub(r"(export function Sums\([^)]*\)\s*\{)", r"\1 throw new Error('a bug');", answer.text())
        route.fulfill(response=answer, body=text)

    page.route(re.compile(r"screens/sums/screen\.js"), throwing)
    page.goto(laptop.url)
    expect(title(page)).to_have_text("Sewing room")
    visit(page, "sums")
    expect(page.get_by_role("alert")).to_contain_text("a bug")
    expect(page.get_by_text("Nothing is lost")).to_be_visible()
    with page.expect_download() as given:
        touch(page, "Save the notebook to a file")
    assert given.value.suggested_filename.startswith("scantling-")
    page.get_by_role("link", name="To the readings").tap()
    expect(title(page)).to_have_text("Sewing room")


@pytest.mark.parametrize("file", ["screen.js", "stock.js"])
def test_a_screen_that_does_not_come_says_so_and_is_asked_for_again(file, laptop, new_sleeper):
    phone = new_sleeper()
    phone.route(f"**/screens/house/{file}", lambda route: route.abort())
    page = phone.new_page()
    page.goto(laptop.url)
    start_house(page)
    visit(page, "house")
    expect(page.get_by_role("alert")).to_be_visible()
    phone.unroute_all()
    button(page, "Try this screen again").click()
    expect(title(page)).to_have_text("House")


@pytest.mark.parametrize(
    "place", ["constructor", "__proto__", "survey/constructor", "pieces/constructor", "toString/valueOf"]
)
def test_an_address_that_names_what_every_object_has_shows_a_screen(sleeper, place):
    visit(sleeper, *place.split("/"))
    expect(title(sleeper)).to_have_text(re.compile("Sewing room|Rooms"))


def test_a_browser_that_keeps_no_scraps_loses_no_reading_and_shares_them(laptop, new_sleeper, until):
    page = new_sleeper().new_page()
    page.add_init_script(
        """Object.defineProperty(globalThis, "localStorage", {
          get() { throw new DOMException("no", "SecurityError"); },
        });"""
    )
    page.goto(laptop.url)
    start_house(page)
    expect(title(page)).to_have_text("Walk: Sewing room")
    visit(page, "sums")
    expect(title(page)).to_have_text("Sums")
    until(page, lambda: {entry["kind"] for entry in laptop.journal()} >= {"house", "room", "wall"})


def test_no_two_fields_of_a_screen_have_one_id(sleeper):
    visit(sleeper, "survey", "rooms")
    sleeper.get_by_text("Another house").tap()
    sleeper.get_by_label("Name of the house").fill("The cabin")
    sleeper.get_by_label("The first room").fill("Loft")
    touch(sleeper, "Start at the door")
    expect(title(sleeper)).to_have_text("Walk: Loft")
    visit(sleeper, "survey", "rooms")
    sleeper.get_by_text("Another house").tap()
    ids = sleeper.evaluate("() => [...document.querySelectorAll('[id]')].map((one) => one.id)")
    assert len(ids) > 3
    assert len(set(ids)) == len(ids)
    assert sleeper.evaluate(
        "() => [...document.querySelectorAll('label[for]')].every((one) => document.getElementById(one.htmlFor))"
    )


def test_the_page_says_its_build(sleeper, laptop):
    visit(sleeper, "house")
    expect(sleeper.get_by_text(f"Scantling, build {laptop.site.build}")).to_be_visible()
