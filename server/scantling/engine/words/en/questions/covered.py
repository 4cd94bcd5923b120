"""What is said of the coverings of a room, and of how much they want."""

TEXTS = {
    "covering.no-such-covering": "There is no covering {covering} in this room: ask for one that the room lists.",
    "covering.no-article": "What it is covered with was struck: choose another paper, film, sheet or paint.",
    "covering.wall-gone": "A wall that was to be covered is not in this room any more: choose the walls again.",
    "covering.start-gone": (
        "A start was chosen on what is not papered any more, so that another is searched: choose again."
    ),
    "covering.no-area": "{name}: no area to paint yet. Read what is missing, or write an area of your own.",
    "covering.not-counted": "{missing}.",
    # What a plan cannot do without.
    "wanted-roll-width": "the roll's width",
    "wanted-roll-length": "the roll's length",
    "wanted-sheet-width": "the sheet's width",
    "wanted-sheet-length": "the sheet's length",
    "wanted-spread": "how far it spreads",
    "wanted-cans": "the cans it is sold in",
    "wanted-panes": "the panes, each with its widths and heights",
    "wanted-panels": "the panels, each with its widths and heights",
    # How much there is of a thing.
    "so-many-roll.one": "{count} roll",
    "so-many-roll.other": "{count} rolls",
    "so-many-sheet.one": "{count} sheet",
    "so-many-sheet.other": "{count} sheets",
    "so-many-pane.one": "{count} pane",
    "so-many-pane.other": "{count} panes",
    "so-many-panel.one": "{count} panel",
    "so-many-panel.other": "{count} panels",
    "feet-in-meters": "{feet} ft ({meters} m)",
    "film-off-the-roll": "{length} off the roll. {said}",
    "film-rolls": "⌈{length} ÷ {roll} on a roll⌉ = {count}",
    "surface-as-written": "{name}: {area}, as it was written",
    # Where it goes, and how far that is.
    "on-walls.one": "wall {walls}",
    "on-walls.other": "walls {walls}",
    "on-all-walls": "all walls",
    "on-a-panel": "a panel",
    "number-to-number": "{first} to {last}",
    "so-many-up": "{up} of {count} up",
    "line-on-band": "band {band} of the roll",
    "line-on-band-turned": "band {band} of the roll, turned on the roll",
    "line-on-sheet": "sheet {number}",
    "line-of-coat": "{name}, coat {coat} of {coats}",
    "line-ticked-off": "Ticked off as “{was}”: the plan has changed since.",
}
