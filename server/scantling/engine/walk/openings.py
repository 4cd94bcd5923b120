"""What there is to read of an opening for the pieces round it, each with where to hold the tape.

A head corner may be read, and is square until it is: nothing waits for it. Nor does a stool wait for the sash, which
only says how wide to rip it, or a window's casing for the depths of its jambs, which only its extension goes by.
"""

from collections.abc import Iterator

from scantling.engine.standard import STOOL, Standard
from scantling.engine.survey.room import Opening, Wall
from scantling.engine.trim.openings.cased import places_of
from scantling.engine.walk.figure import Figure
from scantling.engine.words import say


def figures_of_casing(wall: Wall, opening: Opening, why: str) -> Iterator[Figure]:
    """The figures of one opening that only the pieces round it use, in the order one reads them."""
    standard = opening.standard
    assert standard is not None
    for side, measure in (("left", opening.left), ("right", opening.right)):
        title, hint = say(f"walk-jamb-{side}"), _height_hint(standard, opening, side)
        yield _figure(wall, opening, side, title, hint, why, measure is not None)
    for side, corner in (("left", opening.left_corner), ("right", opening.right_corner)):
        title, hint, assumed = say(f"walk-head-{side}"), say(f"walk-head-how-{side}"), say("walk-square")
        yield _figure(wall, opening, f"{side}_corner", title, hint, why, corner is not None, assumed)
    if opening.kind == "window":
        yield from _figures_of_window(wall, opening, standard)


def _height_hint(standard: Standard, opening: Opening, side: str) -> str:
    if opening.kind != "window":
        return say(f"walk-up-floor-{side}")
    return say(f"walk-up-stool-{side}" if standard.window_style == STOOL else f"walk-up-sill-{side}")


def _figures_of_window(wall: Wall, opening: Opening, standard: Standard) -> Iterator[Figure]:
    if standard.window_style == STOOL:
        title, hint, why = say("walk-sash"), say("walk-sash-how"), say("walk-sash-why", thing=opening.name)
        yield _figure(wall, opening, "sash", title, hint, why, opening.sash is not None)
    if not standard.wants("extension"):
        return
    for place in places_of(standard):
        hint = say("walk-depth-upright" if place in ("left", "right") else "walk-depth-level")
        title, why = say(f"walk-jamb-depth-{place}"), say("walk-depth-why", thing=opening.name)
        yield _figure(wall, opening, f"depth_{place}", title, hint, why, place in opening.depths)


def _figure(
    wall: Wall, opening: Opening, what: str, title: str, hint: str, why: str, read: bool, assumed: str = ""
) -> Figure:
    named = say("walk-of-thing", thing=opening.name, title=title)
    return Figure(
        opening.id, what, wall.id, wall.number, named, hint, why,
        used=True, read=read, assumed=assumed,
    )  # fmt: skip
