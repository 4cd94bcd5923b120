"""How fast the page is: from the phone's own cache, with the laptop off, as it starts in a room without signal.

Every figure is a median (or a 95th percentile) of several starts in a real browser on this machine. "Stock" is the same
page on the runtime as it is published: its standard library and the libraries as source, nothing compiled and kept.
"""

import json
import os
import re
import shutil
import signal
import statistics
import subprocess
import sys
import tempfile
import threading
import time
import zipfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from importlib.metadata import distribution
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page, sync_playwright

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))
sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "browser"))

from conftest import BARE_SCREEN, CONTROLLED, PATIENCE, PLAIN, QUIET, Laptop, browser_path  # a folder, not a package
from row import Row
from scantling.site import Site, web_folder
from screens import measure_stillness, measure_touches

STARTS = 7
SLOW = 4
LOOK_AGAIN = 0.5
#: After so long, in ms, a browser has kept what it compiled; it waits till it has compiled nothing for a while.
COMPILED = 5000
ENTRIES = 10_000
AWAKE = "() => performance.getEntriesByName('engine awake').length > 0"
#: What the page asks for at once: its modules, styles, fonts and words; icons and the manifest wait for nobody.
WAITED = re.compile(r'<(?:link rel="(?:modulepreload|preload|stylesheet)"|script)[^>]*? (?:href|src)="([^"]+)"')
READY = "() => performance.getEntriesByName('engine awake')[0].startTime"
PAINT = "() => performance.getEntriesByName('first-contentful-paint')[0].startTime"
#: A page of this build wakes without what it compiled and kept at its first start.
FORGETFUL = "export const keptEngine = async () => null;\nexport async function keepEngine() {}\n"
SHARE = """async () => {
  const begun = performance.now();
  const said = await services.sync.now();
  if (said !== "sync-shared") throw new Error(said);
  return performance.now() - begun;
}"""
#: Compiled for the next start, after this one, and its memory kept; the stock page keeps nothing.
MADE = """async () => {
  for (let tries = 0; tries < 120; tries += 1) {
    await new Promise((go) => setTimeout(go, 250));
    for (const name of await caches.keys()) {
      if (name.startsWith("snapshot-") && (await (await caches.open(name)).keys()).length) return;
    }
  }
}"""
TYPED = ("63 1/4", "5' 3 1/4\"", "sixty three and a quarter", "14 3/16 strong", "5-3-1/4", "102", "7 9/32 shy", "63.25")


@dataclass(frozen=True, slots=True)
class Start:
    """One start of the page, in milliseconds after the address was opened."""

    paint: float
    ready: float


def children(pid: int) -> Iterator[int]:
    """The processes that a process of ours started, and theirs."""
    try:
        listed = [int(c) for t in Path(f"/proc/{pid}/task").iterdir() for c in (t / "children").read_text().split()]
    except OSError:
        return
    for child in listed:
        yield child
        yield from children(child)


def renderers() -> list[int]:
    """The browser's own renderers among the processes that this one started."""
    found = []
    for pid in children(os.getpid()):
        try:
            if b"--type=renderer" in Path(f"/proc/{pid}/cmdline").read_bytes():
                found.append(pid)
        except OSError:
            continue
    return found


@contextmanager
def slowed(rate: float, period: float = 0.06) -> Iterator[None]:
    """Stops and continues our renderers in turns, so that pages and workers alike get one part in `rate` of the time.

    The browser's own throttle reaches pages only: workers refuse it.
    """
    running = threading.Event()
    running.set()

    def tell(pids: list[int], what: signal.Signals) -> None:
        for pid in pids:
            try:
                os.kill(pid, what)
            except ProcessLookupError:
                continue

    def loop() -> None:
        pids, looked = renderers(), time.monotonic()
        while running.is_set():
            tell(pids, signal.SIGSTOP)
            resume = time.monotonic() + period * (rate - 1) / rate
            if time.monotonic() - looked > LOOK_AGAIN:  # while they stand still: looking takes as long as a turn
                pids, looked = renderers(), time.monotonic()
            time.sleep(max(0.0, resume - time.monotonic()))
            tell(pids, signal.SIGCONT)
            time.sleep(period / rate)

    thread = threading.Thread(target=loop)
    thread.start()
    try:
        yield
    finally:
        running.clear()
        thread.join()
        tell(renderers(), signal.SIGCONT)


def kept_page(browser: Browser, laptop: Laptop) -> Page:
    """A page that this browser has whole, with all that it keeps of the engine, and whose laptop is off."""
    page = browser.new_context(viewport={"width": 390, "height": 844}).new_page()
    page.set_default_timeout(PATIENCE)
    page.goto(laptop.url)
    page.evaluate(CONTROLLED)
    page.wait_for_function(AWAKE)
    page.evaluate(MADE)
    page.wait_for_timeout(COMPILED)
    laptop.stop()
    return page


def start(page: Page) -> Start:
    page.reload()
    page.wait_for_function(AWAKE)
    return Start(page.evaluate(PAINT), page.evaluate(READY))


