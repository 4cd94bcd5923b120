"""The settings of a house, a room or an opening, as answers show them: as written, with the entries that say so."""

import copy

from marshmallow import Schema, fields

from scantling.engine.notebook import Notebook
from scantling.engine.questions.question import Answer
from scantling.engine.settings import check_setting


class SettledOut(Schema):
    settings = fields.Dict(keys=fields.String(), required=True)
    setting_entries = fields.Dict(keys=fields.String(), values=fields.List(fields.String()), required=True)
    setting_errors = fields.Dict(keys=fields.String(), values=fields.String(), required=True)


def show_settings(notebook: Notebook, of: str) -> Answer:
    """What was set for it, and for it alone."""
    settings = notebook.settings(of)
    errors = {name: check_setting(name, entry.body["value"]) for name, (entry, _) in settings.items()}
    return {
        # Copies: what a caller does to an answer must not reach the journal.
        "settings": {name: copy.deepcopy(entry.body["value"]) for name, (entry, _) in settings.items()},
        "setting_entries": {name: [entry.id for entry in those] for name, (_, those) in settings.items()},
        "setting_errors": {name: found[0].message for name, found in errors.items() if found},
    }
