"""The standard of a house: profiles, reveals and joints, so that its rooms match. A room may differ on purpose.

Every setting has a default that a person can change; a piece that leans on a default says so in its working.
"""

from dataclasses import dataclass, field, fields
from fractions import Fraction
from functools import cached_property

from scantling.engine.boards.case.case import Stock
from scantling.engine.errors import EngineError, quote
from scantling.engine.shown.shown_in import INCHES, MILLIMETERS, shown_in
from scantling.engine.tape.angles import format_degrees
from scantling.engine.tape.lengths import SIXTY_FOURTH, ZERO, Length, format_inches, format_length
from scantling.engine.words import say

INSIDE_JOINTS = ("cope", "miter", "butt")
HEADS = ("mitered", "butted")
STOOL, PICTURE = "stool", "picture"
STYLES = (STOOL, PICTURE)
YES, NO, NONE = "yes", "no", "none"
# Moldings that run along walls, and what their two sizes are called.
MOLDINGS = {
    "base": ("thickness", "height"), "cap": ("thickness", "width"), "shoe": ("thickness", "height"),
    "chair_rail": ("thickness", "width"), "picture_rail": ("thickness", "width"),
}  # fmt: skip
STEEPEST_SCARF = Fraction(60)
STEEPEST_RAKE = Fraction(60)
OPEN_ENDS = ("square", "returned")
NOTCHED = "notched"
PROUD_ENDS = ("eased", "returned", NOTCHED, "butted")
KEEPS, YIELDS = "keeps", "yields"
IN_CORNER = (KEEPS, YIELDS)
ENDED, WRAPPED = "ended", "wrapped"
AT_ARRIS = (ENDED, WRAPPED)
ON_FALLING_FLOOR = ("follow", "scribe", "taper")
THING_ENDS = ("square", "scribed")
# The wall behind a thing: covered with the rest or left bare, as is usual for its kind or as a person says.
USUAL, COVERED, BARE = "usual", "covered", "bare"
BEHIND = (USUAL, COVERED, BARE)
BLOCKING = "crown blocking"
SHIM, SCRIBE = "shim", "scribe"
BEYOND_SPRING = (SHIM, SCRIBE)
WINDOWS = "windows"
EVEN, OFFCUT, BY_PLAN = "even", "offcut", "plan"
SPARES_AT_MOST = 20
OVERAGE_AT_MOST = 100


class StandardError(EngineError):
    family = "standard"


