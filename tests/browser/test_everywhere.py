"""Every screen at every size and in both themes: nothing for axe to find, past the edge or too small.

axe-core is the rule book here, from the package axe-playwright-python; no part of it is on the page.
"""

import os
from collections.abc import Iterator
from importlib.resources import files
from typing import Any

import pytest
from playwright.sync_api import Page

from tests.browser.conftest import Laptop, listen
from tests.browser.still import LAPTOPS_ENGINE
from tests.browser.touch import awake
from tests.look.places import SIZES, fill, go_to, places

pytestmark = pytest.mark.further

#: A soak looks at every size; a change at the smallest, for each takes a quarter of a minute and more.
LOOKED_AT = SIZES if int(os.environ.get("SCANTLING_RUNS", "0")) >= 1000 else SIZES[:1]
AXE = files("axe_playwright_python").joinpath("axe.min.js").read_text(encoding="utf-8")
#: The rules of WCAG 2.2 at A and AA, and what axe counts as good practice.
LOOK = """async (only) => {
  const found = await axe.run(document, only ? { runOnly: only } : { resultTypes: ["violations"] });
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((one) => one.target).join(", ")}`);
}"""
#: A link within a sentence is read with it: WCAG 2.2, 2.5.8, inline.
SMALL = """() => [...document.querySelectorAll("button, a:not(p:not(.onward) a), summary, .pick, input[type=text]")]
  .map((one) => [one.textContent || one.ariaLabel, one.getBoundingClientRect()])
  .filter(([, box]) => box.width && box.height && (box.height < 47.9 || box.width < 47.9))
  .map(([words, box]) => `${words} ${box.width} x ${box.height}`)"""
PAST = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
PHONES = (360, 390)


@pytest.fixture(scope="module")
def page(browser, site, tmp_path_factory) -> Iterator[Page]:
    data = tmp_path_factory.mktemp("everywhere")
    fill(data)
    laptop = Laptop(data, site).start()
    # axe tries colors by styles of its own, which the page's policy would refuse.
    context = browser.new_context(service_workers="block", bypass_csp=True)
    context.add_init_script(LAPTOPS_ENGINE)  # what it says is the same, and sooner
    wrong = listen(context)
    page = context.new_page()
    page.goto(laptop.url)
    awake(page)
    page.evaluate(AXE)
    yield page
    context.close()
    laptop.stop()
    assert wrong == []


def faults(page: Page, width: int) -> Iterator[Any]:
    """What is wrong with the screen that is shown."""
    page.emulate_media(color_scheme="light")
    yield from page.evaluate(LOOK)
    page.emulate_media(color_scheme="dark")
    yield from (f"dark, {fault}" for fault in page.evaluate(LOOK, ["color-contrast"]))
    if page.evaluate(PAST) > 0:
        yield "past the edge"
    if width in PHONES:
        yield from (f"small: {fault}" for fault in page.evaluate(SMALL))
        page.evaluate("document.documentElement.style.fontSize = '200%'")
        page.wait_for_timeout(150)
        if page.evaluate(PAST) > 0:
            yield "past the edge with letters twice the size"
        page.evaluate("document.documentElement.style.fontSize = ''")


@pytest.mark.parametrize(("width", "height"), LOOKED_AT, ids=[f"{width}x{height}" for width, height in LOOKED_AT])
def test_nothing_is_found_on_any_screen(page, width, height):
    page.set_viewport_size({"width": width, "height": height})
    found = []
    for name, place in places().items():
        go_to(page, place)
        found += [f"{name}: {fault}" for fault in faults(page, width)]
    assert found == [], "\n".join(found)
