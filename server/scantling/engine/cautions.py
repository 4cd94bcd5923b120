"""Cautions: what can hurt a person at a step, said once and briefly where it matters.

Facts and who decides; no promise, and no verdict on a house. The tool's manual, local codes and licensed trades come
first, and every list of cautions ends by saying so. The word before the colon is what a caution is known by: a house
that has heard it enough puts it aside under that word.
"""

from fractions import Fraction

from scantling.engine.shown.shown_in import is_metric
from scantling.engine.tape.lengths import Length, format_inches, format_length
from scantling.engine.words import put_in_metric

# Paint in American houses: the 1978 ban of lead in house paint (16 CFR 1303; EPA renovation rule, 40 CFR 745).
LEAD_BEFORE = 1978
# Compounds, textures and adhesives with asbestos were used up for years after they were banned: common practice, no
# source, but for the ban of patching compounds in 1977 by the Consumer Product Safety Commission, read second-hand.
ASBESTOS_BEFORE = 1985
# Square inches of painted parts in one room: 40 CFR 745.83, 6 sq ft. What is taken off counts in full.
LEAD_AREA = Fraction(6 * 144)

SAW = (
    "Saw: keep at least 12 in of board on the held side, clamp it, hands 6 in or more clear; let the blade stop before "
    "you lift or reach. Cut short pieces from long stock. Eyes and ears covered."
)
OLD_PAINT = (
    "Old paint: in a house built before 1978 it may hold lead. Test it, or take it that it does: no dry sanding, no "
    "flame; contain, work wet, clean with a HEPA vacuum, keep children out."
)
# National Institute for Occupational Safety and Health: 85 dBA over 8 hours, half the time for every 3 dB more.
NOISE = (
    "Noise: most saws, nailers and sanders are over 85 dBA; at 94 a day's dose is used up in an hour, at 100 in a "
    "quarter. Cover your ears."
)
# International Residential Code, R1001.11, from memory.
FIREPLACE = (
    "Fireplace: wood must stay clear of its opening or of a stove; the code and the appliance's label say how far."
)
# Common practice, no source.
LIFTING = "Lifting: boards of 16 ft and bundles are heavy and whip; two people."
PULLING = (
    "Pulling: expect nails, glass, and wires behind old trim. Gloves and eyes covered; pull nails through the back."
)
# Bedrooms and basements have a window to escape by: International Residential Code, section R310, from memory.
ESCAPE = "Escape: stops, stool and casing must not make an escape window's opening smaller. Local code says how large."
# Ladder card of the Occupational Safety and Health Administration (read as reprinted); two people: common practice.
OVERHEAD = (
    "Overhead: a long stick wants two people. Ladder 4 up for 1 out, face it, three points of contact, not on its top "
    "cap or top step; do not reach."
)
# Nail Gun Safety, OSHA and NIOSH publication 2011-202; 12 in from memory of the same guide.
NAILER = (
    "Nailer: finger off the trigger when moving, a full sequential trigger, hand 12 in or more from the nose, unplugged"
    " or off its hose before a jam is cleared. Eyes and ears covered."
)
# National Electrical Code, 300.4(A)(1).
BEHIND = (
    "Behind the wall: cables may lawfully be 1 1/4 in from a stud's face and pipes nearer. Look for both first; stay "
    "clear above, below and beside boxes and plumbing."
)
# Healthy Indoor Painting, Environmental Protection Agency; labels: Federal Hazardous Substances Act.
FUMES = (
    "Fumes: open windows and run a fan out of one, while you work and for 2 to 3 days after. Solvents and adhesives: "
    "no flame or pilot light; the label says how."
)
# Asbestos in Your Home, Environmental Protection Agency and American Lung Association, 1990.
OLD_WALLS = (
    "Old walls: old joint compound, texture, and some wall coverings and adhesives may hold asbestos. Do not sand or "
    "scrape them until they are tested; what is sound, leave alone."
)
# Common practice, no source.
PLATES = (
    "Plates: power off and tested before they come off; nothing goes over a receptacle's face, and paste is wet. If in "
    "doubt, a licensed electrician."
)
# National Electrical Code, 314.20.
OUTLETS = (
    "Outlets: power off and tested. In wood or another surface that burns a box must stand flush, in drywall or tile "
    "at most 1/4 in back: use an extender. If in doubt, a licensed electrician."
)
# Pages of fire departments and of a university.
RAGS = (
    "Rags: those with drying oils can catch fire by themselves. Spread them flat outdoors, or in a metal can of water."
)
LADDER = "Ladder: 4 up for 1 out, face it, three points of contact, not on its top cap or top step; do not reach."
# Silica: 29 CFR 1926.1153. Mask: common practice.
DUST = "Dust: wear at least a fitted N95, take it off by vacuum, wipe wet, do not sweep. Some compounds hold silica."
# International Residential Code, R308.4.5; glass that film may crack: International Window Film Association.
GLASS = (
    "Glass: within 60 in of a tub or shower, in doors and beside them it must be safety glazing, by the mark etched in "
    "it; film does not make it so."
)
FILM = (
    "Film: one that takes up heat can crack glass. Ask its maker first about insulated, wired, textured, thick, shaded "
    "or damaged glass. It must not hide how an escape window opens."
)
MOLD = "Mold: where a wall is damp or has mold, stop, and find where the water comes from before anything covers it."
TAIL = "General information: your tool's manual, local code and licensed trades come first."
# The figures of these lines where lengths are shown in millimeters, each rounded to the careful side: what must stay
# clear is no less, what a rule begins at or what may lie near is no more.
IN_METRIC = {
    "at least 12 in": "at least 305 mm", "6 in or more": "155 mm or more", "12 in or more": "305 mm or more",
    "16 ft": "4.8 m", "1 1/4 in": "31 mm", "1/4 in": "6 mm", "within 60 in": "within 1525 mm", "6 sq ft": "0.55 m²",
}  # fmt: skip


