"""Phone and laptop exchange their journals: whatever happens on the way, nothing is lost and nothing is there twice."""

import gzip
import json
import shutil

import pytest
from playwright.sync_api import Page
from scantling.store import open_store

APPEND = "(name) => services.journal.append('device', { name })"
NAMES = "() => services.journal.entries().map((entry) => entry.body.name).sort()"
NOW = "() => services.sync.now()"
COUNTS = "() => services.journal.counts()"


@pytest.fixture
def open_bare(bare):
    """Opens the bare page on a phone and waits for its first exchange to be over, so that a test begins in quiet."""

    def open_page(context) -> Page:
        page = context.new_page()
        page.goto(bare.url)
        page.wait_for_function("() => globalThis.services && services.sync.phase === 'shared'")
        return page

    return open_page


@pytest.fixture
def sleeper(new_sleeper):
    """A phone whose engine sleeps: the journals are exchanged without it."""
    return new_sleeper()


def body_of(request) -> dict:
    """What a request to the laptop says, packed or not."""
    body = request.post_data_buffer
    return json.loads(gzip.decompress(body) if body.startswith(b"\x1f\x8b") else body)


def entries_of(request) -> list[dict]:
    return body_of(request)["entries"]


def names(laptop) -> list[str]:
    return sorted(entry["body"]["name"] for entry in laptop.journal())


def test_what_a_phone_wrote_reaches_the_laptop_and_another_phone(bare, new_sleeper, open_bare):
    first, second = open_bare(new_sleeper()), open_bare(new_sleeper())
    bare.stop()
    for name in ("one", "two", "three"):
        first.evaluate(APPEND, name)
    assert first.evaluate(NOW) == "no signal"
    assert first.evaluate(COUNTS) == {"entries": 3, "pending": 3, "refused": 0}
    bare.start()
    assert first.evaluate(NOW) == "shared"
    assert first.evaluate(COUNTS) == {"entries": 3, "pending": 0, "refused": 0}
    second.evaluate(NOW)
    assert second.evaluate(NAMES) == names(bare) == ["one", "three", "two"]


