"""One list of questions. The OpenAPI page and the command line are drawn from it; each names its shapes in and out.

The file of a question is loaded when the question is first asked: a phone that wakes to read a tape must not wait for
the search of boards.
"""

from collections.abc import Iterator, Mapping
from importlib import import_module

from scantling.engine.questions.question import Question
from scantling.engine.shown.shown_in import INCHES, showing

#: Each file of questions, by its place in this folder, with the names of those it answers.
FILES: dict[str, tuple[str, ...]] = {
    "tape.lengths": ("read", "sum"),
    "tape.running": ("tape",),
    "notebook.entries": ("take", "check"),
    "notebook.journal": ("notebook",),
    "notebook.attached": ("attachments",),
    "notebook.photo": ("photo",),
    "survey.room": ("needs", "closure", "plan", "elevation", "survey"),
    "survey.behind": ("behind",),
    "survey.held": ("held",),
    "survey.breath": ("breath",),
    "survey.figures": ("figures",),
    "survey.cautions": ("cautions",),
    "cutlist.pieces": ("pieces", "piece_rows", "small_drawings", "drawn"),
    "cutlist.cut_list": ("issue", "mark"),
    "cutlist.free": ("free", "battens"),
    "cutlist.fit": ("fit", "hair"),
    "cutlist.files": ("files",),
    "lists": ("list_files",),
    "tape.corner": ("corner",),
    "tape.compound": ("compound",),
    "trim.casing": ("casing",),
    "trim.window": ("window",),
    "trim.spacing": ("spacing",),
    "trim.movement": ("movement",),
    "boards.room_boards": ("boards_for_room",),
    "boards.other_lengths": ("boards_if",),
    "boards.house_boards": ("boards_for_house",),
    "boards.saw": ("saw",),
    "boards.spoiled": ("spoiled",),
    "boards.boards": ("boards", "prove"),
    "coverings.strips": ("strips",),
    "coverings.panes": ("panes",),
    "coverings.sheets": ("sheets",),
    "coverings.paint": ("paint", "paint_areas"),
    "coverings.seams": ("seams",),
    "covered.covering": ("coverings", "covering"),
    "supplies.supplies": ("supplies",),
    "shopping.shopping": ("shopping",),
    "work.work": ("work",),
    "costs.costs": ("spent", "next_rooms"),
    "costs.stock": ("stock",),
    "costs.compare": ("compare",),
}


class _Questions(Mapping[str, Question]):
    """Questions by name, in the order of the list. To name them, or to look for a name, loads nothing."""

    def __init__(self, files: Mapping[str, tuple[str, ...]]) -> None:
        self._file_of = {name: file for file, names in files.items() for name in names}
        self._loaded: dict[str, Question] = {}

    def __getitem__(self, name: str) -> Question:
        if name not in self._loaded:
            # Its descriptions are fixed now for all houses, though it may be one in millimeters that asks first.
            with showing(INCHES):
                module = import_module(f"{__name__}.{self._file_of[name]}")
            self._loaded |= {question.name: question for question in module.QUESTIONS}
        return self._loaded[name]

    def __contains__(self, name: object) -> bool:
        return name in self._file_of

    def __iter__(self) -> Iterator[str]:
        return iter(self._file_of)

    def __len__(self) -> int:
        return len(self._file_of)


QUESTIONS: Mapping[str, Question] = _Questions(FILES)
