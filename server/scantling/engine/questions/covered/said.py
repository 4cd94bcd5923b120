"""What is said of an article and of a covering: settings by name, each read by the field of the question it goes into.

So what is written beside a roll is understood as a question understands it, and refused in the same words.
"""

from collections.abc import Mapping
from typing import Any

from marshmallow import fields

from scantling.engine.bodies import FILM, PAINT, PAPER, SHEET
from scantling.engine.errors import EngineError
from scantling.engine.forms import Field, Schema
from scantling.engine.notebook import Notebook
from scantling.engine.questions.amounts import Amount, Area, FilmPrice, Price
from scantling.engine.questions.coverings.paint import ProductIn
from scantling.engine.questions.coverings.panes import PanesIn
from scantling.engine.questions.coverings.seam_shapes import SeamsIn
from scantling.engine.questions.coverings.shapes import RollIn
from scantling.engine.questions.coverings.sheets import SheetIn, SheetsIn
from scantling.engine.questions.readings import Positive
from scantling.engine.questions.said import Wrong, check_by, collect, fields_of, show_by
from scantling.engine.shown.shown_in import is_metric

COVER = "cover"


class SurfaceSaid(Schema):
    """Walls, ceiling or trim of the room; or something of one's own, with its area."""

    name = fields.String(required=True)
    area = Area()


#: Every setting of an article or a covering, and the field that reads it.
FIELDS: Mapping[str, Field] = {
    **fields_of(PAPER, RollIn, "width", "length", "repeat", "match", "drop", "tolerance", "hanging", "overlap"),
    **fields_of(FILM, PanesIn, "gap", "allowance", "turnable", width="roll_width"),
    **fields_of(SHEET, SheetIn, "width", "length"),
    **fields_of(SHEET, SheetsIn, "kerf", "gap", "turnable"),
    **fields_of(PAINT, ProductIn, "coats", "spread", "loss", "keep", "cans"),
    **fields_of(COVER, SeamsIn, "walls", "panels", "height", "from_floor", "from_ceiling", "trim", "turn", "sliver"),
    **fields_of(COVER, SeamsIn, "mark", "mismatch", start="starts"),
    **fields_of(COVER, PanesIn, "panes"),
    **fields_of(COVER, SheetsIn, sheets="panels"),
    "film.length": Positive(),
    "cover.surfaces": fields.List(fields.Nested(SurfaceSaid)),
    "cover.growth": Amount("growth", most=100),
    **{f"{sort}.price": Price() for sort in (PAPER, SHEET)},
    "film.price": FilmPrice(),
}
#: What a plan cannot do without, by sort, with the key of the words that ask for it.
NEEDED = {
    PAPER: {"paper.width": "wanted-roll-width", "paper.length": "wanted-roll-length"},
    FILM: {"film.width": "wanted-roll-width"},
    SHEET: {"sheet.width": "wanted-sheet-width", "sheet.length": "wanted-sheet-length"},
    PAINT: {"paint.spread": "wanted-spread", "paint.cans": "wanted-cans"},
}


#: What each is until somebody says otherwise, as text; each is the default of its field, and a test compares.
DEFAULTS = {
    "paper.match": "free", "paper.hanging": "paste", "paper.repeat": "0", "paper.drop": "2", "paper.tolerance": "1.5",
    "film.turnable": "no", "film.gap": "1/16", "film.allowance": "1",
    "sheet.turnable": "no", "sheet.kerf": "1/8", "sheet.gap": "0",
    "paint.coats": "2", "paint.loss": "0",
    "cover.trim": "4", "cover.turn": "1/2", "cover.sliver": "2", "cover.mark": "0",
    "cover.growth": "12.5",
}  # fmt: skip


def defaults_of(prefix: str) -> dict[str, str]:
    """The defaults of an article's sort, or of where it goes."""
    usual = {name: text for name, text in DEFAULTS.items() if name.startswith(f"{prefix}.")}
    return show_by(FIELDS, usual) if is_metric() else usual


def check_said(name: str, value: object) -> list[EngineError]:
    """What is wrong with a setting of an article or a covering: nothing, or the refusal. Other names are not judged."""
    return check_by(FIELDS, name, value)


def collect_said(notebook: Notebook, of: str, prefix: str) -> tuple[dict[str, Any], list[Wrong]]:
    """What is said of an article or a covering, as a question carries it, by name without the prefix; and what is
    wrong, which is left out."""
    return collect(FIELDS, {name: entry.body["value"] for name, (entry, _) in notebook.settings(of).items()}, prefix)
