"""`python3 tests`: everything that a change must pass, in an environment of its own.

python3 tests              style, types, and the tests that every change must pass
python3 tests unit         the same without a browser
python3 tests further      tests in the browser of one kind of work, of one bad day, and at every size
python3 tests bench        how fast it is, on this machine
python3 tests look         a picture of every screen at every size, in test-results/look
python3 tests laws         the laws again, with fresh examples and many more of them
python3 tests soak [RUNS]  a thousand bad days or more, from a number that is drawn and said
python3 tests mutants      small faults put into the engine, and whether a test notices each; `mutants trim/runs`
python3 tests ARGUMENTS    only pytest, with these arguments
"""

import os
import secrets
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT), str(ROOT / "demo")]

from environment import prepare  # noqa: E402  # beside the demo, which needs it where there are no tests

from tests import postgres  # noqa: E402

#: One process more than there are cores, for a browser is mostly waited for; who has nothing left takes from another.
SIDE_BY_SIDE = (f"--numprocesses={min(4, (os.cpu_count() or 1) + 1)}", "--dist=worksteal")
WINDOWLESS = "chromium-headless-shell"
BROWSERS = (WINDOWLESS, "chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
NO_BROWSER = "No Chromium was found and none could be fetched: install the package `chromium`, then run this again."
NO_CERTUTIL = "No certutil: the tests of a trusted certificate are skipped. Install the package `libnss3-tools`."
#: Programs, and the packages that bring them.
WEBKIT = {"WebKitWebDriver": "webkit2gtk-driver", "Xvfb": "xvfb"}
NO_WEBKIT = "No WebKit: its tests are skipped. Install the packages `webkit2gtk-driver` and `xvfb`."
NO_POSTGRESQL = "No PostgreSQL: the tests of a journal there are skipped. Install the package `postgresql`."
FIND_OWN = """
from playwright.sync_api import sync_playwright
with sync_playwright() as play: print(play.chromium.executable_path)
"""


def main(arguments: list[str]) -> int:
    """The exit status of the first step that fails, or 0."""
    python = prepare("test")
    if arguments[:1] in (["bench"], ["look"], ["mutants"]):
        return run([python, ROOT / "tests" / arguments[0], *arguments[1:]])
    if arguments[:1] == ["laws"]:
        return run([python, "-m", "pytest", "--hypothesis-profile=further", *SIDE_BY_SIDE, "tests/engine",
                    "tests/outside", *arguments[1:]])  # fmt: skip
    if arguments[:1] == ["soak"]:
        return soak(python, *arguments[1:2])
    only_units = arguments[:1] == ["unit"]
    if not only_units and not have_browser(python):
        print(NO_BROWSER, file=sys.stderr)
        return 1
    if not only_units and shutil.which("certutil") is None and not fetch_package("libnss3-tools"):
        print(NO_CERTUTIL, file=sys.stderr)
    if postgres.why_not() and not fetch_package("postgresql"):
        print(NO_POSTGRESQL, file=sys.stderr)
    if only_units:
        arguments = ["--ignore=tests/browser", *arguments[1:]]
    elif arguments[:1] == ["further"]:
        return further(python, *arguments[1:])
    elif arguments:
        return run([python, "-m", "pytest", *arguments])
    steps = (["ruff", "check", "."], ["mypy"], ["pytest", *SIDE_BY_SIDE, "-m", "not further", *arguments])
    return next((status for step in steps if (status := run([python, "-m", *step]))), 0)


def further(python: Path, *arguments: str) -> int:
    """What a change need not pass each time, in Chromium, and in WebKit where that can be had."""
    if not all(shutil.which(program) or fetch_package(package) for program, package in WEBKIT.items()):
        print(NO_WEBKIT, file=sys.stderr)
    return run([python, "-m", "pytest", *SIDE_BY_SIDE, "-m", "further", "tests/browser", *arguments])


def soak(python: Path, runs: str = "1000") -> int:
    """The tests of faults with many more runs than a change must pass, and other ones each time."""
    os.environ["SCANTLING_RUNS"] = runs
    seed = os.environ.setdefault("SCANTLING_SEED", str(secrets.randbelow(10**9)))
    print(f"SCANTLING_SEED={seed} SCANTLING_RUNS={runs}", flush=True)
    browsed = ["tests/browser/test_days.py", "tests/browser/test_everywhere.py"] if find_browser(python) else []
    return run([python, "-m", "pytest", SIDE_BY_SIDE[0], "--dist=load", "tests/faults", *browsed])


def run(command: list[object]) -> int:
    """One step, its output as it comes."""
    print("$", *(Path(str(part)).name if part is command[0] else part for part in command), flush=True)
    return subprocess.run([str(part) for part in command], cwd=ROOT, env=keeping(), check=False).returncode


def keeping() -> dict[str, str]:
    """The environment of a step, where Python keeps what it compiled though a machine asks it not to: each worker reads
    every test, and each program that a test starts the whole engine, and either takes seconds to compile."""
    return {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}


def have_browser(python: Path) -> bool:
    """Whether there is a Chromium, or one could be fetched; the one without windows too, where that can be."""
    found = find_browser(python) or fetch_browser(python)
    if found and shutil.which(WINDOWLESS) is None and not has_own_browser(python):
        fetch_package(WINDOWLESS)  # the tests run without it too, and take half as long again
    return found


def find_browser(python: Path) -> bool:
    """Whether a Chromium is there: the system's, or Playwright's own."""
    return any(shutil.which(name) for name in BROWSERS) or has_own_browser(python)


def has_own_browser(python: Path) -> bool:
    own = subprocess.run([python, "-c", FIND_OWN], capture_output=True, text=True, check=False).stdout.strip()
    return bool(own) and Path(own).is_file()


def fetch_browser(python: Path) -> bool:
    """Fetch a Chromium in the first way that works."""
    print("No Chromium here: fetching one.", flush=True)
    if run([python, "-m", "playwright", "install", "chromium"]) == 0 and find_browser(python):
        return True
    return fetch_package("chromium")


def fetch_package(name: str) -> bool:
    """Fetch what some tests need besides, where the system's packages can be had: libnss3-tools tells a browser whom to
    trust, postgresql is a database, webkit2gtk-driver another browser, and xvfb a screen for it."""
    if shutil.which("apt-get") is None:
        return False
    return run(["apt-get", "update"]) == 0 and run(["apt-get", "install", "--yes", name]) == 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
