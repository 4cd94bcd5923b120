"""The page from a plain file server, with no server of ours: it is kept, and works without a signal.

It lies in a folder of the host, which is the harder case: at the root it is every other test's.
"""

import functools
import http.server
import threading

import pytest
from playwright.sync_api import expect
from scantling.cli import main

from tests.browser.conftest import CONTROLLED
from tests.browser.touch import start_house, title, touch, visit


class Files(http.server.SimpleHTTPRequestHandler):
    extensions_map = {".html": "text/html", ".js": "text/javascript", ".mjs": "text/javascript", ".css": "text/css",
                      ".wasm": "application/wasm", "": "application/octet-stream"}  # fmt: skip

    def log_message(self, *_):
        pass


@pytest.fixture
def host(tmp_path):
    main(["page", str(tmp_path / "page" / "tools" / "notes"), "--under", "/tools/notes/"])
    server = http.server.ThreadingHTTPServer(
        ("127.0.0.1", 0), functools.partial(Files, directory=str(tmp_path / "page"))
    )
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()

    def stop():
        server.shutdown()
        server.server_close()
        thread.join()

    server.stop = stop
    yield server
    if thread.is_alive():
        stop()


def test_the_whole_tool_works_from_files_alone(host, phone):
    page = phone.new_page()
    page.goto(f"http://127.0.0.1:{host.server_port}/tools/notes/")
    page.evaluate(CONTROLLED)
    host.stop()
    page.reload()
    start_house(page)
    visit(page, "house")
    expect(page.get_by_text("travels by file").first).to_be_visible()
    expect(page.get_by_text("Ready for no signal")).to_be_visible()
    with page.expect_download() as saved:
        touch(page, "Save to a file")
    assert saved.value.suggested_filename.endswith(".ndjson")
    page.reload()
    expect(title(page)).to_have_text("House")
    expect(page.get_by_role("heading", name="Alder Street")).to_be_visible()
