"""The notebook by file: two phones that never meet a laptop carry it between them and end up equal."""

import json
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.test_journal import ENTRY
from tests.browser.touch import start_house, title, touch, visit, walked_room

#: What a paste or a drop brings, as a browser would hand it over; whether the page took it.
BRING = """([kind, selector, text, name]) => {
  const data = new DataTransfer();
  if (name) data.items.add(new File([text], name));
  else data.setData("text/plain", text);
  const event = kind === "paste"
    ? new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true })
    : new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true });
  document.querySelector(selector).dispatchEvent(event);
  return event.defaultPrevented;
}"""
FIRST_VERSION = """() => new Promise((done, fail) => {
  const asked = indexedDB.open("scantling", 2);
  asked.onupgradeneeded = () => {
    const entries = asked.result.createObjectStore("entries", { keyPath: "id" });
    entries.createIndex("standing", ["standing", "entry.seq"]);
    entries.createIndex("digest", "digest");
    asked.result.createObjectStore("facts");
    asked.result.createObjectStore("aside", { keyPath: "text" });
  };
  asked.onsuccess = () => {
    const transaction = asked.result.transaction(["entries", "facts"], "readwrite");
    const entry = %s;
    transaction.objectStore("entries").put({ id: entry.id, entry, standing: "waiting" });
    transaction.objectStore("facts").put("00000000000000aa", "device");
    transaction.oncomplete = () => { asked.result.close(); done(true); };
  };
  asked.onerror = fail;
})"""


@pytest.fixture
def new_page(laptop, new_sleeper):
    """Opens the page on phones that no laptop answers."""

    def make(script: str = "") -> Page:
        context = new_sleeper()
        context.route("**/api/**", lambda route: route.abort())
        page = context.new_page()
        if script:
            page.add_init_script(script)
        page.goto(f"{laptop.url}#/house")
        expect(title(page)).to_have_text("House")
        return page

    return make


def save(page: Page, button: str, to: Path) -> Path:
    with page.expect_download() as download:
        touch(page, button)
    download.value.save_as(to)
    return to


def entries_of(path: Path) -> list[str]:
    return [json.loads(line)["kind"] for line in path.read_text().splitlines()[1:]]


def rooms(page: Page, count: int) -> list[str]:
    visit(page, "house")
    found = page.locator("#the-house + ul .row-words")
    expect(found).to_have_count(count)
    return found.all_inner_texts()


def test_two_phones_carry_files_both_ways_twice_and_end_equal(new_page, tmp_path):
    one, two = new_page(), new_page()
    visit(one, "survey")
    start_house(one)
    expect(title(one)).to_have_text("Walk: Sewing room")
    visit(one, "house")
    expect(one.get_by_text("3 entries are on this device alone")).to_be_visible()
    first = save(one, "Save to a file", tmp_path / "first.ndjson")
    expect(one.get_by_text("Every entry is on the laptop or in a file as well.")).to_be_visible()
    two.get_by_label("Add from a file").set_input_files(first)
    expect(two.get_by_text("3 added, 0 were here already.")).to_be_visible()
    expect(two.get_by_text("Every entry is on the laptop or in a file as well.")).to_be_visible()
    add_room(two, "Hall")
    add_room(one, "Landing")
    # Only what is new goes back, and the other way, by two other ways of taking it in.
    back = save(two, "Save to a file", tmp_path / "back.ndjson")
    assert entries_of(back) == ["house", "room", "wall", "room"]
    forth = save(one, "Save what is new (1)", tmp_path / "forth.ndjson")
    assert entries_of(forth) == ["room"]
    assert one.evaluate(BRING, ["drop", "main", back.read_text(), "back.ndjson"])
    expect(one.get_by_text("1 added, 3 were here already.")).to_be_visible()
    assert two.evaluate(BRING, ["paste", "main", forth.read_text(), ""])
    expect(two.get_by_text("1 added, 0 were here already.")).to_be_visible()
    # All of it once more: nothing changes.
    for path in (first, back, forth):
        one.get_by_label("Add from a file").set_input_files(path)
        two.get_by_label("Add from a file").set_input_files(path)
        expect(one.get_by_text(f"0 added, {len(entries_of(path))} were here already.")).to_be_visible()
        expect(two.get_by_text(f"0 added, {len(entries_of(path))} were here already.")).to_be_visible()
    assert sorted(rooms(one, 3)) == sorted(rooms(two, 3)) == ["Hall", "Landing", "Sewing room"]
    whole = [save(page, "Save to a file", tmp_path / name) for page, name in ((one, "1"), (two, "2"))]
    lines = [sorted(path.read_text().splitlines()) for path in whole]
    assert lines[0] == lines[1]


