"""The screens by themselves: entering a reading, its history, sums, boards, the house; and that anyone can use them."""

import gzip
import json
import re
from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import Page, expect
from scantling.engine.standard import format_price
from scantling.engine.tape.lengths import format_length

from tests.bench.boards_cases import make_cases
from tests.browser.conftest import Laptop
from tests.browser.touch import (
    OTHER_PHONE,
    awake,
    button,
    entity,
    press,
    send,
    start_house,
    title,
    touch,
    unfold,
    visit,
    walked_room,
)
from tests.entries import four_walls

PLACES = ("survey", "survey/walk", "survey/rooms", "pieces", "boards", "sums", "house", "house/standard")
WALL = entity(1)
#: Every place of the page, those of one wall too.
EVERYWHERE = (
    *PLACES,
    f"survey/read/{WALL}/length",
    f"survey/read/{WALL}/corner",
    f"survey/row/{WALL}/length",
    f"survey/thing/{WALL}",
)


@pytest.fixture
def new_page(laptop, new_phone, used_phone) -> Callable[..., Page]:
    """Opens the page on a phone that keeps nothing for the day without a laptop: these tests are about the screens."""

    def make(**options) -> Page:
        context = new_phone(service_workers="block", **options) if options else used_phone()
        page = context.new_page()
        page.goto(laptop.url)
        return page

    return make


@pytest.fixture
def page(new_page) -> Page:
    return new_page()


@pytest.fixture
def room(laptop, new_page) -> Page:
    """A room walked round, nothing read yet."""
    send(laptop.url, walked_room())
    page = new_page()
    expect(page.get_by_role("heading", name="Next: ")).to_be_visible()
    awake(page)
    return page


@pytest.fixture
def measured(laptop, new_page) -> Page:
    """The same room, every figure read once."""
    send(laptop.url, walked_room(read=True))
    page = new_page()
    expect(page.get_by_role("heading", name="Every wanted reading is here")).to_be_visible()
    awake(page)
    return page


@pytest.fixture(scope="module")
def shared(open_once, site, tmp_path_factory) -> Iterator[Page]:
    with Laptop(tmp_path_factory.mktemp("shared"), site) as laptop:
        send(laptop.url, walked_room(read=True))
        with open_once(laptop) as page:
            yield page


@pytest.fixture
def still(shared) -> Iterator[Page]:
    """The measured room to look at: nothing is to be written here."""
    written = len(journal(shared))
    visit(shared, "survey")
    expect(title(shared)).to_have_text("Sewing room")
    yield shared
    assert len(journal(shared)) == written


@pytest.fixture
def reading(still) -> Page:
    """The screen for the length of the first wall, to try and to leave without saving."""
    visit(still, "survey", "read", WALL, "length")
    expect(still.get_by_label("type it or say it")).to_have_value("")
    return still


@pytest.fixture
def entering(room) -> Page:
    """The screen that asks for the length of the first wall."""
    visit(room, "survey", "read", WALL, "length")
    expect(room.get_by_label("type it or say it")).to_be_visible()
    return room


def journal(page: Page) -> list[dict]:
    """What this device has on its disk, read past the page."""
    return page.evaluate(
        """() => new Promise((done) => {
          const asked = indexedDB.open("scantling");
          asked.onsuccess = () => {
            const all = asked.result.transaction("entries").objectStore("entries").getAll();
            all.onsuccess = () => { asked.result.close(); done(all.result.map((one) => one.entry)); };
          };
        })"""
    )


def readings(page: Page) -> list[str]:
    """What this device wrote itself, as typed."""
    return [
        entry["body"]["text"]
        for entry in journal(page)
        if entry["kind"] == "reading" and entry["device"] != OTHER_PHONE
    ]


# Entering a reading


WAYS_TO_SAY_IT = {
    "63 5/16": "sixty-three and five sixteenths inches",
    "5' 3 5/16\"": "sixty-three and five sixteenths inches",
    "sixty three and a quarter": "sixty-three and one quarter inches",
    "1607 mm": "sixty-three and one quarter inches",
    "63 1/4 shy": "sixty-three and one quarter inches, shy",
}


