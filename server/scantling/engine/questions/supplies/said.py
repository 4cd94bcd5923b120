"""The settings by which a room's supplies are counted: a house's, or those in which a room differs on purpose."""

from collections.abc import Mapping

from marshmallow import fields

from scantling.engine.errors import EngineError
from scantling.engine.forms import Field
from scantling.engine.questions.readings import Positive
from scantling.engine.questions.said import check_by, fields_of
from scantling.engine.questions.supplies.shapes import BeadIn, Covers, FastenerIn, SundryIn
from scantling.engine.settings import OF_SUPPLIES
from scantling.engine.shapes import LengthText, one_of
from scantling.engine.standard import NO, YES
from scantling.engine.supplies.sundries import SUNDRIES

#: Sundries by the name that their settings go by.
SUNDRY_OF = {"filler": "filler", "sandpaper": "sandpaper", "tape": "masking tape", "paste": "paste",
             "cloth": "drop cloth"}  # fmt: skip
SORTS = tuple(prefix.rstrip(".") for prefix in OF_SUPPLIES)

FIELDS: Mapping[str, Field] = {
    **{f"{sort}.wanted": fields.String(validate=one_of(YES, NO)) for sort in SORTS},
    **fields_of("caulk", BeadIn, "shape", "size", "tube", "waste", "price"),
    **fields_of("adhesive", BeadIn, "size", "tube", "waste", "price"),
    "adhesive.apart": Positive(),
    **fields_of("nail", FastenerIn, "bite", "apart", "boxes"),
    "nail.board": LengthText(),
    "nail.crown": Positive(),
    **{name: field for sort in SUNDRY_OF for name, field in fields_of(sort, SundryIn, "price").items()},
    **{f"{sort}.covers": Covers(SUNDRIES[name].by) for sort, name in SUNDRY_OF.items()},
}
#: What each is until somebody says otherwise. All are common practice, no source, but for those named in `supplies`.
DEFAULTS = {
    **{f"{sort}.wanted": YES for sort in SORTS},
    "caulk.shape": "fillet", "caulk.size": "1/8", "caulk.tube": "10.1 fl oz", "caulk.waste": "10",
    "adhesive.size": "1/4", "adhesive.tube": "10 fl oz", "adhesive.waste": "10", "adhesive.apart": "16",
    "nail.board": "1/2", "nail.crown": "11/16", "nail.bite": "3/4", "nail.apart": "16",
    "filler.covers": "400", "sandpaper.covers": "20", "tape.covers": "180", "paste.covers": "300",
    "cloth.covers": "108",
}  # fmt: skip



def check_supply(name: str, value: object) -> list[EngineError]:
    """What is wrong with a setting of the supplies: nothing, or the refusal. Other names are not judged."""
    return check_by(FIELDS, name, value)
