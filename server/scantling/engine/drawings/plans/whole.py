"""The whole room on one sheet: the plan to scale with every piece lettered where it goes, joints, and odd angles.

Boards are drawn as bands along their walls, wider than they are, so that it is seen how two of them meet: slanted in a
miter, curved in a cope, square against a board that runs through. Where there is no room for a label the least needed
are left out, angles first and then wall numbers, and how many letters are missing is said.
"""

import itertools
import math
from collections.abc import Iterator, Sequence

from scantling.engine.drawings import svg
from scantling.engine.drawings.board import wave
from scantling.engine.drawings.joints import derive_stops
from scantling.engine.drawings.plans.labels import Box, Label, place_labels
from scantling.engine.drawings.plans.plan import WIDTH, PlanPaper, draw_gap, draw_wall, nothing_yet, span_of
from scantling.engine.survey.outline import DrawnWall, derive_outline
from scantling.engine.survey.room import Room
from scantling.engine.tape.angles import SQUARE, format_degrees
from scantling.engine.trim.piece import Kind, Piece
from scantling.engine.trim.told.tolerance import NOT_SQUARE
from scantling.engine.words import say, say_counted

MARGIN, TALLEST = 42.0, 420.0
THICK = 6.0
# Letters whose places come this close share one ring.
CLOSE = 16.0
LETTER, NUMBER, ANGLE = 1, 2, 3
JOINTS = ("miter", "cope", "butt", "scarf")
NOTE = 16.0


def draw_whole(room: Room, pieces: Sequence[Piece]) -> str:
    """The room with its pieces as SVG text, seen from above."""
    sides = derive_outline(room)
    if not sides:
        return nothing_yet()
    paper = PlanPaper(sides, MARGIN, TALLEST)
    parts = [svg.polygon([paper.at(side.start) for side in sides], "sheet")] if room.closed else []
    along = [piece for piece in pieces if piece.start is not None]
    for side in sides:
        parts += draw_wall(paper, side)
        parts += (_draw_band(paper, side, piece) for piece in along if _is_drawn(piece, side))
    parts += draw_gap(paper, room, sides)
    labels = [label for side in sides for label in _label_side(paper, side, pieces, room)]
    thick = THICK / paper.scale
    lines = [(paper.at(side.point(0, out)), paper.at(side.point(side.length, out)))
             for side in sides for out in (0.0, thick)]  # fmt: skip
    placed, left_out = place_labels(labels, Box(0, 0, paper.width, paper.height), lines)
    # Lines that lead to a board first: a ring that one of them passes under stays readable.
    parts += (part for label, place in placed for part in label.lead(place))
    parts += (part for label, place in placed for part in label.draw(place))
    notes = list(_say_notes(along, left_out))
    for row, words in enumerate(notes):
        parts.append(svg.sentence((WIDTH / 2, paper.height + NOTE * row + 8), words, "small pencil"))
    title = say_counted("drawn-whole", len(sides), room=svg.name(room.name) or say("drawn-room"))
    return svg.drawing(paper.width, paper.height + NOTE * len(notes), title, parts)


def _is_drawn(piece: Piece, side: DrawnWall) -> bool:
    # Of all that runs along a wall only the base is drawn as a band: cap, shoe and rails lie over it, seen from above.
    return piece.wall == side.wall.id and piece.kind == Kind.BASE


def _draw_band(paper: PlanPaper, side: DrawnWall, piece: Piece) -> str:
    thick = THICK / paper.scale
    assert piece.start is not None
    start = 0.0 if piece.left.corner else min(float(piece.start.inches), side.length)
    finish = side.length if piece.right.corner else min(float((piece.start + piece.back).inches), side.length)
    (left_back, left_face), (right_back, right_face) = (derive_stops(end, thick) for end in (piece.left, piece.right))
    a, b, c, d = (
        paper.at(side.point(along, out))
        for along, out in ((start + left_back, 0.0), (finish - right_back, 0.0), (finish - right_face, thick),
                           (start + left_face, thick))
    )  # fmt: skip
    right = wave(b, c) if piece.right.joint == "cope" else f"L{_at(c)}"
    left = wave(d, a) if piece.left.joint == "cope" else ""
    return svg.lettered([piece.letter], svg.path(f"M{_at(a)}L{_at(b)}{right}L{_at(d)}{left}Z", "ink thin wood"))


def _at(point: svg.Point) -> str:
    return f"{svg.number(point[0])} {svg.number(point[1])}"


