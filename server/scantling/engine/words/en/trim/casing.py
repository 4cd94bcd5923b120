"""What is said of the casing round an opening: its boards, their working, and what its readings say together."""

TEXTS = {
    "frame.no-frame": "A head corner of {degrees} is out of reach: read it inside the opening, from 30 to 150.",
    "frame.no-miter": "Boards of {own} and {other} do not miter in a corner of {degrees}: make them more alike.",
    "frame.steep-foot": "The foot would meet a side at {degrees}: read both heights again, and the head corners.",
    "frame.sides-meet": (
        "With these corners and heights the sides would meet before the foot: read both corners again."
    ),
    "frame.nothing-left": "The {part} comes to {length}, less than nothing: read the opening again.",
    "jamb.no-opening": "The {what} is nothing: measure it again.",
    "nothing-width": "width",
    "nothing-left": "left height",
    "nothing-right": "right height",
    "casing.no-room": "Only {room} from the {jamb} to the side wall, less a reveal of {reveal}: no casing fits.",
    "jamb-left": "left jamb",
    "jamb-right": "right jamb",
    "jamb-head": "head jamb",
    "jamb-sill": "sill jamb",
    # The working of a leg, a plinth, a head, a sill.
    "plus-height": "+ height at {where}",
    "plus-width": "+ width between the jambs",
    "plus-sill": "+ width at the sill, which follows from head, sides and corners",
    "plus-leg-left": "+ the left leg",
    "plus-leg-right": "+ the right leg",
    "plus-overhang": "+ overhang at {where}",
    "plus-plinth": "+ height of the plinth",
    "minus-plinth": "− the plinth it stands on",
    "minus-floor": "− the floor still to come",
    "minus-stool": "− the stool it stands on",
    "slant-top": "{sign} at the top, {saw}, across {across}",
    "slant-foot": "{sign} at the foot, {degrees} off square",
    "slant-plinth": "{sign} at the foot, across {width}",
    "part-of-it": "{width} of it",
    "miter-at": "{sign} at {where}, {saw}",
    "to-the-side-wall": "to the side wall",
    "across-the-leg": "{saw}, across the leg",
    "unseen": "{step}: less than {least}",
    # What an edge is set back from the jamb.
    "by-reveal-setback": "+ reveal",
    "by-reveal-setback-both": "+ reveal, at both ends",
    "by-reveal-setback-at": "+ reveal at {where}, in a corner of {degrees}",
    "by-step-setback": "+ the extension's step",
    "by-step-setback-both": "+ the extension's step, at both ends",
    "by-step-setback-at": "+ the extension's step at {where}, in a corner of {degrees}",
    # What to know before cutting.
    "rip-leg": "Cut the top at full width, then rip the outer edge to leave {width}.",
    "rip-tip": "At {where}, miter it first, then cut the tip off plumb, {width} past the short point.",
    "leg-is-ripped": "Only {left} of {whole} is left for {leg}: it is ripped.",
    "unused-overhang": "Not used: overhang, which a mitered head has none of.",
    "reads-width-covers": "Width reads from {least} to {most}: cut to the largest, for what covers it.",
    "reads-left": "Height at the left reads from {least} to {most}: cut to the smallest, for what stands between.",
    "reads-left-covers": "Height at the left reads from {least} to {most}: cut to the largest, for what covers it.",
    "reads-right": "Height at the right reads from {least} to {most}: cut to the smallest, for what stands between.",
    "reads-right-covers": "Height at the right reads from {least} to {most}: cut to the largest, for what covers it.",
    "head-corner-left": "The left head corner is {degrees}, not 90: try the setting on scrap first.",
    "head-corner-right": "The right head corner is {degrees}, not 90: try the setting on scrap first.",
    "corners-unread": (
        "The head corners are not read, and taken as square: hold a square in each before cutting."
    ),
    "corner-unread": (
        "The other head corner is not read, and taken as square: hold a square in each before cutting."
    ),
    "foot-by-heights": (
        "The sides differ by {by}: until both corners are read, the foot counts as sloping, not the head."
    ),
    "foot-off-square": "The foot is {degrees} off square to a side: the cuts there follow it.",
    "foot-wider": "These head corners would make the opening {by} wider at the foot: read both again.",
    "foot-narrower": "These head corners would make the opening {by} narrower at the foot: read both again.",
}
