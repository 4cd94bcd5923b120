"""The list of a covering to work by, strip by strip, pane by pane, coat by coat; and what of it is ticked off."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from scantling.engine.bodies import FILM, PAINT, PAPER, SHEET
from scantling.engine.notebook import Notebook
from scantling.engine.questions.covered.planned import PlannedCovering
from scantling.engine.questions.question import Answer
from scantling.engine.tape.alike import is_alike
from scantling.engine.words import say


@dataclass(frozen=True, slots=True)
class CoverLine:
    """One thing to cut and put up. `said` is what it is cut to; `where` it goes; `turn`, what it does on the way."""

    key: str
    said: str
    where: str = ""


def derive_cover_lines(planned: PlannedCovering) -> list[CoverLine]:
    """Every line of a covering that is planned, in the order of the work."""
    if planned.answer is None:
        return []
    sorts = {PAPER: _strips, FILM: _panes, SHEET: _panels, PAINT: _coats}
    return list(sorts[planned.article.sort](planned, planned.answer))


def _strips(_: PlannedCovering, answer: Answer) -> Iterator[CoverLine]:
    for stretch in answer["stretches"]:
        for strip in stretch["strips"]:
            where = "; ".join(strip["turns"]) or ", ".join(one["name"] for one in strip["walls"])
            yield CoverLine(str(strip["number"]), strip["said"], where)


def _panes(_: PlannedCovering, answer: Answer) -> Iterator[CoverLine]:
    blanks = {blank["pane"]: blank for blank in answer["blanks"]}
    for place in answer["layout"]:
        blank = blanks[place["pane"]]
        where = say("line-on-band-turned" if place["turned"] else "line-on-band", band=place["band"] + 1)
        yield CoverLine(str(place["pane"] + 1), _of_pane(blank), where)


def _panels(_: PlannedCovering, answer: Answer) -> Iterator[CoverLine]:
    panels = {panel["panel"]: panel for panel in answer["panels"]}
    counted: Counter[int] = Counter()
    for number, sheet in enumerate(answer["sheets"], start=1):
        for cut in sheet["cuts"]:
            panel = panels[cut["panel"]]
            counted[cut["panel"]] += 1
            where = say("line-on-sheet", number=number)
            yield CoverLine(f"{cut['panel'] + 1}.{counted[cut['panel']]}", _of_pane(panel), where)


def _of_pane(one: Answer) -> str:
    return f"{one['name']}: {one['width']['shown']} × {one['height']['shown']}"


def _coats(planned: PlannedCovering, _: Answer) -> Iterator[CoverLine]:
    coats = int(planned.article.facts.get("coats", 2))
    for coat in range(1, coats + 1):
        for surface in planned.surfaces:
            yield CoverLine(f"{surface.name} {coat}", say("line-of-coat", name=surface.name, coat=coat, coats=coats))


def show_list(notebook: Notebook, planned: PlannedCovering) -> list[Answer]:
    """The list with what was ticked off; where a line has changed since, how it was cut is told."""
    ticks = notebook.ticks(planned.id, "strips")
    shown = []
    for line in derive_cover_lines(planned):
        entry = ticks[line.key][0] if line.key in ticks else None
        was = entry.body["remember"] if entry else ""
        changed = say("line-ticked-off", was=was) if was and not is_alike(was, line.said) else ""
        state = entry.body["state"] if entry else ""
        shown.append({"key": line.key, "said": line.said, "where": line.where, "state": state, "changed": changed})
    return shown


def is_done(notebook: Notebook, planned: PlannedCovering) -> bool:
    """Whether everything on its list is up."""
    lines = derive_cover_lines(planned)
    ticks = notebook.ticks(planned.id, "strips")
    done = [line for line in lines if line.key in ticks and ticks[line.key][0].body["state"] in ("hung", "done")]
    return bool(lines) and len(done) == len(lines)
