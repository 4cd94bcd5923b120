"""What the working of any piece says, and what its ends are called and meet."""

TEXTS = {
    "equals-back": "= back",
    "equals-front": "= face",
    "equals-wall": "= wall edge",
    "equals-ceiling": "= ceiling edge",
    "equals-along-wall": "= along the wall",
    "equals-inner": "= inner edge",
    "equals-outer": "= outer edge",
    "equals-either": "= either edge",
    "equals-inner-face": "= inner face, end to end",
    "equals-end-to-end": "= end to end",
    "equals-short-points": "= short point to short point",
    "equals-long-points": "= long point to long point",
    "equals-between-legs": "= between the legs",
    "equals-between-strips": "= between the side strips",
    "equals-width": "= rip it so wide",
    "reading-smallest": "(smallest of {count} readings)",
    "reading-largest": "(largest of {count} readings)",
    "saw-set": "{joint}, saw {saw} from square (point {point})",
    "joint-miter": "miter",
    "joint-butt": "butt",
    "joint-cope": "cope",
    "joint-return": "return",
    "joint-scarf": "scarf",
    "joint-scribe": "scribe",
    "joint-square": "square",
    "minus-return-left": "− what the return takes, at the left",
    "minus-return-right": "− what the return takes, at the right",
    "minus-butted-left": "− the board it butts, at the left",
    "minus-butted-right": "− the board it butts, at the right",
    # How an end is cut: where it is, the joint, the saw, and how much longer one edge comes out.
    "in-inside-corner": "{end}, inside corner, gauge {gauge}",
    "in-outside-corner": "{end}, outside corner, gauge {gauge}",
    "cut-square": "{end}: square",
    "longer-by-sliver": "{end}: square, for it is under {least}; {edge} longer by",
    "shorter-by-sliver": "{end}: square, for it is under {least}; {edge} shorter by",
    "longer-by-cut": "{end}: {joint}, {saw}; {edge} longer by",
    "shorter-by-cut": "{end}: {joint}, {saw}; {edge} shorter by",
    "saw-from-square": "saw {saw} from square (point {point})",
    "saw-flat": "flat, miter {miter} and bevel {bevel}",
    "saw-flat-or-nested": "{flat}; nested, saw {saw}",
    # A leaning molding flat on the saw.
    "lay-ceiling-left": (
        "flat, face up, ceiling edge to the fence: swing {swing} right, lean {lean} left, keep what is left of the "
        "blade"
    ),
    "lay-ceiling-right": (
        "flat, face up, ceiling edge to the fence: swing {swing} right, lean {lean} left, keep what is right of the "
        "blade"
    ),
    "lay-wall-left": (
        "flat, face up, turned end for end, wall edge to the fence: swing {swing} left, lean {lean} left, keep what is "
        "left of the blade"
    ),
    "lay-wall-right": (
        "flat, face up, turned end for end, wall edge to the fence: swing {swing} left, lean {lean} left, keep what is "
        "right of the blade"
    ),
    # The ends of a piece, and what they meet.
    "end-left": "left end",
    "end-right": "right end",
    "end-top": "top end",
    "end-foot": "foot end",
    "place-left": "the left",
    "place-right": "the right",
    "place-top": "the top",
    "place-foot": "the foot",
    "place-end": "an end",
    "meets-apron": "the apron",
    "meets-casing": "the casing",
    "meets-floor": "the floor",
    "meets-free-end": "a free end",
    "meets-head": "the head",
    "meets-jamb": "the jamb",
    "meets-leg": "the leg",
    "meets-leg-left": "the left leg",
    "meets-leg-right": "the right leg",
    "meets-plinth": "the plinth",
    "meets-return": "its return",
    "meets-side-wall": "the side wall",
    "meets-sill": "the sill",
    "meets-stool": "the stool",
    "meets-wall": "the wall",
    # What stands along a wall, from the wall round the corner.
    "the-thing-on-wall": "the {thing} on {wall}",
    "thing-toe-kick": "the toe kick of {what}",
    "depth-of-thing": "depth of {what}",
}
