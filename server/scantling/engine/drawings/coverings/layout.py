"""Blanks on a roll or a sheet, to scale, each with its name. Drawn, not derived: no figure is taken from here."""

from collections.abc import Iterator, Sequence

from scantling.engine.coverings.panes.layout import PlacedBlank
from scantling.engine.drawings import svg
from scantling.engine.tape.lengths import Length

WIDTH, MARGIN, TALLEST = 340.0, 10.0, 900.0
ROOM_FOR_NAME = 22.0


def draw_layout(wide: Length, long: Length, places: Sequence[PlacedBlank], names: Sequence[str], title: str) -> str:
    """The roll or sheet with its near end at the foot, as SVG text."""
    scale = min((WIDTH - 2 * MARGIN) / float(wide.inches), (TALLEST - 2 * MARGIN) / max(float(long.inches), 1.0))
    high = float(long.inches) * scale + 2 * MARGIN
    whole = (MARGIN, MARGIN, float(wide.inches) * scale, float(long.inches) * scale)
    parts = [_box(*whole, "ink")]
    for place in places:
        parts += _draw_place(place, names[place.item], scale, high)
    return svg.drawing(WIDTH, high, title, parts)


def _draw_place(place: PlacedBlank, name: str, scale: float, high: float) -> Iterator[str]:
    x, y, across, along = (float(size.inches) * scale for size in (place.x, place.y, place.across, place.along))
    top = high - MARGIN - y - along
    yield _box(MARGIN + x, top, across, along, "ink wood")
    if across >= ROOM_FOR_NAME:
        yield svg.text((MARGIN + x + across / 2, top + along / 2 + 4), f"{name} ↻" if place.turned else name, "small")


def _box(x: float, y: float, wide: float, high: float, classes: str) -> str:
    return svg.polygon([(x, y), (x + wide, y), (x + wide, y + high), (x, y + high)], classes)
