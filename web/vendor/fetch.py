"""Fetch the vendored files again: `python3 web/vendor/fetch.py`, from anywhere in a checkout.

Knows: which published archives the page is made of, which files of them it serves, and the three changes made to them:
bare import specifiers become relative paths (a page without a build step cannot resolve them), fonts lose the hints that
a program made for screens of few points (a third of their bytes; no phone reads them), and Python modules are compiled by
the very runtime that will read them (a phone boots about three times as fast).
Refuses: an archive whose bytes are not those recorded in vendor.lock, unless `--accept` says that they are new on purpose.
Needs npm, Node and pip, and nothing of the project. What it writes is committed, so nobody needs it to run Scantling.
"""

import argparse
import hashlib
import io
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tarfile
import tempfile
import zipfile
from dataclasses import dataclass, field

HERE = pathlib.Path(__file__).resolve().parent
LOCK = HERE / "vendor.lock"

#: What each served file is: folder in vendor/ -> name there -> name in the archive.
Files = dict[str, str]


@dataclass(frozen=True, slots=True)
class Package:
    """One published package, pinned; `files` maps our path to its path, `rewrites` maps bare specifiers to ours."""

    name: str
    version: str
    licence: str
    files: Files = field(default_factory=dict)
    rewrites: dict[str, str] = field(default_factory=dict)


NPM = (
    Package("preact", "11.2.0", "MIT", {
        "preact/preact.js": "dist/preact.mjs",
        "preact/hooks.js": "hooks/dist/hooks.mjs",
        "preact/LICENSE": "LICENSE",
    }, {"preact": "./preact.js"}),
    Package("htm", "3.1.1", "Apache-2.0", {
        "htm/htm.js": "dist/htm.mjs",
        "htm/preact.js": "preact/index.mjs",
        "htm/LICENSE": "LICENSE",
    }, {"preact": "../preact/preact.js", "htm": "./htm.js"}),
    Package("@fluent/bundle", "0.19.1", "Apache-2.0", {
        f"fluent/{name}.js": f"esm/{name}.js"
        for name in ("builtins", "bundle", "memoizer", "resolver", "resource", "scope", "types")
    }),
    Package("idb", "8.0.4", "ISC", {"idb/idb.js": "build/index.js", "idb/LICENSE": "LICENSE"}),
    Package("@fontsource/atkinson-hyperlegible", "5.3.0", "OFL-1.1", {
        "atkinson-hyperlegible/400.woff2": "files/atkinson-hyperlegible-latin-400-normal.woff2",
        "atkinson-hyperlegible/700.woff2": "files/atkinson-hyperlegible-latin-700-normal.woff2",
        "atkinson-hyperlegible/LICENSE": "LICENSE",
    }),
    Package("pyodide", "314.0.7", "MPL-2.0; the standard library PSF-2.0", {
        "pyodide/pyodide.mjs": "pyodide.mjs",
        "pyodide/pyodide.asm.mjs": "pyodide.asm.mjs",
        "pyodide/pyodide.asm.wasm": "pyodide.asm.wasm",
    }),
)
PYPI = (
    Package("marshmallow", "4.4.0", "MIT", {
        "marshmallow/LICENSE": "marshmallow-4.4.0.dist-info/licenses/LICENSE",
        "marshmallow/NOTICE": "marshmallow-4.4.0.dist-info/licenses/NOTICE",
    }),
    Package("pint", "0.25.3", "BSD-3-Clause", {"pint/LICENSE": "pint-0.25.3.dist-info/licenses/LICENSE"}),
    Package("flexcache", "0.3", "BSD-3-Clause", {"pint/LICENSE-flexcache": "flexcache-0.3.dist-info/LICENSE"}),
    Package("flexparser", "0.4", "BSD-3-Clause", {"pint/LICENSE-flexparser": "flexparser-0.4.dist-info/LICENSE"}),
    Package("platformdirs", "4.14.8", "MIT", {
        "pint/LICENSE-platformdirs": "platformdirs-4.14.8.dist-info/licenses/LICENSE",
    }),
    # Its licence file is the Python licence in full, which the compiled standard library needs beside it too.
    Package("typing_extensions", "4.16.0", "PSF-2.0", {
        "pint/LICENSE-typing_extensions": "typing_extensions-4.16.0.dist-info/licenses/LICENSE",
        "pyodide/LICENSE-python": "typing_extensions-4.16.0.dist-info/licenses/LICENSE",
    }),
    # Nothing of it is served: pyodide's package carries no licence text, and this one carries the MPL-2.0 in full.
    Package("pathspec", "1.1.1", "MPL-2.0 (for its licence text only)", {
        "pyodide/LICENSE": "pathspec-1.1.1.dist-info/licenses/LICENSE",
    }),
    # The like for @fluent/bundle and the Apache licence.
    Package("requests", "2.34.2", "Apache-2.0 (for its licence text only)", {
        "fluent/LICENSE": "requests-2.34.2.dist-info/licenses/LICENSE",
    }),
)
#: Made here: zips of compiled modules, from the standard library of pyodide and from the wheels above.
COMPILED = {
    "pyodide/stdlib.zip": ("python_stdlib.zip",),
    "marshmallow/marshmallow.zip": ("marshmallow", "typing_extensions"),
    "pint/pint.zip": ("pint", "flexcache", "flexparser", "platformdirs"),
}
#: Takes the hints out of a font and packs it again; pinned, for another version may pack it to other bytes.
FONT_TOOLS = ("fonttools==4.68.0", "brotli==1.2.1")


