"""The same bad days as in `tests/faults`, lived through by the page's own journal in a browser."""

import json
import os

import pytest

from tests.faults.days import live_through
from tests.faults.page_phone import PREPARE, PagePhone

RUNS = max(4, int(os.environ.get("SCANTLING_RUNS", "0")) // 20)
FIRST = int(os.environ.get("SCANTLING_SEED", "1"))


@pytest.fixture
def page(bare, new_sleeper):
    made = new_sleeper().new_page()
    made.goto(bare.url)
    made.wait_for_function("() => globalThis.services")
    made.days_send = None

    def network(path, text):
        reply = made.days_send(path, json.loads(text))
        return None if reply is None else json.dumps(reply)

    made.expose_function("network", network)
    made.evaluate(PREPARE, bare.site.build)
    return made


@pytest.mark.parametrize("seed", range(FIRST, FIRST + RUNS))
def test_the_pages_own_journal_lives_through_bad_days_too(seed, page, tmp_path):
    live_through(seed, tmp_path / "days", lambda _, at_ms: PagePhone(page, at_ms))