def test_a_reading_is_echoed_in_words_and_saved_exactly_as_typed(entering):
    for text, words in WAYS_TO_SAY_IT.items():
        visit(entering, "survey", "read", WALL, "length")
        expect(title(entering)).to_have_text("wall 1, along the floor")
        entering.get_by_label("type it or say it").fill(text)
        expect(entering.locator(".echo")).to_contain_text(words)
        expect(button(entering, "Save")).to_have_accessible_name("Save next: corner 1, inside")
        touch(entering, "Save")
        expect(title(entering)).to_have_text("corner 1, inside")

    assert readings(entering) == list(WAYS_TO_SAY_IT)


def test_a_picture_says_where_the_tape_is_held(entering):
    visit(entering, "survey", "read", WALL, "length")
    expect(entering.locator(".held title")).to_have_text("Along the floor from corner to corner")
    visit(entering, "survey", "read", WALL, "corner")
    entering.locator("label.pick", has_text="three sides").click()
    expect(entering.locator(".held title")).to_have_text("From the corner along each wall, and straight across")


def test_the_last_button_says_when_nothing_more_is_wanted(reading):
    expect(button(reading, "Save")).to_have_accessible_name("Save then back to the room")


def test_a_text_that_cannot_be_understood_is_asked_for_again_and_not_saved(entering):
    entering.get_by_label("type it or say it").fill("63 1/")
    expect(entering.locator(".echo")).to_contain_text("63 1/")

    touch(entering, "Save")

    expect(entering.get_by_role("alert")).to_contain_text("63 1/")
    expect(title(entering)).to_have_text("wall 1, along the floor")
    assert readings(entering) == []
    entering.get_by_label("type it or say it").fill("63 1/4")
    touch(entering, "Save")
    expect(title(entering)).not_to_have_text("wall 1, along the floor")
    assert readings(entering) == ["63 1/4"]


def test_digits_marks_and_a_hair_make_one_text(reading):
    field = reading.get_by_label("type it or say it")
    press(reading, "63 5/16")
    touch(reading, "a hair strong")
    expect(field).to_have_value("63 5/16 strong")
    expect(reading.locator(".hero .heard")).to_have_text("63 5/16 in strong")

    for left in ("63 5/16", "63", "6", ""):
        touch(reading, "Rub out")
        expect(field).to_have_value(left)


def test_the_inch_is_chosen_by_sliding_and_by_the_arrow_keys_too(reading):
    inch = reading.get_by_role("slider", name="the inch, in sixteenths")
    press(reading, "63 5/16")
    box, target = inch.bounding_box(), reading.locator('[data-mark="11/16"]').bounding_box()
    reading.mouse.move(box["x"] + 20, box["y"] + 20)
    reading.mouse.down()
    reading.mouse.move(target["x"] + target["width"] / 2, target["y"] + 20, steps=8)
    reading.mouse.up()
    expect(inch).to_have_attribute("aria-valuetext", "11/16")

    inch.press("ArrowRight")
    expect(inch).to_have_attribute("aria-valuetext", "3/4")
    inch.press("Home")
    expect(inch).to_have_attribute("aria-valuetext", "on the inch")
    inch.press("End")
    inch.press("ArrowRight")
    expect(inch).to_have_attribute("aria-valuetext", "15/16")
    expect(reading.get_by_label("type it or say it")).to_have_value("63 15/16")


def test_the_next_inch_is_named_by_the_engine(reading):
    press(reading, "99")
    expect(reading.locator(".printed-whole")).to_have_text("99")
    expect(reading.locator(".printed-next")).to_have_text("100")


def test_nothing_is_called_saved_while_the_disk_refuses_and_what_was_typed_stays(entering):
    entering.evaluate(
        """() => {
          globalThis.put = IDBObjectStore.prototype.put;
          globalThis.add = IDBObjectStore.prototype.add;
          const full = () => { throw new DOMException("no room", "QuotaExceededError"); };
          IDBObjectStore.prototype.put = IDBObjectStore.prototype.add = full;
        }"""
    )
    press(entering, "63 5/16")
    touch(entering, "Save")

    expect(entering.get_by_role("alert")).to_contain_text("Not saved.")
    expect(entering.get_by_label("type it or say it")).to_have_value("63 5/16")
    entering.evaluate(
        "() => { IDBObjectStore.prototype.put = globalThis.put; IDBObjectStore.prototype.add = globalThis.add; }"
    )
    touch(entering, "Save")
    expect(title(entering)).to_have_text("corner 1, inside")
    assert readings(entering) == ["63 5/16"]


