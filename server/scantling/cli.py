"""The command line: `scantling serve`, `sum`, `ask`, `pieces`, `boards`, `prove`, `export`, `restore`, `demo`.

Every figure comes from the desk. A refusal is one sentence on standard error, with a caret under the place where that
helps, and exit status 2. The notebook's folder is the user's data folder, or the one that --data names.
"""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any, ClassVar, NoReturn

import platformdirs

from scantling.engine.desk import QUESTIONS, Desk, dump
from scantling.engine.errors import EngineError, quote
from scantling.laptop import Laptop
from scantling.printed import format_boards, format_pieces, format_pieces_csv
from scantling.store import FILE_NAME, open_store
from scantling.sync import keep_lines
from scantling.wire import parse_json, parse_text

Run = Callable[[argparse.Namespace], int | None]

REFUSED = 2
PORT = 8017
DEMO_PORT = 8018


class CommandError(EngineError):
    sentences: ClassVar[Mapping[str, str]] = {
        "no-file": "The file {path} cannot be read: {why}.",
        "no-notebook": "There is no notebook in {path} yet: start one with scantling serve, or choose with --data.",
        "no-such-room": "There is no room called {name} in the notebook; there are: {names}.",
        "two-rooms": "There are {count} rooms called {name}: name the one you mean by its id, {ids}.",
        "no-port": "Port {port} on {host} cannot be used, perhaps another program has it: choose one with --port.",
        "usage": "{what}. See scantling --help.",
    }


class Refused(Exception):
    """A refusal as the desk gave it, with the text that it is about."""

    def __init__(self, error: Mapping[str, Any], text: str = "") -> None:
        super().__init__(error["message"])
        self.at = error["where"]["at"]
        self.text = text


