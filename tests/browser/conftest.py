"""A browser, a laptop that can be stopped and started, and phones: everything a test of the page needs.

The server runs in this process, so that stopping it is one call; the browser is a real one, with its own storage for
each phone. A page that breaks its Content-Security-Policy or throws fails the test that opened it, whatever the test
looked at.
"""

import base64
import fcntl
import hashlib
import os
import shutil
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest
from flask import Flask, request
from playwright.sync_api import Browser, BrowserContext, Page, Playwright, sync_playwright
from scantling.api import Config, create_app
from scantling.serving import NotebookServer
from scantling.site import PACKAGE, Site, web_folder, zip_engine

from tests.browser.touch import awake
from tests.ports import free_port

#: The one without windows first: it takes half of the processor.
BROWSERS = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")
#: A browser as people run it, but that it keeps to itself.
PLAIN = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
#: A page lives for seconds here: code made faster than the first compiler does costs more than it gives.
QUIET = [*PLAIN, "--js-flags=--liftoff-only"]
SECOND = 1000
#: Waking takes about a second here; a busy machine may take ten times as long.
PATIENCE = 60 * SECOND

#: A page with no screens: it hands the services to the test and says how the engine is.
BARE_SCREEN = """
export function mount(root, services) {
  globalThis.services = services;
  const show = () => { root.textContent = services.engine.state; };
  services.engine.onState(show);
  show();
}
"""

#: Puts the engine, as an earlier phone compiled it, and its memory where this phone would keep its own.
KEEP = """async ([build, runtime]) => {
  const { keepEngine } = await import(`/v/${build}/engine/compiled.js`);
  const { keepSnapshot } = await import(`/v/${build}/engine/snapshot.js`);
  const data = async (path) => new Uint8Array(await (await fetch(path)).arrayBuffer());
  const engine = await keepEngine(build, runtime, await data("/kept/compiled"));
  await keepSnapshot({ build, runtime, engine }, await data("/kept/snapshot"));
}"""

#: What this phone kept of a kind, in base64; null until it has.
KEPT = """async ([kind, build]) => {
  const found = (await caches.has(`${kind}-${build}`)) && (await (await caches.open(`${kind}-${build}`)).matchAll());
  return found[0] ? new Uint8Array(await found[0].arrayBuffer()).toBase64() : null;
}"""

#: Makes a phone new again but for what takes seconds: the engine as it compiled it, its memory, and the page where that
#: is kept for the day without a laptop.
WIPE = """async () => {
  for (const { name } of await indexedDB.databases()) {
    await new Promise((done, fail) => {
      const gone = indexedDB.deleteDatabase(name);
      gone.onsuccess = done;
      gone.onerror = () => fail(gone.error);
    });
  }
  for (const name of await caches.keys()) if (!/^(compiled|snapshot|page)-/.test(name)) await caches.delete(name);
  localStorage.clear();
}"""

CONTROLLED = """async () => {
  await navigator.serviceWorker.ready;
  if (navigator.serviceWorker.controller) return;
  await new Promise((done) => navigator.serviceWorker.addEventListener("controllerchange", done, { once: true }));
}"""


def browser_path(names: tuple[str, ...] = BROWSERS) -> str | None:
    """The browser to use: named in CHROMIUM, or the system's, or (None) Playwright's own."""
    return os.environ.get("CHROMIUM") or next(filter(None, map(shutil.which, names)), None)


