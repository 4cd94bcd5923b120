"""The map of the project: every import is read, and an arrow that is not on the map fails.

The engine runs on a phone too, so it may lean on nothing that a phone has not, and on nothing that answers differently
from one day or device to the next.
"""

import ast
import builtins
import re
from collections import Counter
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = ROOT / "server" / "scantling"
WEB = ROOT / "web"

#: Pure parts of the standard library: no clock, no chance, no disk, no network, no process.
ENGINE_STDLIB = {
    "__future__",
    "bisect",
    "contextlib",
    "contextvars",  # what one answer shows its lengths in, for that answer alone
    "collections",
    "copy",
    "dataclasses",
    "enum",
    "fractions",
    "functools",
    "hashlib",
    "heapq",
    "html",
    "importlib",
    "itertools",
    "json",
    "math",
    "operator",
    "re",
    "types",
    "typing",
    "unicodedata",
}
#: Names that would let the world in, or round a figure without saying how.
ENGINE_FORBIDDEN_CALLS = {"open", "input", "print", "eval", "exec", "compile", "__import__", "round", "hash", "id"}

#: What each part of the shell may import of the others.
SHELL = {
    "__init__": set(),
    "__main__": {"cli"},
    "api": {
        *("api", "blobs", "clock", "engine", "households", "journal_file", "lan", "laptop", "printed", "site"),
        *("store", "sync", "wire"),
    },
    "cli": {
        *("api", "blobs", "clock", "demo_house", "doctor", "engine", "households", "journal_file", "lan", "laptop"),
        *("printed", "serving", "site", "store", "sync", "upkeep", "whole_file", "wire"),
    },
    "blobs": {"engine", "whole_file"},
    "clock": {"engine"},
    "demo_house": {"store", "sync"},
    "doctor": {"clock", "engine", "lan", "store", "upkeep"},
    "households": {"blobs", "lan", "laptop", "store"},
    "journal_file": {"blobs", "engine", "store", "sync", "wire"},
    "upkeep": {"engine", "store"},
    "whole_file": {"engine"},
    "lan": {"clock", "engine", "store"},
    "laptop": {"blobs", "clock", "engine", "reader", "store"},
    "reader": {"engine", "store"},
    "printed": {"engine"},
    "serving": set(),
    "site": set(),
    "store": {"engine"},
    "sync": {"engine", "store", "wire"},
    "wire": {"engine"},
}
#: Where each library from outside may be met.
LIBRARIES = {
    "apispec": {"api"},
    "a2wsgi": {"serving"},
    "cryptography": {"lan"},
    "flask": {"api", "lan", "site"},
    "flask_smorest": {"api"},
    "h11": {"serving"},
    "ifaddr": {"lan"},
    "markupsafe": {"api"},
    "marshmallow": {"api", "blobs", "engine", "sync"},
    "pint": {"engine"},
    "platformdirs": {"cli"},
    "segno": {"lan"},
    "sqlalchemy": {"store"},
    "tree_sitter": {"site"},
    "tree_sitter_javascript": {"site"},
    "uvicorn": {"serving"},
    "webargs": {"api"},
    "werkzeug": {"api"},
    "zeroconf": {"lan"},
}

#: What each folder of the page may import; the worker's runtime is fetched by address and not imported by name.
PAGE = {
    "app.js": {"device", "engine", "journal", "screens", "update.js", "words"},
    "background": {"journal"},
    "controls": {"vendor", "words"},
    "device": {"controls", "listeners.js", "words"},
    "drawings": {"controls", "notebook", "words"},
    "engine": {"hash.js", "listeners.js", "room.js"},
    "frame": {"controls", "later.js", "notebook", "words"},
    "hash.js": set(),
    "journal": {"journal", "listeners.js", "room.js", "vendor"},
    "later.js": {"controls", "words"},
    "listeners.js": set(),
    "notebook": {"controls", "device", "hash.js", "words"},
    "pad": {"controls", "notebook", "words"},
    "photos": {"controls", "notebook", "words"},
    "screens/screens.js": {"later.js", "screens"},
    "screens/main.js": {"controls", "drawings", "frame", "later.js", "notebook", "screens", "words"},
    "screens": {
        *("controls", "device", "drawings", "frame", "later.js", "notebook", "pad", "photos", "settings", "words"),
    },
    "settings": {"controls", "notebook", "words"},
    "room.js": set(),
    "sw.js": set(),
    "update.js": {"listeners.js", "words"},
    "words": {"vendor"},
}
#: A folder with more in it is a heap, where nobody finds anything.
MOST_IN_A_FOLDER = 12
#: Files that stand in one folder.
FILES_AT_MOST = 13
COMMENT = re.compile(r"/\*.*?\*/|^\s*//[^\n]*", re.DOTALL | re.MULTILINE)
IMPORT = re.compile(r"""^\s*(?:import|export)\b(?:[\w\s{},*$]*?\bfrom)?\s*["']([^"']+)["']""", re.MULTILINE)
EXPORT = re.compile(r"^export (?:async )?(?:const|let|class|function\*?) (\w+)", re.MULTILINE)
DYNAMIC = re.compile(r"\bimport\(\s*[\"']([^\"']+)[\"']")