def test_an_entry_is_shared_soon_after_it_is_written(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    page.evaluate(APPEND, "one")
    page.wait_for_function("() => services.journal.counts().pending === 0")
    assert names(bare) == ["one"]


@pytest.mark.parametrize("lost", ["request", "reply"])
def test_a_request_or_a_reply_that_is_lost_changes_nothing(bare, sleeper, open_bare, lost):
    page = open_bare(sleeper)

    def lose(route):
        if lost == "reply":
            route.fetch()
        route.abort("connectionreset")

    page.route("**/api/sync", lose)
    page.evaluate(APPEND, "one")
    assert page.evaluate(NOW) == "no signal"
    assert len(bare.journal()) == (lost == "reply")
    page.unroute("**/api/sync")
    assert page.evaluate(NOW) == "shared"
    page.evaluate(NOW)
    assert names(bare) == page.evaluate(NAMES) == ["one"]


def test_a_laptop_with_an_empty_new_journal_is_given_everything_again(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    page.evaluate(APPEND, "old")
    page.evaluate(NOW)
    bare.stop()
    shutil.rmtree(bare.data)
    bare.start()
    page.evaluate(APPEND, "new")
    assert page.evaluate(NOW) == "shared"
    assert names(bare) == ["new", "old"]


def test_an_old_copy_of_the_laptops_journal_is_healed_by_the_counts(bare, new_sleeper, open_bare, tmp_path):
    first, second = open_bare(new_sleeper()), open_bare(new_sleeper())
    first.evaluate(APPEND, "a")
    first.evaluate(NOW)
    bare.stop()
    shutil.copytree(bare.data, tmp_path / "copy")
    bare.start()
    first.evaluate(APPEND, "b")
    first.evaluate(NOW)
    bare.stop()
    shutil.rmtree(bare.data)
    shutil.copytree(tmp_path / "copy", bare.data)
    bare.start()
    for name in ("c", "d"):  # the laptop's rows are past the first phone's place again, as if nothing had happened
        second.evaluate(APPEND, name)
        second.evaluate(NOW)
    first.evaluate(NOW)
    second.evaluate(NOW)
    assert first.evaluate(NAMES) == second.evaluate(NAMES) == names(bare) == ["a", "b", "c", "d"]


class Counting:
    """A laptop that answers as it is told and writes down what it is asked."""

    def __init__(self, page: Page, have: list[dict[str, int]]) -> None:
        self.asked: list[tuple[int, list[str]]] = []
        self.have = have
        page.route("**/api/sync", self.answer)

    def answer(self, route) -> None:
        body = body_of(route.request)
        self.asked.append((body["cursor"], [entry["body"]["name"] for entry in body["entries"]]))
        have = self.have.pop(0) if len(self.have) > 1 else self.have[0]
        reply = {"database": "d", "rejected": [], "entries": [], "cursor": 7, "more": False, "have": have}
        route.fulfill(json=reply | {"acked": [entry["id"] for entry in body["entries"]]})


def test_a_laptop_that_counts_fewer_of_our_entries_is_sent_them_again(sleeper, open_bare):
    page = open_bare(sleeper)
    page.evaluate(APPEND, "one")
    page.evaluate(NOW)
    device = page.evaluate("() => services.journal.device")
    laptop = Counting(page, [{device: 0}, {device: 1}])
    assert page.evaluate(NOW) == "shared"
    assert [names for _, names in laptop.asked] == [[], ["one"]]


def test_a_laptop_that_counts_more_entries_than_are_here_is_read_from_the_start(sleeper, open_bare):
    page = open_bare(sleeper)
    laptop = Counting(page, [{}, {"00000000000000aa": 3}])
    page.evaluate(NOW)
    assert page.evaluate(NOW) == "shared"
    assert [cursor for cursor, _ in laptop.asked] == [0, 7, 0]


def test_counts_that_never_agree_do_not_keep_the_two_at_it_for_ever(sleeper, open_bare):
    page = open_bare(sleeper)
    page.evaluate(APPEND, "one")
    page.evaluate(NOW)
    laptop = Counting(page, [{"00000000000000aa": 3}])
    assert page.evaluate(NOW) == "shared"
    assert len(laptop.asked) == 2


def test_an_entry_that_the_laptop_refuses_is_kept_and_named_and_holds_up_nothing(bare, sleeper, open_bare):
    page = open_bare(sleeper)

    def refuse(route):
        body = json.loads(route.request.post_data_buffer)
        entries = body["entries"]
        bad = [{"id": e["id"], "key": "no", "message": "not this one"} for e in entries if e["body"]["name"] == "bad"]
        body["entries"] = [e for e in entries if e["body"]["name"] != "bad"]
        reply = route.fetch(post_data=json.dumps(body)).json()
        reply["rejected"] += bad
        route.fulfill(json=reply)

    page.route("**/api/sync", refuse)
    for name in ("good", "bad", "fine"):
        page.evaluate(APPEND, name)
    assert page.evaluate(NOW) == "shared"
    assert names(bare) == ["fine", "good"]
    assert page.evaluate(COUNTS) == {"entries": 3, "pending": 0, "refused": 1}
    refused = page.evaluate("() => services.journal.refused()")
    assert [(one["entry"]["body"]["name"], one["why"]) for one in refused] == [("bad", "not this one")]


def test_a_phone_restored_from_a_backup_goes_on_under_a_new_name(bare, new_sleeper, open_bare):
    """The old phone and its copy both wrote a second entry: neither may be lost, whoever comes to the laptop first."""
    phone = open_bare(new_sleeper())
    phone.evaluate(APPEND, "before")
    phone.evaluate(NOW)
    before = bare.journal()[-1]
    bare.stop()
    for name in ("copy two", "copy three"):
        phone.evaluate(APPEND, name)
    bare.start()
    other = before | {"id": "00000000-0000-7000-8000-00000000c0de", "seq": 2, "body": {"name": "old phone two"}}
    with bare.app.extensions["scantling"].store.writing() as ledger:
        ledger.append(other)

    assert phone.evaluate(NOW) == "shared"

    assert phone.evaluate(COUNTS) == {"entries": 4, "pending": 0, "refused": 0}
    assert names(bare) == phone.evaluate(NAMES) == ["before", "copy three", "copy two", "old phone two"]
    phone.evaluate(APPEND, "copy four")
    phone.evaluate(NOW)
    written = {entry["body"]["name"]: (entry["device"], entry["seq"]) for entry in bare.journal()}
    assert written["old phone two"] == (before["device"], 2)
    copy = written["copy two"][0]
    assert copy not in {before["device"], ""}
    assert [written["copy two"], written["copy four"]] == [(copy, 1), (copy, 2)]
    assert phone.evaluate("() => services.journal.device") == copy


def test_a_long_journal_goes_over_in_parts_and_packed(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    bare.stop()
    page.evaluate("""async () => {
      const write = (n) => services.journal.append("sketch", { name: `${n}`, note: "-".repeat(200) });
      await Promise.all(Array.from({ length: 1100 }, (_, n) => write(n)));
    }""")
    bare.start()
    sent: list[int] = []
    packed: list[str | None] = []

    def look(request):
        if request.url.endswith("/api/sync"):
            packed.append(request.headers.get("content-encoding"))
            sent.append(len(entries_of(request)))

    page.on("request", look)
    assert page.evaluate(NOW) == "shared"
    assert len(bare.journal()) == 1100
    assert sent[:3] == [500, 500, 100]
    assert packed[:3] == ["gzip"] * 3


def test_entries_that_are_large_go_over_by_bytes_and_not_by_count(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    bare.stop()
    page.evaluate("""async () => {
      const write = (n) => services.journal.append("sketch", { name: `${n}`, note: "-".repeat(90_000) });
      await Promise.all(Array.from({ length: 30 }, (_, n) => write(n)));
    }""")
    bare.start()
    sizes: list[int] = []
    page.on("request", lambda one: sizes.append(len(json.dumps(body_of(one)))) if one.url.endswith("sync") else None)
    assert page.evaluate(NOW) == "shared"
    assert len(bare.journal()) == 30
    assert max(sizes) < 1_000_000


def test_a_laptop_that_takes_less_at_once_is_sent_less_at_once(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    counts: list[int] = []

    def narrow(route):
        count = len(entries_of(route.request))
        counts.append(count)
        if count > 3:
            route.fulfill(status=413, json={"error": {"key": "too-large", "message": "too much", "where": {}}})
        else:
            route.fallback()

    page.route("**/api/sync", narrow)
    page.evaluate("""async () => {
      for (let n = 0; n < 12; n += 1) await services.journal.append("device", { name: `${n}` });
    }""")
    page.wait_for_function("() => services.journal.counts().pending === 0")
    assert len(bare.journal()) == 12
    assert max(counts) > 3


def test_an_entry_too_large_for_the_laptop_is_set_aside_and_the_rest_goes_on(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    page.evaluate("() => services.journal.append('sketch', { name: 'huge', note: '-'.repeat(3_000_000) })")
    page.evaluate(APPEND, "small")
    page.wait_for_function("() => services.journal.counts().pending === 0")
    assert names(bare) == ["small"]
    assert page.evaluate(COUNTS)["refused"] == 1


def test_a_laptop_of_another_protocol_says_so_and_nothing_is_lost(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    message = "update the older of the two"
    reply = {"error": {"key": "protocol", "message": message, "where": {}}}
    page.route("**/api/sync", lambda route: route.fulfill(status=409, json=reply))
    page.evaluate(APPEND, "one")
    assert page.evaluate(NOW) == message
    assert page.evaluate("() => services.sync.phase") == "outdated"
    assert page.evaluate(COUNTS)["pending"] == 1


def test_flight_mode_ends_and_the_phone_shares_by_itself(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    sleeper.set_offline(True)
    page.evaluate(APPEND, "in the bath")
    page.wait_for_function("() => services.sync.state === 'no signal'")
    sleeper.set_offline(False)
    page.wait_for_function("() => services.journal.counts().pending === 0")
    assert names(bare) == ["in the bath"]


def test_two_tabs_do_not_share_at_the_same_time(bare, sleeper, open_bare):
    page, other = open_bare(sleeper), open_bare(sleeper)
    page.evaluate("""() => {
      navigator.locks.request("scantling-sync", () => new Promise((done) => { globalThis.letGo = done; }));
    }""")
    bare.requests.clear()
    other.evaluate(APPEND, "one")
    other.evaluate(NOW)
    assert "POST /api/sync" not in bare.requests
    page.evaluate("() => letGo()")
    other.wait_for_function("() => services.journal.counts().pending === 0")
    assert names(bare) == ["one"]


def test_entries_of_the_laptop_reach_the_engine_of_the_phone(bare, phone, opened):
    page = opened(phone, bare.url)
    entry = {
        "id": "01900000-0000-7000-8000-000000000001", "device": "00000000000000aa", "seq": 1, "version": 1,
        "stamp": "019000000000-0000-00000000000000aa", "kind": "device", "body": {"name": "laptop"}, "supersedes": [],
    }  # fmt: skip
    bare.stop()
    store = open_store(bare.data)
    with store.writing() as ledger:
        ledger.append(entry)
    store.close()
    bare.start()
    page.evaluate(NOW)
    assert page.evaluate("() => services.engine.ask({ ask: 'notebook' })")["answer"]["entries"] == 1
