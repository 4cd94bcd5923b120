"""Where each blank lies: bands of kinds turned into places of panes, and how each is marked before it is cut.

Seen with the roll's or sheet's end nearest, the first band at the near end. Unturned, a blank's top lies at the far
side; turned, it lies to the right, and its left edge is then the far one.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.engine.coverings.panes.bands import BlankKind, PaneBand
from scantling.engine.coverings.scale import Scale
from scantling.engine.tape.lengths import Length

Size = tuple[Length, Length]


@dataclass(frozen=True, slots=True)
class PlacedBlank:
    """A blank by its place in what was asked: from the left edge and from the near end, and how much it takes."""

    item: int
    turned: bool
    band: int
    x: Length
    y: Length
    across: Length
    along: Length

    @property
    def marks(self) -> dict[str, str]:
        """On which side of the blank, as it lies, its top, left and right are marked."""
        if self.turned:
            return {"top": "right", "left": "far", "right": "near"}
        return {"top": "far", "left": "left", "right": "right"}


def gather_kinds(
    sizes: Sequence[Size], scale: Scale, turnable: Sequence[bool]
) -> tuple[list[BlankKind], list[list[int]]]:
    """Blanks alike, gathered; and which of the blanks asked for each kind stands for."""
    gathered: dict[tuple[int, int, bool], list[int]] = {}
    for item, (width, height) in enumerate(sizes):
        gathered.setdefault((scale.whole(width), scale.whole(height), turnable[item]), []).append(item)
    kinds = [BlankKind(width, height, len(items), may) for (width, height, may), items in gathered.items()]
    return kinds, list(gathered.values())


def place_bands(bands: Sequence[PaneBand], members: Sequence[Sequence[int]], kinds: Sequence[BlankKind], scale: Scale,
                kerf: int = 0) -> list[PlacedBlank]:  # fmt: skip
    """Every blank of some bands at its place; kinds are those that the bands were made of, a kerf in each size."""
    places: list[PlacedBlank] = []
    used = [0] * len(kinds)
    y = 0
    for number, band in enumerate(bands):
        x = 0
        for kind, count in enumerate(band.counts):
            across, along = band.ways[kind]
            for _ in range(count):
                turned = (across, along) != (kinds[kind].width, kinds[kind].height)
                at = (scale.length(size) for size in (x, y, across - kerf, along - kerf))
                places.append(PlacedBlank(members[kind][used[kind]], turned, number, *at))
                used[kind] += 1
                x += across
        y += band.height
    return places
