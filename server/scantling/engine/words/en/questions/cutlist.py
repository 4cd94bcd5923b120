"""What is said of the pieces of a room: how they stand, how they fit, and what is to be done with them."""

TEXTS = {
    "list.not-issued": "No piece {name} was issued in this room: issue its list first, then mark the pieces.",
    "piece.no-such-piece": "The room has no piece {text}: ask for one by its key or its letter.",
    "fit.no-such-piece": "The room has no piece {text}: ask for one by its letter.",
    "fit.fitted": "{letter} is fitted: mark it cut again, or recut, before it is changed.",
    "fit.salvaged": "{letter} is there already: read it again where it is.",
    "fit.nothing-left": "{letter} is too short to take a hair off.",
    "fit.not-issued": "{letter} is not issued yet: issue the list first.",
    # How a piece stands.
    "state-of-no-use": "{state}, and nothing of it can be used",
    "state-read-as": "{state}, read as {as_cut}",
    "issue-one": "Gives 1 piece its letter for good: {letter}.",
    "issue-several": "Gives {count} pieces their letters for good: {first} to {last}.",
    "piece-there": "There already: {text}",
    "piece-stick": "{part} on {wall}, thickness",
    "piece-turns-coped": "At {corner} run this board through, the other to it",
    "piece-turns-mitered": "At {corner} run the other board through, this one to it",
    "group-of-your-own": "of your own",
    # What a British hand looks for.
    "also-base": "skirting",
    "also-casing": "architrave",
    "also-stool": "window board",
    "also-chair-rail": "dado rail",
    "also-crown": "coving cornice",
    # Pieces in fitting order, and a hair off one or more of it.
    "fit-no-pieces": "No pieces yet.",
    "fit-all": "Every piece is fitted.",
    "fit-left": "{fitted} of {count} fitted, {cut} cut and waiting, {left} to cut.",
    "fit-there": "there already",
    "touch-off": "{by} off",
    "touch-more": "{by} more",
    "hair-trim": "Trim {by} off {letter}.",
    "hair-within": "It is then within what its joints bear.",
    "hair-cut-again": "{letter} wants {by} more than its board has: it is cut again, to the figure below.",
    "hair-shorter": "{letter} is cut {by} shorter.",
    "hair-longer": "{letter} is cut {by} longer.",
}
