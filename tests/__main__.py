"""`python3 tests`: everything that a change must pass, in an environment of its own.

python3 tests              style, types, and all tests
python3 tests unit         the same without a browser
python3 tests bench        how fast it is, on this machine
python3 tests ARGUMENTS    only pytest, with these arguments
"""

import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT / "demo"))

from environment import prepare  # noqa: E402  # beside the demo, which needs it where there are no tests

#: Every file in one process, a few of them at a time: more browsers than cores would only wait for each other.
SIDE_BY_SIDE = ("--numprocesses=auto", "--maxprocesses=4", "--dist=loadfile")
BROWSERS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
NO_BROWSER = "No Chromium was found and none could be fetched: install the package `chromium`, then run this again."
FIND_OWN = """
from playwright.sync_api import sync_playwright
with sync_playwright() as play: print(play.chromium.executable_path)
"""


def main(arguments: list[str]) -> int:
    """The exit status of the first step that fails, or 0."""
    python = prepare("test")
    if arguments[:1] == ["bench"]:
        return run([python, ROOT / "tests" / "bench", *arguments[1:]])
    only_units = arguments[:1] == ["unit"]
    if not only_units and not find_browser(python) and not fetch_browser(python):
        print(NO_BROWSER, file=sys.stderr)
        return 1
    if only_units:
        arguments = ["--ignore=tests/browser", *arguments[1:]]
    elif arguments:
        return run([python, "-m", "pytest", *arguments])
    steps = (["ruff", "check", "."], ["mypy"], ["pytest", *SIDE_BY_SIDE, *arguments])
    return next((status for step in steps if (status := run([python, "-m", *step]))), 0)


def run(command: list[object]) -> int:
    """One step, its output as it comes."""
    print("$", *(Path(str(part)).name if part is command[0] else part for part in command), flush=True)
    return subprocess.run([str(part) for part in command], cwd=ROOT, check=False).returncode


def find_browser(python: Path) -> bool:
    """Whether a Chromium is there: the system's, or Playwright's own."""
    if any(shutil.which(name) for name in BROWSERS):
        return True
    own = subprocess.run([python, "-c", FIND_OWN], capture_output=True, text=True, check=False).stdout.strip()
    return bool(own) and Path(own).is_file()


def fetch_browser(python: Path) -> bool:
    """Fetch a Chromium in the first way that works."""
    print("No Chromium here: fetching one.", flush=True)
    if run([python, "-m", "playwright", "install", "chromium"]) == 0 and find_browser(python):
        return True
    if shutil.which("apt-get") is None:
        return False
    return run(["apt-get", "update"]) == 0 and run(["apt-get", "install", "--yes", "chromium"]) == 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
