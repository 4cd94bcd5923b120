"""A cold start paints what the engine last said; what holds is not asked again, what nobody wants is not worked out."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.touch import awake, button, entity, send, title, touch, visit, walked_room

pytestmark = pytest.mark.further

WALL = entity(1)
#: Counts the questions that go to the worker, by name.
COUNT = """() => {
  globalThis.asked = [];
  const post = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (message, ...more) {
    if (message.ask) globalThis.asked.push(JSON.parse(message.ask));
    return post.call(this, message, ...more);
  };
}"""
KEPT = """async () => {
  const name = (await caches.keys()).find((one) => one.startsWith("answers-"));
  const found = name && (await (await caches.open(name)).match("/answers"));
  return found ? (await found.json()).map(([asking]) => JSON.parse(asking).ask) : [];
}"""


@pytest.fixture
def kept(laptop, used_phone, until):
    """A phone that had the engine awake once, on every screen of the invented room; and will not have it again."""
    send(laptop.url, walked_room(read=True))
    context = used_phone()
    page = context.new_page()
    page.goto(laptop.url)
    awake(page)
    expect(page.get_by_role("heading", name="Every wanted reading is here")).to_be_visible()
    visit(page, "pieces")
    expect(page.locator("a.row .ring").first).to_be_visible()
    until(page, f"async () => (await ({KEPT})()).includes('piece_rows')")
    context.route("**/engine/worker.js", lambda route: route.abort())
    page.reload()
    return page


def test_a_cold_start_has_the_true_rows_pieces_and_plan_with_no_engine(kept):
    expect(kept.locator("a.row .ring").first).to_be_visible()
    expect(kept.get_by_role("link", name="base, wall 5").locator(".figure .heard")).to_have_text("61 in")
    visit(kept, "survey")
    expect(kept.get_by_role("heading", name="Every wanted reading is here")).to_be_visible()
    expect(kept.get_by_role("img", name="Plan of Sewing room", exact=True)).to_be_visible()
    expect(kept.locator(".older")).to_have_count(0)


def test_a_wall_that_was_not_in_hand_has_the_plan_of_a_survey_that_still_holds(kept):
    visit(kept, "survey", "walk")
    expect(kept.get_by_role("heading", name="You face wall 8")).to_be_visible()
    expect(kept.get_by_role("img", name="Plan of Sewing room", exact=True)).to_be_visible()


def test_what_is_older_than_the_journal_says_so_and_what_was_read_since_is_not_asked_for_again(kept):
    visit(kept, "survey", "read", WALL, "length")
    kept.get_by_label("type it or say it").fill("144")
    touch(kept, "Save")
    expect(title(kept)).not_to_have_text("wall 1, along the floor")
    visit(kept, "survey")
    expect(kept.locator(".older")).to_contain_text("before the last entries")
    expect(kept.get_by_role("link", name="wall 1, along the floor")).to_contain_text("143 7/8 · 144")
    expect(kept.get_by_role("heading", name=re.compile("^Next"))).to_have_count(0)
    visit(kept, "pieces")
    expect(kept.locator(".older")).to_be_visible()
    expect(kept.locator("a.row .ring").first).to_be_visible()
    # What stands on paper is believed for longer still.
    for where in (("pieces", "labels"), ("pieces", "walls"), ("survey", "walk")):
        visit(kept, *where)
        expect(kept.locator(".older")).to_contain_text("before the last entries")
        kept.emulate_media(media="print")
        # A sheet of labels has no room for a line: its first row lies where the first label does.
        expect(kept.locator(".older")).to_be_visible(visible="labels" not in where)
        kept.emulate_media(media="screen")


def test_nothing_is_called_next_while_only_the_journal_speaks(laptop, new_sleeper):
    send(laptop.url, walked_room())
    page = new_sleeper().new_page()
    page.goto(laptop.url)
    expect(page.get_by_role("heading", name="Not read yet: wall 1, left corner to the door")).to_be_visible()
    expect(page.get_by_role("heading", name=re.compile("^Next"))).to_have_count(0)
    touch(page, "Read it")
    expect(button(page, "Save")).to_have_accessible_name(re.compile("^Save then: "))


def test_an_answer_that_holds_is_not_asked_for_again(laptop, used_phone):
    send(laptop.url, walked_room(read=True))
    page = used_phone().new_page()
    page.goto(laptop.url)
    awake(page)
    visit(page, "pieces")
    expect(page.locator("a.row svg").first).to_be_visible()
    visit(page, "survey")
    expect(page.get_by_role("heading", name="Every wanted reading is here")).to_be_visible()
    page.evaluate(COUNT)
    for place in ("pieces", "survey", "pieces"):
        visit(page, place)
        expect(title(page)).to_contain_text("Sewing room")
    assert [one["ask"] for one in page.evaluate("() => asked")] == []

    visit(page, "survey", "read", WALL, "length")
    page.get_by_label("type it or say it").fill("144")
    touch(page, "Save")
    expect(title(page)).not_to_have_text("wall 1, along the floor")
    page.wait_for_function("() => asked.some((one) => one.ask === 'survey')")


def test_what_is_typed_over_is_not_worked_out_and_a_reading_goes_before_all_else(laptop, used_phone):
    send(laptop.url, walked_room(read=True))
    page = used_phone().new_page()
    page.goto(laptop.url)
    awake(page)
    visit(page, "survey", "read", WALL, "length")
    field = page.get_by_label("type it or say it")
    expect(field).to_be_visible()
    page.wait_for_timeout(300)
    page.evaluate(COUNT)
    # A long question is with the engine: what is asked meanwhile waits in the page.
    page.evaluate(
        """() => {
          const post = Worker.prototype.postMessage;
          const held = [];
          globalThis.letGo = () => { Worker.prototype.postMessage = post; held.forEach((go) => go()); };
          Worker.prototype.postMessage = function (...message) { held.push(() => post.apply(this, message)); };
        }"""
    )
    for text in ("6", "63", "63 ", "63 1", "63 1/", "63 1/4"):
        field.fill(text)
    page.evaluate("() => letGo()")
    expect(page.locator(".echo")).to_contain_text("sixty-three and one quarter inches")
    read = [one["text"] for one in page.evaluate("() => asked") if one["ask"] == "read"]
    assert read[-1] == "63 1/4"
    assert len(read) <= 2, "only the one under way and the last"


def test_a_hint_outlives_any_number_of_replies(laptop, used_phone):
    send(laptop.url, walked_room())
    page = used_phone().new_page()
    page.goto(laptop.url)
    awake(page)
    visit(page, "survey", "read", WALL, "length")
    hint = page.locator(".waiting")
    expect(hint).not_to_have_text("Touch the mark you see, or hold it for thirty-seconds; type, or say it.")
    words = hint.inner_text()
    field = page.get_by_label("type it or say it")
    for whole in range(10, 35):
        field.fill(str(whole))
        expect(page.locator(".printed-next")).to_have_text(str(whole + 1))
    field.fill("")
    expect(hint).to_have_text(words)
