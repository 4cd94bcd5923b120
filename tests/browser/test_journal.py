"""The journal on the phone: entries go in once and whole, two tabs see the same, and trouble with the storage shows.

The engine sleeps in all of these tests: saving never waits for it.
"""

import json
import re
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from playwright.sync_api import BrowserContext, Page
from scantling.clock import HybridClock, mint_id
from scantling.engine.journal import check_entry
from scantling.store import canonical_text, digest_of

APPEND = "(name) => services.journal.append('device', { name })"
NAMES = "() => services.journal.entries().map((entry) => entry.body.name)"
UUID7 = re.compile(r"[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}\Z")
ENTRY = {
    "id": "01900000-0000-7000-8000-000000000001",
    "device": "00000000000000aa",
    "seq": 1,
    "stamp": "019000000000-0000-00000000000000aa",
    "version": 1,
    "kind": "device",
    "body": {"name": "from a file"},
    "supersedes": [],
}
#: From here on, how each writing transaction of a database is asked to be kept: the page's own may share meanwhile.
DURABILITY = """
      const asked = [];
      const before = IDBDatabase.prototype.transaction;
      IDBDatabase.prototype.transaction = function (names, mode, options) {
        if (mode === "readwrite" && this.name === of) asked.push(options?.durability);
        return before.call(this, names, mode, options);
      };"""
#: A second store on a database of its own, with a clock that the test sets.
STORE = """async ([build, name, time]) => {
  const { Store } = await import(`/v/${build}/journal/store.js`);
  globalThis.clock = time;
  globalThis.store = await Store.open({ name, now: () => clock });
}"""


@pytest.fixture
def sleeper(new_sleeper) -> BrowserContext:
    return new_sleeper()


@pytest.fixture
def page(bare, sleeper) -> Page:
    made = sleeper.new_page()
    made.goto(bare.url)
    made.wait_for_function("() => globalThis.services")
    return made


@pytest.fixture
def store(bare, page) -> Page:
    page.evaluate(STORE, [bare.site.build, "other", 1_800_000_000_000])
    return page


def test_an_entry_has_all_that_the_journal_asks_of_one(page):
    entry = page.evaluate("() => services.journal.append('device', { name: 'phone' }, ['one', 'two'])")
    assert UUID7.match(entry["id"])
    assert re.fullmatch(r"[0-9a-f]{16}", entry["device"])
    assert re.fullmatch(rf"[0-9a-f]{{12}}-[0-9a-f]{{4}}-{entry['device']}", entry["stamp"])
    assert {k: entry[k] for k in ("seq", "version", "kind", "body", "supersedes")} == {
        "seq": 1, "version": 1, "kind": "device", "body": {"name": "phone"}, "supersedes": ["one", "two"],
    }  # fmt: skip


def test_ids_are_never_the_same_and_sort_by_their_time(page):
    ids = page.evaluate("""async () => {
      const { newId } = await import(`/v/${document.documentElement.dataset.build}/journal/ids.js`);
      return Array.from({ length: 5000 }, (_, n) => newId(1_700_000_000_000 + n));
    }""")
    assert len(set(ids)) == 5000
    assert sorted(ids) == ids
    assert all(map(UUID7.match, ids))


def test_entries_written_at_once_are_numbered_without_gap_or_repeat(page):
    numbers = page.evaluate("""async () => {
      const made = Array.from({ length: 50 }, (_, n) => services.journal.append("device", { name: `${n}` }));
      return (await Promise.all(made)).map((entry) => entry.seq);
    }""")
    assert sorted(numbers) == list(range(1, 51))


def test_stamps_go_on_when_the_clock_of_the_phone_goes_back(store):
    stamps = store.evaluate("""async () => {
      const stamps = [];
      for (const move of [0, 0, -86_400_000, 5, -5]) {
        clock += move;
        stamps.push((await store.append("device", {})).stamp);
      }
      return stamps;
    }""")
    assert stamps == sorted(stamps)
    assert len(set(stamps)) == 5


