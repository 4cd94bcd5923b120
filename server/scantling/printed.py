"""Answers as plain text and as tables: the cut list and the board plan, for a terminal, a printer or a spreadsheet.

It takes answers of the desk and lays out what they already say; it knows no figure of its own.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from scantling.engine.errors import plain

Answer = Mapping[str, Any]

def format_pieces(name: str, answer: Answer) -> str:
    """The cut list of a room, one line for each piece, and what a person should know before cutting."""
    pieces = answer["pieces"]
    rows = [
        (piece["letter"], piece["part_name"], piece["cut"]["shown"], _ends(piece),
         f"± {piece['plus_minus']['shown']}", "" if piece["provisional"] else piece["state"])
        for piece in pieces
    ]  # fmt: skip
    lines = [f"Cut list: {plain(name)}", *_columns(rows)]
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
    lines = [f"Boards: {plain(name)}"]
    for plan in answer["plans"]:
        lines += [f"  {plan['profile_shown']}: {plan['summary']} ${plan['cost']}", f"  {plan['proof']}"]
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
