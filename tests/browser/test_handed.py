"""What other programs hand to the page: shared with it or opened with it, also while the laptop is off."""

import json
import re
from collections.abc import Callable
from urllib.request import Request, urlopen

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.conftest import CONTROLLED, Laptop
from tests.browser.touch import entity, send, title, touch, walked_room

#: A share as the system makes it: a form that the browser itself sends, from a page in the worker's charge.
SHARE = """([where, text, files]) => {
  const made = (tag, more) => Object.assign(document.createElement(tag), more);
  const form = made("form", { method: "post", action: where, enctype: "multipart/form-data" });
  const data = new DataTransfer();
  for (const [name, text, type] of files) data.items.add(new File([text], name, { type }));
  form.append(made("input", { type: "file", name: "files", multiple: true, files: data.files }));
  form.append(made("textarea", { name: "text", value: text }));
  document.body.append(form);
  form.submit();
}"""
#: The same with no page to be shown in the end.
WITHOUT_A_PAGE = """async (text) => {
  const form = new FormData();
  form.append("files", new File([text], "n.txt"));
  await fetch("/share", { method: "POST", body: form, redirect: "manual" });
}"""
#: The browser's own, in short: what it hands over is said by the test.
QUEUE = """Object.defineProperty(globalThis, "launchQueue", { value: { setConsumer: (take) => {
  globalThis.launch = (text) => take({ files: [{ getFile: async () => new File([text], "n.ndjson") }] });
} } });"""
#: What the page says once it has what the laptop has.
EXCHANGED = re.compile(r"^\s*shared")
NOTEBOOK = "".join(f"{json.dumps(line)}\n" for line in [
    {"format": "scantling journal", "version": 1, "entries": 10, "houses": [entity(900)]}, *walked_room()[:10],
])  # fmt: skip


@pytest.fixture
def share(laptop: Laptop, keeper: Callable[[], BrowserContext], opened) -> Callable[..., Page]:
    """A share to the page on a phone that has it whole, the laptop off."""
    phone = keeper()

    def send(text: str = "", *files: tuple[str, str, str], where: str = "/share") -> Page:
        if not laptop.server:
            laptop.start()
        page = opened(phone, laptop.url)
        expect(page.locator(".status")).to_contain_text(EXCHANGED)
        page.close()
        page = phone.new_page()
        page.goto(f"{laptop.url}nothing")
        page.evaluate(CONTROLLED)
        laptop.stop()
        page.evaluate(SHARE, [where, text, files])
        return page

    return send


def test_a_notebook_that_is_shared_while_the_laptop_is_off_is_added(share, laptop):
    send(laptop.url, walked_room()[:1])
    page = share("", ("notes from the shed.txt", NOTEBOOK, "text/plain"))
    expect(title(page)).to_have_text("House")
    expect(page.get_by_text("9 added, 1 were here already.")).to_be_visible()
    expect(page.get_by_text("Sewing room", exact=True)).to_be_visible()
    page.wait_for_function("async () => !(await (await caches.open('handed')).keys()).length")
    page.reload()
    expect(page.get_by_text("Sewing room", exact=True)).to_be_visible()
    expect(page.get_by_text("were here already")).to_have_count(0)


def test_one_that_names_no_house_here_is_added_when_that_is_said(share):
    page = share(NOTEBOOK)
    expect(page.get_by_text("the shared text was shared with this page, and names no house")).to_be_visible()
    expect(page.get_by_role("heading", name="Alder Street")).to_have_count(0)
    touch(page, "Add it")
    expect(page.get_by_text("10 added, 0 were here already.")).to_be_visible()
    expect(page.get_by_role("heading", name="Alder Street")).to_be_visible()


def test_each_of_several_is_answered_for(share, laptop):
    send(laptop.url, walked_room()[:1])
    other = NOTEBOOK.replace(entity(900), entity(990)).replace('"id": "00000000-', '"id": "00000001-')
    stray = json.dumps(walked_room()[5])
    files = {"a.ndjson": NOTEBOOK, "b %2f.json": '{"a": 1}', "c.txt": other, "d.txt": stray}
    page = share("", *((name, text, "text/plain") for name, text in files.items()))
    expect(page.get_by_text("9 added, 1 were here already.")).to_be_visible()
    expect(page.get_by_text("b %2f.json holds no entry of a notebook: nothing was added.")).to_be_visible()
    expect(page.get_by_text("c.txt is of another notebook")).to_be_visible()
    expect(page.get_by_text("d.txt was shared with this page, and names no house")).to_be_visible()


def test_what_was_shared_waits_until_a_page_is_open_to_bring_it(laptop, keeper, opened):
    """The window that the share opens may be closed at once, or never come."""
    send(laptop.url, walked_room()[:1])
    page = opened(keeper(), laptop.url)
    expect(page.locator(".status")).to_contain_text(EXCHANGED)
    laptop.stop()
    page.evaluate(WITHOUT_A_PAGE, NOTEBOOK)
    page.evaluate(WITHOUT_A_PAGE, "63 1/4")
    page.goto(f"{laptop.url}#/survey")
    page.reload()
    expect(page.get_by_text("9 added, 1 were here already.")).to_be_visible()
    expect(page.get_by_text("n.txt holds no entry of a notebook")).to_be_visible()


def test_a_form_of_another_site_shares_nothing(laptop, keeper, opened, tmp_path):
    phone = keeper()
    send(laptop.url, walked_room()[:1])
    opened(phone, laptop.url).close()
    with Laptop(tmp_path / "other", laptop.site) as other:
        page = phone.new_page()
        page.goto(f"{other.url}nothing")
        page.evaluate(SHARE, [f"{laptop.url}share", "", [("notes.txt", NOTEBOOK, "text/plain")]])
        expect(page).to_have_url(re.compile(f"^{laptop.url}"))
        expect(title(page)).not_to_have_text("House")
    assert page.evaluate("async () => (await (await caches.open('handed')).keys()).length") == 0


def test_the_laptop_lets_nothing_of_a_share_in_and_the_page_says_so(laptop, new_sleeper):
    boundary = b"--x\r\nContent-Disposition: form-data; name=\"files\"; filename=\"a.txt\"\r\n\r\n"
    body = boundary + NOTEBOOK.encode() + b"." * 5_000_000 + b"\r\n--x--\r\n"
    sent = Request(f"{laptop.url}share", body, {"Content-Type": "multipart/form-data; boundary=x"})
    with urlopen(sent) as answer:
        assert (answer.status, answer.url) == (200, f"{laptop.url}?unshared")
    assert laptop.journal() == []
    page = new_sleeper().new_page()
    page.goto(f"{laptop.url}?unshared")
    expect(title(page)).to_have_text("House")
    expect(page.get_by_text("what was shared: it did not come in")).to_be_visible()
    page.reload()
    expect(title(page)).to_have_text("House")
    expect(page.get_by_text("it did not come in")).to_have_count(0)


def test_a_file_opened_with_the_page_is_added(laptop, new_sleeper):
    page = new_sleeper().new_page()
    page.add_init_script(QUEUE)
    page.goto(laptop.url)
    expect(title(page)).to_have_text("A new notebook")
    page.evaluate("(text) => launch(text)", NOTEBOOK)
    expect(page.get_by_text("10 added, 0 were here already.")).to_be_visible()
