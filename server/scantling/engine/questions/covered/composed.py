"""What is said of a covering put as the question that plans it: `seams`, `panes`, `sheets` or `paint`."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from scantling.engine.bodies import FILM, PAINT, PAPER, SHEET
from scantling.engine.coverings.paint.surfaces import (
    CEILING,
    TRIM,
    WALLS,
    Surface,
    derive_ceiling,
    derive_trim,
    derive_walls,
)
from scantling.engine.errors import EngineError
from scantling.engine.questions.covered.said import FIELDS
from scantling.engine.questions.question import Raw
from scantling.engine.survey.room import Room
from scantling.engine.tape.lengths import parse_length
from scantling.engine.trim.piece import Piece
from scantling.engine.words import say

EDGES = ("height", "from_floor", "from_ceiling")
HUNG = (*EDGES, "trim", "turn", "sliver", "mark", "mismatch")


class CoveringError(EngineError):
    family = "covering"


@dataclass(frozen=True, slots=True)
class Article:
    """What a thing is covered with: its name, its sort, and its label as a question carries it."""

    id: str
    name: str
    sort: str
    facts: Raw
    struck: bool = False


@dataclass(slots=True)
class Composing:
    """One covering on its way to its question. `problems` is added to; `surfaces`, of paint, are what it goes on."""

    id: str
    room: Room
    pieces: Callable[[], list[Piece]]
    article: Article
    cover: Raw
    problems: list[EngineError] = field(default_factory=list)
    surfaces: list[Surface] = field(default_factory=list)

    def compose(self) -> Raw | None:
        """The question; None where nothing it could be about is there."""
        sorts = {PAPER: self._paper, FILM: self._film, SHEET: self._sheets, PAINT: self._paint}
        return sorts[self.article.sort]()

    def walls(self) -> list[str]:
        """The walls that were chosen; one that is gone is told, for with none named all would be meant."""
        known = {wall.id for wall in self.room.walls}
        chosen = self.cover.get("walls", ())
        here = [wall for wall in chosen if wall in known]
        if len(here) < len(chosen):
            self.problems.append(CoveringError("wall-gone"))
        return here

    def _paper(self) -> Raw | None:
        walls = self.walls()
        if not walls and self.cover.get("walls"):
            return None
        roll = {name: fact for name, fact in self.article.facts.items() if name != "price"}
        hung = {**_some(self.cover, *HUNG), "panels": self._panels()}
        return {"ask": "seams", "roll": roll, "walls": walls, "starts": self._starts(walls), **hung}

    def _panels(self) -> list[Raw]:
        """The panels, each on a wall by its id, or by the number that a person writes."""
        numbered = {str(wall.number): wall.id for wall in self.room.walls}
        return [{**panel, "wall": numbered.get(panel["wall"], panel["wall"])} for panel in self.cover.get("panels", ())]

    def _starts(self, walls: list[str]) -> list[Raw]:
        """The starts that were chosen on what is papered."""
        papered = [wall for wall in self.room.walls if not walls or wall.id in walls]
        places = {wall.id for wall in papered} | {opening.id for wall in papered for opening in wall.openings}
        chosen = self.cover.get("start", ())
        here = [start for start in chosen if start["of"] in places]
        if len(here) < len(chosen):
            self.problems.append(CoveringError("start-gone"))
        return here

    def _film(self) -> Raw:
        own = _some(self.article.facts, "gap", "allowance", "turnable")
        return {"ask": "panes", "panes": self.cover["panes"], "roll_width": self.article.facts["width"], **own}

    def _sheets(self) -> Raw:
        facts = self.article.facts
        sheet = _some(facts, "width", "length", "price")
        own = _some(facts, "kerf", "gap", "turnable")
        return {"ask": "sheets", "panels": self.cover["sheets"], "sheet": sheet, **own}

    def _paint(self) -> Raw | None:
        for row in self.cover.get("surfaces") or [{"name": WALLS}]:
            surface = self._surface(row)
            missing = [words[:1].upper() + words[1:] for words in surface.missing]
            self.problems += (CoveringError("not-counted", missing=words) for words in missing)
            if surface.area:
                self.surfaces.append(surface)
            else:
                self.problems.append(CoveringError("no-area", name=surface.name.capitalize()))
        if not self.surfaces:
            return None
        on = [{"name": surface.name, "area": _square_feet(surface.area)} for surface in self.surfaces]
        product = {"name": self.article.name, "on": [surface["name"] for surface in on], **self.article.facts}
        return {"ask": "paint", "surfaces": on, "products": [product]}

    def _surface(self, row: Raw) -> Surface:
        name = row["name"]
        if "area" in row:
            (said,) = FIELDS["cover.surfaces"].deserialize([row])
            return Surface(name, said["area"], (say("surface-as-written", name=name, area=row["area"]),))
        if name == CEILING:
            return derive_ceiling(self.room)
        if name == TRIM:
            return derive_trim(self.room, self.pieces(), **self._growth())
        if name != WALLS:
            return Surface(name, Fraction(0), ())
        walls, chosen = self.walls(), self.cover.get("walls")
        some = [wall for wall in self.room.walls if not chosen or wall.id in walls]
        if not some:
            return Surface(WALLS, Fraction(0), ())
        edges = {name: parse_length(self.cover[name]) for name in EDGES if name in self.cover}
        return derive_walls(self.room, some, **edges)

    def _growth(self) -> Mapping[str, Fraction]:
        if "growth" not in self.cover:
            return {}
        percent: Any = FIELDS["cover.growth"].deserialize(self.cover["growth"])
        return {"growth": percent / 100}


def _some(facts: Mapping[str, Any], *names: str) -> Raw:
    return {name: facts[name] for name in names if name in facts}


def _square_feet(area: Fraction) -> str:
    """Up to the next hundredth, as `paint` takes it."""
    whole, cents = divmod(-(-area * 100 // 144), 100)
    return f"{whole}.{cents:02d}"