def starts(*pages: Page) -> list[list[Start]]:
    """Starts of each page, taken in turns: what else this machine does then falls on all of them alike."""
    for page in pages:
        start(page)  # the first after the laptop went off is the browser's, not ours
    rounds = [[start(page) for page in pages] for _ in range(STARTS)]
    return [list(column) for column in zip(*rounds, strict=True)]


def middle(values: Iterator[float]) -> float:
    return statistics.median(values)


def sources_of(target: Path, *names: str) -> None:
    """A zip of installed libraries as their source, as one would vendor them without compiling."""
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as archive:
        for name in names:
            for file in distribution(name).files or ():
                if file.suffix == ".py" or file.name == "METADATA" or file.suffix == ".txt":
                    archive.write(str(file.locate()), str(file))


def stock_folder(work: Path) -> Path | None:
    """The page on the runtime as published, or None when it cannot be fetched (no npm, no network)."""
    version = pyodide_version()
    command = ["npm", "pack", "--silent", f"pyodide@{version}"]
    try:
        subprocess.run(command, cwd=work, check=True, capture_output=True, timeout=120)
        subprocess.run(["tar", "xzf", f"pyodide-{version}.tgz"], cwd=work, check=True)
    except (OSError, subprocess.SubprocessError):
        return None
    folder = work / "stock"
    shutil.copytree(web_folder(), folder)
    shutil.copy(work / "package" / "python_stdlib.zip", folder / "vendor" / "pyodide" / "stdlib.zip")
    sources_of(folder / "vendor" / "marshmallow" / "marshmallow.zip", "marshmallow", "typing_extensions")
    (folder / "engine" / "compiled.js").write_text(
        FORGETFUL + "export async function dropEngine() {}\nexport const compileEngine = async () => null;\n"
    )
    return folder


def pyodide_version() -> str:
    lock = json.loads((web_folder() / "vendor" / "vendor.lock").read_text())
    return str(lock["packages"]["pyodide"]["version"])


def bare_folder(work: Path) -> Path:
    folder = work / "bare"
    shutil.copytree(web_folder(), folder)
    shutil.rmtree(folder / "screens")
    (folder / "screens").mkdir()
    (folder / "screens" / "main.js").write_text(BARE_SCREEN)
    return folder


def journal_of(count: int) -> list[dict[str, Any]]:
    """A journal of many years: one house, a room for every 400 entries, walls and repeated readings."""
    device = "00000000000000aa"
    entries: list[dict[str, Any]] = []

    def write(kind: str, body: dict[str, Any]) -> None:
        n = len(entries) + 1
        stamp = f"{0x18B000000000 + n:012x}"
        entries.append(
            {
                "id": f"018b0000-{n:04x}-7000-8000-{n:012x}",
                "device": device,
                "seq": n,
                "stamp": f"{stamp[:12]}-0000-{device}",
                "version": 1,
                "kind": kind,
                "body": body,
                "supersedes": [],
            }
        )

    house = _uuid(1)
    write("house", {"house": house, "name": "Bungalow", "built": 1936})
    room = wall = ""
    after: str | None = None
    while len(entries) < count:
        n = len(entries)
        if n % 400 == 1:
            room, after = _uuid(n), None
            write("room", {"room": room, "house": house, "name": f"Room {n // 400}", "closed": False})
        elif n % 40 == 2:
            wall = _uuid(n)
            write("wall", {"wall": wall, "room": room, "after": after, "turn": "inside"})
            after = wall
        else:
            write("reading", {"of": wall, "what": "length", "text": f"{60 + n % 80} {n % 16}/16"})
    return entries


def _uuid(n: int) -> str:
    return f"018b0000-0000-7000-9000-{n:012x}"


def fold(page: Page) -> tuple[float, float]:
    """Milliseconds to take 10,000 entries as the page gives them, and then to say what houses there are."""
    return tuple(
        page.evaluate(
            """async (entries) => {
              const begun = performance.now();
              for (let from = 0; from < entries.length; from += 1000) {
                await services.engine.ask({ ask: "take", entries: entries.slice(from, from + 1000) });
              }
              const taken = performance.now();
              await services.engine.ask({ ask: "notebook" });
              return [taken - begun, performance.now() - taken];
            }""",
            journal_of(ENTRIES),
        )
    )


def echo(page: Page) -> float:
    """The 95th percentile, in ms, of typing a reading key by key and having each state of it read back."""
    typed = [text[: n + 1] for text in TYPED for n in range(len(text))] * 3
    took = page.evaluate(
        """async (typed) => {
          const took = [];
          for (const text of typed) {
            const begun = performance.now();
            await services.engine.ask({ ask: "read", text });
            took.push(performance.now() - begun);
          }
          return took;
        }""",
        typed,
    )
    return statistics.quantiles(took, n=20)[-1]


def calibrated(page: Page) -> tuple[float, float]:
    """A throttle that slows by about four in truth, and by how much it does: what it asks for is not what it gets."""
    work = "() => { const t = performance.now(); let n = 0; while (n < 5e8) n += 1; return performance.now() - t; }"
    page.evaluate(work)
    rate, factor = float(SLOW), 0.0
    for _ in range(6):
        free = middle(page.evaluate(work) for _ in range(3))
        with slowed(rate):
            factor = middle(page.evaluate(work) for _ in range(3)) / free
        if abs(factor - SLOW) < SLOW / 10:
            break
        rate = max(1.5, rate * SLOW / factor)
    return rate, factor