def test_a_corner_is_read_by_three_sides_as_well(room):
    visit(room, "survey", "read", WALL, "corner")
    room.get_by_role("radio", name="three sides").tap()
    for side, text in (("along this wall", "24"), ("along the next wall", "24"), ("across, end to end", "34 1/4")):
        room.get_by_role("radio", name=side).tap()
        press(room, text)
    expect(room.locator(".echo")).to_contain_text("make 91°")

    touch(room, "Save")

    expect(title(room)).not_to_have_text("corner 1, inside")
    assert [entry["body"]["what"] for entry in journal(room) if entry["kind"] == "reading"] == ["sides"]
    assert readings(room) == ["24, 24, 34 1/4"]
    visit(room, "survey")
    expect(room.get_by_role("link", name="corner 1, inside")).to_contain_text("91.0°")


def test_how_far_a_wall_leans_is_touched_together_and_echoed_in_words(room):
    visit(room, "survey", "read", WALL, "plumb")
    press(room, " 1/4")
    touch(room, "off at the foot")
    expect(room.locator(".echo")).to_have_text('leans in, 1/4" in 24')

    touch(room, "Save")

    expect(title(room)).not_to_have_text("wall 1, out of plumb")
    assert readings(room) == ["1/4 foot"]


def test_how_far_a_wall_bows_and_where_is_touched_together_and_echoed_in_words(room):
    visit(room, "survey", "read", WALL, "bow")
    press(room, " 1/4")
    touch(room, "hump at …")
    press(room, "48")
    expect(room.locator(".echo")).to_have_text('a hump of 1/4" at 48"')

    touch(room, "Save")

    expect(title(room)).not_to_have_text("wall 1, bow")
    assert readings(room) == ["1/4 hump at 48"]


def test_studs_are_read_as_a_row_where_a_wall_is_longer_than_the_boards(laptop, new_page):
    long_wall, stock = entity(8), [{"length": "8 ft", "price": "10", "limit": None}]
    entries = walked_room()
    for kind, body in (
        ("setting", {"of": entity(900), "name": "base.stock", "value": stock}),
        ("reading", {"of": long_wall, "what": "length", "text": "119 7/8"}),
    ):
        seq = entries[-1]["seq"] + 1
        entries.append({**entries[-1], "id": entity(1000 + seq), "seq": seq, "kind": kind, "body": body})
    send(laptop.url, entries)
    page = new_page()
    awake(page)
    visit(page, "survey", "read", long_wall, "studs")
    press(page, "14")
    touch(page, "and so on, every …")
    press(page, "16")
    expect(page.locator(".echo")).to_have_text('studs at 14", 30", 46", 62", and so on')

    touch(page, "Save")

    expect(title(page)).not_to_have_text("wall 8, studs")
    assert readings(page) == ["14, every 16"]


TYPED = [
    ("addDigit", ["5/16", "6"], "6 5/16", "a digit goes to the inches, whatever was touched first"),
    ("addDigit", ["5' 3", "1"], "5' 31", "a freer text is left as it was put"),
    ("setMark", ["63", "1/2"], "63 1/2", "a mark is set beside the inches"),
    ("setMark", ["63 1/2", "1/4"], "63 1/4", "another mark takes its place"),
    ("setMark", ["63 1/2", ""], "63", "the inch itself is no mark"),
    ("setMark", ["5' 3", "1/4"], "5' 3 1/4", "a mark goes after what was written"),
    ("setLean", ["63 1/2 shy", "strong"], "63 1/2 strong", "one hair takes the place of another"),
    ("setLean", ["5' 3 shy", ""], "5' 3", "on the mark is no hair, in a freer text too"),
    ("rubOut", ["1607 mm"], "1607 m", "a freer text is rubbed out by the letter"),
]


def test_touches_build_the_text(still):
    made = still.evaluate(
        """async (acts) => {
          const { build } = document.documentElement.dataset;
          const typing = await import(`/v/${build}/pad/typing.js`);
          return acts.map(([act, given]) => typing[act](...given));
        }""",
        [[act, given] for act, given, _, _ in TYPED],
    )
    whys = [why for _, _, _, why in TYPED]
    assert dict(zip(whys, made, strict=True)) == {why: left for _, _, left, why in TYPED}


# What the engine said