@dataclass(frozen=True)  # not slotted: what is derived of it is kept in it, for every piece asks
class Standard:
    """What the pieces are made to. Defaults are common practice, no source, but for the reveal and the strips' step.

    The reveal of 3/16: NAVEDTRA 14044, interior finish of walls and ceilings, "allow about 3/16 edge distance". A jamb
    extension steps back by as much rather than lie flush (a trade journal, on jamb extensions). None: there is none, or
    it is as the casing is: head as legs, apron as casing, plinth as the leg on it.
    """

    base_wanted: str = YES
    casing_wanted: str = YES
    cap_wanted: str = NO
    shoe_wanted: str = NO
    chair_rail_wanted: str = NO
    picture_rail_wanted: str = NO
    crown_wanted: str = NO
    base_height: Length = Length(Fraction(11, 2))
    base_thickness: Length = Length(Fraction(9, 16))
    base_inside: str = "cope"
    base_scarf: Fraction = Fraction(30)
    base_floor: str = "follow"
    scarf_place: str = BY_PLAN
    light_from: str = WINDOWS
    bow_spring: Length = Length(Fraction(1, 8))
    bow_beyond: str = SHIM
    base_stock: tuple[Stock, ...] = ()
    cap_width: Length = Length(Fraction(9, 8))
    cap_thickness: Length = Length(Fraction(1, 2))
    cap_inside: str = "cope"
    cap_stock: tuple[Stock, ...] = ()
    shoe_height: Length = Length(Fraction(3, 4))
    shoe_thickness: Length = Length(Fraction(1, 2))
    shoe_inside: str = "cope"
    shoe_stock: tuple[Stock, ...] = ()
    chair_rail_height: Length = Length(Fraction(32))
    chair_rail_width: Length = Length(Fraction(5, 2))
    chair_rail_thickness: Length = Length(Fraction(11, 16))
    chair_rail_inside: str = "cope"
    chair_rail_stock: tuple[Stock, ...] = ()
    picture_rail_height: Length = Length(Fraction(84))
    picture_rail_width: Length = Length(Fraction(7, 4))
    picture_rail_thickness: Length = Length(Fraction(11, 16))
    picture_rail_inside: str = "cope"
    picture_rail_stock: tuple[Stock, ...] = ()
    crown_width: Length = Length(Fraction(29, 8))
    crown_spring: Fraction = Fraction(38)
    crown_inside: str = "cope"
    crown_spring_in: Length = Length(Fraction(1, 16))
    crown_stock: tuple[Stock, ...] = ()
    blocking_wanted: str = NO
    blocking_gap: Length = Length(Fraction(1, 4))
    blocking_stock: tuple[Stock, ...] = ()
    joint_gap: Length = Length(Fraction(1, 16))
    cope_least: Length = Length(Fraction(8))
    thing_clearance: Length = Length(Fraction(1, 8))
    thing_end: str = "square"
    thing_rake: Fraction | None = None
    thing_rises: str = "right"
    thing_behind: str = USUAL
    toe_height: Length | None = None
    toe_depth: Length = Length(Fraction(3))
    open_end: str = "square"
    proud_end: str = "eased"
    casing_width: Length = Length(Fraction(9, 4))
    casing_thickness: Length = Length(Fraction(11, 16))
    casing_head_width: Length | None = None
    casing_overhang: Length = ZERO
    casing_clearance: Length = ZERO
    casing_corner: str = KEEPS
    casing_arris: str = ENDED
    casing_stock: tuple[Stock, ...] = ()
    casing_head_stock: tuple[Stock, ...] = ()
    block_size: Length | None = None
    block_thickness: Length = Length(Fraction(15, 16))
    block_stock: tuple[Stock, ...] = ()
    fillet_thickness: Length | None = None
    fillet_overhang: Length = Length(Fraction(1, 4))
    fillet_stock: tuple[Stock, ...] = ()
    head_cap_thickness: Length | None = None
    head_cap_overhang: Length = Length(Fraction(3, 4))
    head_cap_stock: tuple[Stock, ...] = ()
    backband_width: Length = ZERO
    backband_thickness: Length = Length(Fraction(1))
    backband_stock: tuple[Stock, ...] = ()
    reveal: Length = Length(Fraction(3, 16))
    head: str = "mitered"
    plinth_height: Length | None = None
    plinth_width: Length | None = None
    plinth_thickness: Length = Length(Fraction(1))
    plinth_stock: tuple[Stock, ...] = ()
    window_style: str = STOOL
    window_mulled: str = NO
    stool_thickness: Length = Length(Fraction(3, 4))
    stool_horn: Length = Length(Fraction(1, 2))
    stool_stock: tuple[Stock, ...] = ()
    apron_wanted: str = YES
    apron_width: Length | None = None
    apron_thickness: Length | None = None
    apron_stock: tuple[Stock, ...] = ()
    extension_wanted: str = NO
    extension_thickness: Length = Length(Fraction(3, 4))
    extension_step: Length = Length(Fraction(3, 16))
    extension_stock: tuple[Stock, ...] = ()
    kerf: Length = Length(Fraction(1, 8))
    end_trim: Length = Length(Fraction(1, 2))
    slack: Length = Length(Fraction(1, 4))
    saw_range: Fraction = Fraction(50)
    hold: Length = Length(Fraction(12))
    shared_miters: str = NO
    spare_sticks: int = 0
    overage: Fraction = Fraction(0)
    other_stock: tuple[tuple[str, Stock], ...] = ()
    lengths: str = INCHES
    grain_order: str = NO
    wood_species: str = ""
    wood_cut: str = "flat"
    wood_from: Fraction | None = None
    wood_to: Fraction | None = None
    given: frozenset[str] = field(default=frozenset())

    def source(self, name: str) -> str:
        """Where a setting comes from, for the working."""
        return say("by-the-standard" if name in self.given else "by-common-practice")

    def profile_of(self, molding: str) -> str:
        """The name of a molding's stock: base 9/16 × 5 1/2, crown 3 5/8 × 38°."""
        if molding == "crown":
            return f"crown {_size(self.crown_width)} × {format_degrees(self.crown_spring)}"
        thickness, width = (getattr(self, f"{molding}_{size}") for size in MOLDINGS[molding])
        return profile_name(molding.replace("_", " "), thickness, width)

    def base_profile_of(self, thickness: Length) -> str:
        """The name of base of another thickness, which is bought as a profile of its own."""
        return profile_name("base", thickness, self.base_height)

    @property
    def casing_profile(self) -> str:
        return profile_name("casing", self.casing_thickness, self.casing_width)

    def shared_profile(self, wide: Length) -> str:
        """Of what stands between mulled windows: casing, ripped; flat stock where that is too narrow."""
        return self.casing_profile if wide <= self.casing_width else profile_name("flat", self.casing_thickness, wide)

    @property
    def head_width(self) -> Length:
        return self.casing_head_width or self.casing_width

    @property
    def head_profile(self) -> str:
        """The legs', unless the head is wider or narrower."""
        alike = self.head_width == self.casing_width
        return self.casing_profile if alike else profile_name("casing head", self.casing_thickness, self.head_width)

    @property
    def plinth_profile(self) -> str:
        return profile_name("plinth", self.plinth_thickness, self.plinth_width or self.casing_width)

    @property
    def wants_backband(self) -> bool:
        """Whether a band goes round casing: where it was given a width."""
        return self.backband_width > ZERO

    @property
    def backband_profile(self) -> str:
        return profile_name("backband", self.backband_thickness, self.backband_width)

    @property
    def stool_profile(self) -> str:
        """By its thickness alone: how wide it is ripped, each window says."""
        return profile_name("stool", self.stool_thickness)

    @property
    def apron_profile(self) -> str:
        """The casing's, unless the apron was given a size or boards of its own."""
        own = self.apron_width or self.apron_thickness or self.apron_stock
        return profile_name("apron", *self.apron_size) if own else self.casing_profile

    @property
    def under_sill(self) -> Length:
        """How far down from the top of a stool its casing reaches: stool and apron, or the stool alone over tile."""
        return self.stool_thickness + (self.apron_size[1] if self.wants("apron") else ZERO)

    @property
    def apron_size(self) -> tuple[Length, Length]:
        """Thickness and width: the casing's where they were not given."""
        return self.apron_thickness or self.casing_thickness, self.apron_width or self.casing_width

    @property
    def extension_profile(self) -> str:
        """By its thickness alone: how wide each strip is ripped, its depths say."""
        return profile_name("jamb stock", self.extension_thickness)

    def is_but_for_stock(self, other: "Standard") -> bool:
        """Whether two standards are one but for the boards of other profiles that they know."""
        own, its = vars(self), vars(other)  # most settings of two standards are the very same objects: quick to tell
        return self is other or all(own[one.name] == its[one.name] for one in _BUT_FOR_STOCK)

    @property
    def is_bare(self) -> bool:
        """Whether openings have no casing at all, and base comes to their arris."""
        return self.casing_wanted == NONE

    def wants(self, trim: str) -> bool:
        """Whether a kind of trim is wanted at all: base, casing, shoe, extension."""
        return bool(getattr(self, f"{trim}_wanted") == YES)

    @cached_property
    def _stock_names(self) -> dict[str, str]:
        """Which field holds the boards of each profile that this standard makes."""
        own = {
            self.plinth_profile: "plinth_stock",
            self.stool_profile: "stool_stock",
            self.extension_profile: "extension_stock",
            self.apron_profile: "apron_stock",
            self.head_profile: "casing_head_stock",
            self.casing_profile: "casing_stock",
            BLOCKING: "blocking_stock",
            self.backband_profile: "backband_stock",
        }
        built: dict[str, tuple[str, tuple[Length | None, ...]]] = {
            "corner block": ("block_stock", (self.block_thickness, self.block_size)),
            "fillet": ("fillet_stock", (self.fillet_thickness,)),
            "head cap": ("head_cap_stock", (self.head_cap_thickness,)),
        }
        own |= {
            profile_name(name, *(size for size in sizes if size)): held
            for name, (held, sizes) in built.items()
            if all(sizes)
        }
        return own | {self.profile_of(name): f"{name}_stock" for name in ("crown", *MOLDINGS)}

    @cached_property
    def stocks(self) -> dict[str, tuple[Stock, ...]]:
        """The boards of every profile that this standard makes, by its name."""
        return {profile: getattr(self, name) for profile, name in self._stock_names.items()}

    def stock_setting(self, profile: str) -> str:
        """The setting that its boards are said in: base.stock; of a profile that no rule makes, other.stock."""
        name = self._stock_names.get(profile, "other_stock")
        return "casing.head_stock" if name == "casing_head_stock" else f"{name.removesuffix('_stock')}.stock"

    def stock_of(self, profile: str) -> tuple[Stock, ...]:
        """The boards of a profile that can be bought or are on hand; none of one that this standard does not make."""
        return self.stocks.get(profile) or tuple(row for name, row in self.other_stock if name == profile)

    @cached_property
    def longest(self) -> dict[str, Length]:
        """The longest piece that boards of each profile really give, where any are on the list."""
        profiles = (*self.stocks, *(name for name, _ in self.other_stock))
        boards = {profile: self.stock_of(profile) for profile in profiles}
        return {profile: max(row.length for row in rows) - self.end_trim for profile, rows in boards.items() if rows}


