"""The steps of doing a room, what each must come after, and which readings a step puts in doubt once it is done.

Mostly common practice, no source. Casing before base and chair rail, stool before side casing: articles on trim;
wallpaper after paint, window film after all sanding: makers' guides.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True, slots=True)
class Step:
    """`after`: the steps it waits for; `voids`: the readings that are in doubt once it was done."""

    key: str
    name: str
    after: tuple[str, ...] = ()
    voids: tuple[str, ...] = ()
    why: str = ""


STEPS = (
    Step("hazards", "Hazards looked for: year built, old paint, old walls, wires and pipes, glass near water"),
    Step("strip", "Old trim and old caulk off, ghost lines of the old casing noted", ("hazards",),
         why="old caulk holds new trim off the wall"),
    Step("boxes", "Electrical boxes and blocking set to the finished wall", ("strip",)),
    Step("walls", "Plaster and board repaired, leveled, sanded and primed", ("strip", "boxes"),
         ("corner angles", "wall lengths", "how far walls are out of plumb", "depths of jambs"),
         "plaster and mud change corners and walls"),
    Step("stock", "Heat on, boards in the room and open to its air", ("walls",),
         why="wood moves until it is as dry as the room"),
    Step("ceiling", "Ceiling painted, and the walls' first coat", ("walls",)),
    Step("floor", "Floor laid, or blocks as thick as it at every foot", ("strip",),
         ("leg heights of doors", "heights of walls", "heights of sills"),
         "a new floor takes its thickness from every height"),
    Step("jambs", "Doors hung, jambs plumb and flush with the wall, extensions on", ("walls", "floor"),
         ("widths and heights of openings", "corners of heads"), "a jamb that is shimmed is another opening"),
    Step("windows", "Stool, then window casing, apron last", ("jambs", "stock")),
    Step("casing", "Door casing", ("jambs", "stock", "floor")),
    Step("built_in", "Cabinets, mantels and what is built in", ("walls", "floor"), ("wall lengths between things",),
         "base runs end on them"),
    Step("crown", "Crown and picture rail", ("walls", "boxes", "stock"), ("heights to paper",)),
    Step("wainscot", "Chair rail and wainscot", ("casing", "built_in"),
         why="fit all dry first: glue lets a piece come off again only while it is wet"),
    Step("base", "Base, then shoe", ("casing", "windows", "floor", "built_in", "wainscot"), ("heights to paper",),
         "base dies into casing"),
    Step("fill", "Nails set, filled, sanded, spots primed, then caulk", ("base", "crown"),
         why="caulk holds on primer, not on bare wood"),
    Step("trim_paint", "Trim painted, then the walls' last coat", ("fill", "ceiling")),
    Step("seal", "Walls to paper leveled, sealed or sized, and dry", ("trim_paint",),
         why="paper that sticks by itself shows every bump and comes off dust"),
    Step("paper", "Wallpaper hung", ("seal",)),
    Step("plates", "Plates, hardware and stops on", ("paper",)),
    Step("film", "Window film, in a clean room", ("trim_paint",), why="dust is the main defect"),
    Step("list", "What is left to mend listed; leftovers, batches and one spare length kept", ("plates", "film")),
)  # fmt: skip
BY_KEY: Mapping[str, Step] = MappingProxyType({step.key: step for step in STEPS})