class OneSentenceParser(argparse.ArgumentParser):
    """argparse prints its usage before every refusal; here a refusal is one sentence."""

    def error(self, message: str) -> NoReturn:
        raise CommandError("usage", what=message[:1].upper() + message[1:])


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command: 0, or 2 after a refusal on standard error."""
    try:
        chosen = build_parser().parse_args(arguments)
        chosen.data = chosen.data or _user_folder("scantling-demo" if chosen.run is run_demo else "scantling")
        return int(chosen.run(chosen) or 0)
    except Refused as refusal:
        print(f"scantling: {refusal}{_caret(refusal)}", file=sys.stderr)
    except EngineError as error:
        print(f"scantling: {error.message}", file=sys.stderr)
    except BrokenPipeError:
        sys.stderr.close()  # the reader, such as head, has gone: Python would complain once more when it ends
    return REFUSED


def _caret(refusal: Refused) -> str:
    if refusal.at is None or not refusal.text.isprintable():
        return ""
    return f"\n  {refusal.text}\n  {' ' * refusal.at}^"


def build_parser() -> argparse.ArgumentParser:
    parser = OneSentenceParser(prog="scantling", description="A room notebook for finish carpentry.")
    _add_shared(parser)
    parser.set_defaults(data=None, json=False)
    commands = parser.add_subparsers(title="commands", metavar="COMMAND", required=True)

    def add(name: str, run: Run, said: str, **more: Any) -> argparse.ArgumentParser:
        command = commands.add_parser(name, help=said, description=said, **more)
        _add_shared(command)
        command.set_defaults(run=run)
        return command

    serving = add("serve", run_serve, "Serve the page and the API until stopped.")
    _add_address(serving, PORT)
    _add_address(
        add("demo", run_demo, "Load an invented house into a notebook of its own, print it, serve it."), DEMO_PORT
    )
    add("sum", run_sum, QUESTIONS["sum"].doc).add_argument(
        "text", nargs="+", help='such as "63 1/4 - 2*(3 1/2 + 3/16)"'
    )
    listed = {"epilog": _list_questions(), "formatter_class": argparse.RawDescriptionHelpFormatter}
    asking = add("ask", run_ask, "Ask the engine a question, or a list of them, in JSON.", **listed)
    asking.add_argument("file", help="a file, or - for standard input")
    pieces = add("pieces", run_pieces, "Print the cut list of a room, or of every room.")
    pieces.add_argument("room", nargs="?", help="a room's name or id, or a file with a room in JSON")
    pieces.add_argument("--csv", action="store_true", help="as a table for a spreadsheet")
    boards = add("boards", run_boards, "Plan the boards of a case in a file, or of a room of the notebook.")
    boards.add_argument("case", nargs="?", help="a file with a case in JSON, or a room's name or id")
    proving = add("prove", run_prove, "Go through the proof of a board plan, without trusting the planner.")
    proving.add_argument("case", help="a file with a case in JSON")
    proving.add_argument("answer", nargs="?", help="a file with the plan as scantling boards printed it, or -")
    export = add("export", run_export, "Write the journal, one entry on each line, or the cut lists as a table.")
    export.add_argument("what", choices=["journal", "pieces"])
    add("restore", run_restore, "Bring the entries of an exported journal into the notebook.").add_argument("file")
    return parser


def _add_shared(parser: argparse.ArgumentParser) -> None:
    """Options that may stand before or after the command; SUPPRESS, or one after it would undo the one before."""
    parser.add_argument("--data", type=Path, metavar="DIR", default=argparse.SUPPRESS, help="the notebook's folder")
    parser.add_argument("--json", action="store_true", default=argparse.SUPPRESS, help="answers as JSON, for machines")


def _add_address(command: argparse.ArgumentParser, port: int) -> None:
    command.add_argument(
        "--host", default="127.0.0.1", help="the address to listen on (this machine only, if not given)"
    )
    command.add_argument(
        "--port", type=int, default=port, help=f"the port to listen on ({port}); 0 for any that is free"
    )
    command.add_argument("--name", action="append", default=[], help="another name that this server is reached by")


def _list_questions() -> str:
    rows = (f"  {name:16} {question.doc}" for name, question in QUESTIONS.items())
    return "\n".join(['questions, each as {"ask": NAME, …}:', *rows])


# ---- commands --------------------------------------------------------------------------------------------------------


def run_serve(chosen: argparse.Namespace) -> None:
    _serve(chosen, [chosen.port])


def _serve(chosen: argparse.Namespace, ports: list[int]) -> None:
    # Imported here: Flask takes a third of a second, and a sum should not wait for it.
    from scantling.api import Config, create_app
    from scantling.serving import serve

    own_name = f"[{chosen.host}]" if ":" in chosen.host else chosen.host
    app = create_app(Config(chosen.data, names=(own_name, *chosen.name)))
    try:
        serve(app, chosen.host, ports, lambda address: print(address, flush=True))
    except OSError as error:
        raise CommandError("no-port", port=chosen.port, host=chosen.host) from error


def run_demo(chosen: argparse.Namespace) -> None:
    from scantling.demo_house import edition, load_demo

    chosen.data = chosen.data / edition()
    load_demo(chosen.data)
    for ask, form in (("pieces", format_pieces), ("boards_for_room", format_boards)):
        _print(chosen.json, _for_rooms(chosen.data, None, ask), form)
        print()
    _serve(chosen, [chosen.port, 0])


def run_sum(chosen: argparse.Namespace) -> None:
    text = " ".join(chosen.text)
    answer = _answer(Desk(), {"ask": "sum", "text": text}, text)
    print(dump(answer) if chosen.json else _sum_shown(answer))


def _sum_shown(answer: Mapping[str, Any]) -> str:
    shown = next(answer[kind]["shown"] for kind in ("length", "number", "area") if answer[kind])
    off = answer["remainder"] and answer["remainder"]["exact"] != "0"
    return f"{shown}  ({answer['remainder_said']})" if off else str(shown)


def run_ask(chosen: argparse.Namespace) -> int:
    text = _read(chosen.file)
    if _has_notebook(chosen.data):
        with _notebook(chosen.data) as laptop:
            answered = laptop.answer_text(text)
    else:
        answered = Desk().answer_text(text)
    print(answered)
    answers = json.loads(answered)
    return REFUSED if any("error" in one for one in (answers if isinstance(answers, list) else [answers])) else 0


def run_pieces(chosen: argparse.Namespace) -> None:
    answers = _for_rooms(chosen.data, chosen.room, "pieces")
    if chosen.csv:
        print(format_pieces_csv(answers), end="")
    else:
        _print(chosen.json, answers, format_pieces)


def run_boards(chosen: argparse.Namespace) -> None:
    if chosen.case and Path(chosen.case).is_file():
        case = _read_json(chosen.case)
        print(dump(_answer(Desk(), {"ask": "boards", **(case if isinstance(case, dict) else {"case": case})})))
    else:
        _print(chosen.json, _for_rooms(chosen.data, chosen.case, "boards_for_room"), format_boards)


def run_prove(chosen: argparse.Namespace) -> int:
    """0 when the proof holds; the plan is made here where none is given."""
    case = _read_json(chosen.case)
    said = case if isinstance(case, dict) else {"case": case}
    planned = _read_json(chosen.answer) if chosen.answer else _answer(Desk(), {"ask": "boards", **said})
    found = _answer(Desk(), {"ask": "prove", **said, "answer": planned})
    print(dump(found) if chosen.json else "\n".join(found["sentences"]))
    return 0 if found["holds"] else REFUSED


def run_export(chosen: argparse.Namespace) -> None:
    if chosen.what == "pieces":
        print(format_pieces_csv(_for_rooms(chosen.data, None, "pieces")), end="")
        return
    with _notebook(chosen.data) as laptop, laptop.store.reading() as ledger:
        for row in ledger.read_all():
            print(row.text)


def run_restore(chosen: argparse.Namespace) -> None:
    text = _read(chosen.file)
    store = open_store(chosen.data)
    try:
        stored, known = keep_lines(store, text)
    finally:
        store.close()
    print(f"{stored} entries restored, {known} were here already.")


# ---- what commands stand on ------------------------------------------------------------------------------------------


def _answer(desk: Desk | Laptop, question: Mapping[str, Any], text: str = "") -> dict[str, Any]:
    answered = desk.answer(question)
    if "error" in answered:
        raise Refused(answered["error"], text)
    answer: dict[str, Any] = answered["answer"]
    return answer


def _for_rooms(data: Path, room: str | None, ask: str) -> list[tuple[str, dict[str, Any]]]:
    """The answers to a question about one room, from a file or by name, or about every room of the notebook."""
    if room and Path(room).is_file():
        said = _read_json(room)
        name = said.get("name", room) if isinstance(said, dict) else room
        return [(str(name), _answer(Desk(), {"ask": ask, "room": said}))]
    with _notebook(data) as laptop:
        return [(name, _answer(laptop, {"ask": ask, "room": key})) for key, name in _rooms(laptop, room)]


def _rooms(laptop: Laptop, wanted: str | None) -> list[tuple[str, str]]:
    houses = _answer(laptop, {"ask": "notebook"})["houses"]
    rooms = [(room["id"], room["name"]) for house in houses for room in house["rooms"]]
    if wanted is None:
        return rooms
    found = [room for room in rooms if wanted.casefold() in (room[0], room[1].casefold())]
    if not found:
        raise CommandError("no-such-room", name=quote(wanted), names=", ".join(name for _, name in rooms) or "none yet")
    if len(found) > 1:
        raise CommandError("two-rooms", count=len(found), name=quote(wanted), ids=", ".join(key for key, _ in found))
    return found


def _print(
    as_json: bool, answers: list[tuple[str, dict[str, Any]]], form: Callable[[str, Mapping[str, Any]], str]
) -> None:
    if as_json:
        print(dump([{"room": name, **answer} for name, answer in answers]))
    else:
        print("\n\n".join(form(name, answer) for name, answer in answers) or "No rooms yet.")


def _user_folder(name: str) -> Path:
    return platformdirs.user_data_path(name, appauthor=False)


def _has_notebook(data: Path) -> bool:
    return (data / FILE_NAME).is_file()


@contextmanager
def _notebook(data: Path) -> Iterator[Laptop]:
    if not _has_notebook(data):
        raise CommandError("no-notebook", path=data)
    store = open_store(data)
    try:
        yield Laptop(store)
    finally:
        store.close()


def _read(path: str) -> str:
    try:
        data = sys.stdin.buffer.read() if path == "-" else Path(path).read_bytes()
    except OSError as error:
        raise CommandError("no-file", path=path, why=error.strerror) from error
    return parse_text(data, f"The file {path}")


def _read_json(path: str) -> Any:
    return parse_json(_read(path), f"The file {path}")
