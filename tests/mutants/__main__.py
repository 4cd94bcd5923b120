"""`python3 tests mutants [path]`: small faults put into the engine one by one, and whether a test notices each.

A sample of the faults that mutmut can make in `survey`, `trim`, `cutlist` and `rack` (or under the path that is
named, such as `trim/openings`), the same for the same `--seed`. Each is tried with the tests that reach it, the laws
with few examples. It prints the share that was noticed and what was not, as a change in the code, with the reason where
nobody can notice it (`unnoticeable.py`); it takes some minutes, so no other command runs it.
"""

import argparse
import json
import random
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from unnoticeable import WHY

ROOT = Path(__file__).resolve().parents[2]
ENGINE = Path("src/scantling/engine")
FOLDERS = ("survey", "trim", "cutlist", "rack")
TESTS = ("tests/engine", "tests/outside")
#: Long, or about other rooms of the engine: left out, or learning what each test reaches would take an hour. And
#: `words`, which reads the engine's own text: with every fault in it no sentence is where it looks, and no run begins.
ELSEWHERE = (
    *("angles", "base_geometry", "boards", "boards_proof", "corners", "desk", "journal", "lengths", "lengths_laws"),
    *("molding_geometry", "notebook", "notebook_laws", "panes", "paint", "polygon", "seams", "spoken", "strips"),
    *("sums", "units", "words"),
)
#: The tests that are tried have names in ASCII where `ids=` gives them: mutmut runs pytest again and again in one
#: process, which escapes such a name once more each time, and does not find it then.
#: What a run of mutmut says of a fault: 0 is a test run that passed, 33 that no test reaches it.
UNNOTICED = {0: "not noticed", 33: "reached by no test"}
WANTED = 0.85
SETTINGS = """
[tool.mutmut]
source_paths = ["src"]
only_mutate = {only}
also_copy = ["demo", "tests"]
pytest_add_cli_args = {given}
pytest_add_cli_args_test_selection = {tests}
track_dependencies = false
use_git_change_detection = false
timeout_constant = 20.0
timeout_multiplier = 5.0

[tool.pytest.ini_options]
pythonpath = ["."]
addopts = "--import-mode=importlib"
"""


def main(arguments: list[str]) -> int:
    """0 when enough of the sample was noticed, 1 when not, 2 where there was nothing to try."""
    parser = argparse.ArgumentParser(prog="python3 tests mutants", description=__doc__.partition("\n")[0])
    parser.add_argument("path", nargs="?", default="", help="a folder or file of the engine, such as trim/runs")
    parser.add_argument("--sample", type=int, default=200)
    parser.add_argument("--seed", type=int, default=7)
    asked = parser.parse_args(arguments)
    wanted = [asked.path.removesuffix(".py").strip("/")] if asked.path else list(FOLDERS)
    with tempfile.TemporaryDirectory(prefix="scantling-mutants-") as folder:
        place = Path(folder)
        lay_out(place, [f"{ENGINE}/{one}{end}" for one in wanted for end in (".py", "/*")])
        mutmut(place, "none of them")  # makes every fault and learns which tests reach it; there is none of this name
        names = sorted(known(place))
        if not names:
            print("There is nothing to try there: name a folder or a file of the engine.", file=sys.stderr)
            return 2
        sample = random.Random(asked.seed).sample(names, min(asked.sample, len(names)))
        mutmut(place, *sample)
        return report(place, sample, len(names))


def lay_out(place: Path, only: list[str]) -> None:
    """A copy to work in, in the shape that mutmut looks for: the package under src/, the tests beside it."""
    ignore = shutil.ignore_patterns("__pycache__")
    shutil.copytree(ROOT / "server" / "scantling", place / "src" / "scantling", ignore=ignore)
    for folder in ("tests", "demo"):
        shutil.copytree(ROOT / folder, place / folder, ignore=ignore)
    ignored = [f"--ignore-glob=*/test_{name}.py" for name in ELSEWHERE]
    given = ["--hypothesis-profile=few", "-p", "no:cacheprovider", "-p", "no:xdist", *ignored]
    settings = SETTINGS.format(only=json.dumps(only), tests=json.dumps(TESTS), given=json.dumps(given))
    (place / "pyproject.toml").write_text(settings, encoding="utf-8")


def mutmut(place: Path, *names: str) -> None:
    command = [sys.executable, "-m", "mutmut", "run", *names]
    subprocess.run(command, cwd=place, check=False, stdout=sys.stderr)


def known(place: Path) -> dict[str, int | None]:
    """Every fault by name, with the status of the tests that were run against it, if they were."""
    found: dict[str, int | None] = {}
    for path in (place / "mutants" / ENGINE).rglob("*.py.meta"):
        found |= json.loads(path.read_text(encoding="utf-8"))["exit_code_by_key"]
    return found


def report(place: Path, sample: list[str], count: int) -> int:
    status = known(place)
    missed = [name for name in sample if status[name] in UNNOTICED]
    for name in missed:
        print(f"\n{UNNOTICED[status[name]]}: {name}")
        command = [sys.executable, "-m", "mutmut", "show", name]
        shown = subprocess.run(command, cwd=place, capture_output=True, text=True, check=False).stdout
        for line in shown.splitlines():
            if line[:1] in ("+", "-", "@"):
                print(line)
            if why := WHY.get(line[1:].strip()):
                print(f"Nobody can notice it: {why}.")
    untried = sum(status[name] is None for name in sample)
    noticed = len(sample) - len(missed) - untried
    share = noticed / len(sample)
    if untried:
        print(f"\n{untried} not tried: mutmut ended before, with what it printed above")
    print(f"\n{noticed} of {len(sample)} noticed, {100 * share:.1f} % (wanted {100 * WANTED:.0f} %); {count} in all")
    return int(share < WANTED)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
