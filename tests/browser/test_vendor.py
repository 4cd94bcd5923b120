"""The vendored files are the ones that were fetched, and each is there with its licence."""

import hashlib
import json
import re
import tomllib
import zipfile
from typing import Any

import pytest
from scantling.site import web_folder

VENDOR = web_folder() / "vendor"
ROOT = web_folder().parent
#: Ours: what fetches the rest and what it writes down.
OWN = {"fetch.py", "compile.mjs", "vendor.lock"}


@pytest.fixture(scope="module")
def lock() -> dict[str, Any]:
    return json.loads((VENDOR / "vendor.lock").read_text())


def test_every_vendored_file_has_the_bytes_of_the_lock(lock):
    files = (path for path in VENDOR.rglob("*") if path.is_file() and "__pycache__" not in path.parts)
    found = {path.relative_to(VENDOR).as_posix() for path in files}
    assert found - OWN == set(lock["sha256"])
    for path, digest in lock["sha256"].items():
        assert hashlib.sha256((VENDOR / path).read_bytes()).hexdigest() == digest, path


def test_every_folder_of_vendored_files_holds_a_licence():
    for folder in VENDOR.iterdir():
        if folder.is_dir() and folder.name != "__pycache__":
            texts = list(folder.glob("LICENSE*"))
            assert texts, folder
            assert all(len(text.read_text()) > 500 for text in texts)


def test_every_package_names_its_version_its_licence_and_where_it_came_from(lock):
    for name, package in lock["packages"].items():
        assert re.fullmatch(r"[\d.]+", package["version"]), name
        assert package["licence"], name
        assert package["from"] in {"npm", "PyPI"}
        assert re.fullmatch(r"[0-9a-f]{64}", package["archive_sha256"]), name


@pytest.mark.parametrize("name", ["marshmallow", "pint", "platformdirs"])
def test_the_phone_has_the_libraries_of_the_laptop_at_the_same_version(lock, name):
    project = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]
    pinned = dict(line.lower().split("==") for line in project["dependencies"])
    assert lock["packages"][name]["version"] == pinned[name]


def test_no_module_asks_for_another_by_a_bare_name(lock):
    for path in lock["sha256"]:
        if path.endswith(".js"):
            assert not re.findall(r"""(?:from|import)\s*["'](?![./])""", (VENDOR / path).read_text()), path


@pytest.mark.parametrize("path", ["pyodide/stdlib.zip", "marshmallow/marshmallow.zip", "pint/pint.zip"])
def test_the_libraries_are_compiled_and_their_own_tests_left_out(path):
    with zipfile.ZipFile(VENDOR / path) as archive:
        names = archive.namelist()
    assert sum(name.endswith(".pyc") for name in names) > 10
    assert not [name for name in names if name.endswith(".py") or "/testsuite/" in name or "/tests/" in name]
