"""Installing, explained: a button where a browser offers it, the steps elsewhere, nothing where it is done."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.touch import button, title, touch, unfold, visit

IPHONE = "Mozilla/5.0 (iPhone; CPU iPhone OS 18_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Mobile/15E148"
IPAD = "Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15 (KHTML, like Gecko) Safari/605.1.15"
ANDROID = "Mozilla/5.0 (Linux; Android 14; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/150.0.0.0 Mobile"
LINUX = "Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/150.0.0.0"
#: What a browser does that offers an install; whether it may then lay its own offer over the page.
OFFER = """() => {
  const event = new Event("beforeinstallprompt", { cancelable: true });
  event.prompt = async () => { globalThis.prompted = (globalThis.prompted ?? 0) + 1; };
  return dispatchEvent(event);
}"""
INSTALLED = """globalThis.matchMedia = (media) =>
  Object.assign(new EventTarget(), { matches: /standalone/.test(media) });"""
SEVERAL_FINGERS = """if (/Mac/.test(navigator.userAgent))
  Object.defineProperty(navigator, "maxTouchPoints", { value: 5 });"""
TABLE = {"has_touch": False, "is_mobile": False}
WHAT = "opens like any other app"
SUMMARY = "Keep it as an app on this device"


@pytest.fixture
def house(laptop, new_phone):
    """Opens House in a browser that says who it is."""

    def make(agent: str = ANDROID, script: str = "", **options) -> Page:
        context = new_phone(sleeps=True, service_workers="block", user_agent=agent, **options)
        context.route("**/engine/worker.js", lambda route: route.abort())
        page = context.new_page()
        page.add_init_script(script)
        page.goto(f"{laptop.url}#/house")
        expect(title(page)).to_have_text("House")
        expect(button(page, "Sync now")).to_be_visible()
        return page

    return make


@pytest.mark.parametrize(
    ("agent", "options", "words", "never"),
    [
        pytest.param(IPHONE, {}, "Touch Share, then Add to Home Screen", "Install app", id="an iPhone"),
        pytest.param(IPAD, {}, "Touch Share, then Add to Home Screen", "Install app", id="an iPad as a Mac"),
        pytest.param(ANDROID, {}, "Install app or Add to Home screen", "Touch Share", id="Android"),
        pytest.param(LINUX, TABLE, "Install in the address bar", "Touch Share", id="a table"),
    ],
)
def test_the_steps_are_told_for_the_kind_of_device(house, agent, options, words, never):
    page = house(agent, SEVERAL_FINGERS, **options)
    page.get_by_text(SUMMARY, exact=True).click()
    expect(page.get_by_text(words)).to_be_visible()
    expect(page.get_by_text(WHAT)).to_be_visible()
    expect(page.get_by_text(never)).to_have_count(0)
    expect(page.get_by_text("begin with an empty notebook")).to_have_count(int("Share" in words))


def test_where_the_browser_offers_it_there_is_a_button_and_no_steps(house):
    page = house()
    visit(page, "survey")
    expect(title(page)).to_have_text("A new notebook")
    assert not page.evaluate(OFFER), "it would lie over what is being measured"
    visit(page, "house")
    expect(button(page, "Install Scantling")).to_be_visible()
    expect(page.get_by_text(WHAT)).to_be_visible()
    expect(page.get_by_text(SUMMARY)).to_have_count(0)
    touch(page, "Install Scantling")
    expect(button(page, "Install Scantling")).to_have_count(0)  # an offer is taken or left once
    unfold(page, SUMMARY, page.get_by_text("Install app or Add to Home screen"))
    assert page.evaluate("() => prompted") == 1


def test_once_it_is_installed_that_is_said_and_the_steps_are_gone(house):
    page = house()
    page.evaluate(OFFER)
    touch(page, "Install Scantling")
    page.evaluate("() => dispatchEvent(new Event('appinstalled'))")
    expect(page.get_by_text("Scantling is installed")).to_be_visible()
    expect(page.get_by_text(SUMMARY)).to_have_count(0)


@pytest.mark.parametrize(
    "script",
    [
        pytest.param(INSTALLED, id="as the browser says"),
        pytest.param("Object.defineProperty(navigator, 'standalone', { value: true });", id="as an iPhone says"),
        pytest.param("Object.defineProperty(globalThis, 'isSecureContext', { value: false });",
                     id="an address that is not trusted installs nothing"),
    ],
)  # fmt: skip
def test_where_it_runs_installed_or_cannot_be_nothing_is_told_of_it(house, script):
    page = house(IPHONE, script)
    page.evaluate(OFFER)
    expect(page.get_by_text(SUMMARY)).to_have_count(0)
    expect(button(page, "Install Scantling")).to_have_count(0)
