"""Joints that a person decides: one turned round on the page of a piece, one at the rake of a stair."""

from playwright.sync_api import expect

from tests.browser.touch import awake, button, send, title, touch, visit
from tests.cut_lists import issue
from tests.entries import House, four_walls


def test_a_joint_is_turned_round_on_the_page_of_its_piece_and_back(laptop, used_phone):
    house = four_walls()
    issue(house, house.room)
    send(laptop.url, house.entries)
    page = used_phone().new_page()
    page.set_viewport_size({"width": 360, "height": 780})
    page.goto(laptop.url)
    awake(page)
    visit(page, "pieces", "A")
    expect(page.locator(".end-right")).to_contain_text("square")
    page.get_by_text("Turn a joint round").tap()
    button(page, "run the other board through, this one to it").last.tap()

    expect(page.locator(".end-right")).to_contain_text("cope")
    button(page, "run this board through, the other to it").last.tap()
    expect(page.locator(".end-right")).to_contain_text("square")

    page.get_by_text("Its stick is thicker or thinner").tap()
    page.get_by_label("Base on wall 1, thickness").fill("17/32")
    touch(page, "Save")
    expect(button(page, "Save")).to_be_disabled()


def test_who_went_on_while_a_joint_was_turned_round_is_not_pulled_back(laptop, used_phone):
    send(laptop.url, four_walls().entries)  # not issued: the order of fitting changes, and the page goes to the list
    page = used_phone().new_page()
    page.goto(laptop.url)
    awake(page)
    visit(page, "pieces", "A")
    page.get_by_text("Turn a joint round").tap()
    page.evaluate(
        """() => {
          const { add } = IDBObjectStore.prototype;
          IDBObjectStore.prototype.add = function (...given) {
            location.hash = "#/sums";
            return add.apply(this, given);
          };
        }"""
    )
    button(page, "run the other board through, this one to it").last.tap()
    expect(page.locator("p.heard[role=status]")).to_contain_text("saved here")
    page.wait_for_timeout(300)
    expect(title(page)).to_have_text("Sums")


def test_the_rake_of_a_stair_s_skirt_is_asked_for_where_it_is_said_to_stand(laptop, used_phone):
    house = House(closed=False)
    house.wall("200")
    send(laptop.url, house.entries)
    page = used_phone().new_page()
    page.goto(laptop.url)
    awake(page)
    visit(page, "survey", "thing", house.walls[0])
    expect(page.get_by_label("Rake")).to_have_count(0)
    expect(page.get_by_label("Toe kick, height")).to_be_visible()
    page.locator("label.pick").filter(has_text="stair skirt").tap()
    expect(page.get_by_label("Toe kick, height")).to_have_count(0)
    page.get_by_label("Rake").fill("36")
    touch(page, "Save")

    expect(page.get_by_text("stair skirt").first).to_be_visible()
    expect(page.get_by_text("base stops at it")).to_be_visible()