def python_files(folder):
    return sorted(path for path in folder.rglob("*.py"))


def imports_of(path):
    """Every module that a file imports, wherever in the file, with the line."""
    package = ".".join(path.relative_to(PACKAGE.parent).parent.parts)
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            for name in node.names:
                yield name.name, node
        elif isinstance(node, ast.ImportFrom):
            above = package.split(".")[: len(package.split(".")) - node.level + 1] if node.level else []
            module = ".".join([*above, *([node.module] if node.module else [])])
            yield module, node
            if module == "scantling":
                yield from ((f"scantling.{name.name}", node) for name in node.names)


def part_of(path):
    first = path.relative_to(PACKAGE).parts[0]
    return first.removesuffix(".py")


ENGINE_FILES = python_files(PACKAGE / "engine")
SHELL_FILES = [path for path in python_files(PACKAGE) if part_of(path) != "engine"]
PAGE_FILES = sorted(path for path in WEB.rglob("*.js") if "vendor" not in path.relative_to(WEB).parts)


def name_of(path):
    return path.relative_to(ROOT).as_posix()


@pytest.mark.parametrize("path", ENGINE_FILES, ids=name_of)
def test_the_engine_stands_on_the_standard_library_marshmallow_and_pint_at_its_edge(path):
    allowed = {*ENGINE_STDLIB, "marshmallow"} | ({"pint"} if path.name == "units.py" else set())
    for module, node in imports_of(path):
        inside = module == "scantling.engine" or module.startswith("scantling.engine.")
        assert inside or module.partition(".")[0] in allowed, f"{name_of(path)}:{node.lineno} imports {module}"


def test_pint_is_imported_where_it_is_used_and_not_when_the_engine_wakes():
    tree = ast.parse((PACKAGE / "engine" / "tape" / "units.py").read_text(encoding="utf-8"))
    waking = [node for node in tree.body if isinstance(node, ast.Import | ast.ImportFrom)]
    named = {name.name for node in waking for name in node.names} | {getattr(node, "module", "") for node in waking}
    assert "pint" not in named
    assert any(module == "pint" for module, _ in imports_of(PACKAGE / "engine" / "tape" / "units.py"))


def test_only_the_list_of_questions_imports_by_name_for_no_map_can_follow_that():
    by_name = [path for path in ENGINE_FILES if any(module == "importlib" for module, _ in imports_of(path))]
    assert [name_of(path) for path in by_name] == [name_of(PACKAGE / "engine" / "questions" / "__init__.py")]


@pytest.mark.parametrize("path", ENGINE_FILES, ids=name_of)
def test_nothing_in_the_engine_lets_the_world_in_or_rounds_without_saying_how(path):
    tree = ast.parse(path.read_text(encoding="utf-8"))
    calls = [node for node in ast.walk(tree) if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)]
    bad = [
        f"{name_of(path)}:{call.lineno} calls {call.func.id}"
        for call in calls
        if call.func.id in ENGINE_FORBIDDEN_CALLS
    ]
    assert bad == []


def test_every_forbidden_call_is_a_builtin_so_that_none_is_misspelt():
    assert all(hasattr(builtins, name) for name in ENGINE_FORBIDDEN_CALLS)


