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


def usual_base(kind: str) -> str:
    """What the base does at a thing of which nothing was said: it stops, but past a plate or what is hung it runs."""
    return "over" if is_plate(kind) or hangs(kind) else "stops"


def _is_one_of(kind: str, words: tuple[str, ...]) -> bool:
    return any(word in words for word in kind.lower().replace("-", " ").split())
