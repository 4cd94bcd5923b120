"""Settings as they are written, one by one, to the standard that they make. Each is refused by its own sentence."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Any

from scantling.engine.boards.case.case import Stock
from scantling.engine.errors import EngineError, quote
from scantling.engine.movement import GREEN, find_wood
from scantling.engine.shown.shown_in import SHOWN_IN
from scantling.engine.standard import (
    AT_ARRIS,
    BEHIND,
    BEYOND_SPRING,
    BY_PLAN,
    EVEN,
    HEADS,
    IN_CORNER,
    INSIDE_JOINTS,
    MOLDINGS,
    NO,
    NONE,
    OFFCUT,
    ON_FALLING_FLOOR,
    OPEN_ENDS,
    OVERAGE_AT_MOST,
    PROUD_ENDS,
    SPARES_AT_MOST,
    STEEPEST_RAKE,
    STEEPEST_SCARF,
    STYLES,
    THING_ENDS,
    WINDOWS,
    YES,
    Standard,
    StandardError,
    parse_price,
)
from scantling.engine.tape.angles import SQUARE, parse_degrees
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length, format_inches, parse_length
from scantling.engine.words import say


def parse_stock(rows: object) -> tuple[Stock, ...]:
    """Rows of {length, price, limit} as written. Raises `StandardError` or `LengthError`."""
    if not isinstance(rows, list) or not all(isinstance(row, Mapping) for row in rows):
        raise StandardError("not-stock")
    return tuple(_parse_stock_row(row) for row in rows)


def _parse_stock_row(row: Mapping[str, Any]) -> Stock:
    limit = str(row.get("limit") or "").strip()
    if limit and not (limit.isascii() and limit.isdigit() and len(limit) <= 6):
        raise StandardError("not-a-count", text=quote(limit))
    length = _positive(say("standard-stock-length"), str(row.get("length", "")))
    return Stock(length, parse_price(str(row.get("price", ""))), int(limit) if limit else None)


def _positive(name: str, value: str) -> Length:
    length = parse_length(value)
    if length.inches <= 0:
        raise StandardError("not-positive", name=name, text=quote(value))
    if length.inches < SIXTY_FOURTH.inches:
        raise StandardError("too-thin", name=name, text=quote(value))
    return length


def _not_negative(name: str, value: str) -> Length:
    return parse_length(value)  # a reading is never negative: zero is a choice here, such as no reveal


def _few(name: str, value: str, most: int) -> int:
    written = value.strip().removesuffix("%").rstrip()
    if not (written.isascii() and written.isdigit() and len(written) <= 3 and int(written) <= most):
        raise StandardError("not-so-many", name=name, most=most, text=quote(value))
    return int(written)


def _choice(*choices: str) -> Any:
    def parse(name: str, value: str) -> str:
        if value not in choices:
            raise StandardError("not-a-choice", name=name, choices=", ".join(choices), text=quote(value))
        return value

    return parse


def _spring(name: str, value: str) -> Fraction:
    degrees = parse_degrees(value)
    if not 0 < degrees < SQUARE:
        raise StandardError("no-spring", text=quote(value))
    return degrees


def _rake(name: str, value: str) -> Fraction:
    degrees = parse_degrees(value)
    if not 0 < degrees < STEEPEST_RAKE:
        raise StandardError("no-rake", text=quote(value))
    return degrees


def _named_stock(name: str, value: object) -> tuple[tuple[str, Stock], ...]:
    """Boards of profiles that a person named: rows as any stock's, with the profile's name in each."""
    rows = value if isinstance(value, list) and all(isinstance(row, Mapping) for row in value) else []
    if rows != value or not all(str(row.get("profile") or "").strip() for row in rows):
        raise StandardError("no-profile")
    return tuple((str(row["profile"]).strip(), _parse_stock_row(row)) for row in rows)


def _moisture(name: str, value: str) -> Fraction | None:
    text = value.strip().removesuffix("%").strip()
    if not text:
        return None
    whole, _, decimals = text.partition(".")
    if not (text.isascii() and f"{whole}{decimals}".isdigit() and len(text) <= 6 and whole):
        raise StandardError("no-moisture", text=quote(value))
    moisture = Fraction(int(whole + decimals), 10 ** len(decimals))
    if moisture > GREEN:
        raise StandardError("no-moisture", text=quote(value))
    return moisture


def _species(name: str, value: str) -> str:
    return find_wood(value).name if value.strip() else ""


def _scarf(name: str, value: str) -> Fraction:
    degrees = parse_degrees(value)
    if degrees > STEEPEST_SCARF:
        raise StandardError("no-scarf", text=quote(value))
    return degrees


def _light(name: str, value: str) -> str:
    text = value.strip()
    if text in (WINDOWS, NONE) or (text.isascii() and text.isdigit() and len(text) <= 3 and int(text) > 0):
        return text
    raise StandardError("no-light", text=quote(value))


def _range(name: str, value: str) -> Fraction:
    degrees = parse_degrees(value)
    if not 45 <= degrees < SQUARE:
        raise StandardError("no-range", text=quote(value))
    return degrees


def _or_none(parse: Any) -> Any:
    return lambda name, value: None if value.strip() == NONE else parse(name, value)


def _stock(name: str, value: object) -> tuple[Stock, ...]:
    return parse_stock(value)


SETTINGS: dict[str, Any] = {
    "base.wanted": _choice(YES, NO),
    "casing.wanted": _choice(YES, NO, NONE),
    "base.height": _positive,
    "base.thickness": _positive,
    "base.inside": _choice(*INSIDE_JOINTS),
    "base.scarf": _scarf,
    "base.floor": _choice(*ON_FALLING_FLOOR),
    "scarf.place": _choice(BY_PLAN, EVEN, OFFCUT),
    "light.from": _light,
    "bow.spring": _not_negative,
    "bow.beyond": _choice(*BEYOND_SPRING),
    "base.stock": _stock,
    **{
        f"{molding}.{setting}": parse
        for molding in (*MOLDINGS, "crown")
        if molding != "base"
        for setting, parse in (
            ("wanted", _choice(YES, NO)),
            ("thickness", _positive),
            ("width", _positive),
            ("height", _positive),
            ("inside", _choice(*INSIDE_JOINTS)),
            ("stock", _stock),
        )
        if hasattr(Standard, f"{molding}_{setting}")
    },
    "crown.spring": _spring,
    "crown.spring_in": _not_negative,
    "crown.inside": _choice("cope", "miter"),
    "blocking.wanted": _choice(YES, NO),
    "blocking.gap": _not_negative,
    "blocking.stock": _stock,
    "joint.gap": _not_negative,
    "cope.least": _not_negative,
    "thing.clearance": _not_negative,
    "thing.end": _choice(*THING_ENDS),
    "thing.rake": _or_none(_rake),
    "thing.rises": _choice("left", "right"),
    "thing.behind": _choice(*BEHIND),
    "toe.height": _or_none(_positive),
    "toe.depth": _positive,
    "open_end": _choice(*OPEN_ENDS),
    "proud_end": _choice(*PROUD_ENDS),
    "casing.width": _positive,
    "casing.thickness": _positive,
    "casing.head_width": _or_none(_positive),
    "casing.overhang": _not_negative,
    "casing.clearance": _not_negative,
    "casing.corner": _choice(*IN_CORNER),
    "casing.arris": _choice(*AT_ARRIS),
    "casing.stock": _stock,
    "casing.head_stock": _stock,
    "other.stock": _named_stock,
    "grain.order": _choice(YES, NO),
    "wood.species": _species,
    "wood.cut": _choice("flat", "quarter"),
    "wood.from": _moisture,
    "wood.to": _moisture,
    "reveal": _not_negative,
    "head": _choice(*HEADS),
    "plinth.height": _or_none(_positive),
    "plinth.width": _or_none(_positive),
    "plinth.thickness": _positive,
    "plinth.stock": _stock,
    "block.size": _or_none(_positive),
    "block.thickness": _positive,
    "block.stock": _stock,
    "fillet.thickness": _or_none(_positive),
    "fillet.overhang": _not_negative,
    "fillet.stock": _stock,
    "head_cap.thickness": _or_none(_positive),
    "head_cap.overhang": _not_negative,
    "head_cap.stock": _stock,
    "backband.width": _not_negative,
    "backband.thickness": _positive,
    "backband.stock": _stock,
    "window.style": _choice(*STYLES),
    "window.mulled": _choice(YES, NO),
    "stool.thickness": _positive,
    "stool.horn": _not_negative,
    "stool.stock": _stock,
    "apron.wanted": _choice(YES, NO),
    "apron.width": _or_none(_positive),
    "apron.thickness": _or_none(_positive),
    "apron.stock": _stock,
    "extension.wanted": _choice(YES, NO),
    "extension.thickness": _positive,
    "extension.step": _not_negative,
    "extension.stock": _stock,
    "kerf": _not_negative,
    "end_trim": _not_negative,
    "slack": _not_negative,
    "hold": _not_negative,
    "saw.range": _range,
    "shared_miters": _choice(YES, NO),
    "spare_sticks": lambda name, value: _few(name, value, SPARES_AT_MOST),
    "lengths": _choice(*SHOWN_IN),
    "overage": lambda name, value: Fraction(_few(name, value, OVERAGE_AT_MOST)),
}
# What one opening may differ in from its room, on purpose: its casing and what goes with it, not the room's moldings.
OF_OPENING = (
    "casing.", "plinth.", "block.", "fillet.", "head_cap.", "backband.", "window.", "stool.", "apron.", "extension.",
    "reveal", "head",
)  # fmt: skip
# What a room uses up is counted by these; the question about supplies reads them.
OF_SUPPLIES = ("caulk.", "adhesive.", "nail.", "filler.", "sandpaper.", "tape.", "paste.", "cloth.")
# What one thing in the way may differ in: how boards end at it, and whether the wall behind it is covered.
OF_THING = ("thing.", "toe.")
# Boards are of a size: said for one, they are not boards of another.
SIZES = {
    "base.stock": ("base.height", "base.thickness"),
    "casing.stock": ("casing.width", "casing.thickness"),
    "casing.head_stock": ("casing.head_width", "casing.thickness"),
    "plinth.stock": ("plinth.width", "plinth.thickness"),
    "stool.stock": ("stool.thickness",),
    "apron.stock": ("apron.width", "apron.thickness"),
    "extension.stock": ("extension.thickness",),
}


def lay_over(settings: Mapping[str, object], own: Mapping[str, object]) -> dict[str, object]:
    """The settings of a house with those of a room, or of one opening, over them.

    Boards of a profile do not come along to where it has another size.

    >>> lay_over({"casing.width": "2 1/4", "casing.stock": []}, {"casing.width": "3 1/2"})
    {'casing.width': '3 1/2'}
    """
    laid = {**settings, **own}
    for stock, sizes in SIZES.items():
        if stock not in own and any(name in own and own[name] != settings.get(name) for name in sizes):
            laid.pop(stock, None)
    return laid


def check_setting(name: str, value: object) -> list[EngineError]:
    """What is wrong with a setting's value: nothing, or the refusal. A name of a newer engine is not judged."""
    try:
        _parse_settings({name: value})
    except EngineError as error:
        return [error]
    return []


