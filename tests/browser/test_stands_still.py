"""The page stands still: what comes late finds its place kept, and pushes nothing from under the finger."""

from collections.abc import Iterator, Sequence
from itertools import islice

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Laptop
from tests.browser.still import LAPTOPS_ENGINE, SILENT, WATCH_ENGINE, WATCH_SHIFTS, worst_window
from tests.browser.touch import awake, title
from tests.look.places import fill, go_to, places

#: What moved most before its place was kept; the others are looked at when there is time.
WORST = ("piece", "supplies", "fit", "rooms compared")
SIZES = ((360, 740), (390, 844))
#: Of the whole screen; what Chrome counts as good is twice that.
MOST = 0.05
REST = 800  # ms without an answer in which what still comes of a screen has come
KEPT = 2500  # and in which its answers are kept for the next start, which paints them before the engine is awake
TABS = 4  # opened together: most of a start is waited for
LONG_NAME = "The sewing room over the back stair, as it was before the wall came out"
STATUSES = ("", "engine waking", "engine not running · no signal · 14 saved here · not kept: address not trusted")
BAR = "document.querySelector('.bar').getBoundingClientRect().height"
PAST = "document.documentElement.scrollWidth - document.documentElement.clientWidth"


@pytest.fixture(scope="module")
def house(site, tmp_path_factory) -> Iterator[Laptop]:
    """The demo house."""
    data = tmp_path_factory.mktemp("still")
    fill(data)
    with Laptop(data, site) as laptop:
        yield laptop


@pytest.fixture(scope="module")
def page(open_once, house) -> Iterator[Page]:
    with open_once(house, WATCH_SHIFTS + WATCH_ENGINE) as page:
        yield page


@pytest.fixture(scope="module")
def tabs(open_once, house) -> Iterator[list[Page]]:
    """Some pages of one phone, which keeps what it is answered at every place."""
    with open_once(house, WATCH_SHIFTS + LAPTOPS_ENGINE) as page:
        for place in places().values():
            go_to(page, place)
            page.wait_for_function(SILENT, arg=200)
        page.wait_for_timeout(KEPT)
        tabs = [page, *(page.context.new_page() for _ in range(TABS - 1))]
        for tab in tabs[1:]:
            tab.goto(house.url)
        yield tabs


def moved(tabs: Sequence[Page], at: Sequence[str]) -> list[float]:
    """How far the page moves when it is opened again at some places, in a tab each, until the engine has answered."""
    opened = list(zip(tabs, at, strict=False))
    for tab, place in opened:
        tab.evaluate("place => { location.hash = place; }", f"#/{place}")
        tab.reload()
    for tab, place in opened:
        tab.wait_for_function("() => performance.getEntriesByName('engine awake').length > 0")
        go_to(tab, place)
        tab.wait_for_function(SILENT, arg=REST)
    return [worst_window(tab.evaluate("shifts")) for tab, _ in opened]


@pytest.mark.parametrize("name", WORST)
def test_a_screen_opened_again_stands_still_while_its_answer_comes(page, name):
    page.set_viewport_size({"width": 390, "height": 844})
    go_to(page, places()[name])
    (far,) = moved([page], [places()[name]])
    assert far < MOST


@pytest.mark.further
@pytest.mark.parametrize(("width", "height"), SIZES)
def test_every_screen_opened_again_stands_still_while_its_answer_comes(tabs, width, height):
    for tab in tabs:
        tab.set_viewport_size({"width": width, "height": height})
    every = iter(places().items())
    far: dict[str, float] = {}
    while some := dict(islice(every, TABS)):
        far |= zip(some, moved(tabs, list(some.values())), strict=True)
    assert {name: much for name, much in far.items() if much >= MOST} == {}


def test_on_the_walk_the_plan_stands_where_it_does_before_the_wall_is_drawn_beside_it(page):
    page.set_viewport_size({"width": 390, "height": 844})
    go_to(page, places()["walk"])
    expect(page.locator(".both-views > *")).to_have_count(2)
    plan, wall = (page.locator(f".both-views > :{which}-child") for which in ("first", "last"))
    expect(wall.locator("svg")).to_be_visible()
    beside = plan.bounding_box()
    wall.evaluate("(one) => { one.style.display = 'none'; }")
    assert plan.bounding_box() == beside
    wall.evaluate("(one) => { one.style.display = ''; }")


@pytest.mark.parametrize("place", ["survey", "supplies", "house"])
@pytest.mark.parametrize("letters", ["100%", "200%"])
@pytest.mark.parametrize("name", ["", LONG_NAME], ids=["as it is called", "a long name"])
def test_the_bar_is_as_high_whatever_the_status_says(page, place, letters, name):
    page.set_viewport_size({"width": 360, "height": 740})
    go_to(page, place)
    page.evaluate("size => { document.documentElement.style.fontSize = size; }", letters)
    if name:
        title(page).evaluate("(heading, name) => { heading.textContent = name; }", name)
    high = set()
    for words in STATUSES:
        page.locator(".status").evaluate("(status, words) => { status.textContent = words; }", words)
        high.add(page.evaluate(BAR))
        assert page.evaluate(PAST) <= 0
    page.reload()
    awake(page)
    assert len(high) == 1


def test_a_status_that_is_cut_off_is_told_whole_by_house(page):
    go_to(page, "house")
    expect(page.locator(".status")).to_have_attribute("title", page.locator(".status").inner_text())
    expect(page.get_by_role("region", name="This notebook")).to_be_visible()