@dataclass
class Laptop:
    """The server of one test: same port and same data through stops and starts, like a laptop that sleeps and wakes."""

    data: Path
    site: Site
    port: int = field(default_factory=free_port)
    requests: list[str] = field(default_factory=list)
    server: NotebookServer | None = None
    app: Flask | None = None
    headers: dict[str, str] = field(default_factory=dict)
    slow: dict[str, float] = field(default_factory=dict)  # seconds that a file takes, by its name
    more: dict[str, bytes] = field(default_factory=lambda: {"/nothing": b""})  # what it serves besides, by path

    @property
    def url(self) -> str:
        return f"http://127.0.0.1:{self.port}/"

    def start(self) -> "Laptop":
        self.app = create_app(Config(self.data, site=self.site))
        self.app.before_request(lambda: self.requests.append(f"{request.method} {request.path}"))
        self.app.before_request(lambda: time.sleep(self.slow.get(request.path.rpartition("/")[2], 0)))
        self.app.before_request(lambda: self.more.get(request.path))
        self.app.after_request(lambda response: (response.headers.update(self.headers), response)[1])
        self.server = NotebookServer(self.app, "127.0.0.1", self.port)
        self.server.prepare()
        self._thread = threading.Thread(target=self.server.serve, daemon=True)
        self._thread.start()
        return self

    def stop(self) -> None:
        if self.server:
            self.server.stop()
            self._thread.join(10)
            self.app.extensions["scantling"].store.close()
            self.server = None

    def __enter__(self) -> "Laptop":
        return self.start()

    def __exit__(self, *_: object) -> None:
        self.stop()

    def publish(self, site: Site) -> None:
        """Another version of the page, as after an update of the program."""
        self.stop()
        self.site = site
        self.start()

    def journal(self) -> list[dict[str, Any]]:
        """What the laptop has on its disk."""
        with self.app.extensions["scantling"].store.reading() as ledger:
            return [row.entry for row in ledger.read_all()]


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    with sync_playwright() as running:
        yield running


@pytest.fixture(scope="session")
def browser(playwright: Playwright) -> Iterator[Browser]:
    launched = playwright.chromium.launch(executable_path=browser_path(), args=QUIET)
    yield launched
    launched.close()


@pytest.fixture(scope="session")
def site() -> Site:
    """The page as it is."""
    return Site()


