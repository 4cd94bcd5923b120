"""`list_files`: a list of a room as a table for a spreadsheet, and as all that is known of it. Page and command line
write these texts as they are; no clock cuts the search of boards off, so every device writes the same.
"""

from collections.abc import Callable, Iterator, Mapping
from typing import Any, NamedTuple

from marshmallow import Schema, fields, validate

from scantling.engine.boards.search.plan import USUAL_TIME_LIMIT
from scantling.engine.notebook import Notebook
from scantling.engine.questions.boards.room_boards import answer_boards_for_room
from scantling.engine.questions.covered.covering import CoveringsIn, answer_covering
from scantling.engine.questions.covered.planned import coverings_of
from scantling.engine.questions.cutlist.pieces import answer_pieces
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.shopping.shopping import answer_shopping
from scantling.engine.questions.written import LISTS, count_in, format_csv, format_json
from scantling.engine.shapes import text_out
from scantling.engine.shown.shown_in import is_metric
from scantling.engine.standard import format_price
from scantling.engine.survey.facts import find_room
from scantling.engine.tape.lengths import SIXTEENTH
from scantling.engine.words import say

Cells = tuple[object, ...]
#: The figures of a thing that has none.
NO_LENGTH: Cells = ("", "")
NO_PIECE: Cells = ("", "", "", "", "")


class List(NamedTuple):
    """`derive` gives all that is known of it in a room, and `rows` what a table says of that, room by room."""

    heads: tuple[str, ...]
    derive: Callable[[Notebook, str], Answer]
    rows: Callable[[Answer], Iterator[Cells]]


class ListFilesOut(Schema):
    csv, json = text_out(), text_out()


def _length(length: Mapping[str, Any]) -> Cells:
    return length["shown"], count_in(length, is_metric())


def _boards(notebook: Notebook, room: str) -> Answer:
    asked = {"room": room, "nearest": SIXTEENTH, "time_limit": USUAL_TIME_LIMIT}
    return answer_boards_for_room(asked, Context(notebook))


def _rows_of_boards(answer: Answer) -> Iterator[Cells]:
    for plan in answer["plans"]:
        paid_for = plan["accept"]["body"]["boards"]
        for number, (board, said) in enumerate(zip(plan["boards"], paid_for, strict=True), start=1):
            is_to_buy = not board["bought"] and not said["source"]
            head = (
                plan["profile_shown"], number, board["length_shown"], count_in(board["length"], is_metric()),
                format_price(int(said["cents"])) if is_to_buy else "", "to buy" if is_to_buy else "here", board["why"],
            )  # fmt: skip
            cuts = [
                (place, piece["letter"], piece["state"], *_length(piece["mark"]))
                for place, piece in enumerate(board["pieces"], start=1)
            ]
            for cut in cuts or [NO_PIECE]:
                yield (*head, *cut, *_length(board["offcut"]))


def _coverings(notebook: Notebook, room: str) -> Answer:
    context = Context(notebook)
    planned = [one.id for one in coverings_of(context, room)]
    return {"coverings": [answer_covering({"room": room, "covering": one}, context) for one in planned]}


def _rows_of_strips(answer: Answer) -> Iterator[Cells]:
    for covering in answer["coverings"]:
        name, sort = covering["article"]["name"], covering["article"]["sort"]
        for line, sizes in zip(covering["list"], _sizes(covering), strict=True):
            for size in sizes:
                yield (name, sort, line["key"], *size, line["where"], line["state"], line["changed"])


def _sizes(covering: Answer) -> Iterator[list[Cells]]:
    """What each line of a covering's list is cut to: name, length, width, and the roll or sheet that it comes from."""
    if strips := covering["seams"]:
        for stretch in strips["stretches"]:
            for strip in stretch["strips"]:
                width = _length(strip["width"])
                yield [
                    (" ".join(filter(None, (strip["letter"], piece["what"], piece["over"]))), *_length(piece["cut"]),
                     *width, piece["roll"])
                    for piece in strip["pieces"]
                ]  # fmt: skip
    elif panes := covering["panes"]:
        blanks = {blank["pane"]: blank for blank in panes["blanks"]}
        for place in panes["layout"]:
            yield [_blank(blanks[place["pane"]], 1)]
    elif sheets := covering["sheets"]:
        panels = {panel["panel"]: panel for panel in sheets["panels"]}
        for number, sheet in enumerate(sheets["sheets"], start=1):
            yield from ([_blank(panels[cut["panel"]], number)] for cut in sheet["cuts"])
    else:
        yield from ([(line["said"], *NO_LENGTH, *NO_LENGTH, "")] for line in covering["list"])


def _blank(blank: Answer, number: int) -> Cells:
    return (blank["name"], *_length(blank["height"]), *_length(blank["width"]), number)


def _shopping(notebook: Notebook, room: str) -> Answer:
    return answer_shopping({"room": room}, Context(notebook))


def _rows_to_buy(answer: Answer) -> Iterator[Cells]:
    for good in answer["goods"]:
        for line in good["lines"]:
            yield (
                good["sort"], good["name_shown"], good["need"], good["here"], line["words"], line["each"],
                line["cost"], good["seen"], line["state"], line["changed"],
            )  # fmt: skip


def _labels(notebook: Notebook, room: str) -> Answer:
    """The pieces that have their letter for good: no other is labeled."""
    pieces = answer_pieces({"room": room, "nearest": SIXTEENTH}, Context(notebook))["pieces"]
    named = ("letter", "part_name", "profile_shown", "cut", "state")
    return {"labels": [{name: piece[name] for name in named} for piece in pieces if not piece["provisional"]]}


def _rows_of_labels(answer: Answer) -> Iterator[Cells]:
    for one in answer["labels"]:
        yield (one["letter"], *_length(one["cut"]), one["part_name"], one["profile_shown"], one["state"])


COLUMNS = {
    "boards": ("room", "profile", "board", "length", "length in inches", "price", "to buy", "from", "cut", "letter",
               "state", "ends at", "ends at in inches", "left over", "left over in inches"),
    "strips": ("room", "covering", "sort", "number", "what", "length", "length in inches", "width", "width in inches",
               "roll or sheet", "where", "state", "changed"),
    "shopping": ("room", "sort", "what", "wanted", "on hand", "to buy", "each", "cost", "price seen", "state",
                 "changed"),
    "labels": ("room", "letter", "cut", "cut in inches", "part", "profile", "state"),
}  # fmt: skip
BY_NAME = {
    "boards": List(COLUMNS["boards"], _boards, _rows_of_boards),
    "strips": List(COLUMNS["strips"], _coverings, _rows_of_strips),
    "shopping": List(COLUMNS["shopping"], _shopping, _rows_to_buy),
    "labels": List(COLUMNS["labels"], _labels, _rows_of_labels),
}


class ListFilesIn(CoveringsIn):
    of = fields.String(
        required=True, validate=validate.OneOf(LISTS), metadata={"description": say("ask-list-files-of")}
    )  # fmt: skip


def answer_list_files(asked: dict[str, Any], context: Context) -> Answer:
    room, chosen = asked["room"], BY_NAME[asked["of"]]
    name = find_room(context.notebook, room).body["name"]
    answer = chosen.derive(context.notebook, room)
    rows = ((name, *cells) for cells in chosen.rows(answer))
    return {
        "csv": format_csv(chosen.heads, rows, is_metric()),
        "json": format_json([{"room": name, **answer}]),
    }


QUESTIONS = (
    Question("list_files", say("question-list_files"), ListFilesIn, ListFilesOut, answer_list_files),
)
