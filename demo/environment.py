"""The private environment beside the checkout: made once, and again only when what the project asks for has changed.

Standard library only, because it runs before anything is installed. `python3 demo` and `python3 tests` share it.
"""

import hashlib
import os
import subprocess
import sys
import venv
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
FOLDER = ROOT / ".env-scantling"
OLDEST = (3, 11)


def python() -> Path:
    """The environment's own Python."""
    return FOLDER / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def require_python() -> None:
    """Leave with a sentence where the Python is too old to read the project."""
    if sys.version_info < OLDEST:
        sys.exit(f"Scantling needs Python {OLDEST[0]}.{OLDEST[1]} or newer; this is {sys.version.split()[0]}.")


def prepare(extra: str = "") -> Path:
    """Make sure that the project is installed in its environment, with an extra or without; the Python to run it with.

    Raises SystemExit with what to do when pip cannot install it.
    """
    require_python()
    wanted = fingerprint()
    if python().exists() and any(read(stamp(one)) == wanted for one in {extra, "test"}):
        return python()
    print("Preparing the environment (the first time takes a minute or two).", flush=True)
    if not python().exists():
        venv.create(FOLDER, with_pip=True)
    install(f"{ROOT}[{extra}]" if extra else str(ROOT))
    stamp(extra).write_text(wanted, encoding="utf-8")
    return python()


def stamp(extra: str) -> Path:
    """The file that says what was installed; the tests' extra holds all that the demo needs."""
    return FOLDER / f"installed{'-' + extra if extra else ''}"


def read(path: Path) -> str:
    return path.read_text(encoding="utf-8") if path.is_file() else ""


def fingerprint() -> str:
    """Changes with what is to be installed, and with the Python that installs it."""
    whole = hashlib.sha256((ROOT / "pyproject.toml").read_bytes())
    whole.update(f"{sys.version} {ROOT}".encode())
    return whole.hexdigest()


def install(what: str) -> None:
    # Editable, so that a changed file is what runs; the page and the engine are read from the checkout.
    command = [python(), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--editable", what]
    if subprocess.run(command, check=False).returncode:
        sys.exit("The environment could not be made: pip's message above says why. Is there a network?")
