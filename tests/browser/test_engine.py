"""The engine in the page: it says how it is, nobody waits for ever, and it answers what the laptop answers."""

import json
from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import BrowserContext, Page
from scantling.engine.desk import Desk

from tests.browser.conftest import PLAIN, browser_path, give
from tests.parity_questions import make_questions

AWAKE = "() => globalThis.services?.engine.state === 'awake'"
FAILED = "() => globalThis.services?.engine.state.startsWith('failed')"
COMPILED = """async () => {
  const name = (await caches.keys()).find((one) => one.startsWith("compiled-"));
  return name && (await (await caches.open(name)).keys()).length === 1;
}"""
#: A second engine beside the page's own, with less patience: tests must not wait a minute for it to give up.
IMPATIENT = """async ([build, runtime, patience]) => {
  const { Engine } = await import(`/v/${build}/engine/client.js`);
  globalThis.other = new Engine({ build, runtime, entries: async () => services.journal.entries(), patience });
}"""


@pytest.fixture
def page(bare, used_phone) -> Page:
    """A page that is not kept on the phone: the engine is the same, and there is less to wait for."""
    return arrive(used_phone(), bare.url)


@pytest.fixture
def own_page(bare, new_phone) -> Page:
    """The same on a phone of its own, for a test that spoils what it keeps of the engine."""
    return arrive(new_phone(service_workers="block"), bare.url)


def arrive(context: BrowserContext, url: str) -> Page:
    page = context.new_page()
    page.goto(url)
    page.wait_for_function("() => globalThis.services")
    return page


@pytest.fixture
def plain_page(bare, playwright, engine_kept) -> Iterator[Page]:
    """The same in a browser with all its compilers, as people run it."""
    browser = playwright.chromium.launch(executable_path=browser_path(), args=PLAIN)
    context = browser.new_context(service_workers="block")
    give(context, bare, engine_kept)
    yield arrive(context, bare.url)
    browser.close()


@pytest.fixture
def asked_twice(bare, plain_page) -> Callable[[list[dict]], tuple[str, str]]:
    """The same questions to the phone and to the laptop, each on an empty notebook: two texts."""
    page = plain_page
    page.evaluate(
        """async (build) => {
      globalThis.raw = new Worker(`/v/${build}/engine/worker.js`, { type: "module" });
    }""",
        bare.site.build,
    )
    awake = page.evaluate(
        """([build, runtime]) => new Promise((done) => {
      raw.onmessage = ({ data }) => done(data.awake ?? data.asleep);
      raw.postMessage({ boot: { build, runtime } });
    })""",
        [bare.site.build, bare.site.runtime],
    )
    assert awake == bare.site.build

    def ask(questions: list[dict]) -> tuple[str, str]:
        text = json.dumps(questions)
        there = page.evaluate(
            """(ask) => new Promise((done) => {
          raw.onmessage = ({ data }) => done(data.answer ?? data.error);
          raw.postMessage({ id: 1, ask });
        })""",
            text,
        )
        return there, Desk().answer_text(text)

    return ask


def test_the_phone_and_the_laptop_answer_with_the_same_bytes(asked_twice):
    there, here = asked_twice(make_questions())
    assert there == here
    answers = json.loads(here)
    assert sum("answer" in one for one in answers) > len(answers) / 2


def test_a_question_asked_while_it_wakes_waits_for_the_journal(page):
    page.evaluate("() => services.journal.append('device', { name: 'phone' })")
    page.reload()
    page.wait_for_function("() => globalThis.services")
    answer, state = page.evaluate("""async () => {
      const state = services.engine.state;
      return [await services.engine.ask({ ask: "notebook" }), state];
    }""")
    assert state == "waking"
    assert answer["answer"]["entries"] == 1


def test_a_new_entry_reaches_the_engine_without_a_question_of_its_own(page):
    page.wait_for_function(AWAKE)
    page.evaluate("() => services.journal.append('device', { name: 'phone' })")
    assert page.evaluate("() => services.engine.ask({ ask: 'notebook' })")["answer"]["entries"] == 1


def test_a_question_that_the_engine_refuses_is_an_answer_and_not_a_failure(page):
    page.wait_for_function(AWAKE)
    reply = page.evaluate("() => services.engine.ask({ ask: 'read', text: '63 1/' })")
    assert reply["error"]["message"]
    assert page.evaluate("() => services.engine.state") == "awake"


