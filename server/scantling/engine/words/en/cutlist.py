"""What is said of pieces on the cut list: how they stand, what was measured in place, what is there already."""

TEXTS = {
    # How a piece stands, where a sentence names it.
    "piece-state-to-cut": "to cut",
    "piece-state-cut": "cut",
    "piece-state-fitted": "fitted",
    "piece-state-recut": "recut",
    "two-states": "Two devices said {states} while apart: {state} is used. Say which it is.",
    "other-letter": (
        "Another device lettered it {others}, apart from this list: it is {letter}, so pencil that on it."
    ),
    "as-cut-unread": "As cut: {refusal}",
    "gone": "{letter}, {name}: no longer wanted as the room reads now.",
    "gone-cut": "{letter}, {name}: no longer wanted as the room reads now. It is cut: keep it for another piece.",
    "gone-fitted": "{letter}, {name}: no longer wanted as the room reads now. It is fitted.",
    # A board that is cut and is not what its place wants now.
    "board-off-trim": "{letter} is {by} long: trim {by}.",
    "board-off-recut": "{letter} is {by} short: recut.",
    "taken-up-long": "{letter} is {by} long: {other}, still to cut, makes up for it.",
    "taken-up-short": "{letter} is {by} short: {other}, still to cut, makes up for it.",
    "doubted-long": (
        "{letter} is {by} long, more than a reading is out by: is the reading the wrong one, or the board? "
        "Read both again before you cut."
    ),
    "doubted-short": (
        "{letter} is {by} short, more than a reading is out by: is the reading the wrong one, or the board? "
        "Read both again before you cut."
    ),
    "recut-end-left": (
        "The left end of {letter} was cut as {before}; it is now {after}. Try it in place before cutting that end anew."
    ),
    "recut-end-right": (
        "The right end of {letter} was cut as {before}; it is now {after}. "
        "Try it in place before cutting that end anew."
    ),
    # A piece still to cut that follows a board.
    "follows-same-long": "{letter} came out {by} long: the same here",
    "follows-same-short": "{letter} came out {by} short: the same here",
    "follows-made-up-long": "{letter} came out {by} long: made up for here",
    "follows-made-up-short": "{letter} came out {by} short: made up for here",
    "cannot-follow-long": "{letter} came out {by} long, more than {other} can make up for: recut {letter}.",
    "cannot-follow-short": "{letter} came out {by} short, more than {other} can make up for: recut {letter}.",
    "cut-to-that": "= cut to that",
    # A hair off a piece, or a hair more.
    "hair-board": "{letter} as its board is",
    "hair-place": "{letter} where it goes",
    "a-hair-off": "− a hair",
    "a-hair-more": "+ a hair",
    "hair-trimmed": "= the board, trimmed",
    "hair-read-so": "= its place, read so",
    "hair-moves.one": "{letters} goes with it, as below.",
    "hair-moves.other": "{letters} go with it, as below.",
    "hair-moves-none": "No other piece is cut by the length of {letter}.",
    "hair-would-move-cut": "{letter} would go with it, and is cut: hold it to its place again.",
    "hair-would-move-fitted": "{letter} would go with it, and is fitted: hold it to its place again.",
    "hair-matched": "{letter} is cut to match {other} once that is fitted, where it is over {most} off.",
    "hair-made-up": "{letter} stays: it makes up for what is over {most} off.",
    # Measured in place.
    "measured-hint": "Hold the tape where the {edge} will lie, end to end.",
    "measured-hint-casing": "Once the casing is up: from {left} to {right}, where the {edge} will lie.",
    "casing-of": "the casing of {opening}",
    "measured-unread": "Measured in place: {refusal}",
    "measured-nothing": "Measured in place as nothing: strike that and measure again.",
    "measured-taken-up": "Measured in place {length}, which its ends take up: strike that and measure again.",
    "in-place-stands-more": "Measured in place {by} more than the room's readings give: the place stands.",
    "in-place-stands-less": "Measured in place {by} less than the room's readings give: the place stands.",
    "in-place-differs-more": "Measured in place {by} more than the room's readings give: read one of them again.",
    "in-place-differs-less": "Measured in place {by} less than the room's readings give: read one of them again.",
    "by-the-readings": "by the room's readings the {edge} would be",
    "measured-in-place.one": "measured in place: this stands",
    "measured-in-place.other": "measured in place, the smallest of {count} readings: this stands",
    # A piece that is there already.
    "salvage.not-salvaged": (
        "Write how long it is, or how long and wide, as 58 1/4 × 5 1/2; of a stool that is notched already, with its "
        "horns from notch to end, left and right: 58 1/4, 3 1/4, 3."
    ),
    "salvage.no-board": "A piece that is there is longer than nothing: measure it again.",
    "salvage.horns-only": "Only a stool has horns: write how long it is, and no more.",
    "there-hint": "How long it is, end to end; its width too, as 58 1/4 × 5 1/2.",
    "there-hint-horned": (
        "How long it is, end to end; its width too, as 58 1/4 × 5 1/2. "
        "One that is notched: its horns too, from notch to end, as 58 1/4, 3 1/4, 3."
    ),
    "there-board": "a board of {size}",
    "there-board-horned": "a board of {size}, with horns of {horns}",
    "there-unread": "What is there already: {refusal}",
    "there-already": "there already: it is trimmed to that, and no board is bought",
    "there-does": "There already, {length} long: {trim}",
    "there-wide": "Rip it to {wanted}: it is {by} wider.",
    "there-narrow": "It is {by} narrower than the {wanted} that is wanted here: see whether that will do.",
    "there-short": "What is there is {by} short, and will not do here: a board is wanted.",
    "there-horn-short": "A horn of what is there ends {by} before the casing does: a board is wanted.",
    "there-notches-longer": (
        "Between its notches it is {by} longer than between the jambs here: it does not lie in this window as it is."
    ),
    "there-notches-shorter": (
        "Between its notches it is {by} shorter than between the jambs here: it does not lie in this window as it is."
    ),
    # How it is trimmed.
    "trim-nothing": "it is as long as its place.",
    "trim-worse-end": "take {by} off, at the worse end.",
    "trim-each-end": "take {by} off each end, and both horns are {horns}.",
    "trim-no-horn": "it is as long as its place, and both horns are {horns}.",
    "trim-horns": "take {off}, and both horns are {horns}.",
    "horn-off-left": "{by} off the left",
    "horn-off-right": "{by} off the right",
    "trim-leaves.one": "it leaves {least} of the horn.",
    "trim-leaves.other": "it leaves {least} of each horn.",
    "trim-leaves-nothing.one": "it leaves nothing of the horn.",
    "trim-leaves-nothing.other": "it leaves nothing of each horn.",
    # What scraps showed in a corner, at an end of a piece.
    "tried-left": "left end, {corner}: {text}",
    "tried-right": "right end, {corner}: {text}",
}
