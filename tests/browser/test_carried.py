"""Attachments on the phone: kept in pieces, brought to the laptop after the entries and home from it, cut off and gone
on with, by file too; and never in the way of an entry."""

import hashlib
import json
import random

import pytest
from playwright.sync_api import Page
from scantling.blobs import Blobs, Piece
from scantling.cli import main

ATTACH = """async ([seed, size]) => {
  const bytes = new Uint8Array(await (await fetch(`/seed?${seed}-${size}`)).arrayBuffer());
  const photo = new Blob([bytes], { type: "image/jpeg" });
  await services.journal.attach("0190aaaa-0000-7000-8000-000000000000", photo, "behind the plaster");
}"""
SETTLED = "async () => { await services.sync.now(); await services.sync.settled(); return services.sync.carried; }"
HELD = """async () => {
  const found = await services.journal.store.blobs.list();
  return found.map(({ blob, have, whole }) => [blob, have, whole]).sort();
}"""
OPENED = """async (name) => {
  const found = await services.journal.store.blobs.open(name);
  const bytes = found && new Uint8Array(await crypto.subtle.digest("SHA-256", await found.arrayBuffer()));
  return bytes && Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}"""
IMPORT = """async (text) => {
  const { attached, leftOut, short } = await services.journal.importFile(new Blob([text]));
  return { attached, leftOut: leftOut.length, short };
}"""
SIZE = 900_000
PIECES = 4


def photo(seed, size=SIZE):
    return random.Random(seed).randbytes(size)


def name_of(seed, size=SIZE):
    return hashlib.sha256(photo(seed, size)).hexdigest()


@pytest.fixture
def open_bare(bare, new_sleeper):
    """The bare page on a phone of its own, after its first exchange; `quiet` where no laptop answers it."""

    def open_page(context=None, quiet=False) -> Page:
        context = context or new_sleeper()
        seeded = lambda route: route.fulfill(body=photo(*map(int, route.request.url.partition("?")[2].split("-"))))  # noqa: E731
        context.route("**/seed?*", seeded)
        if quiet:
            context.route("**/api/**", lambda route: route.abort())
        page = context.new_page()
        page.goto(bare.url)
        page.wait_for_function("() => globalThis.services && !['never', 'busy'].includes(services.sync.phase)")
        return page

    return open_page


@pytest.fixture
def kept(bare):
    return Blobs(bare.data / "blobs")


def attach(page, seed, size=SIZE):
    page.evaluate(ATTACH, [seed, size])


def break_off(page, path, after):
    """Lets so many requests through, and no other until `page.unroute`."""
    seen = []

    def handle(route):
        seen.append(route.request.url)
        route.abort() if len(seen) > after else route.continue_()

    page.route(path, handle)
    return seen


def test_what_is_attached_reaches_the_laptop_and_another_phone(bare, kept, open_bare):
    first = open_bare()
    attach(first, 1)
    attach(first, 2, 10)
    assert first.evaluate(SETTLED) == ""
    assert kept.whole() == sorted([name_of(1), name_of(2, 10)])
    second = open_bare()
    assert second.evaluate(SETTLED) == ""
    assert second.evaluate(OPENED, name_of(1)) == name_of(1)
    assert second.evaluate(HELD) == first.evaluate(HELD)
    bare.requests.clear()
    assert second.evaluate(SETTLED) == ""
    assert bare.requests == ["POST /api/sync", "POST /api/blobs/lacking"]


def test_cut_off_on_the_way_it_goes_on_where_it_was_on_either_side(bare, kept, open_bare):
    first = open_bare()
    break_off(first, "**/api/blobs", after=2)
    attach(first, 1)
    first.evaluate(SETTLED)
    assert kept.offset(name_of(1)) == 500_000
    assert first.evaluate("() => services.journal.counts().pending") == 0
    first.unroute("**/api/blobs")
    bare.requests.clear()
    assert first.evaluate(SETTLED) == ""
    assert bare.requests.count("POST /api/blobs") == PIECES - 2
    assert kept.whole() == [name_of(1)]


def test_a_page_closed_while_it_fetches_goes_on_when_it_is_opened_again(bare, kept, open_bare, new_sleeper):
    first = open_bare()
    attach(first, 1)
    first.evaluate(SETTLED)
    context = new_sleeper()
    context.route("**/api/blobs/*at=500000", lambda route: route.abort())
    second = open_bare(context)
    second.evaluate(SETTLED)
    assert second.evaluate(HELD) == [[name_of(1), 500_000, False]]
    assert second.evaluate(OPENED, name_of(1)) is None
    second.close()
    context.unroute("**/api/blobs/*at=500000")
    bare.requests.clear()
    third = open_bare(context)
    third.evaluate(SETTLED)
    assert third.evaluate(OPENED, name_of(1)) == name_of(1)
    assert bare.requests.count(f"GET /api/blobs/{name_of(1)}") == PIECES - 2