def add_room(page: Page, name: str) -> None:
    visit(page, "survey", "rooms")
    page.get_by_label("A new room in").fill(name)
    touch(page, "Make the room")
    expect(title(page)).to_have_text(f"Walk: {name}")
    visit(page, "house")


def test_only_a_journal_is_taken_out_of_what_is_pasted(new_page):
    page = new_page()
    visit(page, "survey")
    field = "input[type=text]"
    text = "\n".join(["torn", *map(json.dumps, walked_room()[:2])])
    for stray in ("63 1/4", '{"a": 1}', "dear all,\nthe wall is 12'\n"):
        assert not page.evaluate(BRING, ["paste", field, stray, ""])
        assert not page.evaluate(BRING, ["drop", "main", stray, ""])
    expect(title(page)).to_have_text("A new notebook")
    assert page.evaluate(BRING, ["paste", field, text, ""])  # a field for a name is no place for a journal
    expect(page.get_by_text("2 added, 0 were here already.")).to_be_visible()
    expect(page.get_by_text("Left out, damaged or no entries: line 1.")).to_be_visible()
    assert page.evaluate(BRING, ["drop", "main", "\x89PNG\r\n", "plan.png"])
    expect(page.get_by_text("plan.png holds no entry of a notebook: nothing was added.")).to_be_visible()


def test_a_file_that_did_not_arrive_or_was_not_shared_counts_as_none(new_page):
    script = """
      navigator.canShare = () => true;
      Object.assign(globalThis, { shared: [], refused: 0 });
      navigator.share = async ({ files: [file] }) => {
        if (!refused++) throw new DOMException("Share canceled", "AbortError");
        shared.push([file.name, file.type, await file.text()]);
      };
    """
    page = new_page(script)
    page.get_by_label("Add from a file").set_input_files(
        {"name": "n.txt", "mimeType": "text/plain", "buffer": "\n".join(map(json.dumps, walked_room()[:2])).encode()}
    )
    alone = page.get_by_text("on this device alone")
    expect(page.get_by_text("2 added")).to_be_visible()
    expect(alone).to_have_count(0)
    touch(page, "Share the notebook")
    page.wait_for_function("refused === 1")
    expect(page.get_by_role("button", name="It is not there")).to_have_count(0)
    touch(page, "Share the notebook")
    expect(page.get_by_text("2 entries, handed over as")).to_be_visible()
    [[name, kind, text]] = page.evaluate("shared")
    assert (name.endswith(".txt"), kind, len(text.splitlines())) == (True, "text/plain", 3)
    touch(page, "It is not there")
    expect(page.get_by_text("2 entries are on this device alone: not on the laptop")).to_be_visible()


def test_other_words_under_a_name_that_is_here_are_kept_apart_and_can_be_written_anew(new_page):
    page = new_page()
    for words in ("ours", "theirs", "theirs"):
        text = json.dumps(ENTRY | {"body": {"name": words}})
        assert page.evaluate(BRING, ["paste", "main", text, ""])
        expect(page.get_by_text(f"{int(words == 'ours')} added, 0 were here already.")).to_be_visible()
    expect(page.get_by_role("heading", name="A file says otherwise")).to_be_visible()
    expect(page.get_by_text("device: theirs")).to_have_count(1)
    touch(page, "Write it anew")
    expect(page.get_by_role("heading", name="A file says otherwise")).to_have_count(0)
    expect(page.get_by_text("1 entry is on this device alone")).to_be_visible()