def test_a_stamp_from_next_year_is_kept_but_does_not_move_our_clock(store):
    entry = ENTRY | {"stamp": "01ffffffffff-0000-00000000000000aa"}
    after = store.evaluate(
        """async (entry) => {
          await store.bringHome([{ entry, digest: "00".repeat(16) }]);
          return [(await store.append("device", {})).stamp, (await store.all()).length];
        }""",
        entry,
    )
    assert after[0] < entry["stamp"]
    assert after[1] == 2


def test_a_stamp_a_little_ahead_is_followed(store):
    ahead = f"{1_800_000_000_000 + 60_000:012x}-0007-00000000000000aa"
    stamp = store.evaluate(
        """async (entry) => {
          await store.bringHome([{ entry, digest: "00".repeat(16) }]);
          return (await store.append("device", {})).stamp;
        }""",
        ENTRY | {"stamp": ahead},
    )
    assert stamp > ahead


def test_saved_means_that_the_transaction_asked_for_strict_durability(page):
    asked = page.evaluate(f"""async () => {{
      await services.sync.now();
      const of = "scantling";
      {DURABILITY}
      await services.journal.append("device", {{ name: "phone" }});
      return asked;
    }}""")
    assert asked
    assert set(asked) == {"strict"}


def test_only_marks_that_the_laptop_gives_anew_do_not_wait_for_the_disk(store):
    asked = store.evaluate(
        f"""async (entry) => {{
      const of = "other";
      {DURABILITY}
      const reply = (acked) => ({{ acked, rejected: [], database: "d", cursor: 9, build: "b" }});
      const own = await store.append("device", {{}});
      const sent = [{{ entry: own, digest: "00".repeat(16) }}];
      const came = [{{ entry, digest: "11".repeat(16) }}];
      const other = [{{ entry: {{ ...entry, body: {{ name: "other words" }} }}, digest: "22".repeat(16) }}];
      await store.applySync(reply([own.id]), sent, [], []);
      await store.applySync(reply([]), [], came, []);
      await store.applySync(reply([]), [], [], other);
      await store.resend(["22".repeat(16)]);
      return [asked, (await store.counts()).pending];
    }}""",
        ENTRY,
    )
    assert asked == [["strict", "relaxed", "strict", "strict", "strict"], 1]


def test_what_waits_here_and_comes_from_the_laptop_too_waits_no_more(store):
    """An entry that another phone's file brought may have gone to the laptop by itself meanwhile."""
    pending = store.evaluate(
        """async (entry) => {
          await store.add([entry]);
          const before = (await store.counts()).pending;
          const reply = { acked: [], rejected: [], database: "d", cursor: 9, build: "b" };
          await store.applySync(reply, [], [{ entry, digest: "11".repeat(16) }], []);
          return [before, (await store.counts()).pending, await store.total()];
        }""",
        ENTRY,
    )
    assert pending == [1, 0, "11" * 16]


def test_an_exchange_that_cannot_be_written_to_its_end_marks_nothing_and_says_why(store):
    outcome = store.evaluate("""async () => {
      const own = [];
      for (const name of ["a", "b", "c"]) own.push(await store.append("device", { name }));
      const sent = own.map((entry, place) => ({ entry, digest: `${place}${place}`.repeat(16) }));
      const reply = { acked: own.map(({ id }) => id), rejected: [], database: "d", cursor: 9, build: "b" };
      const { put, add } = IDBObjectStore.prototype;
      let left = 2;
      IDBObjectStore.prototype.put = function (value, key) {
        const fails = this.name === "entries" && (left -= 1) === 0;
        return fails ? add.call(this, value) : put.call(this, value, key);
      };
      const failed = await store.applySync(reply, sent, [], []).then(() => "done", (error) => error.name);
      IDBObjectStore.prototype.put = put;
      const after = [(await store.counts()).pending, (await store.place()).cursor];
      await store.applySync(reply, sent, [], []);
      return [failed, after, (await store.counts()).pending, await store.total()];
    }""")
    assert outcome == ["ConstraintError", [3, 0], 0, "33" * 16]  # 00, 11 and 22, laid over each other


