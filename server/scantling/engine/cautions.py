"""Cautions: what can hurt a person at a step, said once and briefly where it matters.

Facts and who decides; no promise, and no verdict on a house. The tool's manual, local codes and licensed trades come
first, and every list of cautions ends by saying so. The word before the colon is what a caution is known by: a house
that has heard it enough puts it aside under that word. What they say stands in `words/`; here they go by its keys.
"""

from fractions import Fraction

from scantling.engine.shown.shown_in import is_metric
from scantling.engine.tape.lengths import Length, format_inches, format_length
from scantling.engine.words import say

# Paint in American houses: the 1978 ban of lead in house paint (16 CFR 1303; EPA renovation rule, 40 CFR 745).
LEAD_BEFORE = 1978
# Compounds, textures and adhesives with asbestos were used up for years after they were banned: common practice, no
# source, but for the ban of patching compounds in 1977 by the Consumer Product Safety Commission, read second-hand.
ASBESTOS_BEFORE = 1985
# Square inches of painted parts in one room: 40 CFR 745.83, 6 sq ft. What is taken off counts in full.
LEAD_AREA = Fraction(6 * 144)

SAW = "caution-saw"
OLD_PAINT = "caution-old-paint"
# National Institute for Occupational Safety and Health: 85 dBA over 8 hours, half the time for every 3 dB more.
NOISE = "caution-noise"
# International Residential Code, R1001.11, from memory.
FIREPLACE = "caution-fireplace"
# Common practice, no source.
LIFTING = "caution-lifting"
PULLING = "caution-pulling"
# Bedrooms and basements have a window to escape by: International Residential Code, section R310, from memory.
ESCAPE = "caution-escape"
# Ladder card of the Occupational Safety and Health Administration (read as reprinted); two people: common practice.
OVERHEAD = "caution-overhead"
# Nail Gun Safety, OSHA and NIOSH publication 2011-202; 12 in from memory of the same guide.
NAILER = "caution-nailer"
# National Electrical Code, 300.4(A)(1).
BEHIND = "caution-behind"
# Healthy Indoor Painting, Environmental Protection Agency; labels: Federal Hazardous Substances Act.
FUMES = "caution-fumes"
# Asbestos in Your Home, Environmental Protection Agency and American Lung Association, 1990.
OLD_WALLS = "caution-old-walls"
# Common practice, no source.
PLATES = "caution-plates"
# National Electrical Code, 314.20.
OUTLETS = "caution-outlets"
# Pages of fire departments and of a university.
RAGS = "caution-rags"
LADDER = "caution-ladder"
# Silica: 29 CFR 1926.1153. Mask: common practice.
DUST = "caution-dust"
# International Residential Code, R308.4.5; glass that film may crack: International Window Film Association.
GLASS = "caution-glass"
FILM = "caution-film"
MOLD = "caution-mold"
LEAD_RULE = "caution-lead-rule"
TAIL = "caution-tail"

#: Every line that may be put aside.
EVERY = (
    OLD_PAINT, OLD_WALLS, PULLING, SAW, NAILER, NOISE, BEHIND, DUST, FUMES, RAGS, LADDER, OVERHEAD, LIFTING, PLATES,
    OUTLETS, GLASS, FILM, ESCAPE, FIREPLACE, MOLD, LEAD_RULE,
)  # fmt: skip


def word_of(caution: str) -> str:
    """What a caution is known by.

    >>> word_of(say(NOISE))
    'Noise'
    """
    return caution.partition(":")[0]


def derive_lead_length(height: Length) -> Length:
    """How much trim so high, taken off in one room, comes to the area at which the lead rule begins.

    >>> format_length(derive_lead_length(Length(Fraction(11, 2))))
    '157 1/16"'
    """
    return Length(LEAD_AREA / height.inches)


def _in_feet(length: Length) -> str:
    feet, inches = divmod(length.inches, 12)
    return f"{say('in-feet', figure=feet)} {format_inches(Length(inches))}"


def say_lead_rule(height: Length) -> str:
    """The rule, with the length that it comes to for trim of a height. Federally assisted housing: 2 sq ft, 24 CFR 35,
    from memory."""
    length = derive_lead_length(height)
    comes_to = format_length(length) if is_metric() else _in_feet(length)
    return say("caution-lead", high=format_length(height), long=comes_to)


def is_old_paint(built: int | None) -> bool:
    return built is None or built < LEAD_BEFORE


def is_old_wall(built: int | None) -> bool:
    return built is None or built < ASBESTOS_BEFORE


def _told(*said: tuple[str, bool], lead: str = "") -> list[str]:
    """The lines whose trigger is met, and who has the last word; nothing where none is. `lead`: its rule, if it is due.

    The rule stands where its key does, for it is told with the length that it comes to.
    """
    met = [lead if key == LEAD_RULE else say(key) for key, met in said if met]
    return [*met, say(TAIL)] if met else []


def cautions_for_cutting(
    *, windows: bool = False, near_water: bool = False, overhead: bool = False, fireplace: bool = False,
    long: bool = False,
) -> list[str]:
    """For a list of pieces to cut, and for boards to cut them from; with what a window adds, and what goes up high.

    `near_water` where a tub or a shower is in the room: whoever cases a window there sees its glass from close by.
    """
    return _told((OVERHEAD, overhead), (ESCAPE, windows), (GLASS, windows and near_water), (FIREPLACE, fireplace),
                 (LIFTING, long), (SAW, True))  # fmt: skip


def cautions_for_survey(built: int | None) -> list[str]:
    """For work in a room: old paint where the house is older than the ban, or its year is not known.

    >>> cautions_for_survey(1990)
    []
    """
    return _told((OLD_PAINT, is_old_paint(built)))


def cautions_for_work(built: int | None, base: Length | None) -> list[str]:
    """For a room where old trim comes off; `base` is how high the trim is."""
    old = is_old_paint(built)
    return _told((OLD_PAINT, old), (LEAD_RULE, old and base is not None), (OLD_WALLS, is_old_wall(built)),
                 (PULLING, True), (MOLD, True), lead=say_lead_rule(base) if base else "")  # fmt: skip


def cautions_for_fixing(*, nails: bool, adhesive: bool) -> list[str]:
    """For what is nailed and glued.

    >>> cautions_for_fixing(nails=False, adhesive=False)
    []
    """
    return _told((BEHIND, nails), (NAILER, nails), (NOISE, nails), (FUMES, adhesive))


def cautions_for_paper(built: int | None = None) -> list[str]:
    """For wallpaper on a room's walls."""
    return _told((OLD_WALLS, is_old_wall(built)), (PLATES, True), (LADDER, True), (MOLD, True))


def cautions_for_paint(built: int | None = None, *, high: bool = True, oil: bool = False) -> list[str]:
    """For painting walls, ceilings and trim; `high` where a ladder is wanted, `oil` where the paint dries by it."""
    return _told((OLD_PAINT, is_old_paint(built)), (OLD_WALLS, is_old_wall(built)), (DUST, True), (FUMES, True),
                 (RAGS, oil), (LADDER, high))  # fmt: skip


def cautions_for_film(*, near_water: bool = True) -> list[str]:
    """For film on glass; `near_water` also where it is in a door."""
    return _told((GLASS, near_water), (FILM, True))


def cautions_for_sheets() -> list[str]:
    """For panels cut from sheets and put on a wall."""
    return _told((OUTLETS, True), (DUST, True), (SAW, True), (NOISE, True), (LIFTING, True))
