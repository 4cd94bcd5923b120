"""Labels on a drawing: each put where it hides no other and no line, the most needed first, or left out.

A label knows several places that would do, the best first. What is left out is told by who draws, never squeezed in.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from scantling.engine.drawings import svg

# Widths of the page's typeface, at most: nothing here can measure text, and a label that is given too much room hides
# nothing. Digits and capitals are the widest that stand in a label.
WIDE, TALL = 0.62, 0.86
GAP = 1.5
FAR = 27.0


@dataclass(frozen=True, slots=True)
class Box:
    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: "Box") -> bool:
        return (self.left < other.right and other.left < self.right
                and self.top < other.bottom and other.top < self.bottom)  # fmt: skip

    def is_crossed(self, start: svg.Point, finish: svg.Point) -> bool:
        """Whether a straight line runs through the box, by cutting it off at each side in turn."""
        enters, leaves = 0.0, 1.0
        for at, by, low, high in (
            (start[0], finish[0] - start[0], self.left, self.right),
            (start[1], finish[1] - start[1], self.top, self.bottom),
        ):
            if not by:
                if not low < at < high:
                    return False
                continue
            ways = sorted(((low - at) / by, (high - at) / by))
            enters, leaves = max(enters, ways[0]), min(leaves, ways[1])
        return enters < leaves


@dataclass(frozen=True, slots=True)
class Label:
    """`words` around one of the `places`; those with the lower `need` are placed first.

    `ringed` as the letter of a piece is; then a line leads from a place that is far from it to what it is `of`.
    `letters` are those of the pieces that the words stand for.
    """

    words: str
    places: tuple[svg.Point, ...]
    need: int
    classes: str
    size: float
    ringed: bool = False
    of: svg.Point | None = None
    letters: tuple[str, ...] = ()

    def box(self, place: svg.Point) -> Box:
        wide = max(len(self.words) * self.size * WIDE, self.size * TALL) / 2
        tall = self.size * TALL / 2
        if self.ringed:
            tall = self.radius
            wide = self.radius if len(self.words) == 1 else wide + self.radius / 2
        return Box(place[0] - wide - GAP, place[1] - tall - GAP, place[0] + wide + GAP, place[1] + tall + GAP)

    @property
    def radius(self) -> float:
        return self.size * 0.8

    def lead(self, place: svg.Point) -> Iterator[str]:
        if self.of and math.dist(place, self.of) > FAR:
            yield svg.line(self.of, place, "pencil")

    def draw(self, place: svg.Point) -> Iterator[str]:
        return (svg.lettered(self.letters, part) if self.letters else part for part in self._draw(place))

    def _draw(self, place: svg.Point) -> Iterator[str]:
        if self.ringed and len(self.words) == 1:
            yield svg.circle(place, self.radius, "lettered")
        elif self.ringed:
            yield svg.path(self._pill(place), "lettered")
        yield svg.sentence((place[0], place[1] + self.size * 0.35), self.words, self.classes)

    def _pill(self, place: svg.Point) -> str:
        box, r = self.box(place), svg.number(self.radius)
        left, right = (svg.number(value) for value in (box.left + GAP + self.radius, box.right - GAP - self.radius))
        top, bottom = (svg.number(value) for value in (place[1] - self.radius, place[1] + self.radius))
        return f"M{left} {top}H{right}A{r} {r} 0 0 1 {right} {bottom}H{left}A{r} {r} 0 0 1 {left} {top}Z"


def place_labels(
    labels: Iterable[Label], sheet: Box, lines: Sequence[tuple[svg.Point, svg.Point]], taken: Sequence[Box] = ()
) -> tuple[list[tuple[Label, svg.Point]], list[Label]]:
    """Labels with the place of each, and those for which none was free."""
    boxes = list(taken)
    placed: list[tuple[Label, svg.Point]] = []
    left_out: list[Label] = []
    for label in sorted(labels, key=lambda label: label.need):
        for place in label.places:
            box = label.box(place)
            if _is_free(box, sheet, boxes) and not any(box.is_crossed(*line) for line in lines):
                boxes.append(box)
                placed.append((label, place))
                break
        else:
            left_out.append(label)
    return placed, left_out


def _is_free(box: Box, sheet: Box, boxes: Sequence[Box]) -> bool:
    inside = sheet.left <= box.left and box.right <= sheet.right and sheet.top <= box.top and box.bottom <= sheet.bottom
    return inside and not any(box.meets(other) for other in boxes)
