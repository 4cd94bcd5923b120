"""The inch looked at closely: held with a finger, or stepped along with Shift, it has its thirty-seconds."""

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.conftest import Laptop
from tests.browser.touch import button, entity, press, send, title, touch, visit, walked_room


@pytest.fixture(scope="module")
def still(open_once, site, tmp_path_factory):
    with Laptop(tmp_path_factory.mktemp("laptop"), site) as laptop:
        send(laptop.url, walked_room())
        with open_once(laptop) as page:
            yield page


@pytest.fixture
def reading(still: Page) -> Page:
    """The screen for the length of the first wall, to try and to leave without saving."""
    visit(still, "survey")
    visit(still, "survey", "read", entity(1), "length")
    expect(still.get_by_label("type it or say it")).to_have_value("")
    return still


def inch(page: Page) -> Locator:
    return page.get_by_role("slider", name="the inch")


def drawn(page: Page) -> list[str]:
    return page.eval_on_selector_all("[data-mark]", "(all) => all.map((one) => one.dataset.mark)")


def middle(page: Page, mark: str) -> tuple[float, float]:
    box = page.locator(f'[data-mark="{mark}"]').bounding_box()
    return box["x"] + box["width"] / 2, box["y"] + 20


def hold(page: Page, mark: str) -> None:
    page.mouse.move(*middle(page, mark))
    page.mouse.down()
    expect(page.locator(".inch.near")).to_be_visible()


def test_held_still_the_inch_is_drawn_with_thirty_seconds_about_the_finger_and_letting_go_picks(reading):
    press(reading, "63")
    before = middle(reading, "1/4")
    hold(reading, "1/4")
    assert middle(reading, "1/4") == pytest.approx(before), "the mark stays under the finger that holds it"
    assert drawn(reading) == ["1/8", "5/32", "3/16", "7/32", "1/4", "9/32", "5/16", "11/32", "3/8", "13/32", "7/16",
                              "15/32", "1/2", "17/32", "9/16", "19/32", "5/8"]  # fmt: skip
    expect(reading.get_by_label("type it or say it")).to_have_value("63 1/4")
    reading.mouse.move(*middle(reading, "9/32"), steps=4)
    reading.mouse.up()
    expect(reading.get_by_label("type it or say it")).to_have_value("63 9/32")
    expect(reading.locator(".echo")).to_contain_text("sixty-three and nine thirty-seconds inches")
    expect(reading.locator('.touched[data-mark="9/32"]')).to_be_visible()


def test_a_sixteenth_picked_there_leads_back_to_the_whole_inch(reading):
    press(reading, "63")
    hold(reading, "7/8")
    reading.mouse.move(*middle(reading, "27/32"), steps=4)
    expect(inch(reading)).to_have_attribute("aria-valuetext", "27/32")
    reading.mouse.move(*middle(reading, "13/16"), steps=4)
    expect(reading.locator(".inch.near")).to_be_visible()
    reading.mouse.up()
    expect(reading.locator(".inch.near")).to_have_count(0)
    expect(reading.get_by_label("type it or say it")).to_have_value("63 13/16")
    assert len(drawn(reading)) == 16


def test_a_touch_or_a_slide_picks_a_sixteenth_as_ever(reading):
    press(reading, "63")
    reading.mouse.move(*middle(reading, "1/4"))
    reading.mouse.down()
    reading.mouse.move(*middle(reading, "11/16"), steps=5)
    reading.wait_for_timeout(900)  # longer than a hold
    expect(reading.locator(".inch.near")).to_have_count(0)
    reading.mouse.up()
    expect(reading.get_by_label("type it or say it")).to_have_value("63 11/16")


@pytest.mark.parametrize("mark", ["", "1/16", "15/16"])
def test_near_an_end_of_the_inch_it_is_drawn_as_well(reading, mark):
    press(reading, "63")
    hold(reading, mark)
    assert mark in drawn(reading)
    assert len(drawn(reading)) in (16, 17)
    reading.mouse.up()
    expect(reading.locator(".inch.near")).to_have_count(0)


def test_by_keyboard_shift_steps_by_thirty_seconds(reading):
    press(reading, "63 1/4")
    one = inch(reading)
    for key, mark in {"Shift+ArrowRight": "9/32", "ArrowRight": "5/16", "Shift+ArrowLeft": "9/32", "ArrowLeft": "1/4",
                      "ArrowUp": "5/16", "Shift+ArrowDown": "9/32", "Shift+End": "31/32"}.items():  # fmt: skip
        one.press(key)
        expect(one).to_have_attribute("aria-valuetext", mark)
        expect(reading.locator(f'.touched[data-mark="{mark}"]')).to_be_visible()
    one.press("Shift+ArrowRight")
    expect(one).to_have_attribute("aria-valuetext", "31/32")


def test_a_thirty_second_that_is_typed_is_drawn_and_rubbed_out_again(reading):
    reading.get_by_label("type it or say it").fill("63 5/32")
    expect(reading.locator('.touched[data-mark="5/32"]')).to_be_visible()
    touch(reading, "a hair shy")
    expect(reading.locator(".echo")).to_contain_text("sixty-three and five thirty-seconds inches, shy")
    touch(reading, "Rub out")
    touch(reading, "Rub out")
    expect(reading.get_by_label("type it or say it")).to_have_value("63")
    expect(reading.locator(".inch.near")).to_have_count(0)


def test_in_a_sum_too(still):
    visit(still, "sums")
    expect(title(still)).to_have_text("Sums")
    still.get_by_label("a sum", exact=True).fill("10 1/2 + 3")
    hold(still, "1/8")
    still.mouse.move(*middle(still, "3/32"), steps=3)
    still.mouse.up()
    expect(still.locator(".written input")).to_have_value("10 1/2 + 3 3/32")
    button(still, "Clear").tap()


#: Where the digits have been since, by how far down the page they were.
WATCH = """() => {
  globalThis.places = new Set();
  const look = () => {
    const digits = document.querySelector(".digits");
    if (digits) places.add(Math.round(digits.getBoundingClientRect().top + scrollY));
    requestAnimationFrame(look);
  };
  look();
}"""


@pytest.mark.parametrize("size", [(390, 844), (320, 568), (844, 390)], ids=["phone", "small", "on its side"])
def test_no_key_moves_under_the_thumb_while_a_figure_grows_and_is_read_back(still, size):
    usual = still.viewport_size
    still.set_viewport_size({"width": size[0], "height": size[1]})
    for what, typed in (("length", ["63"]), ("plumb", ["12"]), ("corner", ["91"]), ("corner", ["24", "24", "34"])):
        visit(still, "survey")
        visit(still, "survey", "read", entity(1), what)
        if len(typed) > 1:
            still.get_by_role("radio", name="three sides").tap()
        expect(still.locator(".held svg")).to_have_count(1)
        still.evaluate(WATCH)
        for side, figure in zip(("along this wall", "along the next wall", "across, end to end"), typed, strict=False):
            if len(typed) > 1:
                still.get_by_role("radio", name=side).tap()
            press(still, figure)
        expect(still.locator(".echo")).not_to_be_empty()
        still.evaluate("() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")
        assert still.evaluate("[...places].length") == 1, (what, typed)
    still.set_viewport_size(usual)
