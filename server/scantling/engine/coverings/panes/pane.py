"""A pane as read, at three places each way: the blank to cut for it, and what is left of it once trimmed.

Film covers the largest reading and is trimmed on the glass, at each place to what was read there; a panel goes between,
so it is cut to the smallest. `gap` is left open at every edge; `allowance`, in all each way, is what a knife takes off.
"""

from dataclasses import dataclass

from scantling.engine.errors import EngineError
from scantling.engine.survey.room import Measure
from scantling.engine.tape.lengths import ZERO, Length, format_length


class PaneError(EngineError):
    family = "pane"


@dataclass(frozen=True, slots=True)
class Pane:
    """`widths` and `heights` are what is left of it at each place that was read."""

    name: str
    blank_width: Length
    blank_height: Length
    widths: tuple[Length, ...]
    heights: tuple[Length, ...]

    @property
    def blank(self) -> tuple[Length, Length]:
        return self.blank_width, self.blank_height

    @property
    def smallest(self) -> tuple[Length, Length]:
        return min(self.widths), min(self.heights)


def derive_pane(name: str, widths: Measure, heights: Measure, gap: Length, allowance: Length) -> Pane:
    """A pane's blank and its finished sizes. Raises `PaneError` where the gap leaves nothing.

    >>> from scantling.engine.tape.lengths import parse_length
    >>> wide = Measure("", ("20", "20 1/16"), (parse_length("20"), parse_length("20 1/16")))
    >>> derive_pane("pane 1", wide, wide, parse_length("1/16"), parse_length("1")).blank_width.inches
    Fraction(337, 16)
    """
    finished = [tuple(length - gap * 2 for length in measure.lengths) for measure in (widths, heights)]
    for measure, sizes in zip((widths, heights), finished, strict=True):
        if min(sizes) <= ZERO:
            size = format_length(measure.smallest)
            raise PaneError("all-gap", name=name.capitalize(), size=size, gap=format_length(gap))
    return Pane(name, widths.largest + allowance, heights.largest + allowance, *finished)


def find_impossible(pane: Pane, roll: Length, turnable: bool) -> PaneError | None:
    """Why a pane cannot be cut from a roll; None where it can."""
    if pane.blank_width <= roll or (turnable and pane.blank_height <= roll):
        return None
    key = "not-turned" if pane.blank_height <= roll else "too-wide"
    wide = min(pane.blank) if turnable else pane.blank_width
    return PaneError(key, name=pane.name.capitalize(), size=format_length(wide), roll=format_length(roll))
