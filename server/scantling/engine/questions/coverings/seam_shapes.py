"""The shapes of `seams`: what of a room is papered with which roll, and every strip with its pieces."""

from marshmallow import fields, validate

from scantling.engine.coverings.rolls.roll import TRIM
from scantling.engine.coverings.seams.start import SEAM, STRIP
from scantling.engine.forms import Schema
from scantling.engine.questions.coverings.shapes import CountsOut, RollIn
from scantling.engine.questions.facts import RoomIn
from scantling.engine.questions.readings import Positive, ProblemOut
from scantling.engine.shapes import DrawingOut, LengthOut, LengthText, one_of, out, text_out, texts_out
from scantling.engine.tape.lengths import HALF, ZERO, parse_length
from scantling.engine.words import say

# Past an inside corner, under the next part: common practice, no source. Narrower than 2 in: a hanging guide.
TURN, SLIVER = HALF, parse_length("2")


class StartIn(Schema):
    of = fields.String(required=True, metadata={"description": say("ask-start-of")})
    how = fields.String(validate=one_of(SEAM, STRIP), metadata={"description": say("ask-start-how")})
    at = LengthText(metadata={"description": say("ask-start-at")})


class WallPanelIn(Schema):
    name = fields.String(validate=validate.Length(max=80))
    wall = fields.String(required=True)
    at = LengthText(required=True)
    width, bottom, top = Positive(required=True), LengthText(required=True), Positive(required=True)


class SeamsIn(RoomIn):
    """All walls, where none are named; or panels on them, each hung by itself."""

    roll = fields.Nested(RollIn, required=True)
    walls = fields.List(fields.String(), load_default=[], validate=validate.Length(max=200))
    panels = fields.List(fields.Nested(WallPanelIn), load_default=[], validate=validate.Length(max=100))
    height = Positive(metadata={"description": say("ask-seams-height")})
    from_floor = LengthText(metadata={"description": say("ask-seams-from-floor")})
    from_ceiling = LengthText(metadata={"description": say("ask-seams-from-ceiling")})
    trim = LengthText(load_default=TRIM, metadata={"description": say("ask-trim")})
    turn = LengthText(load_default=TURN, metadata={"description": say("ask-seams-turn")})
    sliver = LengthText(load_default=SLIVER)
    mark = LengthText(load_default=ZERO, metadata={"description": say("ask-seams-mark")})
    start = fields.Nested(StartIn)
    starts = fields.List(
        fields.Nested(StartIn), load_default=[], validate=validate.Length(max=200),
        metadata={"description": say("ask-seams-starts")},
    )  # fmt: skip
    mismatch = fields.String(metadata={"description": say("ask-seams-mismatch")})


class WhereOut(Schema):
    wall, name = text_out(), text_out()
    start, end = out(LengthOut), out(LengthOut)


class StripPieceOut(Schema):
    """`roll` is 0 where it cannot be cut from any; `down` is from the top of the roll's first piece."""

    what, over = text_out(), text_out()
    cut, down = out(LengthOut), out(LengthOut)
    roll, place = fields.Integer(required=True), fields.Integer(required=True)


class StripOut(Schema):
    """`letter`: its place in the pattern; `mark`: from the top edge of its paper down to the pattern's mark."""

    number = fields.Integer(required=True)
    letter = text_out()
    width = out(LengthOut)
    mark = out(LengthOut, none=True)
    walls = out(WhereOut, many=True)
    turns = texts_out()
    pieces = out(StripPieceOut, many=True)
    beside = fields.Integer(required=True, allow_none=True, metadata={"description": say("told-strip-beside")})
    said = text_out()


class RollCutOut(Schema):
    """A piece in the order it is cut: for which strip, how long, and from how far below the first piece's top."""

    strip = fields.Integer(required=True)
    what = text_out()
    cut, down = out(LengthOut), out(LengthOut)


class RollOut(Schema):
    """`offcut`: what is left of it for certain."""

    roll = fields.Integer(required=True)
    pieces = out(RollCutOut, many=True)
    offcut = out(LengthOut)


class MismatchOut(Schema):
    of, said = text_out(), text_out()
    seen = out(LengthOut)


class KeepOut(Schema):
    """A start as `starts` takes it: so far from the left end of the wall, or of the panel on it."""

    of, at = text_out(), text_out()


class StretchOut(Schema):
    """`seen`: inches of seam in clear sight; `slivers`: how often a seam stands too near a corner or an opening."""

    start = text_out()
    keep = out(KeepOut)
    strips = out(StripOut, many=True)
    mismatch = out(MismatchOut, none=True)
    seen = out(LengthOut)
    slivers = fields.Integer(required=True)
    tried = fields.Integer(required=True)
    said = text_out()
    drawing = DrawingOut(required=True, metadata={"description": say("told-stretch-drawing")})


class WallDrawnOut(Schema):
    wall, name = text_out(), text_out()
    drawing = DrawingOut(required=True)


class SeamsOut(Schema):
    rolls = out(CountsOut)
    proven = fields.Boolean(required=True, metadata={"description": say("told-seams-proven")})
    strips = fields.Integer(required=True)
    stretches = out(StretchOut, many=True)
    cutting = out(RollOut, many=True)
    drawings = out(WallDrawnOut, many=True)
    said, working = texts_out(), texts_out()
    problems = out(ProblemOut, many=True)
    warnings, cautions = texts_out(), texts_out()
