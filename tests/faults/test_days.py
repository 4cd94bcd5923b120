"""After any bad days nothing is lost, everything is everywhere once, all notebooks are equal, and all is quiet.

`SCANTLING_RUNS` says how many runs (`python3 tests soak` asks for more), `SCANTLING_SEED` with which number to begin. A
run that goes wrong names its seed; SCANTLING_RUNS=1 with that seed is it again.
"""

import os
import tempfile

import pytest

from tests.faults.days import MEMORY, live_through
from tests.faults.twin import Twin

RUNS = int(os.environ.get("SCANTLING_RUNS", "300"))
FIRST = int(os.environ.get("SCANTLING_SEED", "1"))
PARTS = min(RUNS, 20)


@pytest.mark.parametrize("part", range(PARTS))
def test_after_any_bad_days_all_is_everywhere_once_and_at_rest(part):
    for seed in range(FIRST + part, FIRST + RUNS, PARTS):
        with tempfile.TemporaryDirectory(dir=MEMORY) as folder:
            live_through(seed, folder, Twin)
