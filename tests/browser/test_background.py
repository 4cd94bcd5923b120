"""In the background: what was written with no signal is shared while no page is open, where the browser can."""

import pytest

from tests.browser.conftest import BROWSERS, QUIET, browser_path, poll

REGISTERED = """async () => {
  const all = await navigator.serviceWorker.getRegistrations();
  const found = all.find(({ scope }) => scope.endsWith("/background/here/"));
  return found?.active?.state === "activated" ? found.scope : null;
}"""
TAGS = """async (scope) => {
  const registration = await navigator.serviceWorker.getRegistration(scope);
  return (await registration.sync.getTags()).includes("scantling");
}"""
PATIENCE = 30


def dispatch(page, scope, origin):
    """The browser's own call, as when the network comes back."""
    found = []
    session = page.context.new_cdp_session(page)
    listen = lambda news: found.extend(  # noqa: E731
        one["registrationId"] for one in news["registrations"] if one["scopeURL"] == scope
    )
    session.on("ServiceWorker.workerRegistrationUpdated", listen)
    session.send("ServiceWorker.enable")
    poll(page, lambda: found, seconds=PATIENCE)
    said = {"origin": origin, "registrationId": found[0], "tag": "scantling", "lastChance": False}
    session.send("ServiceWorker.dispatchSyncEvent", said)


@pytest.fixture(scope="session")
def browser(playwright):
    """One with windows: the one without has no Background Sync."""
    path = browser_path(BROWSERS[1:])
    if not path:
        pytest.skip("no browser with Background Sync: install the package chromium")
    launched = playwright.chromium.launch(executable_path=path, args=QUIET)
    yield launched
    launched.close()


@pytest.fixture
def phone(new_phone):
    """Its engine sleeps, and its page is not kept: only what is in the background is asked about."""
    context = new_phone()
    for name in ("engine/worker.js", "sw.js"):
        context.route(f"**/{name}", lambda route: route.abort())
    return context


def test_what_was_written_with_no_signal_is_shared_with_no_page_open(bare, phone):
    page = phone.new_page()
    page.goto(bare.url)
    scope = poll(page, REGISTERED, None, seconds=PATIENCE)
    bare.stop()
    page.evaluate("() => services.journal.append('device', { name: 'in the shed' })")
    assert page.evaluate("() => services.sync.now()") == "sync-no-signal"
    poll(page, TAGS, scope, seconds=PATIENCE)
    page.close()
    elsewhere = phone.new_page()
    bare.start()
    assert bare.journal() == []
    dispatch(elsewhere, scope, bare.url.rstrip("/"))
    poll(elsewhere, bare.journal, seconds=PATIENCE)
    assert [entry["body"] for entry in bare.journal()] == [{"name": "in the shed"}]


def test_a_browser_that_cannot_shares_when_the_person_comes_back(bare, new_sleeper):
    context = new_sleeper()
    context.add_init_script("delete globalThis.SyncManager")
    page = context.new_page()
    page.goto(bare.url)
    page.wait_for_function("() => globalThis.services && services.sync.phase === 'shared'")
    bare.stop()
    page.evaluate("() => services.journal.append('device', { name: 'in the shed' })")
    assert page.evaluate("() => services.sync.now()") == "sync-no-signal"
    bare.start()
    page.evaluate("() => document.dispatchEvent(new Event('visibilitychange'))")
    page.wait_for_function("() => services.sync.phase === 'shared'")
    assert len(bare.journal()) == 1
