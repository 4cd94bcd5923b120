"""What is served, to whom, and with which headers: read from the server, almost all of it without a browser."""

import gzip
import hashlib
import json
import re
import zipfile
from base64 import b64encode
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

import pytest
from flask import Flask
from flask.testing import FlaskClient
from playwright.sync_api import Browser
from scantling.site import NOT_SERVED, PACKAGE, TYPES, Site, web_folder

VENDOR = web_folder() / "vendor"
#: Ways in which text becomes markup, or code.
MARKUP = re.compile(
    r"innerHTML|outerHTML|insertAdjacentHTML|document\.write|createContextualFragment|dangerouslySetInnerHTML"
    r"|parseFromString|setHTMLUnsafe|\beval\(|new Function\(|srcdoc|\.cssText"
)
#: The one function that turns the engine's drawings into elements.
DRAWING = "drawings/drawing.js"


@pytest.fixture(scope="module")
def client(site: Site) -> Iterator[FlaskClient]:
    app = Flask("page", static_folder=None)
    app.register_blueprint(site.blueprint())
    with app.test_client() as made:
        yield made


def own_modules() -> list[Path]:
    return [path for path in web_folder().rglob("*.js") if VENDOR not in path.parents]


def test_the_list_that_a_phone_keeps_is_every_public_file_on_the_disk(site: Site):
    folder = web_folder()
    public = {p.relative_to(folder).as_posix() for p in folder.rglob("*") if p.is_file() and p.suffix in TYPES}
    kept = {re.sub(r"^/(v|rt)/[0-9a-f]+/", "", path) for path, _ in site.precache}
    parts = {re.sub(r"^vendor/(?=(pyodide|marshmallow|pint)/)", "", name) for name in public - NOT_SERVED}
    named = {"/", "/manifest.webmanifest"}
    assert kept == parts - {"index.html", "sw.js", "manifest.webmanifest"} | named | {"engine.zip"}


def test_every_file_of_the_list_has_the_bytes_that_the_list_says(site: Site, client: FlaskClient):
    for path, integrity in site.precache:
        body = client.get(path).data
        assert f"sha256-{b64encode(hashlib.sha256(body).digest()).decode()}" == integrity, path


def test_the_service_worker_carries_the_list_and_is_not_on_it(site: Site, client: FlaskClient):
    script = client.get("/sw.js").get_data(as_text=True)
    assert json.dumps(site.precache) in script
    assert "/sw.js" not in dict(site.precache)


@pytest.mark.parametrize("name", ["index.html", "sw.js", "manifest.webmanifest"])
def test_no_mark_of_the_server_is_left_in_what_it_filled_in(site: Site, name: str):
    path = {"index.html": "/"}.get(name, f"/{name}")
    assert not re.search(rb"%[A-Z]+%", site.files[path].body)


def test_another_byte_anywhere_is_another_build(bare_folder: Path, package: Path, tmp_path: Path):
    before = Site(bare_folder, package)
    changed = tmp_path / "web"
    changed.symlink_to(bare_folder)
    (tmp_path / "package" / "engine").mkdir(parents=True)
    (tmp_path / "package" / "__init__.py").write_text("")
    (tmp_path / "package" / "engine" / "__init__.py").write_text("answer = 41\n")
    after = Site(changed, tmp_path / "package")
    assert after.build != before.build
    assert after.runtime == before.runtime


def test_the_same_files_are_the_same_build_wherever_they_lie(bare_folder: Path, package: Path, tmp_path: Path):
    elsewhere = tmp_path / "elsewhere"
    elsewhere.symlink_to(bare_folder)
    assert Site(elsewhere, package).build == Site(bare_folder, package).build


def test_the_engine_goes_out_as_its_source_and_nothing_else(site: Site):
    with zipfile.ZipFile(BytesIO(site.files[f"/v/{site.build}/engine.zip"].body)) as archive:
        names = set(archive.namelist())
        assert {"scantling/__init__.py", "scantling/engine/desk.py"} <= names
        assert all(name.startswith("scantling/engine/") or name == "scantling/__init__.py" for name in names)
        assert archive.read("scantling/engine/desk.py") == (PACKAGE / "engine" / "desk.py").read_bytes()


def test_a_browser_reads_the_same_in_a_style_as_it_is_served(site: Site, browser: Browser):
    page = browser.new_page()
    read = """(text) => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync(text);
      return [...sheet.cssRules].map((rule) => rule.cssText);
    }"""
    for path in sorted((web_folder() / "styles").iterdir()):
        served = site.files[f"/v/{site.build}/styles/{path.name}"].body.decode()
        assert page.evaluate(read, served) == page.evaluate(read, path.read_text()), path
    page.close()