#: Every line that may be put aside; of those that hold a figure, what it is without one.
EVERY = (
    OLD_PAINT, OLD_WALLS, PULLING, SAW, NAILER, NOISE, BEHIND, DUST, FUMES, RAGS, LADDER, OVERHEAD, LIFTING, PLATES,
    OUTLETS, GLASS, FILM, ESCAPE, FIREPLACE, MOLD,
    "Lead rule: paid work that disturbs more than 6 sq ft of old paint in a room, or replaces a window, follows it.",
)  # fmt: skip


def tell(caution: str) -> str:
    """A line with its figures in what lengths are shown in.

    >>> from scantling.engine.shown.shown_in import MILLIMETERS, showing
    >>> with showing(MILLIMETERS): tell(LIFTING)
    'Lifting: boards of 4.8 m and bundles are heavy and whip; two people.'
    """
    return put_in_metric(caution, IN_METRIC)


def word_of(caution: str) -> str:
    """What a caution is known by.

    >>> word_of(NOISE)
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
    return f"{feet} ft {format_inches(Length(inches))}"


def say_lead_rule(height: Length) -> str:
    """The rule, with the length that it comes to for trim of a height. Federally assisted housing: 2 sq ft, 24 CFR 35,
    from memory."""
    length = derive_lead_length(height)
    comes_to = format_length(length) if is_metric() else _in_feet(length)
    return (
        "Lead rule: paid work that disturbs more than 6 sq ft of old paint in a room, or replaces a window, must "
        f"follow it; what is taken off counts in full. Trim {format_length(height)} high comes to 6 sq ft at "
        f"{comes_to}. States may be stricter; the hazard is the same whoever works."
    )


def is_old_paint(built: int | None) -> bool:
    return built is None or built < LEAD_BEFORE


def is_old_wall(built: int | None) -> bool:
    return built is None or built < ASBESTOS_BEFORE


def _told(*said: tuple[str, bool]) -> list[str]:
    """The lines whose trigger is met, and who has the last word; nothing where none is."""
    met = [tell(words) for words, met in said if met]
    return [*met, TAIL] if met else []


def cautions_for_cutting(
    *, windows: bool = False, overhead: bool = False, fireplace: bool = False, long: bool = False
) -> list[str]:
    """For a list of pieces to cut, and for boards to cut them from; with what a window adds, and what goes up high."""
    return _told((OVERHEAD, overhead), (ESCAPE, windows), (FIREPLACE, fireplace), (LIFTING, long), (SAW, True))


def cautions_for_survey(built: int | None) -> list[str]:
    """For work in a room: old paint where the house is older than the ban, or its year is not known.

    >>> cautions_for_survey(1990)
    []
    """
    return _told((OLD_PAINT, is_old_paint(built)))


def cautions_for_work(built: int | None, base: Length | None) -> list[str]:
    """For a room where old trim comes off; `base` is how high the trim is."""
    old = is_old_paint(built)
    return _told((OLD_PAINT, old), (say_lead_rule(base) if base else "", old and base is not None),
                 (OLD_WALLS, is_old_wall(built)), (PULLING, True), (MOLD, True))  # fmt: skip


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