def run(*command: str, cwd: pathlib.Path, python_path: str = "") -> None:
    """Run one command of npm, node, pip or fontTools; its own words are shown when it fails."""
    env = {**os.environ, "PYTHONPATH": python_path} if python_path else None
    done = subprocess.run(command, cwd=cwd, env=env, capture_output=True, text=True, check=False)
    if done.returncode:
        sys.exit(f"{' '.join(command[:3])} failed:\n{done.stdout}{done.stderr}")


def archives_of(work: pathlib.Path) -> dict[str, pathlib.Path]:
    """Every archive, fetched the ordinary way, by package name."""
    found = {}
    for package in (*NPM, *PYPI):
        folder = work / package.name.replace("/", "-").lstrip("@")
        folder.mkdir()
        if package in NPM:
            run("npm", "pack", "--silent", f"{package.name}@{package.version}", cwd=folder)
        else:
            pinned = f"{package.name}=={package.version}"
            run(sys.executable, "-m", "pip", "download", "--quiet", "--no-deps", "--only-binary", ":all:", pinned, cwd=folder)
        (found[package.name],) = folder.iterdir()
    return found


def contents(archive: pathlib.Path) -> dict[str, bytes]:
    """The files of an npm tarball (without its `package/`) or of a wheel."""
    if archive.suffix == ".whl":
        with zipfile.ZipFile(archive) as wheel:
            return {name: wheel.read(name) for name in wheel.namelist() if not name.endswith("/")}
    with tarfile.open(archive) as tar:
        return {member.name.split("/", 1)[1]: tar.extractfile(member).read() for member in tar if member.isfile()}


def rewrite(text: bytes, rewrites: dict[str, str]) -> bytes:
    """Bare specifiers made relative; nothing else of a vendored file is touched."""
    for bare, path in rewrites.items():
        text = text.replace(f'from"{bare}"'.encode(), f'from"{path}"'.encode())
    return text


