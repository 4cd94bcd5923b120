"""What an entry of each kind says: its body, checked on the phone and on the laptop alike.

Texts stand as they were typed; what they mean is judged where they are read.
"""

import re
from collections.abc import Callable, Mapping
from typing import Any

from marshmallow import RAISE, ValidationError, fields, validate

from scantling.engine.forms import Schema
from scantling.engine.tape.figures import FIGURE_AT_MOST, is_figure
from scantling.engine.words import say

TEXT_AT_MOST = 2000
LIST_AT_MOST = 200
#: Bytes: a photograph of a phone has three to eight million.
BLOB_AT_MOST = 32_000_000
PAPER, FILM, SHEET, PAINT = "paper", "film", "sheet", "paint"
SORTS = (PAPER, FILM, SHEET, PAINT)
AS_A_DATE = say("body-date")

ID = re.compile(r"[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}\Z")


def id_field(**options: Any) -> fields.String:
    return fields.String(required=True, validate=validate.Regexp(ID, error=say("body-id")), **options)


def _words(**options: Any) -> fields.String:
    return fields.String(required=True, validate=validate.Length(max=TEXT_AT_MOST), **options)


def _figure() -> fields.String:
    return fields.String(required=True, allow_none=True, validate=validate.Length(max=FIGURE_AT_MOST))


def _choice(*choices: str) -> fields.String:
    return fields.String(required=True, validate=validate.OneOf(choices))


class TrueOrFalse(fields.Boolean):
    """Nothing else: to Python 1 is True, and a set of truths that holds True holds 1."""

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> bool:
        if not isinstance(value, bool):
            raise self.make_error("invalid", input=value)
        return value


class Body(Schema):
    class Meta:
        unknown = RAISE


class HouseBody(Body):
    house, name = id_field(), _words()
    built = fields.Integer(required=True, allow_none=True, strict=True, validate=validate.Range(1, 9999))


class RoomBody(Body):
    room, house, name = id_field(), id_field(), _words()
    closed = TrueOrFalse(required=True)


class WallBody(Body):
    room, wall = id_field(), id_field()
    after = id_field(allow_none=True)
    turn = _choice("inside", "outside")


class OpeningBody(Body):
    opening, wall = id_field(), id_field()
    kind = _choice("door", "window", "cased")


class ObstacleBody(Body):
    obstacle, wall, kind = id_field(), id_field(), _words()
    base = _choice("stops", "notch", "over")


FIGURES = (
    "length", "corner", "sides", "at", "width", "height", "left", "right", "left_corner", "right_corner", "studs",
    "ceiling", "ceiling_corner", "plumb", "bow", "fall", "chair_rail", "picture_rail", "depth", "sill", "in_place",
    "salvaged",
    "sash", "depth_left", "depth_right", "depth_head", "depth_sill",
)  # fmt: skip
#: Of a piece: what it is to be cut to. It is no reading; a pin may show it.
CUT_TO = "cut"


class ReadingBody(Body):
    of = id_field()
    what = _choice(*FIGURES)
    text = _words()


def _check_setting(value: object) -> None:
    if isinstance(value, str) and len(value) <= TEXT_AT_MOST:
        return
    if isinstance(value, list) and len(value) <= LIST_AT_MOST and all(_is_row(row) for row in value):
        return
    raise ValidationError(say("body-setting"))


def _is_row(row: object) -> bool:
    return isinstance(row, dict) and all(
        (isinstance(cell, str) and len(cell) <= TEXT_AT_MOST) or cell is None for cell in row.values()
    )


class SettingBody(Body):
    of = id_field()
    name = fields.String(required=True, validate=validate.Regexp(r"[a-z_]+(\.[a-z_]+){0,3}\Z"))
    value = fields.Raw(required=True, validate=_check_setting)


def _check_issued(value: object) -> None:
    if isinstance(value, list) and len(value) <= LIST_AT_MOST and all(_is_issued(row) for row in value):
        return
    raise ValidationError(say("body-list"))


def _is_issued(row: object) -> bool:
    return isinstance(row, dict) and row.keys() == _ISSUED.keys() and all(
        isinstance(cell, str) and _ISSUED[name].match(cell) for name, cell in row.items()
    )  # fmt: skip


