"""The page as it is served: the files of web/, the engine's source, and the list by which a phone keeps both.

Knows: which files are public, what the bytes of each hash to, and the two folders whose names are those hashes:
`/v/BUILD/` for the page and the engine, `/rt/RUNTIME/` for the Python runtime, which seldom changes and is large.
Refuses: everything else (404). It serves from memory what it read once, so a file edited while it runs can never reach
a phone under the hash of another; start again to publish a change.
"""

import base64
import gzip
import hashlib
import io
import json
import re
import threading
import zipfile
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from posixpath import dirname, join, normpath

from flask import Blueprint, Response, abort, request

from scantling.site.slim import slim

PACKAGE = Path(__file__).resolve().parents[1]

#: Set by hand: the operating system's own table may call a module text/plain, and a browser then refuses to run it;
#: WebAssembly under another type makes the runtime hang without a word.
TYPES = {
    ".html": "text/html; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".mjs": "text/javascript; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".ftl": "text/plain; charset=utf-8",
    ".svg": "image/svg+xml",
    ".png": "image/png",
    ".woff2": "font/woff2",
    ".wasm": "application/wasm",
    ".zip": "application/zip",
    ".webmanifest": "application/manifest+json",
}

#: The runtime and the libraries compiled for it: one folder, because their bytecode fits no other runtime.
RUNTIME_PARTS = ("vendor/pyodide/", "vendor/marshmallow/", "vendor/pint/")
#: Fetches vendored files; it is not part of the page.
NOT_SERVED = frozenset({"vendor/compile.mjs"})
#: What a module names in its import and export statements; what it imports by a call comes later.
IMPORTED = re.compile(r"""(?:^|;)(?:import|export)\b(?:[\w\s{},*$]*?\bfrom)?\s*["'](\.[^"']+)["']""", re.MULTILINE)
#: Served under fixed names at the root, because a browser remembers them by name; their text names the build.
AT_THE_ROOT = {"index.html": "/", "sw.js": "/sw.js", "manifest.webmanifest": "/manifest.webmanifest"}

#: Where the manifest has what other programs share sent to. The service worker takes it, and not the laptop.
SHARE = "/share"
#: How much of what was sent there is read, and dropped: a sender that is cut off shows its person a broken connection.
DROPPED_BYTES = 64_000_000
PIECE_BYTES = 64_000

#: Where the laptop is, as the page is told: where the page came from, or nowhere.
SAME_ORIGIN = ""
NO_LAPTOP = "none"

#: 'wasm-unsafe-eval' lets the Python runtime compile, and nothing else; without it the runtime hangs for ever.
POLICY = "; ".join(
    (
        "default-src 'none'",
        "script-src 'self' 'wasm-unsafe-eval'",
        "worker-src 'self'",
        "connect-src 'self'",
        "style-src 'self'",
        "font-src 'self'",
        "img-src 'self' blob:",  # a photo that was taken here has no address but its bytes
        "manifest-src 'self'",
        "base-uri 'none'",
        "form-action 'none'",
        "frame-ancestors 'none'",
    )
)
#: On every file, not only on the page: a worker obeys the policy that came with its own script.
HEADERS = {
    "Content-Security-Policy": POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
    "Vary": "Accept-Encoding",
}
#: The folders whose addresses hold a hash.
HASHED = re.compile(r"/(v|rt)/[0-9a-f]{16}/")
FOREVER = "public, max-age=31536000, immutable"
ASK_AGAIN = "no-cache"


@dataclass(frozen=True, slots=True)
class Published:
    """One public file: its address, its bytes, and the digest a browser checks them by."""

    path: str
    body: bytes
    kind: str

    @property
    def integrity(self) -> str:
        """The digest in the spelling of Subresource Integrity."""
        return "sha256-" + base64.b64encode(hashlib.sha256(self.body).digest()).decode()

    @property
    def caching(self) -> str:
        """An address that holds a hash can be kept for ever; one that does not is asked for again."""
        return FOREVER if HASHED.search(self.path) else ASK_AGAIN


def web_folder() -> Path:
    """The folder of the page: inside the installed package, or beside it in a checkout."""
    installed = PACKAGE / "web"
    return installed if installed.is_dir() else PACKAGE.parents[1] / "web"