def unhinted(work: pathlib.Path, fonts: dict[str, bytes]) -> dict[str, bytes]:
    """The same fonts, every letter and every feature of them, without instructions for a screen of few points."""
    tools = work / "font-tools"
    run(sys.executable, "-m", "pip", "install", "--quiet", "--target", str(tools), *FONT_TOOLS, cwd=work)
    made = {}
    for path, font in fonts.items():
        (work / "hinted.woff2").write_bytes(font)
        run(sys.executable, "-m", "fontTools.subset", "hinted.woff2", "--unicodes=*", "--layout-features=*", "--name-IDs=*",
            "--no-hinting", "--flavor=woff2", "--output-file=plain.woff2", cwd=work, python_path=str(tools))
        made[path] = (work / "plain.woff2").read_bytes()
    return made


def digest(data: bytes) -> str:
    """What the lock records of a file."""
    return hashlib.sha256(data).hexdigest()


def compiled(work: pathlib.Path, archives: dict[str, dict[str, bytes]], sources: tuple[str, ...]) -> bytes:
    """One zip of compiled modules, made by pyodide itself so that the bytecode is the one it reads."""
    runtime = work / "runtime"
    runtime.mkdir(exist_ok=True)
    for name in ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip", "pyodide-lock.json"):
        (runtime / name).write_bytes(archives["pyodide"][name])
    shutil.copy(HERE / "compile.mjs", runtime)
    inputs = []
    for source in sources:
        path = runtime / f"in-{source}"
        path.write_bytes(archives["pyodide"][source] if source in archives["pyodide"] else zipped(archives[source]))
        inputs.append(path.name)
    run("node", "compile.mjs", "out.zip", *inputs, cwd=runtime)
    return (runtime / "out.zip").read_bytes()


def zipped(files: dict[str, bytes]) -> bytes:
    """A plain zip for the compiler to read."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        for name, data in files.items():
            archive.writestr(name, data)
    return out.getvalue()


def check_archives(archives: dict[str, pathlib.Path], accept: bool) -> dict[str, str]:
    """The digests of the archives; stops when one is not what the lock says it is."""
    known = json.loads(LOCK.read_text()).get("packages", {}) if LOCK.exists() else {}
    digests = {}
    for name, path in archives.items():
        digests[name] = digest(path.read_bytes())
        was = known.get(name, {}).get("archive_sha256", digests[name])
        if was != digests[name] and not accept:
            sys.exit(f"{path.name}: not the archive that vendor.lock records. Look at it, then run again with --accept.")
    return digests


def write(served: dict[str, bytes], digests: dict[str, str]) -> None:
    """The files and the lock that describes them."""
    for path, data in served.items():
        target = HERE / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(data)
    packages = {
        p.name: {
            "version": p.version,
            "from": "npm" if p in NPM else "PyPI",
            "licence": p.licence,
            "archive_sha256": digests[p.name],
            "files": p.files,
            "rewrites": p.rewrites,
        }
        for p in (*NPM, *PYPI)
    }
    lock = {
        "packages": packages,
        "unhinted": {"with": FONT_TOOLS, "files": [path for path in served if path.endswith(".woff2")]},
        "compiled": {path: list(sources) for path, sources in COMPILED.items()},
        "sha256": {path: digest(data) for path, data in sorted(served.items())},
    }
    LOCK.write_text(json.dumps(lock, indent=1) + "\n")


def main() -> None:
    """Fetch, compile, write."""
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--accept", action="store_true", help="record archives that differ from vendor.lock")
    accept = options.parse_args().accept
    with tempfile.TemporaryDirectory() as folder:
        work = pathlib.Path(folder)
        paths = archives_of(work)
        digests = check_archives(paths, accept)
        archives = {name: contents(path) for name, path in paths.items()}
        served = {}
        for package in (*NPM, *PYPI):
            for ours, theirs in package.files.items():
                served[ours] = rewrite(archives[package.name][theirs], package.rewrites)
        served |= unhinted(work, {path: font for path, font in served.items() if path.endswith(".woff2")})
        for path, sources in COMPILED.items():
            served[path] = compiled(work, archives, sources)
        write(served, digests)
    print(f"{len(served)} files, {sum(map(len, served.values())):,} bytes")


if __name__ == "__main__":
    main()
