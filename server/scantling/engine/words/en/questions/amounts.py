"""What is wrong with an amount, a reading or a room that a question brings."""

TEXTS = {
    "figure-of-number": "number",
    "figure-of-growth": "growth",
    "figure-of-loss": "loss",
    "figure-of-tolerance": "tolerance",
    "figure-of-waste": "waste",
    "amount-wanted": "a {what}, such as 8 or 7.5",
    "amount-unread": "{given} is not a {what}: write one such as 8 or 7.5.",
    "amount-of-nothing": "A {what} of nothing cannot be: write one such as 8 or 7.5.",
    "amount-too-great": "A {what} of {given} is too great: write {most} or less.",
    "area-unread": '{given} is not an area: write one such as "384 sq ft" or "35.7 m2".',
    "volume-unread": '{given} is not a volume: write one such as "1 gal" or "300 ml".',
    "more-than-nothing": "This must be more than nothing.",
    "write-a-reading": 'Write a reading as text, such as "63 1/4".',
    "write-a-reading-or-list": 'Write a reading as text, such as "63 1/4", or a list of up to {most}.',
    "write-readings": 'Write readings as text, such as "63 1/4", or a list of them.',
    "angle-in-degrees": 'Write an angle in degrees, such as "90.5".',
    # A room that is written out in full.
    "two-head-corners": "Give two head corners, left and right, or null where not read.",
    "wall-id-twice": "Two walls are called {wall}: give each its own id.",
    "not-used": "Not used: {name}.",
}
