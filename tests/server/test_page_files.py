"""`scantling page`: the page as files, whole or not at all, and never over what somebody else put there."""

import json
import re

import pytest
from scantling.cli import main
from scantling.site import NO_LAPTOP, Site


def test_every_file_of_the_page_is_there_with_the_headers_that_go_with_it(tmp_path, capsys):
    folder = tmp_path / "page"
    assert main(["page", str(folder)]) == 0
    site = Site(laptop=NO_LAPTOP)
    assert site.build in capsys.readouterr().out
    for path, file in site.files.items():
        assert (folder / ("index.html" if path == "/" else path[1:])).read_bytes() == file.body
    assert 'data-laptop="none"' in (folder / "index.html").read_text()
    told = (folder / "headers.txt").read_text()
    for said in (site.headers["Content-Security-Policy"], ".wasm  application/wasm", "sw.js  no-cache"):
        assert said in told
    assert list(tmp_path.iterdir()) == [folder]


def test_a_page_that_syncs_with_a_laptop_elsewhere_may_reach_it_and_nothing_else(tmp_path):
    assert main(["page", str(tmp_path / "page"), "--laptop", "https://scantling-zq7xw.local:8117/"]) == 0
    assert 'data-laptop="https://scantling-zq7xw.local:8117"' in (tmp_path / "page" / "index.html").read_text()
    told = (tmp_path / "page" / "headers.txt").read_text()
    assert "connect-src 'self' https://scantling-zq7xw.local:8117;" in told


def test_it_takes_the_place_of_what_it_wrote_before(tmp_path):
    folder = tmp_path / "page"
    main(["page", str(folder)])
    (folder / "v" / "of-an-older-build").mkdir()
    assert main(["page", str(folder)]) == 0
    assert not (folder / "v" / "of-an-older-build").exists()
    assert list(tmp_path.iterdir()) == [folder]


@pytest.mark.parametrize("laptop", ["scantling.local", "ftp://x", "https://x/path", "https://"])
def test_what_is_no_address_of_a_laptop_is_a_sentence(laptop, tmp_path, capsys):
    assert main(["page", str(tmp_path / "page"), "--laptop", laptop]) == 2
    assert "is no address of a laptop" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("under", ["notes", "/no tes", "/../notes", "//", "https://example.org/notes", "/notes?a"])
def test_what_is_no_folder_of_a_host_is_a_sentence(under, tmp_path, capsys):
    assert main(["page", str(tmp_path / "page"), "--under", under]) == (0 if under == "//" else 2)
    assert under == "//" or "is no folder of a host" in capsys.readouterr().err


def test_in_a_folder_of_its_host_every_address_begins_with_that_folder(tmp_path):
    assert main(["page", str(tmp_path / "page"), "--under", "/tools/notes/"]) == 0
    text = (tmp_path / "page" / "index.html").read_text()
    assert set(re.findall(r'(?:href|src)="(/[^/]*/[^/]*)', text)) == {"/tools/notes"}
    manifest = json.loads((tmp_path / "page" / "manifest.webmanifest").read_text())
    assert {manifest[name] for name in ("id", "start_url", "scope")} == {"/tools/notes/"}
    assert manifest["share_target"]["action"] == "/tools/notes/share"
    assert [one["action"] for one in manifest["file_handlers"]] == ["/tools/notes/"]
    worker = (tmp_path / "page" / "sw.js").read_text()
    assert 'SHARE = "/tools/notes/share"' in worker
    assert '"/tools/notes/?unshared"' in worker
    assert "under /tools/notes/ of its address" in (tmp_path / "page" / "headers.txt").read_text()
    assert "v  public, max-age=31536000, immutable" in (tmp_path / "page" / "headers.txt").read_text()


def test_what_others_put_there_is_left_alone(tmp_path, capsys):
    (tmp_path / "letters.txt").write_text("dear")
    assert main(["page", str(tmp_path)]) == 2
    assert "did not write" in capsys.readouterr().err
    assert main(["page", str(tmp_path / "letters.txt")]) == 2
    assert [path.name for path in tmp_path.iterdir()] == ["letters.txt"]


def test_what_the_first_paint_imports_is_asked_for_at_once_and_what_comes_later_is_not():
    page = Site().files["/"].body.decode()
    asked = re.findall(r'<link rel="modulepreload" href="/v/[0-9a-f]+/([^"]+)">', page)
    assert {"app.js", "screens/main.js", "screens/survey/screen.js", "vendor/preact/preact.js"} <= set(asked)
    assert len(asked) == len(set(asked))
    later = ("screens/pieces/", "screens/survey/walk.js", "pad/", "settings/", "photos/", "engine/worker.js")
    assert not [path for path in asked if path.startswith(later)]
