"""A new version of the page: fetched by itself, used when the person says so, and never mixed with the old one."""

import shutil

import pytest
from playwright.sync_api import Page
from scantling.site import Site

pytestmark = pytest.mark.further

BUILD = "() => document.documentElement.dataset.build"
AWAKE = "() => globalThis.services?.engine.state === 'awake'"


@pytest.fixture
def next_site(bare_folder, package, tmp_path) -> Site:
    """The same page with a change in one file."""
    folder = tmp_path / "next"
    shutil.copytree(bare_folder, folder)
    journal = folder / "journal" / "journal.js"
    journal.write_text(journal.read_text() + "\nexport const changed = true;\n")
    return Site(folder, package)


def told_of_update(page: Page) -> None:
    page.evaluate("() => services.update.check()")
    page.wait_for_function("() => services.update.available")


def test_the_page_says_when_it_would_open_without_the_laptop(bare, phone):
    page = phone.new_page()
    page.goto(bare.url)
    page.wait_for_function("() => globalThis.services?.update.kept")
    assert page.evaluate("() => services.update.available") is False


def test_a_new_version_waits_until_the_person_says_so(bare, phone, opened, next_site):
    page = opened(phone, bare.url)
    page.wait_for_function(AWAKE)
    old = bare.site.build
    bare.publish(next_site)
    told_of_update(page)
    page.reload()
    assert page.evaluate(BUILD) == old
    page.wait_for_function("() => globalThis.services?.update.available")
    page.evaluate("() => services.update.apply()")
    page.wait_for_function("(old) => document.documentElement.dataset.build !== old", arg=old)
    page.wait_for_function(AWAKE)
    assert page.evaluate(BUILD) == next_site.build


def test_an_update_fetches_what_changed_and_copies_the_rest(bare, phone, opened, next_site):
    page = opened(phone, bare.url)
    page.wait_for_function(AWAKE)
    bare.publish(next_site)
    bare.requests.clear()
    told_of_update(page)
    fetched = {line.removeprefix("GET ") for line in bare.requests if line.startswith("GET ")}
    assert fetched == {
        "/sw.js", "/", "/manifest.webmanifest", f"/v/{next_site.build}/journal/journal.js",
    }  # fmt: skip


def test_after_an_update_the_new_version_opens_without_the_laptop_and_the_old_is_gone(bare, phone, opened, next_site):
    page = opened(phone, bare.url)
    page.wait_for_function(AWAKE)
    page.evaluate("() => services.journal.append('device', { name: 'before the update' })")
    bare.publish(next_site)
    told_of_update(page)
    page.evaluate("() => services.update.apply()")
    page.wait_for_function("(build) => document.documentElement.dataset.build === build", arg=next_site.build)
    bare.stop()
    page.reload()
    page.wait_for_function(AWAKE)
    assert page.evaluate(BUILD) == next_site.build
    assert page.evaluate("() => services.journal.entries().length") == 1
    shelves = [name for name in page.evaluate("() => caches.keys()") if name.startswith("page-")]
    assert shelves == [f"page-{next_site.build}"]


def test_every_tab_changes_when_one_is_told_to(bare, phone, opened, next_site):
    page, other = opened(phone, bare.url), opened(phone, bare.url)
    bare.publish(next_site)
    told_of_update(page)
    page.evaluate("() => services.update.apply()")
    for tab in (page, other):
        tab.wait_for_function("(build) => document.documentElement.dataset.build === build", arg=next_site.build)


def test_the_old_page_runs_on_while_the_new_version_waits(bare, phone, opened, next_site):
    page = opened(phone, bare.url)
    page.wait_for_function(AWAKE)
    bare.publish(next_site)
    told_of_update(page)
    page.evaluate("() => services.engine.restart()")
    page.wait_for_function(AWAKE)
    answer = page.evaluate("() => services.engine.ask({ ask: 'read', text: '63 1/4' })")
    assert answer["answer"]["length"]["shown"] == '63 1/4"'


def test_the_first_service_worker_does_not_load_the_page_again(bare, phone):
    page = phone.new_page()
    page.goto(bare.url)
    page.evaluate("() => { globalThis.mark = 'typing'; }")
    page.wait_for_function("() => navigator.serviceWorker.controller")
    page.wait_for_timeout(300)
    assert page.evaluate("() => globalThis.mark") == "typing"


def test_an_exchange_with_a_laptop_of_another_build_looks_for_the_new_version(bare, phone, opened, next_site):
    page = opened(phone, bare.url)
    page.wait_for_function(AWAKE)
    bare.publish(next_site)
    page.evaluate("() => services.sync.now()")
    page.wait_for_function("() => services.update.available")


def test_a_file_with_other_bytes_than_the_list_says_is_not_kept(bare, new_phone, until):
    context = new_phone(forgiving=True)
    tampered = []

    def tamper(route):
        if route.request.service_worker:
            tampered.append(route.request.url)
            route.fulfill(status=200, body="export const nothing = 1;", headers={"content-type": "text/javascript"})
        else:
            route.fallback()

    context.route("**/journal/clock.js", tamper)
    page = context.new_page()
    page.goto(bare.url)
    until(page, lambda: tampered)
    until(page, "async () => !(await navigator.serviceWorker.getRegistration())?.installing")
    kept = page.evaluate("""async () => {
      const [name] = (await caches.keys()).filter((one) => one.startsWith("page-"));
      return (await (await caches.open(name)).keys()).map((request) => new URL(request.url).pathname);
    }""")
    assert kept
    assert not [path for path in kept if path.endswith("clock.js")]
    assert not page.evaluate("() => services.update.kept")


FIELDS = {"a reading": "<input type=text>", "a wall said in one breath": "<textarea></textarea>"}


@pytest.mark.parametrize("sort", FIELDS.values(), ids=FIELDS)
def test_another_tab_finishes_what_is_half_written_before_it_changes(sort, bare, phone, opened, next_site):
    page, other = opened(phone, bare.url), opened(phone, bare.url)
    other.evaluate(
        """(sort) => {
          const { body } = new DOMParser().parseFromString(sort, "text/html");
          const field = body.firstElementChild;
          field.value = "63 5/1";
          document.body.append(field);
        }""",
        sort,
    )
    bare.publish(next_site)
    told_of_update(page)
    page.evaluate("() => services.update.apply()")
    page.wait_for_function("(build) => document.documentElement.dataset.build === build", arg=next_site.build)
    other.wait_for_timeout(1000)
    assert other.evaluate("() => document.querySelector('input, textarea')?.value") == "63 5/1"
    other.evaluate("() => { location.hash = '#/survey'; }")  # left, or saved and gone on
    other.wait_for_function("(build) => document.documentElement.dataset.build === build", arg=next_site.build)