def test_it_is_not_called_saved_when_the_transaction_is_undone_after_every_request_succeeded(store):
    outcome = store.evaluate("""async () => {
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (value, key) {
        const request = put.call(this, value, key);
        if (key === "stamp") request.addEventListener("success", () => this.transaction.abort());
        return request;
      };
      const outcome = await store.append("device", {}).then(() => "saved", (error) => error.name);
      IDBObjectStore.prototype.put = put;
      return [outcome, (await store.all()).length, (await store.append("device", {})).seq];
    }""")
    assert outcome == ["AbortError", 0, 1]


def test_a_mistake_half_way_through_a_change_leaves_nothing_of_it(store):
    kept = store.evaluate(
        """async (entry) => {
      const reply = { acked: [], rejected: [], database: "d", cursor: 9, build: "b" };
      const arrived = [{ entry, digest: "00".repeat(16) }, { entry: null, digest: "11".repeat(16) }];
      const outcome = await store.applySync(reply, [], arrived, []).then(() => "done", () => "refused");
      return [outcome, (await store.all()).length, (await store.place()).cursor];
    }""",
        ENTRY,
    )
    assert kept == ["refused", 0, 0]


def test_a_database_that_the_phone_closed_is_opened_again(page):
    outcome = page.evaluate("""async () => {
      const transaction = IDBDatabase.prototype.transaction;
      let failures = 1;
      IDBDatabase.prototype.transaction = function (...given) {
        if (failures-- > 0) throw new DOMException("The database connection is closing.", "InvalidStateError");
        return transaction.apply(this, given);
      };
      const entry = await services.journal.append("device", { name: "phone" });
      return [entry.seq, services.journal.entries().length];
    }""")
    assert outcome == [1, 1]


def test_a_database_that_stays_closed_is_a_failure_that_shows(store):
    outcome = store.evaluate("""async () => {
      const transaction = IDBDatabase.prototype.transaction;
      let tries = 0;
      IDBDatabase.prototype.transaction = function (...given) {
        if (this.name !== "other") return transaction.apply(this, given);
        tries += 1;
        throw new DOMException("Connection lost", "UnknownError");
      };
      const outcome = await store.append("device", {}).then(() => "saved", (error) => error.name);
      IDBDatabase.prototype.transaction = transaction;
      return [outcome, tries, (await store.all()).length];
    }""")
    assert outcome == ["UnknownError", 2, 0]


def test_work_that_had_been_done_before_the_database_went_away_is_not_done_twice(store):
    entries = store.evaluate("""async () => {
      await store.append("device", {}, [], "01900000-0000-7000-8000-00000000000f");
      await store.append("device", {}, [], "01900000-0000-7000-8000-00000000000f");
      return (await store.all()).map((kept) => kept.entry.seq);
    }""")
    assert entries == [1]


def test_an_older_tab_lets_a_newer_version_have_the_database(page):
    version = page.evaluate("""() => new Promise((done, fail) => {
      const request = indexedDB.open("scantling", 5);
      request.onblocked = () => fail(new Error("blocked"));
      request.onsuccess = () => { request.result.close(); done(request.result.version); };
    })""")
    assert version == 5
    said = page.evaluate("""async () => {
      const refused = await services.journal.append("device", {}).catch((error) => error.message);
      return [refused, await services.sync.now()];
    }""")
    assert said == ["database-newer", "database-newer"]


