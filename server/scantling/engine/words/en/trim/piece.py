"""What the working of any piece says, and what its ends are called and meet."""

TEXTS = {
    "end-to-end": "= end to end",
    "end-left": "left end",
    "end-right": "right end",
    "end-top": "top end",
    "end-foot": "foot end",
    "meets-casing": "the casing",
    # What stands along a wall, from the wall round the corner.
    "the-thing-on-wall": "the {thing} on {wall}",
    "thing-toe-kick": "the toe kick of {what}",
    "depth-of-thing": "depth of {what}",
}