def sizes(site: Site) -> tuple[float, float, float]:
    """KB on the wire, packed: what a first paint waits for, the whole page, the engine's source."""
    packed = {path: len(site.packed(file)) / 1000 for path, file in site.files.items()}
    waited = {"/", *WAITED.findall(site.files["/"].body.decode())}
    engine = packed[f"/v/{site.build}/engine.zip"]
    page = sum(size for path, size in packed.items() if not path.startswith("/rt/")) - engine
    return sum(packed[path] for path in waited), page, engine


@contextmanager
def served(work: Path, name: str, folder: Path | None = None) -> Iterator[Laptop]:
    laptop = Laptop(work / f"data-{name}", Site(folder)).start()
    try:
        yield laptop
    finally:
        laptop.stop()


def measure_sizes() -> Iterator[Row]:
    first, page, engine = sizes(Site())
    yield Row("page before its first paint, packed", first, "KB", 120)
    yield Row("page in all, packed, without the runtime", page, "KB")
    yield Row("engine on the wire, packed", engine, "KB")


def measure_starts(browser: Browser, work: Path) -> Iterator[Row]:
    """Our start and the stock one in turns, then ours on a slowed processor: in a browser with all its compilers, which
    keeps what they made of the runtime for the next start."""
    stock_web = stock_folder(work)
    with served(work, "page") as laptop, served(work, "stock", stock_web) as stock_laptop:
        page = kept_page(browser, laptop)
        pages = [page, kept_page(browser, stock_laptop)] if stock_web else [page]
        ours, *others = starts(*pages)
        ready = middle(one.ready for one in ours)
        yield Row("first paint", middle(one.paint for one in ours), "ms", 500)
        yield Row("engine awake", ready, "ms", 600)
        if others:
            stock = middle(one.ready for one in others[0])
            yield Row("engine awake, stock runtime", stock, "ms")
            yield Row("ours against stock, in hundredths", 100 * ready / stock, "%", 33)
            pages[1].context.close()
        else:
            print("  the stock runtime could not be fetched with npm, and is not compared")
        rate, factor = calibrated(page)
        yield Row("how much slower the slowed processor was", factor, "x")
        with slowed(rate):
            slow = [start(page) for _ in range(3)]
        yield Row("first paint, slowed", middle(one.paint for one in slow), "ms")
        yield Row("engine awake, slowed", middle(one.ready for one in slow), "ms", 2500)
        page.context.close()


def measure_answers(browser: Browser, work: Path) -> Iterator[Row]:
    with served(work, "bare", bare_folder(work)) as laptop:
        page = kept_page(browser, laptop)
        start(page)
        yield Row("echo of a typed reading, 95 of 100 within", echo(page), "ms", 30)
        taken, told = fold(page)
        yield Row(f"taking {ENTRIES:,} entries", taken, "ms", 1000)
        yield Row("saying what houses and rooms there are after that", told, "ms")
        page.context.close()


def measure_sharing(browser: Browser, work: Path) -> Iterator[Row]:
    """A first exchange as a page has it, its own journal on the disk at the end: from one phone, and to another."""
    with served(work, "shared", work / "bare") as laptop:
        pages = [browser.new_context().new_page() for _ in range(2)]
        for page in pages:
            page.set_default_timeout(PATIENCE)
            page.goto(laptop.url)
            page.wait_for_function(AWAKE)
            page.wait_for_function("() => services.sync.phase === 'shared'")
        pages[0].evaluate("(entries) => services.journal.store.add(entries)", journal_of(ENTRIES))
        for page, where in zip(pages, ("to the laptop", "to a new phone"), strict=True):
            yield Row(f"first sync of the page, {ENTRIES} entries {where}", page.evaluate(SHARE), "ms", 2000)
            yield Row("its next sync, nothing new", middle(page.evaluate(SHARE) for _ in range(9)), "ms", 50)
            page.context.close()


def measure(browser: Browser, work: Path) -> Iterator[Row]:
    yield from measure_sizes()
    usual = browser.browser_type.launch(executable_path=browser_path(), args=PLAIN)
    yield from measure_starts(usual, work)
    usual.close()
    yield from measure_answers(browser, work)
    yield from measure_sharing(browser, work)
    yield from measure_stillness(browser, work)
    yield from measure_touches(browser, work)


def show(measure: Callable[[Browser, Path], Iterator[Row]]) -> int:
    """Prints what is measured in a browser; the exit status says whether a target was missed."""
    missed = 0
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=browser_path(), args=QUIET)
        for row in measure(browser, Path(folder)):
            row.show()
            missed += row.verdict == "MISSED"
        browser.close()
    return 1 if missed else 0


def main() -> int:
    """Prints the table; the exit status says whether a target was missed."""
    return show(measure)


if __name__ == "__main__":
    sys.exit(main())
