"""`pieces`, `boards` and `prove`: cut lists and board plans."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from pathlib import Path

from scantling.cli.command import REFUSED, answer_of, read_json
from scantling.cli.output import say, write_json, write_text
from scantling.cli.rooms import for_rooms, print_answers
from scantling.engine.desk import Desk, dump
from scantling.engine.questions.cutlist.files import format_table
from scantling.printed import format_boards, format_pieces


def add_commands(add: Callable[..., argparse.ArgumentParser]) -> None:
    pieces = add("pieces", run_pieces, "Print the cut list of a room, or of every room.")
    pieces.add_argument("room", nargs="?", help="a room's name or id, or a file with a room in JSON")
    pieces.add_argument("--csv", action="store_true", help="as a table for a spreadsheet")
    boards = add("boards", run_boards, "Plan the boards of a case in a file, or of a room of the notebook.")
    boards.add_argument("case", nargs="?", help="a file with a case in JSON, or a room's name or id")
    proving = add("prove", run_prove, "Go through the proof of a board plan, without trusting the planner.")
    proving.add_argument("case", help="a file with a case in JSON")
    proving.add_argument("answer", nargs="?", help="a file with the plan as scantling boards printed it, or -")


def run_pieces(chosen: argparse.Namespace) -> int:
    answers = for_rooms(chosen.place, chosen.room, "pieces")
    if chosen.csv:
        write_text([format_table(answers.given)])
        return answers.complain()
    return print_answers(chosen.json, answers, format_pieces)


def run_boards(chosen: argparse.Namespace) -> int:
    if chosen.case and Path(chosen.case).is_file():
        case = read_json(chosen.case)
        write_json(dump(answer_of(Desk(), {"ask": "boards", **(case if isinstance(case, dict) else {"case": case})})))
        return 0
    return print_answers(chosen.json, for_rooms(chosen.place, chosen.case, "boards_for_room"), format_boards)


def run_prove(chosen: argparse.Namespace) -> int:
    """0 when the proof holds; the plan is made here where none is given."""
    case = read_json(chosen.case)
    said = case if isinstance(case, dict) else {"case": case}
    planned = read_json(chosen.answer) if chosen.answer else answer_of(Desk(), {"ask": "boards", **said})
    found = answer_of(Desk(), {"ask": "prove", **said, "answer": planned})
    if chosen.json:
        write_json(dump(found))
    else:
        say("\n".join(found["sentences"]))
    return 0 if found["holds"] else REFUSED
