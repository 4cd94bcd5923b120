"""A phone on the network: with the authority in its trust store the page is kept and works without the laptop; without
it, not. The browser's own store of trust is used, and no flag that would switch its checks off."""

import os
import shutil
import subprocess
import threading

import pytest
from playwright.sync_api import Error
from scantling.api import Config, create_app
from scantling.clock import now_ms
from scantling.lan.authority import FILE_NAME, FOLDER
from scantling.lan.home import Home
from scantling.lan.pairing import show_code
from scantling.serving import NotebookServer

from tests.browser.conftest import CONTROLLED, PATIENCE, QUIET, browser_path
from tests.ports import free_port

pytestmark = pytest.mark.skipif(
    shutil.which("certutil") is None,
    reason="certutil is not here: install libnss3-tools, and the browser can be told whom to trust",
)
REGISTERED = """async () => {
  try { await navigator.serviceWorker.register("/sw.js"); } catch (error) { return error.name; }
  return "registered";
}"""


@pytest.fixture
def lan(tmp_path, site):
    """A laptop on its network, which is loopback here: its page over TLS, and the means to stop it."""
    home = Home(tmp_path / "data", port=free_port(), host="127.0.0.1")
    app = create_app(Config(tmp_path / "data", site=site, home=home))
    server = NotebookServer(app, home.listen_at, home.identity.port, home.tls)
    server.prepare()
    thread = threading.Thread(target=server.serve, daemon=True)
    thread.start()

    def stop():
        server.stop()
        thread.join(10)

    home.stop = stop
    home.store = app.extensions["scantling"].store
    home.file = tmp_path / "data" / FOLDER / FILE_NAME
    yield home
    stop()
    home.store.close()


@pytest.fixture
def phone_at(tmp_path, playwright, lan):
    """Opens phones that find the laptop by its name, each with a trust store of its own."""
    opened = []

    def open_phone(name, *, trusting, **options):
        folder = tmp_path / name
        certificates = folder / ".pki" / "nssdb"
        certificates.mkdir(parents=True)
        run = ["certutil", "-d", f"sql:{certificates}"]
        subprocess.run([*run, "-N", "--empty-password"], check=True)
        if trusting:
            subprocess.run([*run, "-A", "-t", "C,,", "-n", "laptop", "-i", lan.file], check=True)
        context = playwright.chromium.launch_persistent_context(
            str(folder / "profile"), executable_path=browser_path(),
            args=[*QUIET, f"--host-resolver-rules=MAP {lan.identity.name} 127.0.0.1"],
            env={**os.environ, "HOME": str(folder)}, **options,
        )  # fmt: skip
        context.set_default_timeout(PATIENCE)
        opened.append(context)
        return context.new_page()

    yield open_phone
    for context in opened:
        context.close()


def test_a_phone_that_trusts_the_laptop_keeps_the_page_and_opens_it_with_the_laptop_gone(lan, phone_at):
    page = phone_at("trusting", trusting=True)
    page.goto(f"{lan.identity.origin}/")
    assert page.evaluate("() => isSecureContext")
    page.evaluate("() => navigator.serviceWorker.ready.then(() => true)")
    page.evaluate(CONTROLLED)
    lan.stop()
    with pytest.raises(Error, match="Failed to fetch"):
        page.evaluate("() => fetch('/api/houses')")
    page.reload()
    page.get_by_role("heading", level=1).wait_for()


def test_a_phone_that_does_not_trust_it_is_given_no_page(lan, phone_at):
    page = phone_at("distrusting", trusting=False)
    with pytest.raises(Error, match="ERR_CERT_AUTHORITY_INVALID"):
        page.goto(f"{lan.identity.origin}/")


def test_a_warning_that_was_clicked_away_is_no_trust(lan, phone_at):
    page = phone_at("clicking", trusting=False, ignore_https_errors=True)
    page.goto(f"{lan.identity.origin}/")
    assert page.evaluate(REGISTERED) == "SecurityError"


def test_a_renewed_certificate_is_shown_at_once_and_the_kept_page_goes_on(lan, phone_at):
    page = phone_at("trusting", trusting=True)
    page.goto(f"{lan.identity.origin}/")
    page.evaluate("() => navigator.serviceWorker.ready.then(() => true)")
    (lan.file.parent / "server.pem").unlink()
    assert lan.look()
    assert page.evaluate("async () => (await fetch('/api/houses', { cache: 'no-store' })).status") == 401


def test_a_phone_is_paired_by_the_code_behind_the_hash_and_shares_its_notebook(lan, phone_at):
    code = show_code(lan.store, now_ms())
    page = phone_at("trusting", trusting=True)
    page.goto(f"{lan.identity.origin}/#pair={code}")
    page.get_by_role("button", name="Pair this device").click()
    page.get_by_text("This device is paired with the laptop").wait_for()
    assert code not in page.url
    with lan.store.register() as register:
        assert len(register.devices()) == 1
    page.get_by_text("shared · ").first.wait_for()


def test_a_phone_that_is_not_paired_is_told_so_and_a_mistyped_code_is_a_sentence(lan, phone_at):
    page = phone_at("trusting", trusting=True)
    page.goto(f"{lan.identity.origin}/#/house")
    page.get_by_text("This device is not paired with the laptop. What you measure").wait_for()
    page.get_by_label("Code from the laptop").fill("AAAA-AAAA")
    page.get_by_role("button", name="Pair this device").click()
    page.get_by_text("This code is not one that the laptop shows").wait_for()