def test_an_answer_that_comes_before_the_screen_listens_is_shown(still):
    """The screen is drawn first and listens a moment later; what was asked for it before may be answered in between."""
    shown = still.evaluate(
        """async () => {
          const at = `/v/${document.documentElement.dataset.build}`;
          const { html, render } = await import(`${at}/controls/ui.js`);
          const { Notebook, useAnswer } = await import(`${at}/notebook/notebook.js`);
          const { Answers } = await import(`${at}/notebook/answers.js`);
          let reply;
          const engine = { ask: () => new Promise((answer) => { reply = answer; }) };
          const journal = { entries: () => [], onChange: () => {} };
          const answers = new Answers({ engine, journal, kept: { known: [], save: () => {} } });
          answers.want('{"ask":"boards"}', true, () => {});
          const Screen = () => useAnswer({ ask: "boards" }).answer ?? "not heard";
          const place = document.createElement("div");
          render(html`<${Notebook.Provider} value=${{ answers, engine: "awake" }}><${Screen} /><//>`, place);
          reply({ answer: "heard" });
          for (let turn = 0; turn < 50 && place.textContent !== "heard"; turn += 1) {
            await new Promise((done) => setTimeout(done, 20));
          }
          return place.textContent;
        }"""
    )
    assert shown == "heard"


def test_the_mark_that_was_touched_stands_where_it_stood(entering):
    quarter = entering.locator('[data-mark="1/4"]')
    before = quarter.bounding_box()
    press(entering, "63 1/4")
    expect(entering.locator(".mark.touched")).to_have_count(1)
    assert quarter.bounding_box() == before


# What was read


def test_a_struck_reading_stays_in_sight_and_can_be_restored(entering):
    press(entering, "63 5/16")
    touch(entering, "Save")
    expect(title(entering)).to_have_text("corner 1, inside")
    visit(entering, "survey")
    row = entering.get_by_role("link", name="wall 1, along the floor")
    expect(row).to_contain_text("read once")
    row.tap()

    touch(entering, "Strike 63 5/16")
    expect(entering.locator("s")).to_have_text("63 5/16")
    visit(entering, "survey")
    expect(row).to_contain_text("not read yet")
    row.tap()
    touch(entering, "Restore 63 5/16")
    expect(button(entering, "Strike 63 5/16")).to_be_visible()
    expect(entering.locator("s")).to_have_count(0)
    assert [entry["kind"] for entry in journal(entering)].count("strike") == 2, "nothing was erased"


def test_readings_that_disagree_are_told_while_one_still_stands_there(entering):
    press(entering, "63 5/16")
    touch(entering, "Save")
    expect(title(entering)).to_have_text("corner 1, inside")
    visit(entering, "survey")
    entering.get_by_role("link", name="wall 1, along the floor").tap()
    touch(entering, "Read it again")
    press(entering, "65 5/16")
    touch(entering, "Save")

    expect(title(entering)).to_have_text("corner 1, inside")
    told = entering.locator(".just-saved")
    expect(told).to_contain_text("wall 1, along the floor: readings differ by 2")
    told.get_by_role("link", name="Read it again").tap()
    expect(title(entering)).to_have_text("wall 1, along the floor")
    expect(entering.get_by_text("reading 3")).to_be_visible()


def test_a_wall_struck_and_restored_keeps_its_place(room):
    visit(room, "survey", "walk")
    room.get_by_text("8 walls so far").tap()
    room.locator("a.row", has_text="wall 2").tap()
    touch(room, "Strike wall 2")
    expect(room.get_by_text("7 walls so far")).to_be_visible()

    unfold(room, "Struck", button(room, "Restore the wall").first)
    touch(room, "Restore the wall")

    room.get_by_text("8 walls so far").tap()
    expect(room.locator("a.row", has_text="wall 2")).to_contain_text("cabinet")


def test_a_forgotten_wall_is_put_where_it_belongs(room):
    visit(room, "survey", "walk", entity(3))
    expect(room.get_by_role("heading", name="You face wall 3")).to_be_visible()
    touch(room, "A wall was forgotten after this one")

    room.get_by_text("9 walls so far").tap()
    visit(room, "survey", "walk", entity(4))
    expect(room.get_by_role("heading", name="You face wall 5")).to_be_visible()


def test_a_reading_half_typed_outlives_its_row(entering):
    """Another device strikes the wall while a person stands at it: what is typed must not vanish under the fingers."""
    press(entering, "63 5/16")
    other = entering.context.new_page()
    other.goto(entering.url)
    visit(other, "survey", "walk", WALL)
    touch(other, "Strike wall 1")
    expect(other.get_by_role("heading", name="You face wall 7")).to_be_visible()

    expect(entering.get_by_label("type it or say it")).to_have_value("63 5/16")
    touch(entering, "Save")
    expect(title(entering)).not_to_have_text("wall 1, along the floor")
    assert readings(entering) == ["63 5/16"]


