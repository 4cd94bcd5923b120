"""`files`: the cut list of a room as a table for a spreadsheet and as all that is known of it, its plan and its walls
as drawings that stand alone. Page and command line write these texts as they are: no file depends on who wrote it."""

from collections.abc import Iterable, Mapping
from typing import Any

from marshmallow import Schema

from scantling.engine.drawings import svg
from scantling.engine.drawings.elevation import draw_elevation
from scantling.engine.drawings.plans.whole import draw_whole
from scantling.engine.questions.cutlist.cut_list import find_list
from scantling.engine.questions.cutlist.pieces import PiecesIn, answer_pieces
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.written import INCHES, count_in, format_csv, format_json
from scantling.engine.shapes import out, text_out
from scantling.engine.shown.shown_in import MILLIMETERS
from scantling.engine.words import say

#: A table is in millimeters where every room with pieces on it is shown so.
COLUMNS = (
    "room", "letter", "part", "profile", "wall", "cut", INCHES, "back", "front", "left end", "right end",
    "plus or minus", "state", "cut to", "as cut", "change", "notes",
)  # fmt: skip


class WallFileOut(Schema):
    wall, name, drawing = text_out(), text_out(), text_out()


class FilesOut(Schema):
    csv, json, plan = text_out(), text_out(), text_out()
    walls = out(WallFileOut, many=True)


def format_table(answers: Iterable[tuple[str, Mapping[str, Any]]]) -> str:
    """The cut lists of rooms, as `pieces` answers them, as one table."""
    listed = [(name, answer) for name, answer in answers if answer["pieces"]]
    metric = {answer["lengths"] for _, answer in listed} == {MILLIMETERS}
    cells = ((name, *_cells(piece, metric)) for name, answer in listed for piece in answer["pieces"])
    return format_csv(COLUMNS, cells, metric)


def format_all(answers: Iterable[tuple[str, Mapping[str, Any]]]) -> str:
    """All that `pieces` answers of rooms, as JSON."""
    return format_json([{"room": name, **answer} for name, answer in answers])


def _cells(piece: Mapping[str, Any], metric: bool) -> tuple[object, ...]:
    notes = " ".join(flag["message"] for flag in piece["flags"])
    change, as_cut, cut_to = piece["change"], piece["as_cut"], piece["cut_to"]
    return (
        piece["letter"], piece["part_name"], piece["profile_shown"], piece["wall_number"], piece["cut"]["shown"],
        count_in(piece["cut"], metric), piece["back"]["shown"], piece["front"]["shown"], piece["left"]["shown"],
        piece["right"]["shown"], piece["plus_minus"]["shown"], piece["state"], cut_to["shown"] if cut_to else "",
        as_cut["text"] if as_cut else "", change["message"] if change else "", notes,
    )  # fmt: skip


def answer_files(asked: dict[str, Any], context: Context) -> Answer:
    room, cut_list, _, _ = find_list(asked, context)
    answered = [(room.name, answer_pieces(asked, context))]
    return {
        "csv": format_table(answered),
        "json": format_all(answered),
        "plan": svg.alone(draw_whole(room, cut_list.pieces)),
        "walls": [
            {"wall": wall.id, "name": wall.name, "drawing": svg.alone(draw_elevation(room, wall, cut_list.pieces))}
            for wall in room.walls
        ],
    }


QUESTIONS = (
    Question("files", say("question-files"), PiecesIn, FilesOut, answer_files),
)