def test_a_policy_that_forbids_the_runtime_is_noticed_by_the_clock(bare, new_phone):
    policy = "default-src 'self'; script-src 'self'; style-src 'self'"
    bare.headers["Content-Security-Policy"] = policy
    context = new_phone(service_workers="block", forgiving=True)
    page = context.new_page()
    page.goto(bare.url)
    page.wait_for_function("() => globalThis.services")
    page.evaluate(IMPATIENT, [bare.site.build, bare.site.runtime, 3000])
    with pytest.raises(Exception, match="engine-no-answer"):
        page.evaluate("() => other.ask({ ask: 'read', text: '1' })")
    assert page.evaluate("() => other.state").startswith("failed: ")
    saved = page.evaluate("() => services.journal.append('device', { name: 'saved all the same' })")
    assert saved["seq"] == 1


def test_a_question_that_is_never_answered_is_given_up(page):
    page.wait_for_function(AWAKE)
    # The worker is well and hears nothing: to the page that is one that hangs. And a minute is made short.
    outcome = page.evaluate("""async () => {
      const clock = setTimeout;
      globalThis.setTimeout = (then, ms, ...given) => clock(then, ms === 60_000 ? 300 : ms, ...given);
      Worker.prototype.postMessage = () => {};
      const ask = () => services.engine.ask({ ask: "read", text: "1" }).catch((error) => error.message);
      const outcome = await Promise.all([ask(), ask()]);
      globalThis.setTimeout = clock;  // who asks afterwards is told at once, and does not wait a minute again
      const late = new Promise((done) => clock(done, 5000, "still waiting"));
      return [...outcome, await Promise.race([ask(), late])];
    }""")
    assert outcome == ["engine-no-answer"] * 3


def test_a_worker_that_does_not_load_rejects_everyone_who_waits(bare, new_phone):
    context = new_phone(service_workers="block")
    context.route("**/engine/worker.js", lambda route: route.fulfill(status=404, body="gone"))
    page = context.new_page()
    page.goto(bare.url)
    page.wait_for_function("() => globalThis.services")
    outcome = page.evaluate("""async () => {
      const asked = ["1", "2", "3"].map((text) => services.engine.ask({ ask: "read", text }));
      return (await Promise.allSettled(asked)).map((one) => one.status);
    }""")
    assert outcome == ["rejected"] * 3
    assert page.evaluate("() => services.engine.state").startswith("failed: ")


def test_it_can_be_started_again_after_a_failure(bare, new_phone):
    context = new_phone(service_workers="block")
    context.route("**/engine/worker.js", lambda route: route.abort())
    page = context.new_page()
    page.goto(bare.url)
    page.wait_for_function(FAILED)
    context.unroute("**/engine/worker.js")
    page.evaluate("() => services.engine.restart()")
    page.wait_for_function(AWAKE)
    answer = page.evaluate("() => services.engine.ask({ ask: 'read', text: '63 1/4' })")
    assert answer["answer"]["length"]["shown"] == '63 1/4"'


def test_an_engine_of_another_build_is_refused(bare, page):
    page.evaluate(
        """async ([build, runtime]) => {
      const { Engine } = await import(`/v/${build}/engine/client.js`);
      globalThis.other = new Engine({ build: "0".repeat(16), runtime, entries: async () => [] });
    }""",
        [bare.site.build, bare.site.runtime],
    )
    page.wait_for_function("() => other.state.startsWith('failed')")
    with pytest.raises(Exception, match="engine-other-build"):
        page.evaluate("() => other.ask({ ask: 'read', text: '1' })")


def test_a_compiled_engine_that_was_damaged_is_not_used_and_made_anew(own_page, until):
    page = own_page
    page.wait_for_function(AWAKE)
    until(page, COMPILED)
    size = page.evaluate("""async () => {
      const shelf = await caches.open((await caches.keys()).find((name) => name.startsWith("compiled-")));
      const [request] = await shelf.keys();
      const found = await shelf.match(request);
      const data = new Uint8Array(await found.arrayBuffer());
      data[data.length >> 1] ^= 1;
      await shelf.put(request, new Response(data, { headers: found.headers }));
      return data.length;
    }""")
    assert size > 10_000
    page.reload()
    page.wait_for_function(AWAKE)
    answer = page.evaluate("() => services.engine.ask({ ask: 'read', text: '63 1/4' })")
    assert answer["answer"]["length"]["shown"] == '63 1/4"'
    until(
        page,
        """async () => {
      const shelf = await caches.open((await caches.keys()).find((name) => name.startsWith("compiled-")));
      const [request] = await shelf.keys();
      const found = request && (await shelf.match(request));
      if (!found) return false;
      const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", await found.arrayBuffer()));
      const digest = Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
      return digest === found.headers.get("x-digest");
    }""",
        seconds=120,  # it is compiled anew, behind everything else
    )