def test_an_address_cut_short_still_opens_the_page(page):
    page.goto(f"{page.url.partition('#')[0]}#/survey/%E0%A4%A")
    page.reload()
    expect(page.get_by_label("The first room")).to_be_visible()


def test_a_second_house_has_its_own_rooms(room):
    visit(room, "survey", "rooms")
    room.get_by_text("Another house").tap()
    room.get_by_label("Name of the house").fill("The cabin")
    room.get_by_label("The first room").fill("Loft")
    touch(room, "Start at the door")
    expect(title(room)).to_have_text("Walk: Loft")

    visit(room, "survey", "rooms")
    touch(room, "Sewing room: open")
    expect(title(room)).to_have_text("Sewing room")


def test_a_corner_told_wrong_is_turned(room):
    visit(room, "survey", "walk")
    room.get_by_label("outside").tap()

    visit(room, "survey")
    expect(room.get_by_role("link", name="corner 8, outside")).to_be_visible()


def test_names_reach_the_page_as_text(page):
    name = "<img src=x onerror=alert(1)> & Co"
    start_house(page, house=name, room=name)
    awake(page)
    for place in PLACES:
        visit(page, *place.split("/"))
        expect(title(page)).to_be_visible()
        expect(page.locator("main img")).to_have_count(0)
    visit(page, "survey")
    expect(title(page)).to_have_text(name)


MORE_THAN_A_DRAWING = {
    "a script": "<script>alert(1)</script>",
    "another language": "<foreignObject><p xmlns='http://www.w3.org/1999/xhtml'>x</p></foreignObject>",
    "a handler": "<line onclick='alert(1)'/>",
    "a style, which the policy refuses": "<g style='fill:red'/>",
    "a link": "<a href='javascript:alert(1)'/>",
    "a reference": "<use href='#x'/>",
    "not even well formed": "<line",
}


def test_a_drawing_that_is_more_than_a_drawing_is_not_shown(new_page):
    page = new_page(forgiving=True)
    draw = """async (texts) => {
      const { build } = document.documentElement.dataset;
      const { parseDrawing } = await import(`/v/${build}/drawings/drawing.js`);
      return texts.map((text) => parseDrawing(`<svg xmlns="http://www.w3.org/2000/svg">${text}</svg>`) !== null);
    }"""
    assert page.evaluate(draw, ["<line class='ink' x1='0'/>"]) == [True]
    shown = page.evaluate(draw, list(MORE_THAN_A_DRAWING.values()))
    assert dict(zip(MORE_THAN_A_DRAWING, shown, strict=True)) == dict.fromkeys(MORE_THAN_A_DRAWING, False)


# Boards, sums, the house


def give_boards(measured):
    """Two lengths of base on sale."""
    visit(measured, "boards")
    expect(measured.get_by_role("region", name="Prices of base")).to_be_visible()
    measured.get_by_role("link", name="Set lengths and prices").tap()
    for number, (length, price) in enumerate((("12 ft", "19.98"), ("8 ft", "11.49")), start=1):
        measured.get_by_label(f"length, board {number}").fill(length)
        measured.get_by_label(f"price, board {number}").fill(price)
    touch(measured, "Save the boards")
    expect(button(measured, "Save the boards")).to_be_disabled()


def test_boards_say_what_is_missing_then_what_to_buy_and_what_it_costs(measured):
    give_boards(measured)
    visit(measured, "boards")

    expect(measured.locator(".money")).to_have_text(re.compile(r"^\$\d+\.\d\d$"))
    expect(measured.locator(".boards-drawn svg .letter").first).to_be_visible()
    measured.get_by_text("Board by board").tap()
    expect(measured.locator("details ol li").first).to_contain_text("ends at")