@pytest.fixture(scope="session")
def bare_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The page without its screens: what is under them is tested by itself."""
    folder = tmp_path_factory.mktemp("bare") / "web"
    shutil.copytree(web_folder(), folder)
    shutil.rmtree(folder / "screens")
    (folder / "screens").mkdir()
    (folder / "screens" / "main.js").write_text(BARE_SCREEN)
    return folder


@pytest.fixture(scope="session")
def package(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The engine's source as it was when the tests began: two versions must differ by what a test changed alone."""
    folder = tmp_path_factory.mktemp("package") / "scantling"
    shutil.copytree(PACKAGE / "engine", folder / "engine", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(PACKAGE / "__init__.py", folder)
    return folder


@pytest.fixture(scope="session")
def bare_site(bare_folder: Path, package: Path) -> Site:
    return Site(bare_folder, package)


@pytest.fixture(scope="session")
def port() -> int:
    """Of the laptop of every test in turn: what a phone keeps, it keeps for an address."""
    return free_port()


@pytest.fixture
def laptop(tmp_path: Path, site: Site, port: int) -> Iterator[Laptop]:
    """A laptop serving the whole page."""
    running = Laptop(tmp_path / "laptop", site, port).start()
    yield running
    running.stop()


@pytest.fixture(scope="session")
def bare_port() -> int:
    return free_port()


@pytest.fixture
def bare(tmp_path: Path, bare_site: Site, bare_port: int) -> Iterator[Laptop]:
    """A laptop serving the page without its screens."""
    running = Laptop(tmp_path / "laptop", bare_site, bare_port).start()
    yield running
    running.stop()


def listen(context: BrowserContext) -> list[str]:
    """What goes wrong in the pages of a context: thrown errors, violations of the policy, words that are missing."""
    wrong: list[str] = []
    context.on("weberror", lambda error: wrong.append(str(error.error)))
    told = ("Content Security Policy", "No words for")
    context.on("console", lambda said: wrong.append(said.text) if any(one in said.text for one in told) else None)
    return wrong


@pytest.fixture(scope="session")
def engine_kept(browser: Browser, site: Site, tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    """What a phone keeps of the engine, by the path to fetch it: one phone makes it for all tests."""
    sources = hashlib.sha256(zip_engine(PACKAGE) + site.runtime.encode()).hexdigest()
    shared = tmp_path_factory.getbasetemp().parent / f"kept-{sources}"
    with shared.with_suffix(".lock").open("w") as claim:
        fcntl.flock(claim, fcntl.LOCK_EX)
        if not shared.exists():
            beside = tmp_path_factory.mktemp("kept")
            for kind, data in make_kept(browser, Laptop(tmp_path_factory.mktemp("making"), site)).items():
                (beside / kind).write_bytes(base64.b64decode(data))
            beside.rename(shared)
    return {f"/kept/{path.name}": path.read_bytes() for path in shared.iterdir()}


def make_kept(browser: Browser, laptop: Laptop) -> dict[str, str]:
    """By kind, in base64, as a phone makes it some time after its first start."""
    laptop.start()
    context = browser.new_context(service_workers="block")
    page = context.new_page()
    page.goto(laptop.url)
    made = {kind: poll(page, KEPT, [kind, laptop.site.build], seconds=180) for kind in ("compiled", "snapshot")}
    context.close()
    laptop.stop()
    return made


def give(context: BrowserContext, laptop: Laptop, kept: dict[str, bytes]) -> None:
    """Gives a phone what it would have kept of the engine, as if it had been at this laptop before."""
    laptop.more.update(kept)
    page = context.new_page()
    page.goto(f"{laptop.url}nothing")
    page.evaluate(KEEP, [laptop.site.build, laptop.site.runtime])
    page.close()


@pytest.fixture
def warm(request: pytest.FixtureRequest, engine_kept: dict[str, bytes]) -> Callable[[BrowserContext], None]:
    """Gives a phone what it would have kept of the engine of the laptop of its test."""
    laptops = [request.getfixturevalue(name) for name in ("laptop", "bare") if name in request.fixturenames]

    def keep(context: BrowserContext) -> None:
        for laptop in laptops:
            give(context, laptop, engine_kept)

    return keep


@pytest.fixture(scope="session")
def open_once(
    browser: Browser, playwright: Playwright, engine_kept: dict[str, bytes]
) -> Callable[..., AbstractContextManager[Page]]:
    """Opens a page for all tests of a file that only look, its engine awake: one for each would take minutes."""

    @contextmanager
    def open_page(laptop: Laptop, script: str = "", **options: Any) -> Iterator[Page]:
        """`script` runs in it before its own."""
        context = browser.new_context(**{**playwright.devices["Pixel 7"], "service_workers": "block", **options})
        wrong = listen(context)
        give(context, laptop, engine_kept)
        context.add_init_script(script)
        page = context.new_page()
        page.goto(laptop.url)
        awake(page)
        yield page
        context.close()
        assert wrong == []

    return open_page


@pytest.fixture
def new_phone(
    browser: Browser, playwright: Playwright, request: pytest.FixtureRequest
) -> Iterator[Callable[..., BrowserContext]]:
    """Makes phones: each has its own storage, a small screen and a touch screen."""
    made: list[tuple[BrowserContext, list[str]]] = []

    def make(*, forgiving: bool = False, sleeps: bool = False, **options: Any) -> BrowserContext:
        """`forgiving`: this test breaks the page on purpose; `sleeps`: its engine never wakes, nor need be there."""
        context = browser.new_context(**{**playwright.devices["Pixel 7"], **options})
        context.set_default_timeout(PATIENCE)
        if not sleeps:
            request.getfixturevalue("warm")(context)
        made.append((context, [] if forgiving else listen(context)))
        return context

    yield make
    for context, _ in made:
        context.close()
    assert [wrong for _, wrong in made if wrong] == []


@pytest.fixture
def new_sleeper(new_phone: Callable[..., BrowserContext]) -> Callable[[], BrowserContext]:
    """Makes phones whose engine never wakes and whose page is not kept: the journal must do without, and quickly."""

    def make() -> BrowserContext:
        context = new_phone(sleeps=True, service_workers="block")
        context.route("**/engine/worker.js", lambda route: route.abort())
        return context

    return make


@dataclass
class Used:
    """A phone that passes from test to test, wiped in between."""

    context: BrowserContext
    wrong: list[str]

    def wipe(self, url: str) -> None:
        for page in self.context.pages:
            page.close()
        self.context.set_offline(False)
        self.context.unroute_all()
        page = self.context.new_page()
        page.goto(f"{url}nothing")
        page.evaluate(WIPE)
        page.close()


@pytest.fixture(scope="session")
def on_the_shelf() -> dict[tuple[str, str], list[Used]]:
    """The used phones that no test has in hand, by their laptop and whether they may keep its page."""
    return {}


@pytest.fixture
def take_used(
    browser: Browser,
    playwright: Playwright,
    request: pytest.FixtureRequest,
    warm: Callable[[BrowserContext], None],
    on_the_shelf: dict[tuple[str, str], list[Used]],
) -> Iterator[Callable[[str], BrowserContext]]:
    """Gives phones that have nothing on them but what takes seconds of the processor to make. For tests that leave no
    script behind in a phone, and whose laptop serves the page as it is."""
    laptop: Laptop = request.getfixturevalue("bare" if "bare" in request.fixturenames else "laptop")
    taken: list[tuple[list[Used], Used]] = []

    def take(service_workers: str) -> BrowserContext:
        shelf = on_the_shelf.setdefault((laptop.url, service_workers), [])
        if shelf:
            used = shelf.pop()
        else:
            context = browser.new_context(**playwright.devices["Pixel 7"], service_workers=service_workers)
            context.set_default_timeout(PATIENCE)
            warm(context)
            used = Used(context, listen(context))
        taken.append((shelf, used))
        return used.context

    yield take
    if not laptop.server:
        laptop.start()  # a phone is wiped at its address
    for shelf, used in taken:
        if used.wrong:
            used.context.close()
        else:
            used.wipe(laptop.url)
            shelf.append(used)
    assert [used.wrong for _, used in taken if used.wrong] == []


@pytest.fixture
def used_phone(take_used: Callable[[str], BrowserContext]) -> Callable[[], BrowserContext]:
    """Gives used phones that keep no page for the day without a laptop."""
    return lambda: take_used("block")


@pytest.fixture
def keeper(take_used: Callable[[str], BrowserContext]) -> Callable[[], BrowserContext]:
    """Gives used phones that keep the page: it is there from an earlier test, or comes while `opened` waits for it."""
    return lambda: take_used("allow")


@pytest.fixture
def phone(new_phone: Callable[[], BrowserContext]) -> BrowserContext:
    return new_phone()


@pytest.fixture
def desktop(new_phone: Callable[..., BrowserContext]) -> BrowserContext:
    """The same page on the laptop's own screen; it is not kept for the day without a laptop."""
    return new_phone(service_workers="block", viewport={"width": 1280, "height": 800}, is_mobile=False, has_touch=False)


@dataclass
class Profile:
    """A browser whose storage outlives it, to be closed, killed and opened again."""

    playwright: Playwright
    folder: Path
    context: BrowserContext | None = None

    def open(self) -> BrowserContext:
        screen = {k: v for k, v in self.playwright.devices["Pixel 7"].items() if k != "default_browser_type"}
        self.context = self.playwright.chromium.launch_persistent_context(
            str(self.folder), executable_path=browser_path(), args=QUIET, **screen
        )
        self.context.set_default_timeout(PATIENCE)
        return self.context

    def close(self) -> None:
        if self.context:
            self.context.close()
            self.context = None


@pytest.fixture
def profile(playwright: Playwright, tmp_path: Path) -> Iterator[Profile]:
    made = Profile(playwright, tmp_path / "profile")
    yield made
    made.close()


@pytest.fixture
def opened() -> Callable[[BrowserContext, str], Page]:
    """Opens a page and waits until it would open without the laptop too: active is not enough, it must be in charge."""

    def open_page(context: BrowserContext, url: str) -> Page:
        page = context.new_page()
        page.goto(url)
        page.evaluate(CONTROLLED)
        return page

    return open_page


def poll(page: Page, question: str | Callable[[], Any], argument: Any = None, seconds: float = 30) -> Any:
    """Waits for what takes asking: an async function in the page, which Playwright's own wait would not await."""
    deadline = time.monotonic() + seconds
    while time.monotonic() < deadline:
        found = question() if callable(question) else page.evaluate(question, argument)
        if found:
            return found
        page.wait_for_timeout(20)
    raise AssertionError(f"still waiting after {seconds} s for {question}")


@pytest.fixture
def until() -> Callable[..., Any]:
    return poll