def test_an_entry_goes_before_an_attachment_that_is_on_its_way(bare, open_bare):
    page = open_bare()
    held = []
    page.route("**/api/blobs", lambda route: held.append(route))
    attach(page, 1)
    page.evaluate("() => services.sync.now()")
    page.wait_for_function("() => services.sync.carried.values?.here === 1")
    page.evaluate("() => services.journal.append('device', { name: 'meanwhile' })")
    assert page.evaluate("() => services.sync.now()") == "sync-shared"
    assert [entry["kind"] for entry in bare.journal()] == ["attachment", "device"]
    assert len(held) == 1
    held[0].abort()


def test_what_arrives_otherwise_than_it_is_called_is_not_kept(open_bare, new_sleeper):
    first = open_bare()
    attach(first, 1, 10)
    first.evaluate(SETTLED)
    context = new_sleeper()
    other = json.dumps(Piece(name_of(1, 10), 10, 0, b"0123456789").body())
    context.route("**/api/blobs/*", lambda route: (
        route.continue_() if route.request.method == "POST" else
        route.fulfill(body=other, content_type="application/json")))  # fmt: skip
    second = open_bare(context)
    assert second.evaluate(SETTLED) == "attachment-damaged"
    assert second.evaluate(HELD) == []
    context.unroute("**/api/blobs/*")
    assert second.evaluate(SETTLED) == ""
    assert second.evaluate(OPENED, name_of(1, 10)) == name_of(1, 10)


def test_one_that_the_laptop_will_not_have_is_said_and_holds_up_no_other(kept, open_bare):
    page = open_bare()
    refusal = json.dumps({"error": {"key": "no-room", "message": "Too little is free.", "where": {}}})
    refuse = lambda route: (  # noqa: E731
        route.fulfill(status=507, body=refusal, content_type="application/json")
        if name_of(1, 10) in route.request.post_data
        else route.continue_()
    )
    page.route("**/api/blobs", refuse)
    attach(page, 1, 10)
    attach(page, 2, 10)
    assert page.evaluate(SETTLED) == "Too little is free."
    assert kept.whole() == [name_of(2, 10)]
    page.unroute("**/api/blobs")
    assert page.evaluate(SETTLED) == ""
    assert len(kept.whole()) == 2


def test_a_file_carries_attachments_either_way_and_one_cut_short_is_gone_on_with(bare, kept, open_bare, tmp_path):
    one, two = open_bare(quiet=True), open_bare(quiet=True)
    attach(one, 1)
    with one.expect_download() as download:
        one.evaluate("() => services.journal.exportFile()")
    download.value.save_as(tmp_path / "file.ndjson")
    lines = (tmp_path / "file.ndjson").read_text().splitlines(keepends=True)
    assert json.loads(lines[0]) == {"format": "scantling journal", "version": 1, "entries": 1, "blobs": 1}
    assert len(lines) == 2 + PIECES
    spoilt = json.dumps({**json.loads(lines[3]), "digest": "0" * 64})
    assert two.evaluate(IMPORT, "".join([*lines[:3], spoilt])) == {"attached": 0, "leftOut": 1, "short": True}
    assert two.evaluate(HELD) == [[name_of(1), 250_000, False]]
    assert main(["--data", str(bare.data), "restore", str(tmp_path / "file.ndjson")]) == 0
    assert kept.whole() == [name_of(1)]
    assert main(["--data", str(bare.data), "backup", str(tmp_path / "laptop.ndjson")]) == 0
    for name in ("laptop.ndjson", "file.ndjson"):
        text = (tmp_path / name).read_text()
        assert two.evaluate(IMPORT, text) == {"attached": 1, "leftOut": 0, "short": False}
        assert two.evaluate(OPENED, name_of(1)) == name_of(1)


def test_an_attachment_of_nothing_is_refused(open_bare):
    page = open_bare(quiet=True)
    said = "() => services.journal.attach('x', new Blob([])).then(() => '', (error) => error.message)"
    assert page.evaluate(said) == "attachment-size"
    assert page.evaluate("() => services.journal.counts().entries") == 0