def derive_standard(settings: Mapping[str, object]) -> Standard:
    """Settings by dotted name, as written, to the standard they make. Raises the first `EngineError`."""
    given = _parse_settings(settings)
    fields = {name.replace(".", "_"): value for name, value in given.items()}
    return replace(Standard(), **fields, given=frozenset(given))


def _parse_settings(settings: Mapping[str, object]) -> dict[str, Any]:
    given: dict[str, Any] = {}
    for name, value in settings.items():
        if name in SETTINGS:
            written = value if name.endswith("stock") else str(value)
            try:
                given[name] = SETTINGS[name](name, written)
            except EngineError as error:
                refusal = StandardError("bad-value", name=name, sentence=error.message, field=name, at=error.at)
                refusal.key = error.key
                raise refusal from error
    return given


def dotted(standard: Mapping[str, Any]) -> dict[str, object]:
    """A nested standard, as in a room's question, to settings by dotted name.

    >>> dotted({"base": {"height": "5 1/2"}, "reveal": "3/16"})
    {'base.height': '5 1/2', 'reveal': '3/16'}
    """
    flat: dict[str, object] = {}
    for name, value in standard.items():
        if isinstance(value, Mapping):
            flat |= {f"{name}.{below}": held for below, held in value.items()}
        else:
            flat[name] = value
    return flat


def _default(name: str) -> str:
    value = getattr(Standard(), name.replace(".", "_"))
    if isinstance(value, Length):
        return format_inches(value).rstrip('"')
    if value is None:
        return "" if name.startswith("wood.") else NONE
    return str(value)


# What a setting is until a person says otherwise, as text; stock has no default, for no price can be guessed.
DEFAULTS = {name: _default(name) for name in SETTINGS if not name.endswith("stock")}
