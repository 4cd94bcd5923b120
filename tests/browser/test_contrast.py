"""More contrast where a person's system asks for it, and all that can be told apart when it forces its own colors."""

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.conftest import Laptop
from tests.browser.touch import entity, send, visit, walked_room

VOICES = """() => {
  const probe = document.body.appendChild(document.createElement("p"));
  const of = (name) => {
    probe.style.color = `var(--${name})`;
    return getComputedStyle(probe).color.match(/\\d+/g).map(Number);
  };
  const names = ["paper", "sheet", "ink", "pencil", "rule", "chalk", "on-chalk", "red", "wood"];
  const found = Object.fromEntries(names.map((name) => [name, of(name)]));
  probe.remove();
  return found;
}"""
#: All that can be seen of an element but its place and its background.
SEEN = """(one) => {
  const { color, borderTopStyle, borderTopWidth, fontWeight, textDecorationLine, outlineStyle } = getComputedStyle(one);
  return { color, borderTopStyle, borderTopWidth, fontWeight, textDecorationLine, outlineStyle };
}"""
#: What share of a picture is of another color than most of it.
INK = """async (bytes) => {
  const picture = await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: "image/png" }));
  const canvas = new OffscreenCanvas(picture.width, picture.height).getContext("2d");
  canvas.drawImage(picture, 0, 0);
  const { data } = canvas.getImageData(0, 0, picture.width, picture.height);
  const counts = new Map();
  for (let at = 0; at < data.length; at += 4) {
    const key = data.slice(at, at + 3).join();
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const most = Math.max(...counts.values());
  return 1 - most / (data.length / 4);
}"""


@pytest.fixture(scope="module")
def still(open_once, site, tmp_path_factory):
    with Laptop(tmp_path_factory.mktemp("laptop"), site) as laptop:
        send(laptop.url, walked_room(read=True))
        with open_once(laptop) as page:
            yield page


@pytest.fixture
def reading(still: Page) -> Page:
    visit(still, "survey")
    visit(still, "survey", "read", entity(1), "length")
    expect(still.get_by_label("type it or say it")).to_have_value("")
    yield still
    still.emulate_media(forced_colors="none", contrast="no-preference", color_scheme="light")


def luminance(color: list[int]) -> float:
    """WCAG 2.2, definition of relative luminance."""
    parts = (one / 255 for one in color[:3])
    red, green, blue = (one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: list[int], other: list[int]) -> float:
    """WCAG 2.2, definition of contrast ratio."""
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_whoever_asks_for_more_contrast_has_seven_to_one_for_text_and_hairlines_that_are_seen(reading, scheme):
    reading.emulate_media(color_scheme=scheme)
    before = reading.evaluate(VOICES)
    reading.emulate_media(contrast="more", color_scheme=scheme)
    voices = reading.evaluate(VOICES)
    for ground in ("paper", "sheet", "wood"):
        for text in ("ink", "pencil", "chalk", "red"):
            assert contrast(voices[text], voices[ground]) >= 7, (text, ground)
        for text in ("pencil", "rule", "chalk", "red"):
            assert contrast(voices[text], voices[ground]) > contrast(before[text], before[ground]), (text, ground)
        assert contrast(voices["rule"], voices[ground]) >= 3, ground
    assert contrast(voices["on-chalk"], voices["chalk"]) >= 7


def differences(one: Locator, other: Locator) -> set[str]:
    """In what two elements look different, their backgrounds aside."""
    mine, theirs = one.evaluate(SEEN), other.evaluate(SEEN)
    return {name for name in mine if mine[name] != theirs[name]}


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_in_forced_colors_what_is_chosen_differs_by_more_than_its_background(reading, scheme):
    reading.emulate_media(forced_colors="active", color_scheme=scheme)
    lean = reading.get_by_role("group", name="how it lies on the mark").get_by_role("button")
    assert {"textDecorationLine", "fontWeight"} <= differences(lean.nth(1), lean.nth(0))
    assert reading.get_by_role("button", name="Save").evaluate(SEEN) != lean.nth(0).evaluate(SEEN)
    visit(reading, "survey", "read", entity(1), "corner")
    picks = reading.locator(".pick")
    expect(picks).to_have_count(2)
    assert {"textDecorationLine", "fontWeight"} <= differences(picks.nth(0), picks.nth(1))
    visit(reading, "survey")
    tabs = reading.locator(".tabs a")
    expect(tabs.first).to_be_visible()
    assert {"textDecorationLine", "fontWeight"} <= differences(tabs.nth(0), tabs.nth(1))


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_in_forced_colors_the_inch_has_its_marks_and_the_chosen_one_is_the_widest(reading, scheme):
    reading.emulate_media(forced_colors="active", color_scheme=scheme)
    reading.get_by_label("type it or say it").fill("63 5/16")  # a touch would be lit for a moment
    expect(reading.locator('.touched[data-mark="5/16"]')).to_be_visible()
    chosen = painted(reading, "5/16")
    others = [painted(reading, mark) for mark in ("3/16", "9/16")]
    assert min(others) > 0.01, "a mark that is a background alone is gone"
    assert chosen > 2 * max(others)


def painted(page: Page, mark: str) -> float:
    """What share of a mark's column is not ground."""
    shot = page.locator(f'[data-mark="{mark}"]').screenshot()
    return page.evaluate(INK, list(shot))


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_in_forced_colors_a_drawing_is_drawn_in_the_systems_colors(reading, scheme):
    reading.emulate_media(forced_colors="active", color_scheme=scheme)
    voices = reading.evaluate(VOICES)
    for text in ("ink", "pencil", "chalk", "red"):
        for ground in ("paper", "sheet", "wood"):
            assert contrast(voices[text], voices[ground]) >= 4.5, (text, ground)


def test_in_forced_colors_what_the_keyboard_is_at_has_a_line_round_it(reading):
    reading.emulate_media(forced_colors="active")
    reading.get_by_label("type it or say it").fill("63")
    for name in ("Rub out", "a hair shy", "on the mark", "a hair strong", "the inch, in sixteenths"):
        reading.keyboard.press("Tab")
        here = reading.locator(":focus")
        expect(here).to_have_accessible_name(name)
        assert here.evaluate("(one) => getComputedStyle(one).outline").endswith("solid 3px")
