"""`page`: the page as files for a web host of one's own. The engine is on the phone, so it needs no server of ours."""

from __future__ import annotations

import argparse
import os
import re
import shutil
import tempfile
from collections.abc import Callable
from pathlib import Path
from urllib.parse import urlsplit

from scantling.cli.command import CommandError
from scantling.cli.output import say
from scantling.engine.errors import quote
from scantling.site import NO_LAPTOP, Site

#: In every folder that was written here; one without it is somebody else's and is left alone.
HEADERS_FILE = "headers.txt"
BASE = re.compile(r"(/[A-Za-z0-9_~-][A-Za-z0-9._~-]*)+")
FIRST_LINE = "Headers for the page that scantling page wrote: have the host send them."


def add_commands(add: Callable[..., argparse.ArgumentParser]) -> None:
    page = add("page", run_page, "Write the page as files, for a web host of your own.")
    page.add_argument("target", type=Path, metavar="DIR", help="a new or empty folder, or one that this wrote before")
    page.add_argument(
        "--under", type=_base, default="", metavar="PATH", help="the folder of the host that it will lie in, as /notes"
    )
    page.add_argument(
        "--laptop", metavar="URL", help="sync with the laptop there, which must name the host with --allow-origin"
    )


def _base(text: str) -> str:
    base = text.rstrip("/")
    if base and not BASE.fullmatch(base):
        raise argparse.ArgumentTypeError(f"{quote(text)} is no folder of a host: write it as /notes or /tools/notes")
    return base


def run_page(chosen: argparse.Namespace) -> None:
    folder: Path = chosen.target
    refuse_others(folder)
    site = Site(laptop=NO_LAPTOP if chosen.laptop is None else check_origin(chosen.laptop), base=chosen.under)
    folder.parent.mkdir(parents=True, exist_ok=True)
    beside = Path(tempfile.mkdtemp(prefix=f".{folder.name}-", dir=folder.parent))
    try:
        write_site(site, beside)
        change_for(folder, beside)
    finally:
        shutil.rmtree(beside, ignore_errors=True)
    where = f"under {site.base}/" if site.base else "at the root"
    say(f"The page is in {folder}, build {site.build}: put it {where} of an https address of your own.")
    say(f"{folder / HEADERS_FILE} says what the host should send with it.")


def refuse_others(folder: Path) -> None:
    """Raises CommandError where a folder holds anything that was not written here."""
    if not folder.exists():
        return
    if not folder.is_dir():
        raise CommandError("not-a-folder", path=folder)
    headers = folder / HEADERS_FILE
    ours = headers.is_file() and headers.read_text(encoding="utf-8").startswith(FIRST_LINE)
    if any(folder.iterdir()) and not ours:
        raise CommandError("folder-in-use", path=folder)


def check_origin(url: str) -> str:
    """An origin such as https://scantling-ab2cd.local:8117, without a path. Raises CommandError."""
    parts = urlsplit(url)
    if parts.scheme not in ("https", "http") or not parts.hostname or parts.path not in ("", "/") or parts.query:
        raise CommandError("no-origin", url=url)
    return f"{parts.scheme}://{parts.netloc}"


def write_site(site: Site, folder: Path) -> None:
    for path, file in site.files.items():
        target = folder / (path.removeprefix(f"{site.base}/") or "index.html")
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(file.body)
    (folder / HEADERS_FILE).write_text(say_headers(site), encoding="utf-8")


def say_headers(site: Site) -> str:
    """For a person who sets up a host: what goes with every file, then what goes with each kind and place."""
    kinds = sorted({(Path(file.path).suffix or "/", file.kind) for file in site.files.values()})
    paths = [(file.path.removeprefix(site.base), file.caching) for file in site.files.values()]
    keeping = sorted({(path.split("/")[1] if "/" in path[1:] else path, caching) for path, caching in paths})
    where = f"under {site.base}/" if site.base else "at the root"
    return "\n".join(
        (
            FIRST_LINE,
            f"Serve it over https {where} of its address: a browser keeps a page from no other.",
            "",
            "With every file:",
            *(f"  {name}: {value}" for name, value in site.headers.items()),
            "",
            "By the ending of a file, Content-Type:",
            *(f"  {suffix}  {kind}" for suffix, kind in kinds),
            "",
            "By its place, Cache-Control:",
            *(f"  {place}  {caching}" for place, caching in keeping),
            "",
        )
    )


def change_for(folder: Path, beside: Path) -> None:
    """Puts the new folder in the place of the old one, which is gone only once the new one stands there."""
    beside.chmod(0o755)
    old = beside.with_name(beside.name + "-old")
    if folder.exists():
        os.replace(folder, old)
    try:
        os.replace(beside, folder)
    except OSError:
        if old.exists():
            os.replace(old, folder)
        raise
    shutil.rmtree(old, ignore_errors=True)