def test_a_compiled_engine_that_does_not_open_gives_way_to_the_source(bare, own_page, until):
    page = own_page
    page.wait_for_function(AWAKE)
    until(page, COMPILED)
    # The checksum is right, the archive is not: what a mistake in the compiling would look like.
    page.evaluate(
        """async ([build, runtime]) => {
      const { keepEngine } = await import(`/v/${build}/engine/compiled.js`);
      await keepEngine(build, runtime, new TextEncoder().encode("not an archive"));
    }""",
        [bare.site.build, bare.site.runtime],
    )
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.reload()
    page.wait_for_function(AWAKE)
    assert any("starting from source" in words for words in said)
    answer = page.evaluate("() => services.engine.ask({ ask: 'read', text: '63 1/4' })")
    assert answer["answer"]["length"]["shown"] == '63 1/4"'


#: Changes what this phone kept of the engine's memory, or what it noted about it.
SPOIL = """async ([what, build]) => {
  const shelf = await caches.open(`snapshot-${build}`);
  const marks = await caches.open("unfinished-starts");
  const [request] = await shelf.keys();
  const found = await shelf.match(request);
  let data = new Uint8Array(await found.arrayBuffer());
  const headers = new Headers(found.headers);
  if (what === "a bit turned over") data[data.length >> 1] ^= 1;
  if (what === "of another browser") headers.set("x-agent", "another");
  if (what === "of another engine") headers.set("x-engine", "another");
  if (what === "no memory at all") data = new TextEncoder().encode("x".repeat(4096));
  if (what === "cut short when it was kept") data = data.slice(0, -65536);
  if (what === "no memory at all" || what === "cut short when it was kept") {
    const { digestOf } = await import(`/v/${build}/engine/memory.js`);
    headers.set("x-digest", digestOf(data));
  }
  if (what === "of a Python that opened no desk") {
    const { runtime } = document.documentElement.dataset;
    const { startPython } = await import(`/v/${build}/engine/python.js`);
    const { digestOf, packMemory } = await import(`/v/${build}/engine/memory.js`);
    data = packMemory((await startPython(runtime, { _makeSnapshot: true })).makeMemorySnapshot());
    headers.set("x-digest", digestOf(data));
  }
  if (what === "one start that did not end") await marks.put(`/unfinished/${build}`, new Response("1"));
  if (what === "two starts that did not end") await marks.put(`/unfinished/${build}`, new Response("2"));
  await shelf.put(request, new Response(data, { headers }));
}"""
UNFINISHED = """async (build) => {
  const found = await (await caches.open("unfinished-starts")).match(`/unfinished/${build}`);
  return found ? Number(await found.text()) : 0;
}"""


@pytest.mark.parametrize(
    ("what", "began", "unfinished"),
    [
        ("nothing", "restored", 0),
        ("a bit turned over", "compiled", 0),
        ("of another browser", "compiled", 0),
        ("of another engine", "compiled", 0),
        ("no memory at all", "compiled", 2),
        ("cut short when it was kept", "compiled", 2),
        ("of a Python that opened no desk", "compiled", 2),
        ("one start that did not end", "restored", 0),
        ("two starts that did not end", "compiled", 2),
    ],
)
def test_a_start_restores_the_memory_of_an_earlier_one_and_on_any_doubt_does_not(
    what, began, unfinished, bare, own_page
):
    """A memory that was made by this very page for the tests, so that it is known to fit the runtime's."""
    page = own_page
    page.wait_for_function(AWAKE)
    assert page.evaluate("() => services.engine.began") == "restored"
    page.evaluate("() => services.journal.append('device', { name: 'phone' })")
    page.evaluate(SPOIL, [what, bare.site.build])
    page.reload()
    page.wait_for_function(AWAKE)
    assert page.evaluate("() => services.engine.began") == began
    assert page.evaluate(UNFINISHED, bare.site.build) == unfinished
    assert page.evaluate("() => services.engine.ask({ ask: 'notebook' })")["answer"]["entries"] == 1