def read_web(folder: Path) -> dict[str, bytes]:
    """The public files of the page by their path in the folder; any other suffix stays at home."""
    paths = (p for p in sorted(folder.rglob("*")) if p.suffix in TYPES and p.is_file())
    files = {p.relative_to(folder).as_posix(): p.read_bytes() for p in paths}
    return {name: body for name, body in files.items() if name not in NOT_SERVED}


def zip_engine(package: Path) -> bytes:
    """The engine's source in one archive; the same source gives the same bytes on every machine.

    Stored, not deflated: another zlib would deflate to other bytes, and so to another build of the same program.
    """
    out = io.BytesIO()
    sources = [package / "__init__.py", *sorted((package / "engine").rglob("*.py"))]
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as archive:
        for source in sources:
            name = f"scantling/{source.relative_to(package).as_posix()}"
            archive.writestr(zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0)), source.read_bytes())
    return out.getvalue()


def fingerprint(files: Mapping[str, bytes]) -> str:
    """Sixteen hex digits that change with any name or any byte."""
    whole = hashlib.sha256()
    for name, body in sorted(files.items()):
        whole.update(f"{name}\0{hashlib.sha256(body).hexdigest()}\n".encode())
    return whole.hexdigest()[:16]


def parts_of(files: Mapping[str, bytes]) -> tuple[dict[str, bytes], dict[str, bytes], dict[str, bytes]]:
    """The files parted by where they are served: runtime, versioned page, root."""
    runtime = {n.removeprefix("vendor/"): b for n, b in files.items() if n.startswith(RUNTIME_PARTS)}
    root = {n: b for n, b in files.items() if n in AT_THE_ROOT}
    page = {n: b for n, b in files.items() if n not in root and not n.startswith(RUNTIME_PARTS)}
    return runtime, page, root


def publish(prefix: str, files: Mapping[str, bytes]) -> Iterator[Published]:
    """The files of one folder under their addresses."""
    for name, body in files.items():
        yield Published(prefix + name, body, TYPES[Path(name).suffix])


def policy(laptop: str) -> str:
    """The Content-Security-Policy of a page that also speaks to a laptop elsewhere."""
    elsewhere = "" if laptop in (SAME_ORIGIN, NO_LAPTOP) else f" {laptop}"
    return POLICY.replace("connect-src 'self'", f"connect-src 'self'{elsewhere}")