def test_a_database_of_before_there_were_files_opens_and_all_in_it_is_in_none(bare, new_sleeper):
    context = new_sleeper()
    context.route("**/api/**", lambda route: route.abort())
    context.route("**/nothing", lambda route: route.fulfill(body="", content_type="text/html"))
    page = context.new_page()
    page.goto(f"{bare.url}nothing")
    page.evaluate(FIRST_VERSION % json.dumps(ENTRY))
    page.goto(bare.url)
    page.wait_for_function("() => globalThis.services")
    assert page.evaluate("() => services.journal.counts()") == {
        "entries": 1, "pending": 1, "refused": 0, "alone": 1, "unfiled": 1,
    }  # fmt: skip
    with page.expect_download():
        page.evaluate("() => services.journal.exportFile()")
    assert page.evaluate("() => services.journal.counts()") == {
        "entries": 1, "pending": 1, "refused": 0, "alone": 0, "unfiled": 0,
    }  # fmt: skip


def test_what_is_in_a_file_stays_so_when_the_laptop_has_it_and_loses_it_again(bare, new_sleeper):
    page = new_sleeper().new_page()
    page.goto(bare.url)
    page.wait_for_function("() => globalThis.services")
    page.evaluate("() => services.journal.append('device', { name: 'one' })")
    with page.expect_download():
        page.evaluate("() => services.journal.exportFile()")
    page.evaluate("() => services.journal.append('device', { name: 'two' })")
    page.evaluate("() => services.sync.now()")
    counts = page.evaluate("() => services.journal.counts()")
    assert (counts["pending"], counts["alone"], counts["unfiled"]) == (0, 0, 1)
    lost = """async () => {
      const kept = await services.journal.store.all();
      await services.journal.store.resend(kept.map((one) => one.digest));
      return services.journal.store.counts();
    }"""
    counts = page.evaluate(lost)
    assert (counts["pending"], counts["alone"], counts["unfiled"]) == (2, 1, 1)


#: In seconds.
NOW = 1_800_000_000
DAY = 24 * 60 * 60


@pytest.mark.parametrize(("days", "reminded"), [(6, False), (8, True)])
def test_what_is_on_this_device_alone_for_more_than_a_week_is_told_quietly(new_page, days, reminded):
    page = new_page()
    page.clock.set_fixed_time(NOW)
    page.reload()
    visit(page, "survey")
    start_house(page)
    expect(title(page)).to_have_text("Walk: Sewing room")
    page.clock.set_fixed_time(NOW + days * DAY)
    page.goto(page.url.partition("#")[0] + "#/pieces")
    page.reload()
    note = page.get_by_role("link", name="3 entries are on this device alone, some for more than a week")
    expect(page.locator("nav")).to_be_visible()
    expect(note).to_have_count(int(reminded))
    if reminded:
        note.tap()
        with page.expect_download():
            touch(page, "Save to a file")
        expect(note).to_have_count(0)


def test_a_file_of_another_notebook_is_let_in_only_when_that_is_said(new_page, tmp_path):
    ours, theirs = new_page(), new_page()
    for page, house in ((ours, "The bungalow"), (theirs, "Next door")):
        visit(page, "survey")
        start_house(page, house)
        visit(page, "house")
    path = save(theirs, "Save to a file", tmp_path / "theirs.ndjson")
    assert len(json.loads(path.read_text().splitlines()[0])["houses"]) == 1
    ours.locator("input[type=file]").set_input_files(path)
    expect(ours.get_by_text("is of another notebook")).to_be_visible()
    visit(ours, "survey/rooms")
    expect(ours.get_by_role("heading", name="The bungalow")).to_be_visible()
    expect(ours.get_by_text("Next door")).to_have_count(0)
    visit(ours, "house")
    touch(ours, "Add its houses beside those here")
    expect(ours.get_by_text("are in the journal")).to_be_visible()
    visit(ours, "survey/rooms")
    expect(ours.get_by_role("heading", name="Next door")).to_be_visible()
