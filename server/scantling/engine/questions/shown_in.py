"""What the lengths of an answer are shown in: what the question says, or the house that it is about, or else inches.

A house says it by its setting `lengths`. A room that a question brings along says it in its standard.
"""

from collections.abc import Mapping
from typing import Any

from scantling.engine.notebook import PARENT, SUBJECTS, Notebook
from scantling.engine.shown.shown_in import INCHES, SHOWN_IN

SETTING = "lengths"
#: The fields of questions that name a house or something in it.
NAMED = ("house", *SUBJECTS, "of")


def find_shown_in(question: Mapping[str, Any], notebook: Notebook) -> str:
    """One of `SHOWN_IN`; what a person wrote wrongly is for the question's schema to refuse."""
    said = question.get("shown_in")
    if isinstance(said, str):
        return said if said in SHOWN_IN else INCHES
    room = question.get("room")
    if isinstance(room, Mapping):
        standard = room.get("standard")
        wanted = standard.get(SETTING) if isinstance(standard, Mapping) else None
        return wanted if wanted in SHOWN_IN else INCHES
    for name in NAMED:
        named = question.get(name)
        house = _house_of(notebook, named) if isinstance(named, str) else None
        if house:
            return notebook.derived(SETTING, house, lambda house=house: _setting(notebook, house))  # type: ignore[misc]
    return INCHES


def _setting(notebook: Notebook, house: str) -> str:
    said = notebook.settings(house).get(SETTING)
    wanted = said[0].body["value"] if said else INCHES
    return wanted if isinstance(wanted, str) and wanted in SHOWN_IN else INCHES


def _house_of(notebook: Notebook, subject: str) -> str | None:
    """The house that something is in, struck or not: its refusal is shown as the house wants it too."""
    for _ in SUBJECTS:
        said = next((kind for kind in SUBJECTS if notebook.about(f"the {kind}", subject)), None)
        if said is None or said == "house":
            return subject if said else None
        subject = str(notebook.about(f"the {said}", subject)[-1].body[PARENT.get(said, "of")])
    return None