def _label_side(paper: PlanPaper, side: DrawnWall, pieces: Sequence[Piece], room: Room) -> Iterator[Label]:
    yield from _letters_along(paper, side, pieces)
    yield from _letters_of_openings(paper, side, pieces)
    middles = [side.length * part for part in (0.5, 0.35, 0.65, 0.2, 0.8)]
    places = [_point(paper, side, along, -out) for out in (13, 28) for along in middles]
    yield Label(str(side.wall.number), tuple(places), NUMBER, "number", 12)
    corner = side.wall.corner
    if corner and room.after(side.wall) and abs(corner.gauge - SQUARE) >= NOT_SQUARE:
        yield Label(format_degrees(corner.gauge), tuple(_round_corner(paper, side)), ANGLE, "small pencil", 11)


def _point(paper: PlanPaper, side: DrawnWall, along: float, inward: float) -> svg.Point:
    return paper.at(side.point(along, inward / paper.scale))


def _round_corner(paper: PlanPaper, side: DrawnWall) -> Iterator[svg.Point]:
    """Places near the corner at a wall's right end, on the line that halves it and beside that line."""
    corner = side.wall.corner
    assert corner is not None
    x, y = paper.at(side.end)
    into = math.radians(side.heading + 180 - float(corner.degrees) / 2)
    for out in (24, -20, 36, -32, 48):
        for swing in (0.0, 0.5, -0.5):
            yield (x + out * math.cos(into + swing), y + out * math.sin(into + swing))


def _letters_along(paper: PlanPaper, side: DrawnWall, pieces: Sequence[Piece]) -> Iterator[Label]:
    here = [piece for piece in pieces if piece.start is not None and piece.wall == side.wall.id]
    found = sorted((_middle(piece, side), place) for place, piece in enumerate(here))
    for piece in [one for one in pieces if one.wall == side.wall.id and one.returns and not one.opening]:
        whole = next(place for place, one in enumerate(here) if one.key == piece.returns)
        here.append(piece)
        found.append((_middle(here[whole], side), len(here) - 1))
    found.sort()
    groups: list[list[tuple[float, int]]] = []
    for one in found:
        if groups and (one[0] - groups[-1][0][0]) * paper.scale < CLOSE:
            groups[-1].append(one)
        else:
            groups.append([one])
    for group in groups:
        middle = group[0][0]
        grouped = [here[place] for _, place in group]
        words = say_letters(grouped, pieces)
        by = 14 / paper.scale
        alongs = [middle, middle - by, middle + by, middle - 2 * by, middle + 2 * by]
        places = [_point(paper, side, along, out) for out in (19, 34, 50, -17) for along in alongs]
        at = _point(paper, side, middle, THICK)
        letters = tuple(piece.letter for piece in grouped)
        yield Label(words, tuple(places), LETTER, "small strong", 11, ringed=True, of=at, letters=letters)


def _middle(piece: Piece, side: DrawnWall) -> float:
    assert piece.start is not None
    return min(float((piece.start + piece.back / 2).inches), side.length)


def _letters_of_openings(paper: PlanPaper, side: DrawnWall, pieces: Sequence[Piece]) -> Iterator[Label]:
    for opening in side.wall.openings:
        here = [piece for piece in pieces if piece.opening == opening.id]
        span = span_of(opening.at, opening.width, side.length)
        if not here or span is None:
            continue
        middle = (span[0] + span[1]) / 2
        by = 16 / paper.scale
        alongs = [middle, middle - by, middle + by, middle - 2 * by, middle + 2 * by]
        places = [_point(paper, side, along, out) for out in (-19, -33, 24, 40) for along in alongs]
        at, words = _point(paper, side, middle, 0), say_letters(here, pieces)
        letters = tuple(piece.letter for piece in here)
        yield Label(words, tuple(places), LETTER, "small strong", 11, ringed=True, of=at, letters=letters)


def say_letters(here: Sequence[Piece], pieces: Sequence[Piece]) -> str:
    """The letters of some pieces: those of three or more that follow each other in the list as A–C."""
    place_of = {piece.key: place for place, piece in enumerate(pieces)}
    places = sorted(place_of[piece.key] for piece in here)
    said = []
    for _, run in itertools.groupby(enumerate(places), key=lambda one: one[1] - one[0]):
        letters = [pieces[place].letter for _, place in run]
        said.append(f"{letters[0]}–{letters[-1]}" if len(letters) > 2 else " ".join(letters))
    return " ".join(said)


def _say_notes(along: Sequence[Piece], left_out: Sequence[Label]) -> Iterator[str]:
    joints = {end.joint for piece in along for end in (piece.left, piece.right)}
    shown = [say(f"whole-{joint}") for joint in JOINTS if joint in joints]
    if shown:
        yield ", ".join(shown)
    letters = [label.words for label in left_out if label.need == LETTER]
    if letters:
        yield say("letters-left-out", count=len(letters))