@pytest.mark.parametrize(
    "path",
    [
        pytest.param("/index.html", id="the page has one address, and a redirect could not be kept"),
        pytest.param("/vendor/fetch.py", id="what fetches vendored files"),
        pytest.param("/v/BUILD/vendor/compile.mjs", id="what compiles them"),
        pytest.param("/v/BUILD/vendor/vendor.lock", id="the lock"),
        pytest.param("/v/BUILD/../../server/scantling/sync.py", id="upwards"),
        pytest.param("/v/BUILD/%2e%2e/%2e%2e/pyproject.toml", id="upwards in disguise"),
        pytest.param("/v/0000000000000000/app.js", id="another build"),
        pytest.param("/rt/0000000000000000/pyodide/pyodide.mjs", id="another runtime"),
        pytest.param("/v/BUILD/", id="a folder"),
    ],
)
def test_what_is_not_public_is_not_found(client: FlaskClient, site: Site, path: str):
    assert client.get(path.replace("BUILD", site.build)).status_code == 404


@pytest.mark.parametrize(
    ("ending", "kind"),
    [
        pytest.param("app.js", "text/javascript; charset=utf-8", id="a module under another type is not run"),
        pytest.param("pyodide.mjs", "text/javascript; charset=utf-8", id="the runtime's module too"),
        pytest.param("pyodide.asm.wasm", "application/wasm", id="under another type the runtime hangs without a word"),
        pytest.param("main.css", "text/css; charset=utf-8", id="a style under another type is not applied"),
        pytest.param("/manifest.webmanifest", "application/manifest+json", id="the manifest"),
    ],
)
def test_each_kind_of_file_has_its_type(client: FlaskClient, site: Site, ending: str, kind: str):
    path = next(path for path in site.files if path.endswith(ending))
    assert client.get(path).headers["Content-Type"] == kind


def test_every_file_carries_the_policy_because_a_worker_obeys_its_own(client: FlaskClient, site: Site):
    for path in site.files:
        headers = client.get(path).headers
        assert "script-src 'self' 'wasm-unsafe-eval';" in headers["Content-Security-Policy"]
        assert "unsafe-inline" not in headers["Content-Security-Policy"]
        assert headers["X-Content-Type-Options"] == "nosniff"


def test_a_file_goes_out_packed_to_those_who_take_that(client: FlaskClient, site: Site):
    path = f"/v/{site.build}/app.js"
    packed = client.get(path, headers={"Accept-Encoding": "br, gzip;q=0.8"})
    assert packed.headers["Content-Encoding"] == "gzip"
    assert gzip.decompress(packed.data) == client.get(path).data == site.files[path].body
    refused = client.get(path, headers={"Accept-Encoding": "gzip;q=0"})
    assert "Content-Encoding" not in refused.headers


def test_a_font_is_not_packed_a_second_time(client: FlaskClient, site: Site):
    path = next(path for path in site.files if path.endswith("400.woff2"))
    assert "Content-Encoding" not in client.get(path, headers={"Accept-Encoding": "gzip"}).headers


def test_a_browser_that_has_a_file_is_told_so(client: FlaskClient, site: Site):
    path = f"/v/{site.build}/app.js"
    tag = client.get(path).headers["ETag"]
    again = client.get(path, headers={"If-None-Match": tag})
    assert (again.status_code, again.data) == (304, b"")
    assert client.get(path, headers={"If-None-Match": 'W/"sha256-other"'}).status_code == 200


def test_only_an_address_with_a_hash_may_be_kept_for_ever(client: FlaskClient, site: Site):
    for path in site.files:
        forever = "immutable" in client.get(path).headers["Cache-Control"]
        assert forever == path.startswith(("/v/", "/rt/")), path


def test_a_share_that_no_worker_took_leads_to_the_page_and_is_read_by_nobody(site: Site, client: FlaskClient):
    where = json.loads(site.files["/manifest.webmanifest"].body)["share_target"]["action"]
    sent = client.post(where, data={"text": "63 1/4"}, headers={"Origin": "https://other.example"})
    assert (sent.status_code, sent.headers["Location"], sent.data) == (303, "/?unshared", b"")
    assert client.get(where).headers["Location"] == "/"
    assert client.get("/?unshared").data == site.files["/"].body


def test_text_becomes_markup_in_one_file_only():
    found = {path.relative_to(web_folder()).as_posix() for path in own_modules() if MARKUP.search(path.read_text())}
    assert found <= {DRAWING}


def test_the_page_has_no_inline_script_or_style():
    text = (web_folder() / "index.html").read_text()
    assert not re.search(r"<style|\sstyle=|\son[a-z]+=|<script(?![^>]*\ssrc=)", text)


def test_only_the_journal_touches_indexeddb():
    """One file of it opens the database; those to which it hands a transaction ask for ranges in it."""
    opening = {p.name for p in own_modules() if re.search(r"indexedDB|openDB", p.read_text())}
    asking = {p.name for p in own_modules() if "IDBKeyRange" in p.read_text()}
    assert (opening, asking) == ({"database.js"}, {"store.js", "shelf.js", "blobs.js"})


def test_every_own_module_is_checked_for_types_and_says_what_it_is_for():
    for path in own_modules():
        first, second, *_ = path.read_text().splitlines()
        assert first == "// @ts-check", path
        assert second.startswith("//"), path
