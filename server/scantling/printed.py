"""Answers as plain text and as tables: the cut list and the board plan, for a terminal, a printer or a spreadsheet.

It takes answers of the desk and lays out what they already say; it knows no figure of its own.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

Answer = Mapping[str, Any]

COLUMNS = (
    "room", "letter", "part", "profile", "wall", "cut", "inches", "back", "front", "left end", "right end",
    "plus or minus", "state", "cut to", "as cut", "change", "notes",
)  # fmt: skip
#: A spreadsheet takes a cell that starts with one of these for a formula and runs it.
FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n")


def format_pieces(name: str, answer: Answer) -> str:
    """The cut list of a room, one line for each piece, and what a person should know before cutting."""
    pieces = answer["pieces"]
    rows = [
        (piece["letter"], piece["part_name"], piece["cut"]["shown"], _ends(piece),
         f"± {piece['plus_minus']['shown']}", "" if piece["provisional"] else piece["state"])
        for piece in pieces
    ]  # fmt: skip
    lines = [f"Cut list: {name}", *_columns(rows)]
    lines += [] if pieces else ["  No pieces yet."]
    for piece in pieces:
        lines += [f"  {piece['change']['message']}"] if piece["change"] else []
        lines += [f"  {piece['letter']}: {flag['message']}" for flag in piece["flags"]]
    lines += [f"  {one['message']}" for one in answer["gone"]]
    new = [piece["letter"] for piece in pieces if piece["provisional"]]
    lines += [f"  Not issued yet, and may change: {', '.join(new)}."] if len(new) < len(pieces) and new else []
    return "\n".join([*lines, *_remarks(answer)])


def format_boards(name: str, answer: Answer) -> str:
    """The board plan of a room: what to buy, what it costs, and the cuts of each board from its fresh end."""
    lines = [f"Boards: {name}"]
    for plan in answer["plans"]:
        lines += [f"  {plan['profile']}: {plan['summary']} ${plan['cost']}", f"  {plan['proof']}"]
        lines += [f"  {reason}" for reason in plan["reasons"]]
        lines += [
            f"  buy {line['count']} of {line['length']} at ${line['each']}: ${line['cost']} {line['why']}".rstrip()
            for line in plan["buy"]
        ]
        rows = [(f"board {number}", board["length"]["shown"], _cuts(board), f"left over {board['offcut']['shown']}")
                for number, board in enumerate(plan["boards"], 1)]  # fmt: skip
        lines += _columns(rows)
        lines += [f"  {blank['message']}" for blank in plan["blanks"]]
    lines += [] if answer["plans"] else ["  No boards yet."]
    return "\n".join([*lines, *_remarks(answer)])


def format_pieces_csv(answers: Iterable[tuple[str, Answer]]) -> str:
    """The cut lists of rooms as one table, every cell safe to open in a spreadsheet."""
    text = io.StringIO()
    table = csv.writer(text)
    table.writerow(COLUMNS)
    for name, answer in answers:
        for piece in answer["pieces"]:
            table.writerow([_safe(cell) for cell in (name, *_cells(piece))])
    return text.getvalue()


def _cells(piece: Answer) -> tuple[object, ...]:
    notes = " ".join(flag["message"] for flag in piece["flags"])
    change, as_cut, cut_to = piece["change"], piece["as_cut"], piece["cut_to"]
    return (
        piece["letter"], piece["part_name"], piece["profile"], piece["wall_number"], piece["cut"]["shown"],
        piece["cut"]["inches"], piece["back"]["shown"], piece["front"]["shown"], piece["left"]["shown"],
        piece["right"]["shown"], piece["plus_minus"]["shown"], piece["state"], cut_to["shown"] if cut_to else "",
        as_cut["text"] if as_cut else "", change["message"] if change else "", notes,
    )  # fmt: skip


def _safe(cell: object) -> object:
    return f"'{cell}" if isinstance(cell, str) and cell.startswith(FORMULA_STARTS) else cell


def _ends(piece: Answer) -> str:
    return f"{piece['left']['shown']} | {piece['right']['shown']}"


def _cuts(board: Answer) -> str:
    return ", ".join(
        f"{piece['letter']} at {piece['mark']['shown']}"
        if piece["state"] == "to cut"
        else f"{piece['letter']} {piece['state']}"
        for piece in board["pieces"]
    )


def _remarks(answer: Answer) -> list[str]:
    """What stands in the way, what to look at, and the cautions, each once."""
    said = [*answer.get("problems", ()), *answer.get("warnings", ())]
    remarks = [f"! {one['message'] if isinstance(one, Mapping) else one}" for one in said]
    return remarks + [f"Caution: {caution}" for caution in answer.get("cautions", ())]


def _columns(rows: Sequence[Sequence[str]]) -> list[str]:
    """Rows of text with their columns under each other."""
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    padded = ([cell.ljust(width) for cell, width in zip(row, widths, strict=True)] for row in rows)
    return ["  " + "  ".join(row).rstrip() for row in padded]