@pytest.fixture
def shelved(laptop, used_phone) -> Page:
    """A room with more shelves than can be planned and proved at once; its page looks longer for a second only."""
    case = dict(make_cases(7, 8))["house_of_base-7"]
    house = four_walls()
    house.say("setting", of=house.house, name="base.wanted", value="no")
    rows = [
        {"profile": "shelf", "length": str(stock.length.inches), "price": format_price(stock.price_cents)}
        for stock in case.stock
    ]
    house.say("setting", of=house.house, name="other.stock", value=[{**row, "limit": None} for row in rows])
    for number, piece in enumerate(case.pieces, start=1):
        said = {"name": f"shelf {number}", "profile": "shelf", "text": format_length(piece), "count": "1"}
        house.new("free", room=house.room, **said)
    send(laptop.url, house.entries)
    page = used_phone().new_page()

    def look_for_a_second(route):
        answer = route.fetch()
        route.fulfill(response=answer, body=answer.text().replace("LONGER = 12;", "LONGER = 1;"))

    page.route(re.compile(r"notebook/longer\.js"), look_for_a_second)
    page.goto(laptop.url)
    awake(page)
    visit(page, "boards")
    return page


def test_a_plan_that_is_not_proved_can_be_looked_at_longer_and_the_look_stopped(shelved):
    expect(shelved.get_by_text("of the best possible")).to_be_visible()
    touch(shelved, "Look longer")
    expect(shelved.get_by_text("Looking longer; you can go on meanwhile.")).to_be_visible()
    touch(shelved, "Stop looking")
    expect(button(shelved, "Look longer")).to_be_visible()

    touch(shelved, "Look longer")
    # A quick machine comes to the end of it, and has the proof.
    ended = re.compile("^This is the best that was found in a longer look|Proved: no plan")
    expect(shelved.get_by_text(ended)).to_be_visible(timeout=90_000)
    touch(shelved, "Accept this plan")
    expect(shelved.get_by_text("Accepted: this plan")).to_be_visible()


def test_an_accepted_plan_stays_and_its_boards_can_be_said_to_be_bought(measured):
    give_boards(measured)
    visit(measured, "boards")
    touch(measured, "Accept this plan")
    expect(measured.get_by_text("Accepted: this plan")).to_be_visible()

    boards = measured.locator("details[open] ol").get_by_role("button")
    for place in range(boards.count()):
        boards.nth(place).tap()
        expect(boards.nth(place)).to_have_text("bought")

    expect(measured.locator(".money")).to_have_text("$0.00")
    expect(measured.get_by_text("Nothing to buy")).to_be_visible()
    measured.reload()
    expect(measured.get_by_text("Accepted: this plan")).to_be_visible()


def test_what_other_lengths_would_change_is_told_when_asked(measured):
    give_boards(measured)
    visit(measured, "boards")
    measured.get_by_text("What other lengths would change").tap()
    expect(measured.get_by_text(re.compile("^Only 12 ft"))).to_be_visible()
    measured.get_by_label("One more length").fill("14 ft")
    measured.get_by_label("At a price of").fill("0.50")
    touch(measured, "Try it")

    expect(measured.get_by_text(re.compile(r"^With 14 ft at \$0.50: .* less\.$"))).to_be_visible()


def test_a_piece_shows_the_working_of_its_figure(still):
    visit(still, "pieces")
    still.get_by_role("link", name="base, wall 5").tap()
    expect(title(still)).to_have_text("base, wall 5")
    expect(still.locator(".working")).to_contain_text("wall 5")
    expect(still.locator(".end-left")).to_contain_text("saw 45° from square")
    expect(still.get_by_role("list", name="Cautions")).to_contain_text("Saw")


def test_a_sum_is_touched_together(still):
    visit(still, "sums")
    awake(still)
    for name in ("half of", "6", "3"):
        still.get_by_role("button", name=name, exact=True).tap()
    still.locator('[data-mark="1/4"]').tap()
    expect(still.get_by_label("a sum", exact=True)).to_have_value("half of 63 1/4")
    expect(still.locator(".answer .heard")).to_have_text("31 5/8 in")
    for left in ("half of 63", "half of 6", "half of"):
        touch(still, "Rub out")
        expect(still.get_by_label("a sum", exact=True)).to_have_value(left)


