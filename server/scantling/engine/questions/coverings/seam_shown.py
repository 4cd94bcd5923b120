"""Strips as the answer to `seams` gives them, and what is said of each."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from scantling.engine.coverings.scale import Scale
from scantling.engine.coverings.seams.hang import Paper
from scantling.engine.coverings.seams.plan import ListedStrip, PieceOf, SeamPlan
from scantling.engine.coverings.seams.search import Hung
from scantling.engine.coverings.seams.stretch import Stretch
from scantling.engine.drawings.coverings.stretch import draw_stretch
from scantling.engine.questions.question import Answer
from scantling.engine.shapes import show
from scantling.engine.tape.lengths import SIXTEENTH, SIXTY_FOURTH, Length, format_exact, format_length
from scantling.engine.words import all_of, say


@dataclass(frozen=True, slots=True)
class TriedStretch:
    """A stretch as it is hung, how many starts were tried, and how many sixteenths lie between the marks of them."""

    stretch: Stretch
    hung: Hung
    tried: int
    step: int


class Shown:
    """Strips as an answer gives them."""

    def __init__(self, paper: Paper, scale: Scale, nearest: Length) -> None:
        self.paper, self.scale, self.nearest = paper, scale, nearest

    def length(self, units: int) -> Answer:
        return show(self.scale.length(units), self.nearest)

    def shown(self, units: int) -> str:
        return format_length(self.scale.length(units), self.nearest)

    def stretch(self, one: TriedStretch, strips: Sequence[ListedStrip]) -> Answer:
        hung = one.hung
        return {
            "start": self._start(hung),
            "keep": self._keep(one),
            "strips": [self.strip(strip) for strip in strips],
            "mismatch": self._mismatch(one, strips),
            "seen": self.length(hung.rank[2]),
            "slivers": hung.rank[1],
            "tried": one.tried,
            "said": self._tried(one),
            "drawing": draw_stretch(one.stretch, hung, strips, self.paper),
        }

    def _start(self, hung: Hung) -> str:
        return say(f"seams-start-{hung.start.how}", place=hung.start.of)

    def _keep(self, one: TriedStretch) -> Answer:
        part = one.stretch.part_at(one.hung.start.along)
        first = next(other for other in one.stretch.parts if other.wall == part.wall)
        inches = self.scale.length(one.hung.start.along - first.start).inches
        exact = inches.denominator <= SIXTY_FOURTH.inches.denominator
        return {"of": part.wall, "at": format_exact(inches) if exact else f"{float(inches):.6f}"}

    def _tried(self, one: TriedStretch) -> str:
        rule = format_length(SIXTEENTH * one.step)
        return say("seams-tried-every", rule=rule) if one.tried > 2 else say("seams-tried-chosen")

    def _mismatch(self, one: TriedStretch, strips: Sequence[ListedStrip]) -> Answer | None:
        place = one.hung.mismatch
        if place is None:
            return None
        seen = sum(gap.foot - gap.top for gap in one.stretch.gaps(place.at - 1, place.at + 1))
        last = [strip.number for strip in strips if place.at % one.stretch.end in
                (strip.strip.right % one.stretch.end, strip.strip.left % one.stretch.end)]  # fmt: skip
        strips_there = all_of(map(str, last[:2]))
        said = say("seams-mismatch-at" if place.hole else "seams-mismatch-in", place=place.name, strips=strips_there)
        return {"of": place.of, "said": said, "seen": self.length(seen)}

    def strip(self, one: ListedStrip) -> Answer:
        order, paper = one.strip.order, self.paper
        mark = (paper.trim // 2 + paper.mark + order * paper.step) % paper.repeat if paper.repeat else None
        return {
            "number": one.number,
            "letter": paper.letter(order),
            "width": self.length(one.used),
            "mark": None if mark is None else self.length(mark),
            "walls": [
                {"wall": where.part.wall, "name": where.part.name, "start": self.length(where.start),
                 "end": self.length(where.end)} for where in one.walls
            ],
            "turns": list(self._turns(one)),
            "pieces": [self.piece(piece) for piece in one.pieces],
            "beside": one.shares,
            "said": self._said(one),
        }  # fmt: skip

    def cutting(self, plan: SeamPlan) -> Iterator[Answer]:
        """Each roll with the strips it gives, in the order they are cut."""
        cut: dict[int, list[tuple[int, ListedStrip, PieceOf]]] = {}
        for strip in (strip for strips in plan.lists for strip in strips if strip.shares is None):
            for piece in strip.pieces:
                cut.setdefault(piece.roll, []).append((piece.place, strip, piece))
        for roll in sorted(cut.keys() - {0}):
            pieces = sorted(cut[roll], key=lambda one: one[0])
            last = pieces[-1][2]
            yield {
                "roll": roll,
                "pieces": [
                    {"strip": strip.number, "what": piece.what, "cut": self.length(piece.cut.length),
                     "down": self.length(piece.at)} for _, strip, piece in pieces
                ],
                "offcut": self.length(self.paper.sure - last.at - last.cut.length),
            }  # fmt: skip

    def _turns(self, one: ListedStrip) -> Iterator[str]:
        for before, after in zip(one.walls, one.walls[1:], strict=False):
            left, right = self.shown(before.end - before.start), self.shown(after.end - after.start)
            yield say("strip-turns", left=left, wall=before.part.name, right=right, next=after.part.name)

    def piece(self, one: PieceOf) -> Answer:
        return {
            "what": one.what,
            "over": one.hole.name if one.hole else "",
            "cut": self.length(one.cut.length),
            "down": self.length(one.at),
            "roll": one.roll,
            "place": one.place,
        }

    def _said(self, one: ListedStrip) -> str:
        if one.shares is not None:
            return say("strip-shared", number=one.number, width=self.shown(one.used), other=one.shares)
        if not one.pieces:
            return say("strip-nothing", number=one.number)
        cuts = ", ".join(self._said_piece(piece) for piece in one.pieces)
        return f"{one.number} {self.paper.letter(one.strip.order)}: {cuts}"

    def _said_piece(self, piece: PieceOf) -> str:
        length = self.shown(piece.cut.length)
        said = say(f"strip-piece-{piece.what}", length=length, opening=piece.hole.name) if piece.hole else length
        return say("strip-from-roll", piece=said, roll=piece.roll) if piece.roll else said
