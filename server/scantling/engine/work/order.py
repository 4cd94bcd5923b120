"""The order of work in a room: what is done, what can be done today, what waits for what, which readings to doubt."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from scantling.engine.errors import EngineError, quote
from scantling.engine.words import say
from scantling.engine.work.steps import BY_KEY, STEPS, WorkStep

DONE, READY, WAITS, SKIPPED, EARLY = "done", "ready", "waits", "skipped", "early"


class WorkError(EngineError):
    family = "work"


@dataclass(frozen=True, slots=True)
class Standing:
    """A step and how it stands. `early`: it was done before what it must come after; `waits_for`: what that is."""

    step: WorkStep
    state: str
    waits_for: tuple[WorkStep, ...] = ()


@dataclass(frozen=True, slots=True)
class StepDoubt:
    """Readings that a step has put in doubt, for it was done after they were taken."""

    what: str
    because: WorkStep


def find_steps(keys: Sequence[str], field: str) -> set[str]:
    """Keys of steps, each known. Raises `WorkError`."""
    for place, key in enumerate(keys):
        if key not in BY_KEY:
            raise WorkError("no-such-step", field=f"{field}.{place}", text=quote(key), keys=", ".join(BY_KEY))
    return set(keys)


def derive_work_order(done: Collection[str], skipped: Collection[str] = ()) -> list[Standing]:
    """Every step in its order. What a room skips is waited for by nothing; what it waited for itself still is.

    >>> [one.step.key for one in derive_work_order({"hazards", "strip"}) if one.state == "ready"]
    ['boxes', 'floor']
    """
    return [_stands(step, done, skipped) for step in STEPS]


def _stands(step: WorkStep, done: Collection[str], skipped: Collection[str]) -> Standing:
    if step.key in skipped and step.key not in done:
        return Standing(step, SKIPPED)
    waits_for = tuple(other for other in STEPS if other.key in _needs(step, skipped) and other.key not in done)
    if step.key in done:
        return Standing(step, EARLY if waits_for else DONE, waits_for)
    return Standing(step, WAITS if waits_for else READY, waits_for)


def _needs(step: WorkStep, skipped: Collection[str]) -> set[str]:
    """What a step waits for, and in place of what is skipped all that that waited for."""
    needs: set[str] = set()
    waiting = list(step.after)
    while waiting:
        key = waiting.pop()
        if key in skipped:
            waiting += BY_KEY[key].after
        else:
            needs.add(key)
    return needs


def derive_doubts(since: Collection[str]) -> list[StepDoubt]:
    """The readings that steps done since they were taken have put in doubt, each once, by the first such step.

    >>> [doubt.what for doubt in derive_doubts({"floor"})]
    ['leg heights of doors', 'heights of walls', 'heights of sills']
    """
    found: dict[str, WorkStep] = {}
    for step in STEPS:
        if step.key in since:
            for what in step.voids:
                found.setdefault(what, step)
    return [StepDoubt(say(f"in-doubt-{what}"), step) for what, step in found.items()]
