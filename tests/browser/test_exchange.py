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
COUNTS = """() => {
  const { entries, pending, refused } = services.journal.counts();
  return { entries, pending, refused };
}"""
#: Takes one entry out of the phone's storage, as a failing memory would, with no word to anybody.
LOSE = """(name) => new Promise((done) => {
  indexedDB.open("scantling").onsuccess = ({ target: { result } }) => {
    const change = result.transaction(["entries", "facts"], "readwrite");
    const entries = change.objectStore("entries");
    entries.getAll().onsuccess = ({ target }) => {
      entries.delete(target.result.find(({ entry }) => entry.body.name === name).id);
      change.objectStore("facts").delete("sums");
    };
    change.oncomplete = () => { result.close(); done(); };
  };
})"""


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
    assert first.evaluate(NOW) == "sync-no-signal"
    assert first.evaluate(COUNTS) == {"entries": 3, "pending": 3, "refused": 0}
    bare.start()
    assert first.evaluate(NOW) == "sync-shared"
    assert first.evaluate(COUNTS) == {"entries": 3, "pending": 0, "refused": 0}
    second.evaluate(NOW)
    assert second.evaluate(NAMES) == names(bare) == ["one", "three", "two"]


def test_an_entry_is_shared_soon_after_it_is_written(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    page.evaluate(APPEND, "one")
    page.wait_for_function("() => services.journal.counts().pending === 0")
    assert names(bare) == ["one"]


def test_who_asks_while_an_exchange_is_under_way_has_one_of_their_own_after_it(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    page.evaluate(NOW)
    begins = """() => {
      let begun = 0;
      const { request } = navigator.locks;
      LockManager.prototype.request = function (name, ...more) {
        if (name === "scantling-sync") begun += 1;
        return request.call(this, name, ...more);
      };
      const all = [1, 2, 3].map(() => services.sync.now());
      return Promise.all(all).then(() => begun);
    }"""
    assert page.evaluate(begins) == 2  # what was asked thrice is done once more, not twice


@pytest.mark.parametrize("lost", ["request", "reply"])
def test_a_request_or_a_reply_that_is_lost_changes_nothing(bare, sleeper, open_bare, lost):
    page = open_bare(sleeper)

    def lose(route):
        if lost == "reply":
            route.fetch()
        route.abort("connectionreset")

    page.route("**/api/sync", lose)
    page.evaluate(APPEND, "one")
    assert page.evaluate(NOW) == "sync-no-signal"
    assert len(bare.journal()) == (lost == "reply")
    page.unroute("**/api/sync")
    assert page.evaluate(NOW) == "sync-shared"
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
    assert page.evaluate(NOW) == "sync-shared"
    assert names(bare) == ["new", "old"]


def test_an_old_copy_of_the_laptops_journal_is_healed_by_comparing(bare, new_sleeper, open_bare, tmp_path):
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


def test_a_laptop_that_lost_one_entry_is_sent_that_one_and_no_other(bare, sleeper, open_bare, tmp_path):
    page = open_bare(sleeper)
    for name in ("a", "b", "c"):
        page.evaluate(APPEND, name)
    page.evaluate(NOW)
    keep_only(bare, lambda entry: entry["body"]["name"] != "b")
    sent = []
    page.on("request", lambda one: sent.extend(body_of(one).get("entries", [])) if "/api/sync" in one.url else None)
    assert page.evaluate(NOW) == "sync-shared"
    assert [entry["body"]["name"] for entry in sent] == ["b"]
    assert names(bare) == ["a", "b", "c"]


def test_a_phone_that_lost_one_entry_fetches_that_one_and_no_other(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    for name in ("a", "b", "c"):
        page.evaluate(APPEND, name)
    page.evaluate(NOW)
    page.evaluate(LOSE, "b")
    fetched = []
    page.on("request", lambda one: fetched.append(body_of(one)) if one.url.endswith("/fetch") else None)
    assert page.evaluate(NOW) == "sync-shared"
    assert [len(one["digests"]) for one in fetched] == [1]
    assert page.evaluate("async () => (await services.journal.store.all()).length") == 3


def test_an_account_of_what_is_shared_that_is_wrong_is_made_anew_and_then_all_is_quiet(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    page.evaluate(APPEND, "a")
    page.evaluate(NOW)
    page.evaluate("""() => new Promise((done) => {
      indexedDB.open("scantling").onsuccess = ({ target: { result } }) => {
        const change = result.transaction("facts", "readwrite");
        change.objectStore("facts").put({ "00": "00000000000000000000000000000001" }, "sums");
        change.oncomplete = () => { result.close(); done(); };
      };
    })""")
    assert requests_of(page) == ["/api/sync", "/api/sync/compare", "/api/sync"]
    assert requests_of(page) == ["/api/sync"]


def test_a_phone_of_before_there_were_digests_counts_once_and_then_is_quiet(bare, sleeper, open_bare):
    """Its entries have no digests and its facts no sums: an update of the page must not make it send all again."""
    page = open_bare(sleeper)
    for name in ("a", "b"):
        page.evaluate(APPEND, name)
    page.evaluate(NOW)
    page.evaluate("""() => new Promise((done) => {
      indexedDB.open("scantling").onsuccess = ({ target: { result } }) => {
        const change = result.transaction(["facts", "entries"], "readwrite");
        change.objectStore("facts").delete("sums");
        change.objectStore("entries").getAll().onsuccess = ({ target }) => {
          for (const { digest, ...kept } of target.result) change.objectStore("entries").put(kept);
        };
        change.oncomplete = () => { result.close(); done(); };
      };
    })""")
    assert requests_of(page) == ["/api/sync"]
    assert names(bare) == ["a", "b"]
    page.evaluate(APPEND, "c")
    page.evaluate(NOW)
    assert requests_of(page) == ["/api/sync"]


def test_journals_that_never_agree_do_not_keep_the_two_at_it_for_ever(sleeper, open_bare):
    page = open_bare(sleeper)
    asked = []

    def disagree(route):
        asked.append(route.request.url)
        compared = route.request.url.endswith("/compare")
        reply = {"database": "d", "acked": [], "rejected": [], "instead": [], "entries": [], "cursor": 7, "left": 0}
        route.fulfill(json={"differ": {}, "more": False} if compared else reply | {"total": "f" * 32, "build": "b"})

    page.route("**/api/sync**", disagree)
    assert page.evaluate(NOW) == "sync-endless"
    assert len(asked) < 150


def test_other_words_under_one_name_stand_as_the_laptop_has_them_and_ours_are_set_aside(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    bare.stop()
    page.evaluate("() => services.journal.append('device', { name: 'ours' })")
    entry = page.evaluate("() => services.journal.entries()[0]")
    bare.start()
    with bare.app.extensions["scantling"].store.writing() as ledger:
        ledger.append(entry | {"body": {"name": "theirs"}})
    assert page.evaluate(NOW) == "sync-shared"
    assert page.evaluate(NAMES) == names(bare) == ["theirs"]
    (aside,) = page.evaluate("() => services.journal.refused()")
    assert aside["entry"]["body"] == {"name": "ours"}
    assert aside["why"]
    assert page.evaluate(COUNTS) == {"entries": 1, "pending": 0, "refused": 1}
    assert requests_of(page) == ["/api/sync"]

    page.evaluate("(text) => services.journal.writeAnew(text)", aside["text"])
    page.evaluate(NOW)
    assert page.evaluate(NAMES) == names(bare) == ["ours", "theirs"]
    assert page.evaluate(COUNTS) == {"entries": 2, "pending": 0, "refused": 0}


def test_an_entry_that_the_laptop_has_under_another_number_takes_that_number_here(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    bare.stop()
    page.evaluate(APPEND, "ours")
    entry = page.evaluate("() => services.journal.entries()[0]")
    renumbered = entry | {"device": "00000000000000aa", "seq": 9}
    bare.start()
    with bare.app.extensions["scantling"].store.writing() as ledger:
        ledger.append(renumbered)
    assert page.evaluate(NOW) == "sync-shared"
    assert page.evaluate("() => services.journal.entries()") == bare.journal() == [renumbered]
    assert page.evaluate(COUNTS) == {"entries": 1, "pending": 0, "refused": 0}
    assert requests_of(page) == ["/api/sync"]


def requests_of(page) -> list[str]:
    """What one sharing asks of the laptop."""
    asked = []
    note = lambda one: asked.append("/" + one.url.split("/", 3)[3]) if "/api/sync" in one.url else None  # noqa: E731
    page.on("request", note)
    assert page.evaluate(NOW) == "sync-shared"
    page.remove_listener("request", note)
    return asked


def keep_only(laptop, wanted) -> None:
    """The laptop's journal as it would be had it never heard the others; its rows are as many as they are."""
    laptop.stop()
    store = open_store(laptop.data)
    with store.reading() as ledger:
        kept = [row.entry for row in ledger.read_all() if wanted(row.entry)]
    store.close()
    shutil.rmtree(laptop.data)
    store = open_store(laptop.data)
    with store.writing() as ledger:
        ledger.append_all(kept)
    store.close()
    laptop.start()


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
    assert page.evaluate(NOW) == "sync-shared"
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

    assert phone.evaluate(NOW) == "sync-shared"

    assert phone.evaluate(COUNTS) == {"entries": 4, "pending": 0, "refused": 0}
    assert names(bare) == phone.evaluate(NAMES) == ["before", "copy three", "copy two", "old phone two"]
    sent = []
    phone.on("request", lambda one: sent.extend(entries_of(one)) if one.url.endswith("/api/sync") else None)
    phone.evaluate(APPEND, "copy four")
    phone.evaluate(NOW)
    written = {entry["body"]["name"]: (entry["device"], entry["seq"]) for entry in bare.journal()}
    assert [written[name] for name in ("before", "old phone two", "copy two", "copy three")] == [
        (before["device"], seq) for seq in (1, 2, 2, 3)
    ]
    copy = phone.evaluate("() => services.journal.device")
    assert copy != before["device"]
    assert written["copy four"] == (copy, 1)
    assert [entry["body"]["name"] for entry in sent] == ["copy four"]
    assert requests_of(phone) == ["/api/sync"]


def test_what_was_refused_is_sent_again_when_a_person_says_so_and_when_the_laptop_is_another(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    build = ["one"]

    def refuse(route):
        entries = entries_of(route.request)
        refused = [{"id": entry["id"], "key": "no", "message": f"not by {build[0]}"} for entry in entries]
        asked.append(len(entries))
        reply = {"database": "d", "acked": [], "rejected": refused, "instead": [], "entries": [], "cursor": 0}
        route.fulfill(json=reply | {"left": 0, "total": "0" * 32, "build": build[0]})

    asked: list[int] = []
    page.route("**/api/sync", refuse)
    page.evaluate(APPEND, "a")
    page.evaluate(NOW)
    page.evaluate(NOW)
    assert sum(asked) == 1
    build[0] = "two"
    page.evaluate(NOW)
    page.evaluate(NOW)
    assert sum(asked) == 2
    assert page.evaluate("() => services.journal.refused()")[0]["why"] == "not by two"
    page.unroute("**/api/sync")
    page.evaluate("() => services.journal.sendAgain()")
    assert page.evaluate(NOW) == "sync-shared"
    assert names(bare) == ["a"]
    assert page.evaluate(COUNTS) == {"entries": 1, "pending": 0, "refused": 0}


def test_the_page_says_how_much_is_still_to_go(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    store = bare.app.extensions["scantling"].store
    with store.writing() as ledger:
        for seq in range(1, 1101):
            ledger.append({
                "id": f"01900000-{seq:04x}-7000-8000-000000000001", "device": "00000000000000aa", "seq": seq,
                "stamp": f"019c{seq:08x}-0000-00000000000000aa", "version": 1, "kind": "device",
                "body": {"name": f"{seq}"}, "supersedes": [],
            })  # fmt: skip
    page.evaluate("() => { globalThis.said = []; services.sync.onState((state) => said.push(state)); }")
    assert page.evaluate(NOW) == "sync-shared"
    said = page.evaluate("() => said")
    assert said[:3] == [{"key": "sync-busy", "values": {"here": 0, "there": left}} for left in (0, 600, 100)]
    assert said[-1] == "sync-shared"


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
    assert page.evaluate(NOW) == "sync-shared"
    assert len(bare.journal()) == 1100
    assert sent[:3] == [500, 500, 100]
    assert packed[:3] == ["gzip"] * 3


#: Writes six entries and shares them in parts of two; no answer is written before the request after it is out.
SHARED_IN_PARTS = """(fails) => navigator.locks.request("scantling-sync", async () => {
  const { exchange } = await import(`/v/${document.documentElement.dataset.build}/journal/exchange.js`);
  const { journal } = services;
  for (const name of ["one", "two", "three", "four", "five", "six"]) await journal.append("device", { name });
  const told = [];
  const count = (what) => told.filter((one) => one === what).length;
  let go = () => {};
  const store = new Proxy(journal.store, { get(real, name) {
    if (name !== "applySync") return typeof real[name] === "function" ? real[name].bind(real) : real[name];
    return async (...given) => {
      while (count("asked") < Math.min(3, count("written") + 2)) await new Promise((next) => { go = next; });
      if (fails) throw new Error("no room");
      told.push("written");
      return real.applySync(...given);
    };
  } });
  const ask = (...given) => { told.push("asked"); go(); return fetch(...given); };
  const way = { store, announce: journal.announce.bind(journal), heard: () => {}, fetch: ask, atMost: 2 };
  return exchange(way).then(() => told, (error) => error.message);
})"""


def test_the_laptop_works_on_the_next_part_while_the_last_one_is_written(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    assert page.evaluate(SHARED_IN_PARTS, False) == ["asked", "asked", "written", "asked", "written", "written"]
    assert page.evaluate(COUNTS) == {"entries": 6, "pending": 0, "refused": 0}
    assert names(bare) == page.evaluate(NAMES)


def test_an_answer_that_cannot_be_written_leaves_all_to_be_sent_and_nothing_doubled(bare, sleeper, open_bare):
    page = open_bare(sleeper)
    assert page.evaluate(SHARED_IN_PARTS, True) == "no room"
    page.evaluate(NOW)
    page.wait_for_function("() => services.journal.counts().pending === 0")
    assert page.evaluate(COUNTS) == {"entries": 6, "pending": 0, "refused": 0}
    assert names(bare) == page.evaluate(NAMES) == ["five", "four", "one", "six", "three", "two"]


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
    assert page.evaluate(NOW) == "sync-shared"
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
    page.wait_for_function("() => services.sync.state === 'sync-no-signal'")
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


def test_entries_of_the_laptop_reach_the_engine_of_the_phone(bare, used_phone):
    page = used_phone().new_page()
    page.goto(bare.url)
    page.wait_for_function("() => globalThis.services?.engine.state === 'awake'")
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