@pytest.mark.parametrize("path", ENGINE_FILES, ids=name_of)
def test_no_function_of_the_engine_calls_itself(path):
    """A phone's stack is small: depth that grows with the data crashes there and nowhere else."""
    for function in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(function, ast.FunctionDef):
            names = {
                node.func.id
                for node in ast.walk(function)
                if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
            }
            assert function.name not in names, f"{name_of(path)}:{function.lineno} {function.name} calls itself"


@pytest.mark.parametrize("path", SHELL_FILES, ids=name_of)
def test_the_shells_arrows_point_one_way(path):
    part = part_of(path)
    for module, node in imports_of(path):
        if module.startswith("scantling."):
            other = module.split(".")[1]
            assert other == part or other in SHELL[part], f"{name_of(path)}:{node.lineno} imports {module}"


@pytest.mark.parametrize("path", [*SHELL_FILES, *ENGINE_FILES], ids=name_of)
def test_a_library_is_met_only_where_the_map_says(path):
    import sys

    for module, node in imports_of(path):
        first = module.partition(".")[0]
        if first != "scantling" and first not in sys.stdlib_module_names:
            assert part_of(path) in LIBRARIES[first], f"{name_of(path)}:{node.lineno} imports {module}"


def test_no_arrow_on_the_map_leads_back():
    """The map itself: no part reaches itself through others."""
    for part in SHELL:
        reached, waiting = set(), [other for other in SHELL[part] if other != part]
        while waiting:
            other = waiting.pop()
            if other not in reached:
                reached.add(other)
                waiting += [further for further in SHELL.get(other, ()) if further != other]
        assert part not in reached


def rooms_of(folder):
    """A folder and every folder in it, each with its files and folders: its rooms."""
    return [folder, *(path for path in sorted(folder.rglob("*")) if path.is_dir() and any(path.glob("*.py")))]


def arrows_between_rooms(folder):
    """Which rooms of a folder import which others of its rooms; what the folder itself gives out is not a room."""
    arrows = {}
    for path in python_files(folder):
        room = path.relative_to(folder).parts[0].removesuffix(".py")
        above = f"{'.'.join(folder.relative_to(PACKAGE.parent).parts)}."
        named = [module.removeprefix(above).split(".")[0] for module, _ in imports_of(path) if module.startswith(above)]
        arrows.setdefault(room, set()).update(other for other in named if other != room and room != "__init__")
    return arrows


ENGINE_ROOMS = rooms_of(PACKAGE / "engine")


@pytest.mark.parametrize("folder", ENGINE_ROOMS, ids=name_of)
def test_no_room_of_a_folder_imports_one_that_imports_it(folder):
    arrows = arrows_between_rooms(folder)
    while arrows:
        free = [room for room, others in arrows.items() if not others & arrows.keys()]
        assert free, f"{name_of(folder)}: a circle among {', '.join(sorted(arrows))}"
        arrows = {room: others for room, others in arrows.items() if room not in free}


@pytest.mark.parametrize("folder", rooms_of(PACKAGE), ids=name_of)
def test_no_folder_is_a_heap(folder):
    """Where a reader would have to read every name to find a rule, it wants rooms of its own."""
    assert len([path for path in folder.glob("*.py") if path.name != "__init__.py"]) <= FILES_AT_MOST


def page_part(path):
    return path.relative_to(WEB).parts[0]


def page_imports(path):
    """Each file that a file of the page imports, as it is named and where it lies."""
    code = COMMENT.sub("", path.read_text(encoding="utf-8"))
    for named in (*IMPORT.findall(code), *DYNAMIC.findall(code)):
        yield named, (path.parent / named).resolve()


@pytest.mark.parametrize("path", PAGE_FILES, ids=name_of)
def test_the_pages_arrows_point_one_way(path):
    part = page_part(path)
    allowed = PAGE.get(path.relative_to(WEB).as_posix(), PAGE.get(part, set()))
    for named, target in page_imports(path):
        assert named.startswith((".", "/")), f"{name_of(path)} imports {named}, which a browser cannot find"
        assert target.is_file(), f"{name_of(path)} imports {named}, which is not there"
        beside = target.parent == path.parent
        assert beside or page_part(target) in allowed, f"{name_of(path)} imports {named}"