def test_what_two_devices_said_apart_is_shown_and_chosen(laptop, room, new_page):
    one, other = room, new_page()
    expect(title(other)).to_have_text("Sewing room")
    awake(other)
    laptop.stop()
    for page, inside in ((one, "mitered"), (other, "butted")):
        visit(page, "house", "standard")
        choice = page.get_by_role("group", name="Base, inside corners").get_by_role("radio", name=inside)
        choice.tap()
        expect(choice).to_be_checked()
    laptop.start()
    for page in (one, other, one):
        visit(page, "house")
        touch(page, "Sync now")
        expect(page.get_by_text("nothing the laptop lacks")).to_be_visible()

    expect(one.get_by_role("heading", name="Said two ways")).to_be_visible()
    touch(one, "miter")
    expect(one.get_by_role("heading", name="Said two ways")).to_be_hidden()
    visit(one, "house", "standard")
    expect(one.get_by_role("radio", name="mitered").first).to_be_checked()


def test_the_house_says_what_the_laptop_would_not_take(page):
    start_house(page)
    expect(title(page)).to_have_text("Walk: Sewing room")
    visit(page, "house")
    good = next(entry for entry in journal(page) if entry["kind"] == "room")
    bad = {
        **good,
        "id": good["id"][:-4] + "beef",
        "device": "0" * 16,
        "seq": 1,
        "body": {**good["body"], "closed": "perhaps"},
    }
    page.get_by_label("Add from a file").set_input_files(
        {"name": "carried.ndjson", "mimeType": "application/x-ndjson", "buffer": json.dumps(bad).encode()}
    )
    expect(page.get_by_text("The entries of the file are in the journal.")).to_be_visible()
    touch(page, "Sync now")
    expect(page.get_by_role("heading", name="The laptop would not take")).to_be_visible()
    with page.expect_request(lambda one: one.url.endswith("/api/sync") and sends(one, bad["id"])):
        touch(page, "Send them again")
    expect(page.get_by_role("heading", name="The laptop would not take")).to_be_visible()


def sends(request, entry: str) -> bool:
    body = request.post_data_buffer
    return entry.encode() in (gzip.decompress(body) if body.startswith(b"\x1f\x8b") else body)


def test_words_that_stand_otherwise_on_the_laptop_are_shown_and_can_be_written_anew(laptop, page):
    start_house(page)
    expect(title(page)).to_have_text("Walk: Sewing room")
    visit(page, "house")
    touch(page, "Sync now")
    expect(page.get_by_text("The laptop was asked.")).to_be_visible()
    theirs = {
        "id": "01900000-0000-7000-8000-00000000beef", "device": "0" * 16, "seq": 1, "version": 1, "kind": "device",
        "stamp": f"{0x19C000000000:012x}-0000-{'0' * 16}", "body": {"name": "their words"}, "supersedes": [],
    }  # fmt: skip
    page.route("**/api/sync", lambda route: route.abort())
    with laptop.app.extensions["scantling"].store.writing() as ledger:
        ledger.append(theirs)
    ours = json.dumps(theirs | {"body": {"name": "our words"}}).encode()
    page.get_by_label("Add from a file").set_input_files(
        {"name": "carried.ndjson", "mimeType": "application/x-ndjson", "buffer": ours}
    )
    expect(page.get_by_text("1 saved here and not yet on the laptop")).to_be_visible()
    page.unroute("**/api/sync")
    touch(page, "Sync now")
    expect(page.get_by_text("device: our words")).to_be_visible()
    touch(page, "Write it anew")
    expect(page.get_by_role("heading", name="The laptop would not take")).to_be_hidden()
    touch(page, "Sync now")
    expect(page.get_by_text("nothing the laptop lacks")).to_be_visible()
    names = [entry["body"]["name"] for entry in laptop.journal() if entry["kind"] == "device"]
    assert sorted(names)[:2] == ["our words", "their words"]


# For everybody


def overflow(page: Page) -> int:
    return page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")


SCREENS = {
    "a narrow phone": (320, 568, "100%"),
    "letters twice the size": (390, 844, "200%"),
    "a phone on its side": (844, 390, "100%"),
    "a laptop": (1280, 800, "100%"),
}


def test_nothing_reaches_past_the_edge_of_the_screen(still):
    too_wide, usual = [], still.viewport_size
    for screen, (width, height, size) in SCREENS.items():
        still.set_viewport_size({"width": width, "height": height})
        still.evaluate("size => { document.documentElement.style.fontSize = size; }", size)
        for place in EVERYWHERE:
            visit(still, *place.split("/"))
            expect(title(still)).to_be_visible()
            if overflow(still) > 0:
                too_wide.append((screen, place))
    still.set_viewport_size(usual)
    still.evaluate("document.documentElement.style.fontSize = ''")
    assert too_wide == []


