"""What is said of an opening where it stands: how far its casing reaches, what is beside it, rows of windows."""

TEXTS = {
    "reach.past-corner": (
        "From the {jamb} to outside corner {number} there is {room}, and its casing comes to {wanted}: read both "
        "again, or choose narrower casing for it. Until then its casing is left out, and so is what runs along that "
        "wall to it."
    ),
    "reach.no-standard": "What was set for the {what} alone cannot be: put that right first.",
    "opening.casings-meet": (
        "Between it and the {other} there is only {room}, and their casings come to {wanted}: read both places again, "
        "or choose narrower casing for these."
    ),
    # How far the corner beside it is, and how that is found.
    "beside-left": "{at} to the jamb",
    "beside-right": "{wall} of wall − {at} to the jamb − {width} across",
    "beside-thing": "{working} − {along} for {what}",
    "beside-thing-left": "{at} to the jamb − {end} to the end of {what}",
    "beside-thing-right": "{start} to {what} − {jamb} to the jamb",
    "beside-clear": "{working} − {clearance} kept clear of it",
    "casing-on-wall": "the casing of the {what} on {wall}",
    "thickness-of-thing": "thickness of {what}",
    # From the jamb to the casing's outer edge, in the working of what dies into it.
    "reach-step": "the extension's step",
    "reach-reveal-standard": "reveal ({source})",
    "reach-reveal-own": "reveal of the {what}",
    "reach-casing-standard": "casing ({source})",
    "reach-casing-own": "casing of the {what}",
    "reach-plinth-standard": "plinth",
    "reach-plinth-own": "plinth of the {what}",
    "reach-casing-ripped-standard": "casing, ripped",
    "reach-casing-ripped-own": "casing of the {what}, ripped",
    "reach-plinth-ripped-standard": "plinth, ripped",
    "reach-plinth-ripped-own": "plinth of the {what}, ripped",
    # The wall beside a leg.
    "leg-side-unread": "How far the next corner is at {where} is not read: the casing may want ripping there.",
    "leg-ripped-to": "{width} wide: {working}, − {back} from jamb to casing.",
    "leg-gives-way": (
        "In corner {number} {what} keeps its width, and this leg gives way. Turn that with the casing's setting in "
        "corners."
    ),
    "leg-taken-tall": (
        "How tall {what} is has not been read: it is taken to be as tall as the leg. Round what is lower than half of "
        "it the leg is notched."
    ),
    "leg-notch": "Notch its outer edge round {what}: {deep} deep and {up} up from the floor.",
    "leg-leans-wide": "The corner is {degrees}: bevel the ripped edge {lean}, its face {by} wider than its back.",
    "leg-leans-tight": "The corner is {degrees}: bevel the ripped edge {lean}, its back the wider.",
    "tip-leans-wide": (
        "The corner is {degrees}: where its tip at {where} is cut off plumb, bevel that {lean}, its face {by} longer."
    ),
    "tip-leans-tight": (
        "The corner is {degrees}: where its tip at {where} is cut off plumb, bevel that {lean}, its face {by} shorter."
    ),
    # What was set for it.
    "plinth-low": (
        "The plinth is lower than the base, which then meets the leg above it: make the plinth taller."
    ),
    "plinth-thin": "The plinth is thinner than what ends at it: use thicker stock.",
    "unset-in-standard": "Common practice until you set it in the standard: {names}.",
    "not-set-reveal": "the reveal",
    "not-set-casing": "the casing's width",
    # Rows of windows.
    "mull.mull-alone": (
        "It is to share a casing with the next window to its right, and there is none: turn that off, or read both "
        "places again."
    ),
    "mull.mull-unlike": (
        "It shares a casing with the {other}, which is trimmed otherwise: give both the same settings."
    ),
    "mull.mull-narrow": (
        "To the {other} there is {gap}, and the reveals take {taken}: no casing goes between. Read both places again, "
        "or do not share a casing."
    ),
    "mull.mull-apart": (
        "Its {what} and that of the {other} are {by} apart, and one board cannot lie along both: read them again, or "
        "do not share a casing."
    ),
    "row-of": "{first} to {last}",
    "row-to-last": "+ to the {what}",
    "row-last": "+ the {what}",
    "row-to-first": "− to the {what}",
    "shared-height": "+ height beside it",
    "shared-head": "+ reveal at the head",
    "shared-gap": "gap from {first} to {last}",
    "shared-reveals": "− reveal, at both jambs",
    "shared-wide": "It is wider than the casing: rip it of flat stock, or join two.",
    "shared-rip": "Rip it to {width}, as much off either edge.",
    "heads-apart": "The heads of the {one} and the {other} are {by} apart: the reveal takes that up.",
}
