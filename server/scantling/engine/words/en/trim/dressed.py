"""What is put on casing: corner blocks, a built-up head, a backband."""

TEXTS = {
    "band.uneven-band": (
        "The {what}: head and legs of different widths take no backband that miters. Make them alike, or set none."
    ),
    "band.no-room-for-band": (
        "The {what}: beside a leg there is no room for its backband too, so none goes round it. Set none there."
    ),
    "band-miter": "+ its miter across the band",
    "band-foot": "{sign} at its foot, across the band",
    "band-from": "outer edge of the {part}",
    "band-outer-edge": "= outer edge of the band",
    "block-past-leg": "− what its block stands past it",
    "block-legs": "− the legs and overhangs that the blocks stand over",
    "block-past-legs": "− what the two blocks stand past the legs",
    "block-so-long": "= with corner blocks",
    "block-size": "corner block, as it is set",
    "block-grain": "As wide as it is long: its grain runs with the leg's.",
    "built-up-head": "+ the head, end to end",
    "built-up-overhang": "+ overhang, at both ends",
    "built-up-free-end": "nothing: it stands past the head",
}