def test_no_folder_of_the_page_imports_one_that_leads_back_to_it():
    """Two rooms that need each other are one room with a wall through it."""
    arrows: dict[Path, set[Path]] = {}
    for path in PAGE_FILES:
        arrows.setdefault(room_of(path), set()).update(room_of(target) for _, target in page_imports(path))
    for folder, nearest in arrows.items():
        assert folder not in reached_from(nearest - {folder}, arrows), f"{name_of(folder)} leads back to itself"


def room_of(path):
    """The folder of a file; one that lies at the top of the page is a room by itself."""
    return path if path.parent == WEB else path.parent


def reached_from(start, arrows):
    """All that can be come to along the arrows, where one starts included."""
    reached, waiting = set(), list(start)
    while waiting:
        other = waiting.pop()
        if other not in reached:
            reached.add(other)
            waiting += arrows.get(other, ())
    return reached


def test_no_folder_of_the_page_is_a_heap():
    in_folder = Counter(path.parent for path in PAGE_FILES)
    assert {name_of(folder): count for folder, count in in_folder.items() if count > MOST_IN_A_FOLDER} == {}


def test_no_two_things_of_the_page_are_given_out_under_one_name():
    given = {}
    for path in PAGE_FILES:
        for name in EXPORT.findall(COMMENT.sub("", path.read_text(encoding="utf-8"))):
            given.setdefault(name, []).append(name_of(path))
    assert {name: paths for name, paths in given.items() if len(paths) > 1} == {}


def test_every_screen_has_a_folder_with_one_door():
    """`screen.js` is what screens.js brings; no screen reaches into another's folder."""
    screens = WEB / "screens" / "screens.js"
    folders = {path for path in screens.parent.iterdir() if path.is_dir()}
    assert {target for _, target in page_imports(screens) if page_part(target) == "screens"} == {
        folder / "screen.js" for folder in folders
    }


def test_the_reader_of_imports_sees_every_way_of_writing_one():
    code = """
import "./a.js";
import {
  b,
} from "./b.js";
export { c } from "./c.js";
// import "./no.js"
await import("./d.js");
/** @type {import("./no.js")} */
export const house = "no";
"""
    stripped = COMMENT.sub("", code)
    assert [*IMPORT.findall(stripped), *DYNAMIC.findall(stripped)] == ["./a.js", "./b.js", "./c.js", "./d.js"]


def test_the_top_level_is_the_one_agreed_on():
    shown = {path.name for path in ROOT.iterdir() if not path.name.startswith(".") and path.suffix != ".egg-info"}
    assert shown - {"dist"} == {"README.md", "DEVELOPERS.md", "pyproject.toml", "server", "web", "tests", "demo"}


#: What every file of its sort has by that name, or only says it for a checker of types.
BY_CUSTOM = {"QUESTIONS", "TEXTS", "T"}


def named_in(path):
    """The functions, classes and constants that a file of the engine names at its top, each as it is written."""
    for node in ast.parse(path.read_text(encoding="utf-8")).body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            yield node.name, ast.unparse(node)
        elif isinstance(node, ast.Assign):
            yield from ((target.id, ast.unparse(node.value)) for target in node.targets if isinstance(target, ast.Name))


def named_twice():
    """Each name that two files of the engine give to something, with what each of them calls so."""
    found = {}
    for path in ENGINE_FILES:
        for name, means in named_in(path):
            if not name.startswith("_") and name not in BY_CUSTOM:
                found.setdefault(name, []).append((name_of(path), means))
    return {name: given for name, given in found.items() if len(given) > 1}


def test_no_two_things_of_the_engine_have_one_name():
    """Whoever looks a name up finds the one thing that it means. A constant is its file's own matter: each says there
    what it is, and no other file takes it from there."""
    meant = {name: given for name, given in named_twice().items() if not name.isupper()}
    assert {name: [path for path, _ in given] for name, given in meant.items() if len({*given}) > 1} == {}


def test_no_table_of_the_engine_is_written_twice():
    """Of two that are alike today one is changed tomorrow. A number alone is no table: two may be equal by chance."""
    written = {
        name: [path for path, means in given if means == each]
        for name, given in named_twice().items()
        for each in {means for _, means in given}
        if "'" in each
    }
    assert {name: paths for name, paths in written.items() if len(paths) > 1} == {}
