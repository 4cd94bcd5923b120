"""What is said of a room as it is read, of its photos and of the order of work in it."""

TEXTS = {
    "room-wall.no-such-wall": "The room has no wall {text}: ask for one by its id or its number.",
    "depths-read": "depths of {depths}",
    "studs-read": "studs at {studs}",
    "studs-go-on": "studs at {studs}, and so on",
    "said-degrees": "{number} degrees",
    # A wall said in one breath.
    "breath-too-long": "Say it in parts: {most} letters at once are the most.",
    "breath-understood": "{clear} of {count} understood.",
    "breath-in-doubt": "{clear} of {count} understood; {rest} to look at.",
    "breath-full": "{said} Say the rest after these are saved.",
    # A photo, and what is pinned on it.
    "photo.no-such-photo": "There is no photo {name} in this notebook: see the question attachments.",
    "pin-gone": "no longer in the house",
    "pin-cut-to": "{piece}, cut to",
    "pin-measured": "{piece}, measured in place",
    "pin-there": "{piece}, there already",
    "read-in-place": "read in place",
    "not-read-yet": "not read yet",
    "as-it-was-found": "as it was found",
    # Two devices that said different things.
    "conflict-piece": "piece {letter}",
    "conflict-rows": "{count} rows",
    # What a step in the order of work puts in doubt.
    "doubt-read-again": "Read {figure} again: {because}.",
}