_ISSUED = {
    "piece": ID,
    "key": re.compile(r"(?s).{1,500}\Z"),
    "letter": re.compile(r"[A-Z]{1,4}\Z"),
    "name": re.compile(r"(?s).{0,500}\Z"),
    "profile": re.compile(r"(?s).{0,200}\Z"),
    "cut": re.compile(rf"(?s).{{0,{FIGURE_AT_MOST}}}\Z"),
    "shown": re.compile(rf"(?s).{{0,{FIGURE_AT_MOST}}}\Z"),
}


class IssueBody(Body):
    """A list of pieces handed out: from then on each has its letter for ever. A long list is several entries."""

    list, room = id_field(), id_field()
    pieces = fields.Raw(required=True, validate=_check_issued)


class StateBody(Body):
    """What a person says of a piece. A cut remembers what it was cut to: the figure, and how its ends were to be."""

    piece = id_field()
    state = _choice("to cut", "cut", "fitted", "recut")
    cut_to, left, right = _figure(), _figure(), _figure()
    as_cut = _words(allow_none=True)


#: The corners that boards are cut to, by the figure that is read of each: of a wall, the one at its right end.
CORNERS_CUT = ("corner", "ceiling_corner")


class ScrapCutBody(Body):
    """What two scraps, cut for a corner before its boards, showed there, in a few words: 45.5 fits."""

    of = id_field()
    what = _choice(*CORNERS_CUT)
    text = fields.String(
        required=True, validate=validate.Regexp(r"(?s)(?=.*\S).{1,200}\Z", error=say("body-showed"))
    )


class FreeBody(Body):
    """A piece of a room that no rule of the trade gives: its length is a sum, `text`, and so many are `count`."""

    free, room = id_field(), id_field()
    name = fields.String(required=True, validate=validate.Regexp(r"(?=.*\S).{1,80}\Z", error=say("body-name")))
    profile = fields.String(required=True, validate=validate.Regexp(r"(?=.*\S).{1,80}\Z", error=say("body-stock")))
    text = _words()
    count = fields.String(required=True, validate=validate.Regexp(r"[1-9][0-9]{0,2}\Z", error=say("not-a-count")))


_LINES: dict[str, Callable[[Any], bool]] = {
    "key": lambda value: isinstance(value, str) and 0 < len(value) <= 500,
    "letter": lambda value: isinstance(value, str) and re.match(r"[A-Z]{1,4}\Z", value) is not None,
    "takes": lambda value: _is_length(value),
    "spoilt": lambda value: isinstance(value, bool),
}
_ROWS: dict[str, Callable[[Any], bool]] = {
    "board": lambda value: isinstance(value, str) and ID.match(value) is not None,
    "source": lambda value: value is None or _is_short(value),
    "length": lambda value: _is_length(value),
    "cents": lambda value: isinstance(value, str) and re.match(r"\d{1,9}\Z", value, re.ASCII) is not None,
    "bought": lambda value: isinstance(value, bool),
    "pieces": lambda value: isinstance(value, list) and len(value) <= LIST_AT_MOST
    and all(_fits_rows(one, _LINES) for one in value),
}  # fmt: skip


def _is_short(value: object) -> bool:
    return isinstance(value, str) and len(value) <= FIGURE_AT_MOST


def _is_length(value: object) -> bool:
    """A figure as `format_figure` writes it, more than nothing: a wrong one must not be taken for no length."""
    return isinstance(value, str) and is_figure(value) and bool(value.partition("/")[0].strip("0."))


def _fits_rows(value: object, rows: Mapping[str, Callable[[Any], bool]]) -> bool:
    return isinstance(value, dict) and value.keys() == rows.keys() and all(rows[name](value[name]) for name in rows)


def _check_boards(value: object) -> None:
    if isinstance(value, list) and len(value) <= LIST_AT_MOST and all(_fits_rows(row, _ROWS) for row in value):
        return
    raise ValidationError(say("body-plan"))


class PlanBody(Body):
    """The boards that a person settled on for a room's profile: it is shown from then on, on every device."""

    of = id_field()
    profile = _words()
    boards = fields.Raw(required=True, validate=_check_boards)


def _name() -> fields.String:
    return fields.String(required=True, validate=validate.Regexp(r"(?=.*\S).{1,80}\Z", error=say("body-name")))


class ArticleBody(Body):
    """Something that is bought to cover with; what its label says are settings of it: paper.width, paint.cans."""

    article, house = id_field(), id_field()
    sort = _choice(*SORTS)
    name = _name()


class CoveringBody(Body):
    """What a room is covered with; where, and how, are settings of it: cover.walls, cover.from_floor."""

    covering, room, article = id_field(), id_field(), id_field()