class Site:
    """Everything the page is made of, read once: `build` names it, `precache` lists it, `blueprint()` serves it."""

    def __init__(
        self, folder: Path | None = None, package: Path = PACKAGE, laptop: str = SAME_ORIGIN, base: str = ""
    ) -> None:
        """`laptop` is the origin of the laptop that the page syncs with, or NO_LAPTOP; `base` the folder of its host
        that the page lies in, such as "/notes", nothing at the root."""
        self.base = base
        self.headers = HEADERS | {"Content-Security-Policy": policy(laptop)}
        self._sources = read_web(folder or web_folder()) | {"engine.zip": zip_engine(package)}
        self.build = fingerprint(self._sources)
        self.runtime = fingerprint(parts_of(self._sources)[0])
        self._words = {"%BUILD%": self.build, "%RUNTIME%": self.runtime, "%LAPTOP%": laptop, "%BASE%": base}
        self._packed: dict[str, bytes] = {}
        self._packing = threading.Lock()
        self._made: tuple[dict[str, Published], list[tuple[str, str]]] | None = None
        self._publishing = threading.Lock()

    @property
    def files(self) -> dict[str, Published]:
        """Every public file by its address."""
        return self._published[0]

    @property
    def precache(self) -> list[tuple[str, str]]:
        """Address and digest of all that a phone keeps."""
        return self._published[1]

    @property
    def _published(self) -> tuple[dict[str, Published], list[tuple[str, str]]]:
        """Made when somebody asks for the page: a laptop that starts would wait for it, and its commands need none."""
        with self._publishing:
            self._made = self._made or self._publish()
            return self._made

    def _publish(self) -> tuple[dict[str, Published], list[tuple[str, str]]]:
        runtime, page, root = parts_of(self._sources)
        page, root = ({name: slim(name, body) for name, body in part.items()} for part in (page, root))
        folders = ((f"/rt/{self.runtime}/", runtime), (f"/v/{self.build}/", page))
        versioned = [file for folder, part in folders for file in publish(self.base + folder, part)]
        self._words["%PRELOADS%"] = preloads(versioned)
        named = [self._filled(name, body) for name, body in sorted(root.items()) if name != "sw.js"]
        precache = [(f.path, f.integrity) for f in (*named, *versioned)]
        self._words['"%FILES%"'] = json.dumps(precache)
        worker = [self._filled("sw.js", root["sw.js"])] if "sw.js" in root else []
        return {f.path: f for f in (*named, *versioned, *worker)}, precache

    def _filled(self, name: str, body: bytes) -> Published:
        """A root file with the build's own words put in."""
        text = body.decode()
        for mark, word in self._words.items():
            text = text.replace(mark, word)
        return Published(self.base + AT_THE_ROOT[name], text.encode(), TYPES[Path(name).suffix])

    def packed(self, file: Published) -> bytes:
        """The file gzipped, made when first asked for and kept; the file itself where packing gains nothing."""
        with self._packing:
            if file.path not in self._packed:
                small = gzip.compress(file.body, compresslevel=6, mtime=0)
                self._packed[file.path] = small if len(small) < len(file.body) * 9 // 10 else file.body
            return self._packed[file.path]

    def reply(self, path: str) -> Response:
        """One file as a response: 304 when the browser has it, gzip when it takes that, 404 when it is not public."""
        file = self.files.get(path) or abort(404)
        # Weak, because the same file goes out packed and unpacked; the service worker also reads the digest here.
        headers = {**self.headers, "ETag": f'W/"{file.integrity}"', "Cache-Control": file.caching}
        if request.if_none_match.contains_weak(file.integrity):
            return Response(status=304, headers=headers)
        body = self.packed(file) if request.accept_encodings.quality("gzip") else file.body
        if body is not file.body:
            headers["Content-Encoding"] = "gzip"
        return Response(body, headers=headers, content_type=file.kind)

    def blueprint(self) -> Blueprint:
        """The routes of the page; nothing here answers under /api."""
        routes = Blueprint("site", __name__)
        # What the route takes out of the address is not used: the whole address is the key, and an unknown one a 404.
        for rule in (*AT_THE_ROOT.values(), "/v/<path:_>", "/rt/<path:_>"):
            routes.add_url_rule(rule, "file", self._answer)
        routes.add_url_rule(SHARE, "share", self._shared, methods=["GET", "POST"])
        return routes

    def _answer(self, _: str = "") -> Response:
        return self.reply(request.path)

    def _shared(self) -> Response:
        """A share that no service worker took: nothing of it is let in, for any site could send the same, and the page
        is shown, which says so."""
        sent, dropped = request.environ["wsgi.input"], 0
        while dropped < DROPPED_BYTES and (piece := sent.read(PIECE_BYTES)):
            dropped += len(piece)
        where = f"{self.base}/{'?unshared' if request.method == 'POST' else ''}"
        return Response(status=303, headers={**self.headers, "Location": where})


def preloads(files: list[Published]) -> str:
    """Link tags for the modules of the first paint and the styles: a browser asks for all at once and not import by
    import. What is not among them, workers and other screens, would only delay it."""
    texts = {f.path: f.body.decode() for f in files if f.path.endswith(".js")}
    start = next((path for path in texts if path.endswith("/app.js")), None)
    first = imported(texts, start) if start else set()
    modules = [f'<link rel="modulepreload" href="{path}">' for path in sorted(first)]
    sheets = sorted(f.path for f in files if f.path.endswith(".css"))
    styles = [f'<link rel="preload" as="style" href="{path}">' for path in sheets]
    return "\n".join(styles + modules)


def imported(texts: Mapping[str, str], start: str) -> set[str]:
    """A module and all that are loaded before it runs, by their paths."""
    found, waiting = set(), [start]
    while waiting:
        path = waiting.pop()
        found.add(path)
        beside = (normpath(join(dirname(path), name)) for name in IMPORTED.findall(texts[path]))
        waiting += [other for other in beside if other in texts and other not in found]
    return found