def test_two_tabs_see_each_others_entries(bare, sleeper, page):
    other = sleeper.new_page()
    other.goto(bare.url)
    other.wait_for_function("() => globalThis.services")
    page.evaluate(APPEND, "from the first")
    other.wait_for_function("() => services.journal.entries().length === 1")
    other.evaluate(APPEND, "from the second")
    page.wait_for_function("() => services.journal.entries().length === 2")
    assert page.evaluate(NAMES) == other.evaluate(NAMES) == ["from the first", "from the second"]
    assert page.evaluate("() => services.journal.entries().map((entry) => entry.seq)") == [1, 2]


def test_a_file_holds_the_whole_journal_and_another_phone_reads_it(bare, page, new_sleeper, tmp_path):
    page.evaluate(APPEND, "one")
    page.evaluate(APPEND, "two")
    with page.expect_download() as download:
        name = page.evaluate("() => services.journal.exportFile().then((file) => file.name)")
    assert re.fullmatch(r"scantling-\d{4}-\d\d-\d\d\.ndjson", name)
    download.value.save_as(tmp_path / name)
    lines = (tmp_path / name).read_text().splitlines()
    assert json.loads(lines[0]) == {"format": "scantling journal", "version": 1, "entries": 2}
    assert [json.loads(line)["body"]["name"] for line in lines[1:]] == ["one", "two"]
    other = new_sleeper()
    other.route("**/api/sync", lambda route: route.abort())
    second = other.new_page()
    second.goto(bare.url)
    second.wait_for_function("() => globalThis.services")
    read = "(text) => services.journal.importFile(new Blob([text]))"
    whole = {"other": 0, "leftOut": [], "short": False, "attached": 0}
    assert second.evaluate(read, "\n".join(lines)) == {"added": 2, "known": 0, **whole}
    assert second.evaluate(read, "\n".join(lines)) == {"added": 0, "known": 2, **whole}
    assert second.evaluate(read, "\n".join(lines[:-1])) == {"added": 0, "known": 1, **whole, "short": True}
    assert second.evaluate(NAMES) == ["one", "two"]


@pytest.mark.parametrize(
    "line",
    [
        pytest.param("{", id="cut short"),
        pytest.param("[]", id="not an entry"),
        pytest.param(json.dumps({**ENTRY, "seq": "1"}), id="a number as text"),
        pytest.param(json.dumps({**ENTRY, "body": None}), id="no body"),
        pytest.param(json.dumps({k: v for k, v in ENTRY.items() if k != "stamp"}), id="no stamp"),
    ],
)
def test_a_line_that_is_no_entry_is_named_and_the_others_go_in(page, line):
    text = f"{json.dumps(ENTRY)}\n{line}\n"
    found = page.evaluate("(text) => services.journal.importFile(new Blob([text]))", text)
    left = [{"number": 2, "text": line}]
    assert found == {"added": 1, "known": 0, "other": 0, "leftOut": left, "short": False, "attached": 0}
    assert page.evaluate(NAMES) == ["from a file"]


READ_BYTES = "(bytes) => services.journal.importFile(new Blob([new Uint8Array(bytes)]))"


@pytest.mark.parametrize("ending", ["\n", "\r\n"])
@pytest.mark.parametrize("coding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be"])
def test_a_file_is_read_in_every_encoding_and_line_ending(page, coding, ending):
    text = f"{json.dumps(ENTRY | {'body': {'name': 'küche ¼ 🪚'}}, ensure_ascii=False)}{ending}torn{ending}"
    found = page.evaluate(READ_BYTES, list(text.encode(coding)))
    assert (found["added"], [one["number"] for one in found["leftOut"]]) == (1, [2])
    assert page.evaluate(NAMES) == ["küche ¼ 🪚"]


def test_a_byte_that_is_no_text_never_passes_for_a_letter(page):
    data = json.dumps(ENTRY).encode().replace(b"from a file", b"from \xff file")
    found = page.evaluate(READ_BYTES, list(data))
    assert (found["added"], [one["number"] for one in found["leftOut"]]) == (0, [1])


