"""What is said of paper, film, sheets and paint as they are planned, and how it was worked out."""

TEXTS = {
    # What has no name of its own, by its place in the list.
    "nameless-pane": "pane {number}",
    "nameless-panel": "panel {number}",
    "nameless-product": "product {number}",
    "nameless-surface": "surface {number}",
    # Strips of paper, counted.
    "strips-of-what": "Give either the widths between breaks, or the perimeter.",
    "strip-past-roll": (
        "A strip is {short} longer than the roll: take a longer roll, or paper a lower part of the wall."
    ),
    "strip-not-certain": (
        "A roll that is short, or begins at a bad place in its pattern, may give no strip: measure each roll."
    ),
    "repeat-past-roll": "The repeat is longer than the roll: read both again from the label.",
    "strips-hang-from": "Hang from {end}: the other way each roll gives fewer strips, or none more.",
    "strips-less-trim": "With a trim of {trim} in all, in place of {given}, {rolls} rolls would do: {saved} fewer.",
    "strips-buy": (
        "Buy {rolls} at once, all of one batch number, and write it down; one more is a spare for a spoiled strip."
    ),
    "strips-cut": "strip = {height} + {trim} trim = {cut}",
    "strips-cover": "each strip covers {width} − {lap} overlap = {covers}",
    "strips-counted": "strips: {runs} = {count}",
    "strips-pitch": "pitch, {method}: the pattern comes right again {pitch} down the roll",
    "strips-per-roll": "per roll: 1 + ⌊({length} − {cut}) ÷ {pitch}⌋ = {count}",
    "strips-certain": (
        "for certain: a roll {percent} % short gives {count}, and {strips} strips are wanted of one as narrow"
    ),
    "strips-certain-repeat": (
        "for certain: a roll {percent} % short and as much as a repeat lost at its start gives {count}, and {strips} "
        "strips are wanted of one as narrow"
    ),
    # Strips of paper on walls.
    "seams-start-plumb": "Strip 1 begins at a plumb line on {place}.",
    "seams-start-seam": "A seam stands on the middle of {place}.",
    "seams-start-strip": "A strip stands on the middle of {place}.",
    "seams-tried-every": (
        "Tried a plumb start at every {rule} of a strip's width on each wall, and the middle of each wall: fewest "
        "rolls first, then no seam near a corner or opening, then least seam seen."
    ),
    "seams-tried-chosen": (
        "Tried the start you chose: fewest rolls first, then no seam near a corner or opening, then least seam seen."
    ),
    "seams-mismatch-at": "The pattern does not match at the {place}, where strips {strips} meet.",
    "seams-mismatch-in": "The pattern does not match in {place}, where strips {strips} meet.",
    "strip-turns": "{left} on {wall}, then {right} on {next}",
    "strip-shared": "{number}: {width} wide, out of strip {other}",
    "strip-nothing": "{number}: nothing, what is there takes it all",
    "strip-piece-over": "{length} over the {opening}",
    "strip-piece-under": "{length} under the {opening}",
    "strip-from-roll": "{piece} from roll {roll}",
    "seams-proven": "{rolls} rolls, however short and wherever begun; these strips cannot be cut from fewer.",
    "seams-not-proven": "{rolls} rolls, however short and wherever begun; {bound} might be enough.",
    "seams-one-batch": (
        "All of one batch number. Cut strip 1, hold it up, and only then the next; one roll more is a spare."
    ),
    "seams-wall": "{wall}: {length} long, strips {height} + {trim} trim = {cut}",
    "seams-cut-over": "{wall}, over the {what}: {height} + {trim} trim = {cut}",
    "seams-cut-under": "{wall}, under the {what}: {height} + {trim} trim = {cut}",
    "seams-behind": "{wall}: behind the {what} it is papered too, until you read where that begins and ends.",
    "seams-roll-gives": "a roll gives {length} for certain: its length less tolerance and a repeat",
    # Film on panes, panels from sheets.
    "panes-drawing": "Blanks on the roll, its end at the foot",
    "pane-widths": "width: {largest} + {allowance} to trim = {blank}",
    "pane-heights": "height: {largest} + {allowance} to trim = {blank}",
    "pane-largest-widths": "width: {largest} (largest of {count}) + {allowance} to trim = {blank}",
    "pane-largest-heights": "height: {largest} (largest of {count}) + {allowance} to trim = {blank}",
    "pane-trimmed": "trimmed: {gap} open at every edge, so what was read there less twice that",
    "panes-none": "No pane can be cut from this roll.",
    "panes-proven": "No layout in bands straight across the roll is shorter.",
    "panes-not-proven": "At most {length} shorter might be found.",
    "panes-without-waste": "blanks laid without waste would take {area} ÷ {roll} = {length}",
    "panes-in-bands": "in bands straight across the roll they take {length}",
    "sheets-drawing": "Panels on a sheet, its near end at the foot",
    "panel-widths": "width: {smallest} − 2 × {gap} gap = {length}",
    "panel-heights": "height: {smallest} − 2 × {gap} gap = {length}",
    "sheets-none": "No panel can be cut from this sheet.",
    "sheets-proven-ripped": "Every sheet ripped first, then crosscut; no such plan does with fewer.",
    "sheets-bound-ripped": "Every sheet ripped first, then crosscut; {bound} might be enough.",
    "sheets-proven-crosscut": "Every sheet crosscut first, then ripped; no such plan does with fewer.",
    "sheets-bound-crosscut": "Every sheet crosscut first, then ripped; {bound} might be enough.",
    "sheets-cut": "panels: {panels}; a sheet: {sheet}; {count} cut",
    # Paint.
    "no-spread": '{given} is no spread: write one such as "350" (sq ft a gallon) or "10 m2/l".',
    "no-spread-metric": '{given} is no spread: write one such as "10 m2/l".',
    "paint-need": "{area} × {coats} coats ÷ {spread} = {paint}",
    "paint-need-loss": "{area} × {coats} coats ÷ {spread} ÷ (1 − {loss} % lost) = {paint}",
    "paint-kept": "+ {volume} kept for touching up",
    "paint-on-hand": "− {volume} on hand",
    "paint-cheapest": "the cheapest cans that hold as much: {volume} for ${price}",
    "paint-too-little": (
        "Less than {little} is left to touch up with: mix one more, of the same batch, if the color is mixed."
    ),
    "paint-a-quart": "a quart",
}