_BUT_FOR_STOCK = [one for one in fields(Standard) if one.name not in ("other_stock", "window_mulled", "given")]


def _size(length: Length) -> str:
    return format_inches(length, SIXTY_FOURTH).rstrip('"')


def profile_name(name: str, *sizes: Length) -> str:
    """What stock is called: batten 3/4 × 2 1/2."""
    return f"{name} {' × '.join(map(_size, sizes))}"


def parse_price(text: str) -> int:
    """Dollars and cents as written to whole cents, exactly. Raises `StandardError`.

    >>> parse_price("$19.98")
    1998
    """
    whole, _, cents = text.strip().removeprefix("$").partition(".")
    if not (whole.isascii() and whole.isdigit() and len(whole) <= 7 and _is_cents(cents)):
        raise StandardError("not-money", text=quote(text))
    return int(whole) * 100 + int(cents.ljust(2, "0")) if cents else int(whole) * 100


def _is_cents(text: str) -> bool:
    # isdigit alone lets ² through, which int() then refuses by raising.
    return not text or (text.isascii() and text.isdigit() and len(text) <= 2)


def format_price(cents: int) -> str:
    """Whole cents as dollars and cents, in the form that `parse_price` reads.

    >>> format_price(6942)
    '69.42'
    """
    return f"{cents // 100}.{cents % 100:02d}"


def format_stock(length: Length) -> str:
    """A stock length as it is sold: 12 ft; an offcut in inches; in millimeters where lengths are shown so.

    >>> format_stock(Length(Fraction(144))), format_stock(Length(Fraction(77, 2)))
    ('12 ft', '38 1/2"')
    """
    return format_length(length) if shown_in() == MILLIMETERS else name_stock(length)


def name_stock(length: Length) -> str:
    """The same whatever lengths are shown in: what is ticked off is found by it."""
    return f"{length.inches // 12} ft" if length.inches % 12 == 0 else format_inches(length)
