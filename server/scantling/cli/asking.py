"""`sum` and `ask`: one sum, or any question of the desk."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable, Mapping
from typing import Any

from scantling.cli.command import REFUSED, answer_of, has_notebook, notebook, read_file
from scantling.cli.output import say, write_json
from scantling.engine.desk import QUESTIONS, Desk, dump
from scantling.engine.tape.quantities import BARE


def add_commands(add: Callable[..., argparse.ArgumentParser]) -> None:
    summing = add("sum", run_sum, QUESTIONS["sum"].doc)
    summing.add_argument("text", nargs="+", help='such as "63 1/4 - 2*(3 1/2 + 3/16)"')
    summing.add_argument("--in", choices=BARE, default="inches", dest="bare",
                         help="what lengths are shown in, and are in where no unit is written")  # fmt: skip
    listed = {"epilog": _list_questions(), "formatter_class": argparse.RawDescriptionHelpFormatter}
    asking = add("ask", run_ask, "Ask the engine a question, or a list of them, in JSON.", **listed)
    asking.add_argument("file", help="a file, or - for standard input")


def _list_questions() -> str:
    rows = (f"  {name:16} {question.doc}" for name, question in QUESTIONS.items())
    return "\n".join(['questions, each as {"ask": NAME, …}:', *rows])


def run_sum(chosen: argparse.Namespace) -> None:
    text = " ".join(chosen.text)
    answer = answer_of(Desk(), {"ask": "sum", "text": text, "bare": chosen.bare, "shown_in": chosen.bare}, text)
    if chosen.json:
        write_json(dump(answer))
    else:
        say(_sum_shown(answer))


def _sum_shown(answer: Mapping[str, Any]) -> str:
    shown = next(answer[kind]["shown"] for kind in ("length", "number", "area") if answer[kind])
    off = answer["remainder"] and answer["remainder"]["exact"] != "0"
    return f"{shown}  ({answer['remainder_said']})" if off else str(shown)


def run_ask(chosen: argparse.Namespace) -> int:
    text = read_file(chosen.file)
    if has_notebook(chosen.place):
        with notebook(chosen.place) as laptop:
            answered = laptop.answer_text(text)
    else:
        answered = Desk().answer_text(text)
    write_json(answered)
    answers = json.loads(answered)
    return REFUSED if any("error" in one for one in (answers if isinstance(answers, list) else [answers])) else 0
