"""`seams`: where every strip of wallpaper hangs on the real walls of a room, and which roll it is cut from."""

from collections.abc import Iterator, Sequence
from typing import Any

from scantling.engine.cautions import cautions_for_paper
from scantling.engine.coverings.rolls.roll import Roll
from scantling.engine.coverings.scale import Scale, derive_scale
from scantling.engine.coverings.seams.hang import Paper
from scantling.engine.coverings.seams.plan import STRIPS_AT_MOST, SeamPlan, plan_seams
from scantling.engine.coverings.seams.search import SeamSearch, derive_mismatches
from scantling.engine.coverings.seams.start import PLUMB, Start, derive_starts, middle_starts
from scantling.engine.coverings.seams.stretch import Stretch
from scantling.engine.coverings.seams.walls import (
    Panel,
    Papered,
    SeamError,
    WantedPaper,
    derive_panels,
    derive_papered,
    lengths_of,
    make_stretch,
)
from scantling.engine.coverings.standing import Opens, find_covered_behind
from scantling.engine.drawings.coverings.seams import draw_papered_wall
from scantling.engine.questions.coverings.seam_shapes import SeamsIn, SeamsOut
from scantling.engine.questions.coverings.seam_shown import Shown, TriedStretch
from scantling.engine.questions.coverings.shapes import read_roll
from scantling.engine.questions.facts import find
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import problems_out
from scantling.engine.standard import Standard
from scantling.engine.survey.room import Problem, Room
from scantling.engine.tape.lengths import SIXTEENTH, ZERO, Length, format_length, round_to
from scantling.engine.trim.runs.compound import derive_drop
from scantling.engine.words import say


def answer_seams(asked: dict[str, Any], context: Context) -> Answer:
    room, unused = find(asked, context)
    roll = read_roll(asked["roll"])
    papered, closed, problems = _papered(room, asked)
    scale = derive_scale([*lengths_of(papered), *_paper_lengths(roll, asked)])
    paper = _paper(roll, asked, scale)
    if sum(one.length.inches for each in papered for one in each) > STRIPS_AT_MOST * roll.covers.inches:
        raise SeamError("too-many", field="roll.width", most=STRIPS_AT_MOST)
    stretches = [make_stretch(one, closed, scale) for one in papered]
    _check_starts(stretches, asked)
    tried = [_try(stretch, paper, asked, scale) for stretch in stretches]
    plan = plan_seams([one.stretch for one in tried], [one.hung for one in tried], paper)
    if plan.cutting is None:
        problems.append(_too_long(papered, roll, asked))
    shown = Shown(paper, scale, asked["nearest"])
    return {
        "rolls": {
            "nominal": len(plan.labeled.rolls) if plan.labeled else None,
            "guaranteed": len(plan.cutting.rolls) if plan.cutting else None,
        },
        "proven": plan.cutting is not None and len(plan.cutting.rolls) == plan.cutting.bound,
        "strips": sum(len(strips) for strips in plan.lists),
        "stretches": [shown.stretch(one, strips) for one, strips in zip(tried, plan.lists, strict=True)],
        "cutting": list(shown.cutting(plan)),
        "drawings": list(_drawings(tried, plan, paper)),
        "said": [*_said(plan), *_said_behind(papered)],
        "working": list(_working(roll, papered, asked)),
        "problems": problems_out((*room.problems, *problems)),
        "warnings": unused,
        "cautions": cautions_for_paper(),
    }


def _papered(room: Room, asked: dict[str, Any]) -> tuple[list[list[Papered]], bool, list[Problem]]:
    if asked["panels"]:
        panels = [
            Panel(one.get("name") or say("nameless-panel", number=place),
                  *(one[name] for name in ("wall", "at", "width", "bottom", "top")))
            for place, one in enumerate(asked["panels"], start=1)
        ]
        found, problems = derive_panels(room, panels)
        return found, False, problems
    above = asked.get("from_floor", _wood_goes_up(room.standard))
    below = asked.get("from_ceiling", _crown_comes_down(room.standard))
    wanted = WantedPaper(tuple(asked["walls"]), asked.get("height"), above, below)
    return derive_papered(room, wanted)


def _wood_goes_up(standard: Standard) -> Length:
    """To the top of the chair rail, which paper cannot hang past, or of the base."""
    if standard.wants("chair_rail"):
        return standard.chair_rail_height + standard.chair_rail_width
    return standard.base_height if standard.wants("base") else ZERO


def _crown_comes_down(standard: Standard) -> Length:
    """What crown covers of the wall, or a hair less: paper that is longer is trimmed at its foot."""
    drop = derive_drop(standard.crown_width, standard.crown_spring) if standard.wants("crown") else ZERO
    return round_to(drop, SIXTEENTH, toward="down")


def _paper_lengths(roll: Roll, asked: dict[str, Any]) -> list[Length]:
    given = [asked["trim"] / 2, asked["turn"], asked["sliver"], asked["mark"], SIXTEENTH]
    given += (start["at"] for start in _starts(asked) if "at" in start)
    return [roll.width / 2, roll.length, roll.repeat, roll.step, roll.overlap, *given]


def _paper(roll: Roll, asked: dict[str, Any], scale: Scale) -> Paper:
    return Paper(
        width=scale.whole(roll.width), lap=scale.whole(roll.overlap), turn=scale.whole(asked["turn"]),
        trim=scale.whole(asked["trim"]), repeat=scale.whole(roll.repeat), step=scale.whole(roll.step), drop=roll.drop,
        # A roll may begin anywhere in its pattern, so that as much as a repeat of it may be lost.
        sure=max(0, scale.whole(roll.least_length - roll.repeat)), labeled=scale.whole(roll.length),
        sliver=scale.whole(asked["sliver"]), mark=scale.whole(asked["mark"]),
    )  # fmt: skip


