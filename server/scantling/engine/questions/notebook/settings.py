"""The settings of a house, a room or an opening, as answers show them: as written, with the entries that say so."""

import copy
from collections.abc import Callable

from marshmallow import Schema, fields

from scantling.engine.errors import EngineError
from scantling.engine.notebook import Notebook
from scantling.engine.questions.question import Answer
from scantling.engine.questions.said import show_by
from scantling.engine.questions.supplies.said import DEFAULTS as OF_SUPPLIES
from scantling.engine.questions.supplies.said import FIELDS, check_supply
from scantling.engine.settings import DEFAULTS as OF_TRIM
from scantling.engine.settings import check_setting
from scantling.engine.shown.shown_in import is_metric
from scantling.engine.standard import Standard
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length, format_length

#: What a setting of a house is until a person says otherwise, as text.
DEFAULTS = {**OF_TRIM, **OF_SUPPLIES}
USUAL = Standard()


def show_defaults() -> dict[str, str]:
    """The same as they are shown: lengths, areas and volumes in what a house shows its lengths in."""
    shown = {name: format_length(value, SIXTY_FOURTH) for name in OF_TRIM
             if isinstance(value := getattr(USUAL, name.replace(".", "_")), Length)}  # fmt: skip
    return {**DEFAULTS, **shown, **show_by(FIELDS, OF_SUPPLIES)} if is_metric() else dict(DEFAULTS)


class SettledOut(Schema):
    settings = fields.Dict(keys=fields.String(), required=True)
    setting_entries = fields.Dict(keys=fields.String(), values=fields.List(fields.String()), required=True)
    setting_errors = fields.Dict(keys=fields.String(), values=fields.String(), required=True)


def check_standard(name: str, value: object) -> list[EngineError]:
    """What is wrong with a setting of a house or a room: nothing, or the refusal."""
    return [*check_setting(name, value), *check_supply(name, value)]


def show_settings(
    notebook: Notebook, of: str, check: Callable[[str, object], list[EngineError]] = check_standard
) -> Answer:
    """What was set for it, and for it alone; `check` says what is wrong with each."""
    settings = notebook.settings(of)
    errors = {name: check(name, entry.body["value"]) for name, (entry, _) in settings.items()}
    return {
        # Copies: what a caller does to an answer must not reach the journal.
        "settings": {name: copy.deepcopy(entry.body["value"]) for name, (entry, _) in settings.items()},
        "setting_entries": {name: [entry.id for entry in those] for name, (_, those) in settings.items()},
        "setting_errors": {name: found[0].message for name, found in errors.items() if found},
    }
