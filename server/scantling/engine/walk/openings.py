"""What there is to read of an opening for the pieces round it, each with where to hold the tape.

A head corner may be read, and is square until it is: nothing waits for it. Nor does a stool wait for the sash, which
only says how wide to rip it, or a window's casing for the depths of its jambs, which only its extension goes by.
"""

from collections.abc import Iterator

from scantling.engine.standard import STOOL, Standard
from scantling.engine.survey.room import Opening, Wall
from scantling.engine.trim.openings.cased import places_of
from scantling.engine.walk.figure import Figure


def figures_of_casing(wall: Wall, opening: Opening, why: str) -> Iterator[Figure]:
    """The figures of one opening that only the pieces round it use, in the order one reads them."""
    standard = opening.standard
    assert standard is not None
    for side, measure in (("left", opening.left), ("right", opening.right)):
        title, hint = f"height at the {side}", _height_hint(standard, opening, side)
        yield _figure(wall, opening, side, title, hint, why, measure is not None)
    for side, corner in (("left", opening.left_corner), ("right", opening.right_corner)):
        title, hint = (
            f"{side} corner of the head",
            f"Set the gauge inside the opening, in the {side} corner of the head.",
        )
        yield _figure(wall, opening, f"{side}_corner", title, hint, why, corner is not None, assumed="square")
    if opening.kind == "window":
        yield from _figures_of_window(wall, opening, standard)


def _height_hint(standard: Standard, opening: Opening, side: str) -> str:
    if opening.kind != "window":
        return f"Up the {side} jamb, from the floor to the underside of the head jamb."
    foot = "where the stool will lie" if standard.window_style == STOOL else "the upper face of the sill jamb"
    return f"Up the {side} jamb, from {foot} to the underside of the head jamb."


def _figures_of_window(wall: Wall, opening: Opening, standard: Standard) -> Iterator[Figure]:
    if standard.window_style == STOOL:
        hint = "Shut the window. From the sash level out to a straightedge on the wall, where it is least."
        why = f"how wide the stool of the {opening.name} is ripped"
        yield _figure(wall, opening, "sash", "sash to the wall", hint, why, opening.sash is not None)
    if not standard.wants("extension"):
        return
    for place in places_of(standard):
        run = "top, middle and foot" if place in ("left", "right") else "left, middle and right"
        hint = f"From the jamb's edge out to a straightedge on the wall: {run}. A jamb that is proud: -1/16."
        title, why = f"depth of the jamb at the {place}", f"the extension strips of the {opening.name}"
        yield _figure(wall, opening, f"depth_{place}", title, hint, why, place in opening.depths)


def _figure(
    wall: Wall, opening: Opening, what: str, title: str, hint: str, why: str, read: bool, assumed: str = ""
) -> Figure:
    return Figure(
        opening.id, what, wall.id, wall.number, f"{wall.name}, {opening.name}, {title}", hint, why,
        used=True, read=read, assumed=assumed,
    )  # fmt: skip
