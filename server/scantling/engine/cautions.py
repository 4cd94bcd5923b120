"""Cautions: what can hurt a person at a step, said once and briefly where it matters.

Facts and who decides; no promise, and no verdict on a house. The tool's manual, local codes and licensed trades come
first, and every list of cautions ends by saying so.
"""

# Paint in American houses: the 1978 ban of lead in house paint (16 CFR 1303; EPA renovation rule, 40 CFR 745).
LEAD_BEFORE = 1978

SAW = (
    "Saw: keep at least 12 in of board on the held side, clamp it, hands 6 in or more clear; let the blade stop before "
    "you lift or reach. Cut short pieces from long stock. Eyes and ears covered."
)
OLD_PAINT = (
    "Old paint: in a house built before 1978 it may hold lead. Test it, or take it that it does: no dry sanding, no "
    "flame; contain, work wet, clean with a HEPA vacuum, keep children out."
)
# Bedrooms and basements have a window to escape by: International Residential Code, section R310, from memory.
ESCAPE = "Escape: stops, stool and casing must not make an escape window's opening smaller. Local code says how large."
# Ladder card of the Occupational Safety and Health Administration (read as reprinted); two people: common practice.
OVERHEAD = (
    "Overhead: a long stick wants two people. Ladder 4 up for 1 out, face it, three points of contact, not on its top "
    "cap or top step; do not reach."
)
TAIL = "General information: your tool's manual, local code and licensed trades come first."


def cautions_for_cutting(*, windows: bool = False, overhead: bool = False) -> list[str]:
    """For a list of pieces to cut, and for boards to cut them from; with what a window adds, and what goes up high."""
    return [*([OVERHEAD] if overhead else []), *([ESCAPE] if windows else []), SAW, TAIL]


def cautions_for_survey(built: int | None) -> list[str]:
    """For work in a room: old paint where the house is older than the ban, or its year is not known.

    >>> cautions_for_survey(1990)
    []
    """
    return [OLD_PAINT, TAIL] if built is None or built < LEAD_BEFORE else []