def test_what_was_left_out_is_offered_as_a_file(page):
    with page.expect_download() as download:
        page.evaluate("() => services.journal.saveLeftOut([{ number: 2, text: 'torn' }])")
    assert Path(download.value.path()).read_text() == "torn\n"


def test_the_browser_is_asked_once_to_keep_this_site(bare, new_sleeper):
    context = new_sleeper()
    context.add_init_script("""
      globalThis.asked = 0;
      if (navigator.storage) navigator.storage.persist = async () => { asked += 1; return false; };
    """)
    page = context.new_page()
    page.goto(bare.url)
    page.wait_for_function("() => globalThis.services")
    assert page.evaluate("() => asked") == 0
    for name in ("one", "two"):
        page.evaluate(APPEND, name)
    assert page.evaluate("() => asked") == 1


def test_a_page_that_cannot_open_its_journal_says_so_and_shows_nothing_else(bare, new_sleeper):
    context = new_sleeper()
    context.add_init_script("""
      indexedDB.open = () => { throw new DOMException("no room", "QuotaExceededError"); };
    """)
    page = context.new_page()
    page.goto(bare.url)
    alert = page.get_by_role("alert")
    alert.wait_for()
    assert "Nothing can be saved here" in alert.text_content()


def test_two_that_ask_at_once_for_the_journal_open_it_once(store):
    opened = store.evaluate("""async () => {
      const { Store } = await import(`/v/${document.documentElement.dataset.build}/journal/store.js`);
      let opened = 0;
      const open = IDBFactory.prototype.open;
      IDBFactory.prototype.open = function (...given) { opened += 1; return open.apply(this, given); };
      const fresh = new Store("third", Date.now);
      await Promise.all([fresh.append("device", {}), fresh.counts(), fresh.all()]);
      IDBFactory.prototype.open = open;
      return opened;
    }""")
    assert opened == 1


def test_what_is_on_the_disk_is_called_saved_although_nobody_could_be_told(page):
    outcome = page.evaluate("""async () => {
      const post = BroadcastChannel.prototype.postMessage;
      BroadcastChannel.prototype.postMessage = () => { throw new DOMException("gone", "InvalidStateError"); };
      const outcome = await services.journal.append("device", { name: "a" }).then(() => "saved", (error) => error.name);
      BroadcastChannel.prototype.postMessage = post;
      return [outcome, (await services.journal.store.all()).length];
    }""")
    assert outcome == ["saved", 1]


