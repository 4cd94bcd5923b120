"""A notebook in a folder of its own for each test, closed again; and entries as a phone would write them."""

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient
from scantling.api import Config, create_app
from scantling.site import Site
from scantling.store import Store, open_store

PHONE = "a0b1c2d3e4f50617"


@pytest.fixture(scope="session")
def page() -> Site:
    """The page, read once: it is the same for every app."""
    return Site()


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    opened = open_store(tmp_path)
    yield opened
    opened.close()


@pytest.fixture
def client(tmp_path: Path, page: Site) -> Iterator[FlaskClient]:
    app = create_app(Config(tmp_path, site=page))
    with app.test_client() as made:
        yield made
    app.extensions["scantling"].store.close()


@pytest.fixture
def make_entry() -> Callable[..., dict[str, Any]]:
    """Entries of one phone: numbered from 1, with ids that say their number."""

    def make(number: int, name: str = "bay window room", *, device: str = PHONE, **changed: Any) -> dict[str, Any]:
        return {
            "id": f"0190aaaa-{number:04x}-7000-8000-{device[:12]}",
            "device": device,
            "seq": number,
            "stamp": f"0190aaaa{number:04x}-0000-{device}",
            "version": 1,
            "kind": "device",
            "body": {"name": name},
            "supersedes": [],
            **changed,
        }

    return make
