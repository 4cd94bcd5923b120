"""SVG as text: a few elements, every name in them escaped, looks by class only (the page's styles say what ink is).

Coordinates are carried to a tenth, so that every machine writes the same drawing.
"""

from collections.abc import Iterable
from html import escape

from scantling.engine.errors import plain

Point = tuple[float, float]
# A name that a person typed may be any length; a drawing has room for so much.
NAME_AT_MOST = 24


def number(value: float) -> str:
    """A coordinate: a tenth at most, no minus zero.

    >>> number(12.04), number(-0.01)
    ('12', '0')
    """
    shown = f"{value:.1f}".removesuffix(".0")
    return "0" if shown == "-0" else shown


def name(text: str) -> str:
    """A person's text, cut to fit and with nothing in it that a drawing cannot hold."""
    return plain(text if len(text) <= NAME_AT_MOST else text[: NAME_AT_MOST - 1] + "…", " ")


def line(start: Point, end: Point, classes: str) -> str:
    (x1, y1), (x2, y2) = ([number(value) for value in point] for point in (start, end))
    return f'<line class="{classes}" x1="{x1}" y1="{y1}" x2="{x2}" y2="{y2}"/>'


def polygon(points: Iterable[Point], classes: str) -> str:
    return f'<polygon class="{classes}" points="{_points(points)}"/>'


def polyline(points: Iterable[Point], classes: str) -> str:
    return f'<polyline class="{classes}" points="{_points(points)}"/>'


def path(data: str, classes: str) -> str:
    return f'<path class="{classes}" d="{data}"/>'


def circle(center: Point, radius: float, classes: str) -> str:
    x, y = (number(value) for value in center)
    return f'<circle class="{classes}" cx="{x}" cy="{y}" r="{number(radius)}"/>'


def text(at: Point, words: str, classes: str, anchor: str = "middle") -> str:
    """A name as a person gave it, cut to fit."""
    return sentence(at, name(words), classes, anchor)


def sentence(at: Point, words: str, classes: str, anchor: str = "middle") -> str:
    """Words of the engine's own, which it fits to their place itself."""
    where = f'x="{number(at[0])}" y="{number(at[1])}" text-anchor="{anchor}"'
    return f'<text class="{classes}" {where}>{escape(plain(words, " "))}</text>'


def lettered(letters: Iterable[str], part: str) -> str:
    """An element that belongs to pieces, so that a page finds a piece on every drawing by its letter."""
    return _tagged(part, "data-letters", " ".join(letters))


def of_wall(wall: str, part: str) -> str:
    """An element that belongs to a wall, so that a page marks the one in hand without asking for another drawing."""
    return _tagged(part, "data-wall", wall)


def _tagged(part: str, tag: str, value: str) -> str:
    head, end, rest = part.partition("/>" if part.endswith("/>") else ">")
    return f'{head} {tag}="{escape(plain(value, " "))}"{end}{rest}'


def drawing(width: float, height: float, title: str, parts: Iterable[str]) -> str:
    """The whole drawing, with a title for a screen reader."""
    box = f'viewBox="0 0 {number(width)} {number(height)}"'
    said = f"<title>{escape(plain(title, ' '))}</title>"
    return f'<svg xmlns="http://www.w3.org/2000/svg" {box} role="img">{said}{"".join(parts)}</svg>'


# What the page's styles say, for a drawing that is a file of its own.
STYLE = (
    "svg{background:#fff;font-family:sans-serif}*{fill:none;stroke:#2a2927}text{fill:#2a2927;stroke:none;font-size:12px}"
    ".wall{stroke-width:4}.gap{stroke:#fff;stroke-width:6}.dashed{stroke-dasharray:4 3}.small{font-size:11px}"
    ".wood{fill:#efe3c8}.lettered,.sheet,.opening{fill:#fff}.sheet{stroke:none}.strong,.letter,.number{font-weight:700}"
    ".red{stroke:#b0301f}.pencil{stroke:#6e6a62}text.pencil{stroke:none;fill:#6e6a62}"
)


def alone(whole: str) -> str:
    """A drawing with its looks in it, to be opened by itself."""
    head, end, rest = whole.partition(">")
    return f"{head}{end}<style>{STYLE}</style>{rest}"


def _points(points: Iterable[Point]) -> str:
    return " ".join(f"{number(x)},{number(y)}" for x, y in points)