YEAR = 31_557_600_000
NOW = 1_800_000_000_000
#: What a clock says, and the stamps that came in meanwhile: on time, decades off, damaged, and before 1970.
WALKS = {
    "sound": [(NOW, ["a", "b"]), (NOW + 5, []), (NOW - 7, [])],
    "twenty years slow": [(NOW - 20 * YEAR, [NOW]), (NOW - 20 * YEAR, [NOW + 3]), (NOW - 20 * YEAR + 9, [])],
    "two years slow": [(NOW - YEAR // 4, [NOW]), (NOW - YEAR // 4, [])],
    "before 1970": [(-5, [NOW]), (-4, []), (-4.5, [])],
    "ran away and was set right": [(NOW + 20 * YEAR, []), (NOW, [NOW + 5]), (NOW + 1, [])],
    "beyond what a stamp can say": [(10**15, [NOW]), (2**60, []), (NOW, [])],
    "heard of a far future": [(NOW, [NOW + 30 * YEAR]), (NOW, [2**48 - 1])],
    "slow, and heard of a far future": [(0, [2**48 - 1]), (0, [NOW + 30 * YEAR])],
    "damaged stamps": [(NOW, ["zzz", "", "01a0", "ffffffffffff-ffff-", "ZZ" * 17]), (NOW, [])],
    "a full counter": [(NOW, [f"{NOW:012x}-ffff-00000000000000aa"]), (NOW, [])],
}


def stamp_of(seen):
    return seen if isinstance(seen, str) else f"{seen:012x}-0003-00000000000000aa"


def walk_here(walk):
    clock, made = HybridClock(), []
    for now, arrived in walk:
        for seen in arrived:
            clock.see(stamp_of(seen), int(now))
        made.append(clock.stamp(int(now), "00000000000000bb"))
    return made


@pytest.mark.parametrize("walk", WALKS.values(), ids=WALKS)
def test_phone_and_laptop_give_the_same_stamps_whatever_their_clocks_say(page, walk):
    there = page.evaluate(
        """async ([walk, device]) => {
          const at = `/v/${document.documentElement.dataset.build}/journal/clock.js`;
          const { nextStamp, laterStamp } = await import(at);
          let last;
          return walk.map(([now, arrived]) => {
            for (const seen of arrived) last = laterStamp(last, seen, now);
            last = nextStamp(last, now, device);
            return last;
          });
        }""",
        [[(now, [stamp_of(seen) for seen in arrived]) for now, arrived in walk], "00000000000000bb"],
    )
    assert there == walk_here(walk)
    assert all(re.fullmatch(r"[0-9a-f]{12}-[0-9a-f]{4}-[0-9a-f]{16}", stamp) for stamp in there)


def test_a_clock_that_ran_away_does_not_keep_what_is_written_after_it_was_set_right():
    ahead, after, later = walk_here(WALKS["ran away and was set right"])
    assert after < later < ahead
    assert int(after[:12], 16) == NOW + 5


def test_a_clock_that_is_decades_slow_goes_by_what_it_hears():
    first, second, third = walk_here(WALKS["twenty years slow"])
    assert stamp_of(NOW) < first < stamp_of(NOW + 3) < second < third


@pytest.mark.parametrize("now", [-1, -60 * YEAR, 0, NOW + 0.5, 2**48, 1e18])
def test_an_id_is_one_whatever_the_clock_says(page, now):
    made = page.evaluate(
        """async (now) => {
          const { newId } = await import(`/v/${document.documentElement.dataset.build}/journal/ids.js`);
          return newId(now);
        }""",
        now,
    )
    assert UUID7.match(made)
    assert UUID7.match(mint_id(int(now)))


def test_a_phone_that_read_a_damaged_stamp_goes_on_writing_entries_that_are_taken(page):
    damaged = ENTRY | {"stamp": "zz9000000000-0000-00000000000000aa"}
    page.evaluate("(text) => services.journal.importFile(new Blob([text]))", json.dumps(damaged))
    entry = page.evaluate("() => services.journal.append('device', { name: 'after' })")
    assert check_entry(entry) == []


SPELLINGS = st.recursive(
    st.none() | st.booleans() | st.integers(-(2**53) + 1, 2**53 - 1) | st.text()
    | st.floats(allow_nan=False, allow_infinity=False).filter(lambda one: not one.is_integer() or abs(one) < 2**53),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(), inner, max_size=4),
    max_leaves=12,
)  # fmt: skip


def test_an_entry_has_one_spelling_and_one_digest_on_phone_and_laptop(page):
    """Many at a time: it is the browser that takes long to ask."""
    made = [{"ﬀ": 1, "\U0001d538": 2, "é": 1.5e-7, "\uffff": 0.0001, "z": [1e-5, -0.0, 5e-324, 12.50]}]

    @settings(max_examples=400)
    @given(SPELLINGS)
    def collect(value):
        made.append({"value": value})

    collect()
    texts = [json.dumps(one) for one in made]
    told = page.evaluate(
        """async (texts) => {
          const at = `/v/${document.documentElement.dataset.build}/journal/digest.js`;
          const { canonicalText, digestsOf } = await import(at);
          const values = texts.map((text) => JSON.parse(text));
          const digests = await digestsOf(values);
          return values.map((value) => [canonicalText(value), digests.get(value)]);
        }""",
        texts,
    )
    assert len(made) > 300
    for one, (text, digest) in zip(made, told, strict=True):
        assert text == canonical_text(one)
        assert digest == digest_of(text)