def test_a_memory_comes_back_as_it_was_and_its_empty_pages_are_not_kept(bare, page):
    """Into a runtime that has its own beginnings where the memory has nothing; and into no other than it came from."""
    pages, same, refused = page.evaluate(
        """async (build) => {
          const { HEAD, packMemory, unpackMemory } = await import(`/v/${build}/engine/memory.js`);
          const snapshot = new Uint8Array(128 + 6 * 65536);
          new Uint32Array(snapshot.buffer)[1] = 128;
          const memory = snapshot.subarray(128);
          for (const at of [1, 2 * 65536 + 5, 4 * 65536 - 1, 6 * 65536 - 1]) memory[at] = 9;
          const packed = packMemory(snapshot);
          const [head, heap] = [new Uint8Array(HEAD), new Uint8Array(memory.length).fill(7)];
          unpackMemory(packed, head, heap);
          const cut = [packed.subarray(0, -1), packed.subarray(0, -65536)];
          const refused = [[packed, heap.subarray(65536)], ...cut.map((one) => [one, heap])];
          return [
            Math.round(packed.length / 65536),
            heap.every((byte, at) => byte === memory[at]) && new Uint32Array(head.buffer)[1] === HEAD,
            refused.map(([bytes, into]) => {
              try { unpackMemory(bytes, head, into); return ""; } catch (error) { return error.constructor.name; }
            }),
          ];
        }""",
        bare.site.build,
    )

    assert (pages, same) == (4, True)
    assert all(refused)


#: A Python of the page's own takes a file that nobody else reads: before its files are there, while they come, after.
FILES_AWAITED = """async ([build, runtime]) => {
  const { startPython } = await import(`/v/${build}/engine/python.js`);
  const { askedAgain, bringFiles } = await import(`/v/${build}/engine/files.js`);
  const python = await startPython(runtime);
  const door = python.runPython(`
def door(name):
    try:
        return __import__(name).__name__
    except ImportError:
        return "done without"
door`);
  let come;
  const files = bringFiles(python, runtime, () => new Promise((yes) => (come = yes)));
  const ask = askedAgain(door, files);
  const said = [];
  const asked = ["json", "wave"].map((name) => ask(name).then((found) => said.push(found)));
  await asked[0];
  await new Promise((later) => setTimeout(later, 200));
  const early = [...said];
  come(new Uint8Array());
  await Promise.all(asked);
  return [early, said, await ask("no_such_module")];
}"""


def test_a_question_that_wants_a_file_before_it_is_there_waits_for_it_and_no_other_does(bare, page):
    early, said, missing = page.evaluate(FILES_AWAITED, [bare.site.build, bare.site.runtime])
    assert (early, said, missing) == (["json"], ["json", "wave"], "done without")


@pytest.mark.parametrize("entries", [0, 1])
def test_a_worker_that_asks_for_another_in_its_place_is_missed_by_nobody(page, entries):
    """What its page asked, and what it was told before, is asked and told again."""
    page.wait_for_function(AWAKE)
    if entries:
        page.evaluate("() => services.journal.append('device', { name: 'phone' })")
    told = page.evaluate(
        """async () => {
          const { Engine } = await import(`/v/${document.documentElement.dataset.build}/engine/client.js`);
          const workers = [];
          const Real = globalThis.Worker;
          globalThis.Worker = class extends Real { constructor(...of) { super(...of); workers.push(this); } };
          const { build, runtime } = document.documentElement.dataset;
          const engine = new Engine({ build, runtime, entries: async () => services.journal.entries() });
          globalThis.Worker = Real;
          await engine.ask({ ask: "read", text: "63 1/4" });
          const asked = Promise.all([engine.ask({ ask: "notebook" }), engine.ask({ ask: "read", text: "12" })]);
          await Promise.resolve();
          workers[0].onmessage({ data: { again: "its files are damaged" } });
          const state = engine.state;
          const [notebook, read] = await asked;
          engine.end();
          return [state, notebook.answer.entries, read.answer.length.shown];
        }"""
    )
    assert told == ["waking", entries, '12"']


def test_another_engine_answers_by_itself_and_can_be_ended_while_it_works(page):
    page.wait_for_function(AWAKE)
    pieces = [f"{20 + place} {place}/64" for place in range(60)]
    case = {"ask": "boards", "stock": [{"length": "8 ft", "price": "9.99"}, {"length": "12 ft", "price": "14.79"}],
            "pieces": pieces, "kerf": "1/8", "time_limit": 60}  # fmt: skip
    ended, answered = page.evaluate(
        """async (long) => {
          const other = services.anotherEngine();
          const looking = other.ask(long).then(() => "it was not ended", (error) => error.message);
          while (other.state !== "awake") await new Promise((later) => setTimeout(later, 20));
          const reply = await services.engine.ask({ ask: "read", text: "63 1/4" });
          other.end();
          return [await looking, reply.answer.length.shown];
        }""",
        case,
    )

    assert (ended, answered) == ("engine-ended", '63 1/4"')
