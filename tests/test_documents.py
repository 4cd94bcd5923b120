"""The documents keep their word: every command in them is run, and every answer that they show is the answer.

A ```sh block holds commands, one to a line. A ```console block holds commands after "$ " and below each what it prints.
`python3 …` and `scantling …` within a sentence are commands too.
"""

import json
import os
import re
import shlex
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from scantling.demo_house import load_demo
from scantling.engine.desk import Desk
from scantling.printed import format_pieces

ROOT = Path(__file__).resolve().parents[1]
DOCUMENTS = ("README.md", "DEVELOPERS.md")
PATIENCE = 120

#: Commands that would run these very tests, or change the machine; and what shows instead that they work.
ELSEWHERE = {
    "python3 tests": "is what runs this",
    "python3 tests further": "runs tests like these",
    "python3 tests bench": "test_the_bench_measures_plans_and_finds_them_sound",
    "scantling doctor": "test_where_all_is_well_nothing_is_wrong_and_what_was_looked_at_is_told",
    "scantling serve --lan": "test_lan_serves_the_page_over_tls_beside_the_laptops_own",
    "scantling page DIR": "test_every_file_of_the_page_is_there_with_the_headers_that_go_with_it",
    "pipx install .": "test_the_wheel_serves_the_page_without_the_checkout",
    "python3 web/vendor/fetch.py": "fetches what test_vendor checks by its hashes",
}
INLINE = re.compile(r"`((?:python3|scantling) [^`]+)`")
BLOCK = re.compile(r"^```(sh|console)\n(.*?)^```", re.DOTALL | re.MULTILINE)
SERVERS = re.compile(r"^(python3 demo|scantling serve|scantling demo)\b")


def commands_of(document):
    """Every command of a document with what it shows, None where it shows nothing."""
    text = (ROOT / document).read_text(encoding="utf-8")
    yield from ((command, None) for command in INLINE.findall(BLOCK.sub("", text)))
    for kind, block in BLOCK.findall(text):
        if kind == "sh":
            yield from ((line.partition("  #")[0].strip(), None) for line in block.splitlines() if line.strip())
        else:
            for part in re.split(r"^\$ ", block, flags=re.MULTILINE)[1:]:
                command, _, shown = part.partition("\n")
                yield command, shown


COMMANDS = [(document, *found) for document in DOCUMENTS for found in commands_of(document)]


@pytest.fixture
def environment(tmp_path):
    """A home with the demo house in its notebook, so that nobody's own is touched; and this environment's commands."""
    load_demo(tmp_path / "scantling")
    here = Path(sys.executable).parent
    kept = {name: value for name, value in os.environ.items() if not name.startswith("PYTHON")}
    return {
        **kept,
        "HOME": str(tmp_path),
        "XDG_DATA_HOME": str(tmp_path),
        "PATH": f"{here}{os.pathsep}{os.environ['PATH']}",
    }


@pytest.mark.parametrize(("document", "command", "shown"), COMMANDS, ids=[command for _, command, _ in COMMANDS])
def test_a_command_in_the_documents_does_what_they_say(document, command, shown, environment):
    if command in ELSEWHERE:
        assert ELSEWHERE[command]
    elif SERVERS.match(command):
        assert_serves(command, environment)
    else:
        done = subprocess.run(command, shell=True, cwd=ROOT, env=environment, capture_output=True, text=True,
                              timeout=PATIENCE, check=False)  # fmt: skip
        assert done.returncode == 0, done.stderr
        assert shown is None or done.stdout == shown


def assert_serves(command, environment):
    """It says where, and stops when told."""
    arguments = [*shlex.split(command), "--port", "0"]
    process = subprocess.Popen(arguments, cwd=ROOT, env=environment, stdout=subprocess.PIPE, text=True)
    try:
        addresses = (line for line in process.stdout if line.startswith("http://localhost:"))
        assert next(addresses, None), f"{command} printed no address"
        process.send_signal(signal.SIGTERM)
        assert process.wait(PATIENCE) == 0
    finally:
        process.kill()
        process.communicate()


def test_the_worked_example_is_what_the_engine_says():
    """The first json block of the README is the question, the text block after it the table that comes of it."""
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    asked, shown = re.search(r"^```json\n(.*?)^```.*?^```text\n(.*?)^```", text, re.DOTALL | re.MULTILINE).groups()
    question = json.loads(asked)
    said = format_pieces(question["room"]["name"], Desk().answer(question)["answer"])
    assert said.startswith(shown)


def test_the_covering_figure_is_worked_as_the_engine_works_it():
    """The second json block is a question too, and the text block after it the beginning of its working."""
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    _, (asked, shown) = re.findall(r"^```json\n(.*?)^```.*?^```text\n(.*?)^```", text, re.DOTALL | re.MULTILINE)
    answered = Desk().answer(json.loads(asked))["answer"]
    assert answered["working"][: shown.count("\n")] == shown.splitlines()
    assert answered["buy"] == 2


@pytest.mark.parametrize("document", DOCUMENTS)
def test_every_document_holds_commands_that_are_found(document):
    assert [found for found in COMMANDS if found[0] == document]


def test_every_block_of_a_document_says_what_it_is():
    """A block that is neither is checked by nobody: it is named json, text, … or it is a command."""
    for document in DOCUMENTS:
        fences = re.findall(r"^```(.*)$", (ROOT / document).read_text(encoding="utf-8"), re.MULTILINE)[::2]
        assert not [fence for fence in fences if fence in ("", "bash", "shell")], document


def test_what_is_run_elsewhere_is_still_in_the_documents():
    commands = {command for _, command, _ in COMMANDS}
    assert [command for command in ELSEWHERE if command not in commands] == []
