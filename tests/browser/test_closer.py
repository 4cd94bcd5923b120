"""The plan and a wall from in front, looked at closely: by touch alone, by keyboard alone; nothing moves by itself."""

import pytest
from playwright.sync_api import CDPSession, Locator, Page, expect

from tests.browser.touch import awake, button, entity, send, touch, visit, walked_room

#: What is on its way by itself.
STILL = """() => [...document.querySelectorAll(".closer, .closer *")].flatMap((one) => one.getAnimations()).length"""


@pytest.fixture
def survey(laptop, used_phone) -> Page:
    send(laptop.url, walked_room(read=True))
    page = used_phone().new_page()
    page.emulate_media(reduced_motion="reduce")
    page.goto(laptop.url)
    awake(page)
    visit(page, "survey")
    expect(page.locator(".closer svg")).to_be_visible()
    return page


def wide(frame: Locator) -> float:
    return frame.locator("svg").bounding_box()["width"]


def fingers(session: CDPSession, kind: str, *points: tuple[float, float]) -> None:
    """What a finger or two do, as the system tells it."""
    touches = [{"x": x, "y": y, "id": number} for number, (x, y) in enumerate(points)]
    session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": touches})


def test_the_plan_of_a_walk_comes_closer_too(survey, until):
    visit(survey, "survey", "walk", entity(3))
    expect(survey.locator(".closer line.hand")).to_have_attribute("data-wall", entity(3))
    expect(survey.get_by_role("img", name="Wall 3 from in front", exact=True)).to_be_visible()
    plan = survey.locator(".closer", has=survey.get_by_role("img", name="Plan of")).locator(".frame")
    whole = wide(plan)
    touch(survey, "Closer: Plan of Sewing room")
    until(survey, lambda: wide(plan) > 1.4 * whole)  # of all the width, where two stood side by side


def test_two_fingers_bring_the_plan_closer_and_what_is_between_them_stays_there(survey, until):
    frame = survey.locator(".closer .frame")
    whole, box = wide(frame), frame.bounding_box()
    x, y = box["x"] + box["width"] / 4, box["y"] + box["height"] / 2
    hand = survey.context.new_cdp_session(survey)
    fingers(hand, "touchStart", (x - 20, y), (x + 20, y))
    for apart in (30, 40, 60):
        fingers(hand, "touchMove", (x - apart, y), (x + apart, y))
    fingers(hand, "touchEnd")

    until(survey, lambda: wide(frame) == pytest.approx(3 * whole, rel=0.02))
    assert frame.bounding_box() == box  # the frame stays as it was
    # A quarter across the frame was a quarter across the plan, three times as wide now.
    until(survey, lambda: frame.evaluate("one => one.scrollLeft") == pytest.approx(2 * box["width"] / 4, abs=3))
    assert survey.evaluate("visualViewport.scale") == 1  # the page itself has not grown


def test_by_touch_alone_the_plan_comes_closer_is_moved_and_is_whole_again(survey, until):
    frame = survey.locator(".closer .frame")
    whole = wide(frame)
    touch(survey, "Closer")
    touch(survey, "Closer")
    until(survey, lambda: wide(frame) == pytest.approx(2.25 * whole, rel=0.02))
    assert survey.evaluate(STILL) == 0
    for way, where in (("right", "scrollLeft"), ("down", "scrollTop")):
        before = frame.evaluate(f"one => one.{where}")
        touch(survey, f"{way}: move")
        until(survey, lambda before=before, where=where: frame.evaluate(f"one => one.{where}") > before)
    for one in survey.locator(".looks .button").all():
        box = one.bounding_box()
        assert box["width"] >= 48
        assert box["height"] >= 48
    touch(survey, "Whole")
    until(survey, lambda: wide(frame) == whole)
    expect(button(survey, "Farther")).to_have_count(0)


def test_by_keyboard_alone_a_wall_from_in_front_comes_closer_and_the_arrows_move_it(survey, until):
    visit(survey, "pieces")
    survey.get_by_text("Each wall from in front").click()
    wall = survey.locator(".closer", has=survey.get_by_role("img", name="Wall 1 from in front"))
    plan = survey.locator(".closer", has=survey.get_by_role("img", name="Plan of"))
    expect(wall.locator("svg")).to_be_visible()
    wholes = wide(wall.locator(".frame")), wide(plan.locator(".frame"))
    button(survey, "Closer: Wall 1 from in front").focus()
    for _ in range(3):
        survey.keyboard.press("+")
    until(survey, lambda: wide(wall.locator(".frame")) > 3 * wholes[0])
    survey.keyboard.press("-")
    until(survey, lambda: wide(wall.locator(".frame")) == pytest.approx(2.25 * wholes[0], rel=0.02))
    assert wide(plan.locator(".frame")) == wholes[1]  # the other drawing is not in hand

    frame = wall.locator(".frame")
    survey.keyboard.press("Shift+Tab")
    expect(frame).to_be_focused()
    before = frame.evaluate("one => one.scrollLeft")
    survey.keyboard.press("ArrowRight")
    until(survey, lambda: frame.evaluate("one => one.scrollLeft") > before)
    survey.keyboard.press("0")
    until(survey, lambda: wide(frame) == wholes[0])
