"""Fitting: pieces come in their order, one wants a hair off, and what that does is told before it is written."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Laptop
from tests.browser.touch import button, send, touch, visit, walked_room


@pytest.fixture(scope="module")
def bench(open_once, site, tmp_path_factory) -> Iterator[Page]:
    with Laptop(tmp_path_factory.mktemp("fit"), site) as laptop:
        send(laptop.url, walked_room(read=True))
        with open_once(laptop) as page:
            visit(page, "pieces")
            touch(page, "Issue the list")
            expect(button(page, "At the saw")).to_be_visible()
            yield page


def test_a_piece_is_trimmed_by_a_hair_and_fitted_and_the_next_one_is_in_hand(bench):
    bench.get_by_role("link", name="Fit them, in their order").tap()
    ring = bench.locator(".ring-large")
    expect(ring).to_have_text("A")
    expect(button(bench, "At the saw")).to_be_visible()
    expect(button(bench, "Fitted")).to_have_count(0)

    visit(bench, "pieces", "saw", "A")
    bench.get_by_role("button", name="Cut then").tap()
    expect(ring).not_to_have_text("A")
    visit(bench, "pieces", "fit", "A")
    expect(bench.locator(".stands")).to_contain_text(", cut")
    touch(bench, "1/64 off")
    expect(bench.get_by_text("Trim 1/64 off A.")).to_be_visible()
    expect(bench.get_by_text("A as its board is")).to_be_visible()
    touch(bench, "Write it down")
    expect(button(bench, "Write it down")).to_have_count(0)
    expect(bench.locator(".piece-head .figure")).to_contain_text("64")

    button(bench, "Fitted then").tap()
    expect(ring).not_to_have_text("A")
    expect(bench.get_by_text("1 of ")).to_be_visible()
    bench.locator("summary", has_text="Fitted").click()
    expect(bench.get_by_role("region", name="Fitted").locator(".ring")).to_have_text("A")


def test_a_hair_more_than_a_board_has_makes_it_one_to_cut_again(bench):
    visit(bench, "pieces", "saw", "B")
    bench.get_by_role("button", name="Cut then").tap()
    visit(bench, "pieces", "fit", "B")
    expect(bench.locator(".stands")).to_contain_text(", cut")
    touch(bench, "1/32 more")
    expect(bench.get_by_text("it is cut again, to the figure below")).to_be_visible()
    touch(bench, "Write it down")
    expect(bench.locator(".stands")).to_contain_text(", recut")
    expect(button(bench, "At the saw")).to_be_visible()
