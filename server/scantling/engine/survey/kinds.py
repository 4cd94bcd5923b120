"""Kinds of things in the way, by the words that a person called them: what a carpenter takes for granted of each.

Common practice, no source. What a person says of one thing counts before any of it.
"""

# Fixed to the wall and not on the floor: nothing on the floor stops at them.
PLATES = ("outlet", "switch", "thermostat")
# Hung on the wall, higher than the base.
HUNG = ("mirror", "medicine", "picture", "sconce", "clock", "towel")
# What stands on the floor without being built in is kept clear of, and the gap is caulked.
FREE_STANDING = (
    "tub", "shower", "toilet", "radiator", "stove", "range", "heater", "boiler", "washer", "dryer", "fridge",
    "refrigerator",
)  # fmt: skip
# Where there is fire: wood beside it has its distance to keep.
OF_FIRE = ("fireplace", "hearth", "stove", "woodstove", "mantel", "firebox")
# Where a person stands wet, and may fall against glass.
WET = ("tub", "shower", "bath")

CABINETS = ("cabinet", "cabinets", "vanity", "island")
# Built in: the wall behind it is not seen again. Behind a toilet or a sink paper goes on (a paper hanger's account).
BUILT_IN = (*CABINETS, "built", "bookcase", "counter", "hearth", "fireplace", "firebox", "mantel")
# What a wall is tiled with, and what wood lies on it: such a stretch of wall is finished as it is.
TILES = ("tile", "tiles", "tiled", "backsplash")
PANELING = ("wainscot", "wainscoting", "beadboard", "paneling", "panelling")


def is_plate(kind: str) -> bool:
    """Whether a thing is a plate on the wall: an outlet, a switch.

    >>> is_plate("double outlet"), is_plate("tub")
    (True, False)
    """
    return _is_one_of(kind, PLATES)


def is_free_standing(kind: str) -> bool:
    """Whether a thing is not built in."""
    return _is_one_of(kind, FREE_STANDING)


def is_of_fire(kind: str) -> bool:
    """Whether a thing is a fireplace or a stove, or stands round one.

    >>> is_of_fire("brick hearth"), is_of_fire("cabinet")
    (True, False)
    """
    return _is_one_of(kind, OF_FIRE)


def hangs(kind: str) -> bool:
    """Whether a thing is hung on the wall.

    >>> hangs("medicine cabinet"), hangs("cabinet")
    (True, False)
    """
    return _is_one_of(kind, HUNG)


def is_wet(kind: str) -> bool:
    """Whether a thing is a tub or a shower.

    >>> is_wet("Bathtub/shower"), is_wet("vanity")
    (True, False)
    """
    return any(word in kind.lower() for word in WET)


def has_toe(kind: str) -> bool:
    """Whether a thing is set back at the floor, where a house's are.

    >>> has_toe("base cabinet"), has_toe("tub")
    (True, False)
    """
    return _is_one_of(kind, CABINETS)


def is_tile(kind: str) -> bool:
    """Whether a thing is a stretch of tile.

    >>> is_tile("tub tile"), is_tile("tub")
    (True, False)
    """
    return _is_one_of(kind, TILES)


def is_laid(kind: str) -> bool:
    """Whether a thing is a stretch of the wall itself, tiled or paneled: it stands on no floor and has no depth.

    >>> is_laid("beadboard"), is_laid("tile"), is_laid("vanity")
    (True, True, False)
    """
    return _is_one_of(kind, TILES + PANELING)


def hides(kind: str) -> bool:
    """Whether the wall behind a thing is left as it is: what is built in, a tub, and tile itself.

    Behind a toilet, a radiator or a stove, and behind what can be taken off its hook, it is papered and painted.

    >>> hides("built-in cabinet"), hides("medicine cabinet"), hides("toilet")
    (True, False, False)
    """
    return is_laid(kind) or ((_is_one_of(kind, BUILT_IN) or is_wet(kind)) and not hangs(kind))


def usual_base(kind: str) -> str:
    """What the base does at a thing of which nothing was said: it stops, but past a plate or what is hung it runs.

    It runs along a wainscot too, on its face.
    """
    return "over" if is_plate(kind) or hangs(kind) or _is_one_of(kind, PANELING) else "stops"


def _is_one_of(kind: str, words: tuple[str, ...]) -> bool:
    return any(word in words for word in kind.lower().replace("-", " ").split())