def _try(stretch: Stretch, paper: Paper, asked: dict[str, Any], scale: Scale) -> TriedStretch:
    """The best start of a stretch; the chosen one, where one is on this stretch."""
    search = SeamSearch(stretch, paper)
    starts, step = derive_starts(stretch, paper, scale.whole(SIXTEENTH))
    chosen = next((start for start in _starts(asked) if _spans(stretch, start["of"])), None)
    if chosen:
        starts = _chosen(stretch, paper, chosen, scale)
    mismatches = derive_mismatches(stretch)
    if "mismatch" in asked:
        named = [one for one in mismatches if one.of == asked["mismatch"]]
        if stretch.closed and not named:
            raise SeamError("no-such-start", field="mismatch", of=asked["mismatch"][:40])
        mismatches = named or mismatches
    hung = search.best(starts, mismatches)
    if hung is None:
        raise SeamError("no-walls", field="room")
    return TriedStretch(stretch, hung, len(starts), step)


def _starts(asked: dict[str, Any]) -> list[dict[str, Any]]:
    return [*([asked["start"]] if "start" in asked else []), *asked["starts"]]


def _check_starts(stretches: Sequence[Stretch], asked: dict[str, Any]) -> None:
    for start in _starts(asked):
        if not any(_spans(stretch, start["of"]) for stretch in stretches):
            raise SeamError("no-such-start", field="start.of", of=start["of"][:40])


def _spans(stretch: Stretch, of: str) -> list[tuple[int, int, str]]:
    """Where a wall or an opening is along a stretch."""
    walls = [part for part in stretch.parts if part.wall == of and part.start < stretch.end]
    spans = [(part.start, part.end, part.name) for part in walls]
    return spans + [
        (hole.start, hole.end, hole.name) for hole in stretch.holes if hole.id == of and hole.start < stretch.end
    ]


def _chosen(stretch: Stretch, paper: Paper, start: dict[str, Any], scale: Scale) -> list[Start]:
    left, right, name = _spans(stretch, start["of"])[0]
    if "at" in start:
        found = [Start(left + scale.whole(start["at"]), PLUMB, name)]
    else:
        found = list(middle_starts((left + right) // 2, paper, name, start.get("how", "")))
    if stretch.closed:
        return [Start(one.along % stretch.end, one.how, one.of) for one in found]
    # A strip wider than what it stands on begins before the stretch does: its width counts all the same.
    return [Start(min(max(0, one.along), stretch.end - 1), one.how, one.of) for one in found]


def _too_long(papered: Sequence[Sequence[Papered]], roll: Roll, asked: dict[str, Any]) -> Problem:
    tallest = max((one for each in papered for one in each), key=lambda one: one.height)
    cut, sure = format_length(tallest.height + asked["trim"]), format_length(max(ZERO, roll.least_length - roll.repeat))
    error = SeamError("no-strip", cut=cut, roll=sure)
    return Problem(tallest.wall.id, error.key, error.message)


def _drawings(tried: Sequence[TriedStretch], plan: SeamPlan, paper: Paper) -> Iterator[Answer]:
    for one, strips in zip(tried, plan.lists, strict=True):
        for part in one.stretch.parts:
            if part.start < one.stretch.end:
                drawing = draw_papered_wall(part, one.stretch.holes, strips, paper)
                yield {"wall": part.wall, "name": part.name, "drawing": drawing}


def _said(plan: SeamPlan) -> Iterator[str]:
    if plan.cutting is None:
        return
    rolls, bound = len(plan.cutting.rolls), plan.cutting.bound
    is_proven = rolls == bound
    yield say("seams-proven", rolls=rolls) if is_proven else say("seams-not-proven", rolls=rolls, bound=bound)
    yield say("seams-one-batch")


def _said_behind(papered: Sequence[Sequence[Papered]]) -> Iterator[str]:
    """What stands there and is papered behind because nobody read how tall it is."""
    for one in (one for each in papered for one in each):
        for thing in find_covered_behind(one.wall):
            yield say("seams-behind", wall=one.wall.name, what=thing.name)


def _working(roll: Roll, papered: Sequence[Sequence[Papered]], asked: dict[str, Any]) -> Iterator[str]:
    for each in papered:
        for one in each:
            cut = format_length(one.height + asked["trim"])
            height, trim = format_length(one.height), format_length(asked["trim"])
            long = format_length(one.length)
            yield say("seams-wall", wall=one.name, length=long, height=height, trim=trim, cut=cut)
            for opens in one.opens:
                yield from _over(one, opens, asked)
    sure = roll.least_length - roll.repeat
    yield say("seams-roll-gives", length=format_length(max(ZERO, sure)))


def _over(one: Papered, opens: Opens, asked: dict[str, Any]) -> Iterator[str]:
    """How long a strip is over what is left out, and under it."""
    gaps = {"over": one.top - opens.top, "under": opens.bottom - (one.top - one.height)}
    for where, gap in gaps.items():
        if ZERO < gap < one.height:
            height, trim, cut = (format_length(length) for length in (gap, asked["trim"], gap + asked["trim"]))
            yield say(f"seams-cut-{where}", wall=one.name, what=opens.name, height=height, trim=trim, cut=cut)


QUESTIONS = (
    Question("seams", say("question-seams"), SeamsIn, SeamsOut, answer_seams),
)
