"""The steps of doing a room, what each must come after, and which readings a step puts in doubt once it is done.

Mostly common practice, no source. Casing before base and chair rail, stool before side casing: articles on trim;
wallpaper after paint, window film after all sanding: makers' guides.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from scantling.engine.words import say


@dataclass(frozen=True, slots=True)
class WorkStep:
    """`after`: the steps it waits for; `voids`: the readings that are in doubt once it was done."""

    key: str
    name: str
    after: tuple[str, ...] = ()
    voids: tuple[str, ...] = ()
    why: str = ""


def _step(key: str, after: tuple[str, ...] = (), voids: tuple[str, ...] = (), explained: bool = False) -> WorkStep:
    return WorkStep(key, say(f"step-{key}"), after, voids, say(f"step-why-{key}") if explained else "")


STEPS = (
    _step("hazards"),
    _step("strip", ("hazards",), explained=True),
    _step("boxes", ("strip",)),
    _step("walls", ("strip", "boxes"), ("corners", "lengths", "plumb", "depths"), explained=True),
    _step("stock", ("walls",), explained=True),
    _step("ceiling", ("walls",)),
    _step("floor", ("strip",), ("legs", "heights", "sills"), explained=True),
    _step("jambs", ("walls", "floor"), ("openings", "heads"), explained=True),
    _step("windows", ("jambs", "stock")),
    _step("casing", ("jambs", "stock", "floor")),
    _step("built_in", ("walls", "floor"), ("between",), explained=True),
    _step("crown", ("walls", "boxes", "stock"), ("paper",)),
    _step("wainscot", ("casing", "built_in"), explained=True),
    _step("base", ("casing", "windows", "floor", "built_in", "wainscot"), ("paper",), explained=True),
    _step("fill", ("base", "crown"), explained=True),
    _step("trim_paint", ("fill", "ceiling")),
    _step("seal", ("trim_paint",), explained=True),
    _step("paper", ("seal",)),
    _step("plates", ("paper",)),
    _step("film", ("trim_paint",), explained=True),
    _step("list", ("plates", "film")),
)  # fmt: skip
BY_KEY: Mapping[str, WorkStep] = MappingProxyType({step.key: step for step in STEPS})
