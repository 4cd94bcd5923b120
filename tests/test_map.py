"""The map of the project: every import is read, and an arrow that is not on the map fails.

The engine runs on a phone too, so it may lean on nothing that a phone has not, and on nothing that answers differently
from one day or device to the next.
"""

import ast
import builtins
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = ROOT / "server" / "scantling"
WEB = ROOT / "web"

#: Pure parts of the standard library: no clock, no chance, no disk, no network, no process.
ENGINE_STDLIB = {
    "__future__",
    "bisect",
    "collections",
    "copy",
    "dataclasses",
    "enum",
    "fractions",
    "functools",
    "hashlib",
    "heapq",
    "html",
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
    "api": {"api", "clock", "engine", "laptop", "printed", "site", "store", "sync", "wire"},
    "cli": {"api", "demo_house", "engine", "laptop", "printed", "serving", "store", "sync", "wire"},
    "clock": set(),
    "demo_house": {"store", "sync"},
    "laptop": {"clock", "engine", "store"},
    "printed": set(),
    "serving": {"api"},
    "site": set(),
    "store": {"engine"},
    "sync": {"engine", "store", "wire"},
    "wire": {"engine"},
}
#: Where each library from outside may be met.
LIBRARIES = {
    "apispec": {"api"},
    "cheroot": {"serving"},
    "flask": {"api", "serving", "site"},
    "flask_smorest": {"api"},
    "markupsafe": {"api"},
    "marshmallow": {"api", "engine", "sync"},
    "pint": {"engine"},
    "platformdirs": {"cli"},
    "sqlalchemy": {"store"},
    "webargs": {"api"},
    "werkzeug": {"api"},
}

#: What each folder of the page may import; the worker's runtime is fetched by address and not imported by name.
PAGE = {
    "app.js": {"engine", "journal", "screens", "update.js"},
    "update.js": {"listeners.js"},
    "listeners.js": set(),
    "sw.js": set(),
    "screens": {"screens", "parts"},
    "parts": {"parts", "journal", "engine", "vendor"},
    "journal": {"journal", "listeners.js", "vendor"},
    "engine": {"engine", "listeners.js"},
}
COMMENT = re.compile(r"/\*.*?\*/|^\s*//[^\n]*", re.DOTALL | re.MULTILINE)
IMPORT = re.compile(r"""^\s*(?:import|export)\b(?:[\w\s{},*$]*?\bfrom)?\s*["']([^"']+)["']""", re.MULTILINE)
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
    tree = ast.parse((PACKAGE / "engine" / "units.py").read_text(encoding="utf-8"))
    waking = [node for node in tree.body if isinstance(node, ast.Import | ast.ImportFrom)]
    named = {name.name for node in waking for name in node.names} | {getattr(node, "module", "") for node in waking}
    assert "pint" not in named
    assert any(module == "pint" for module, _ in imports_of(PACKAGE / "engine" / "units.py"))


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


def page_part(path):
    return path.relative_to(WEB).parts[0]


@pytest.mark.parametrize("path", PAGE_FILES, ids=name_of)
def test_the_pages_arrows_point_one_way(path):
    code = COMMENT.sub("", path.read_text(encoding="utf-8"))
    for named in (*IMPORT.findall(code), *DYNAMIC.findall(code)):
        assert named.startswith((".", "/")), f"{name_of(path)} imports {named}, which a browser cannot find"
        target = (path.parent / named).resolve()
        assert target.is_file(), f"{name_of(path)} imports {named}, which is not there"
        assert page_part(target) in PAGE[page_part(path)], f"{name_of(path)} imports {named}"


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