def test_everything_that_is_touched_is_large_enough(still):
    small = []
    for place in EVERYWHERE:
        visit(still, *place.split("/"))
        expect(title(still)).to_be_visible()
        small += still.evaluate(
            """place => [...document.querySelectorAll("button, a, summary, .pick, input[type=text]")]
              .map((one) => [place, one.textContent || one.ariaLabel, one.getBoundingClientRect()])
              .filter(([, , box]) => box.width && (box.height < 48 || box.width < 48))
              .map(([place, words, box]) => `${place}: ${words} ${box.width} x ${box.height}`)""",
            place,
        )
    assert small == []


def test_every_voice_can_be_read_on_every_ground(still):
    """WCAG 2.2, 1.4.3: text of 4.5 to 1 at least."""
    grounds = {}
    for scheme in ("light", "dark"):
        still.emulate_media(color_scheme=scheme)
        voices = read_voices(still)
        grounds[scheme] = voices["paper"]
        pairs = [(voice, ground) for voice in ("ink", "pencil", "chalk", "red") for ground in ("paper", "sheet")]
        pairs += [("ink", "wood"), ("on-chalk", "chalk")]
        assert [pair for pair in pairs if contrast(*(voices[name] for name in pair)) < 4.5] == [], scheme
    still.emulate_media(color_scheme="null")
    assert luminance(grounds["dark"]) < luminance(grounds["light"])


def read_voices(page: Page) -> dict[str, str]:
    return page.evaluate(
        """() => Object.fromEntries(["paper", "sheet", "ink", "pencil", "chalk", "on-chalk", "red", "wood"]
          .map((name) => [name, getComputedStyle(document.documentElement).getPropertyValue(`--${name}`).trim()]))"""
    )


def contrast(one: str, other: str) -> float:
    """WCAG 2.2, definitions of contrast ratio and relative luminance."""
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def luminance(color: str) -> float:
    channels = [int(color[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in channels]
    return sum(share * part for share, part in zip((0.2126, 0.7152, 0.0722), linear, strict=True))


def test_a_reading_can_be_taken_with_the_keyboard_alone(new_page):
    page = new_page(viewport={"width": 1280, "height": 800}, is_mobile=False, has_touch=False)
    reach(page, "textbox")
    page.keyboard.type("Sewing room")
    page.keyboard.press("Enter")
    expect(title(page)).to_have_text("Walk: Sewing room")
    expect(title(page)).to_be_focused()
    expect(page.get_by_role("heading", name="You face wall 1")).to_be_visible()
    visit(page, "survey")
    expect(title(page)).to_have_text("Sewing room")
    reach(page, "Read it now")
    page.keyboard.press("Enter")
    reach(page, "textbox")
    page.keyboard.type("63 5/16")
    page.keyboard.press("Enter")
    expect(title(page)).to_have_text("Sewing room")
    assert readings(page) == ["63 5/16"]


def reach(page: Page, what: str) -> None:
    """Tab until the thing with this name, or the next text field, has the focus."""
    for _ in range(60):
        page.keyboard.press("Tab")
        found = page.evaluate(
            """() => {
              const { activeElement: here } = document;
              return [here.matches("input[type=text]") ? "textbox" : "", here.textContent];
            }"""
        )
        if found[0] == what or found[1].startswith(what):
            return
    raise AssertionError(f"the keyboard does not reach {what}")


def test_every_control_has_a_name_and_every_field_a_label(still):
    nameless = []
    for place in EVERYWHERE:
        visit(still, *place.split("/"))
        expect(title(still)).to_be_visible()
        nameless += still.evaluate(
            """place => [...document.querySelectorAll("button, a, input, [role=slider], [role=img]")]
              .filter((one) => !(one.textContent.trim() || one.ariaLabel || one.labels?.length))
              .map((one) => `${place}: ${one.outerHTML}`)""",
            place,
        )
    assert nameless == []


def test_the_light_stays_on_while_measuring_and_is_let_go_after(laptop, used_phone):
    page = used_phone().new_page()
    page.add_init_script(
        """globalThis.lights = 0;
        Object.defineProperty(navigator, "wakeLock", { value: { request: async () => {
          globalThis.lights += 1;
          return { release: async () => { globalThis.lights -= 1; } };
        } } });"""
    )
    page.goto(laptop.url)
    page.wait_for_function("() => globalThis.lights === 1")
    visit(page, "sums")
    page.wait_for_function("() => globalThis.lights === 0")