class LotBody(Body):
    """So many of a thing that came together: bought, with what was paid in all and when; or on hand, with no price.

    `of` is a room or a house; `name` is what it is, as the plan calls it, where it is of no article.
    """

    lot, of = id_field(), id_field()
    article = id_field(allow_none=True)
    name = _name()
    count = fields.String(required=True, validate=validate.Regexp(r"[0-9]{1,4}\Z", error=say("not-a-count")))
    price = fields.String(required=True, validate=validate.Length(max=FIGURE_AT_MOST))
    date = fields.String(required=True, validate=validate.Regexp(r"(\d{4}-\d{2}-\d{2})?\Z", re.ASCII, error=AS_A_DATE))
    note = _words()


class AttachmentBody(Body):
    """A file that goes with a house, a room, a wall or a thing, such as a photograph: its bytes travel by themselves.

    `blob` is the SHA-256 of those bytes in hex; `size` is in bytes; `type` is a media type (RFC 6838).
    """

    attachment, of = id_field(), id_field()
    blob = fields.String(required=True, validate=validate.Regexp(r"[0-9a-f]{64}\Z"))
    size = fields.Integer(required=True, strict=True, validate=validate.Range(1, BLOB_AT_MOST))
    type = fields.String(required=True, validate=validate.Regexp(r"[a-z]+/[a-z0-9.+-]{1,100}\Z"))
    name = _words()


#: Places on a photo are so many parts of its width from the left, and of its height from the top.
PARTS = 10_000
POINTS_AT_MOST = 200


def _check_points(value: object) -> None:
    if isinstance(value, list) and 2 <= len(value) <= POINTS_AT_MOST and all(_is_point(one) for one in value):
        return
    raise ValidationError(
        say("body-stroke", most=POINTS_AT_MOST, parts=PARTS)
    )


def _is_point(value: object) -> bool:
    # By their types, for Python holds True to be 1.
    return isinstance(value, list) and len(value) == 2 and all(type(one) is int and 0 <= one <= PARTS for one in value)


class StrokeBody(Body):
    """A line drawn on a photo in one go. Like a reading it is never said anew: it is struck, and another drawn."""

    attachment = id_field()
    points = fields.Raw(required=True, validate=_check_points)


def _place() -> fields.Integer:
    said = say("body-place", parts=PARTS)
    return fields.Integer(required=True, strict=True, validate=validate.Range(0, PARTS, error=said))


class PinBody(Body):
    """A figure pinned on a photo, where it was taken: which figure of which thing, and where on the photo."""

    pin, attachment, of = id_field(), id_field(), id_field()
    what = _choice(*FIGURES, CUT_TO)
    x, y = _place(), _place()


class SumBody(Body):
    """A sum that is kept, as it was typed; `of` is the room in which it was done, where there was one."""

    sum = id_field()
    of = id_field(allow_none=True)
    text = fields.String(required=True, validate=validate.Regexp(r"(?s)(?=.*\S).{1,1000}\Z", error=say("body-sum")))
    note = _words()


class TickBody(Body):
    """A line of a list that is done with: a step of the work, a strip, a thing to buy, a caution.

    `remember` is what the line said then, so that a list that has changed since can tell.
    """

    of = id_field()
    list = _choice("work", "strips", "supplies", "cautions")
    key = fields.String(required=True, validate=validate.Length(min=1, max=500))
    state = _choice("done", "skipped", "cut", "hung", "bought", "dismissed")
    remember = fields.String(required=True, validate=validate.Length(max=TEXT_AT_MOST))


class StrikeBody(Body):
    entry, why = id_field(), _words()


class DeviceBody(Body):
    name = _words()


BODIES: dict[str, type[Body]] = {
    "house": HouseBody,
    "room": RoomBody,
    "wall": WallBody,
    "opening": OpeningBody,
    "obstacle": ObstacleBody,
    "reading": ReadingBody,
    "setting": SettingBody,
    "issue": IssueBody,
    "state": StateBody,
    "test_cut": ScrapCutBody,
    "free": FreeBody,
    "plan": PlanBody,
    "article": ArticleBody,
    "covering": CoveringBody,
    "lot": LotBody,
    "attachment": AttachmentBody,
    "stroke": StrokeBody,
    "pin": PinBody,
    "sum": SumBody,
    "tick": TickBody,
    "strike": StrikeBody,
    "device": DeviceBody,
}
