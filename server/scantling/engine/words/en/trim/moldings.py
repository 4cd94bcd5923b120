"""What is said of moldings that run along walls: bowed walls, stairs, blocking, what makes a run longer."""

TEXTS = {
    "stick.no-thickness": (
        "{wall}: {text} is no thickness of a board: write what a caliper or the tape says, such as 17/32. Until then "
        "the standard's counts."
    ),
    # A wall that bows behind a board, and what is done about it.
    "hollow-behind": "The wall has a hollow of {off} behind it, {at} from its left: {how}.",
    "hump-behind": "The wall has a hump of {off} behind it, {at} from its left: {how}.",
    "hollow-behind-stiff": (
        "The wall has a hollow of {off} behind it, {at} from its left, and it springs {springs}: {how}."
    ),
    "hump-behind-stiff": (
        "The wall has a hump of {off} behind it, {at} from its left, and it springs {springs}: {how}."
    ),
    "hollow-behind-crown": (
        "The wall has a hollow of {off} behind it, {at} from its left: {how}. Hold a string under the ceiling first: "
        "the wall may bow otherwise there."
    ),
    "hump-behind-crown": (
        "The wall has a hump of {off} behind it, {at} from its left: {how}. Hold a string under the ceiling first: "
        "the wall may bow otherwise there."
    ),
    "to-hollow-spring": "spring it in, and nail it there",
    "to-hump-spring": "spring it over, and nail it there and at both ends",
    "to-hollow-plane": "plane {by} off its back at its ends, to nothing there",
    "to-hump-plane": "plane {by} off its back at that place, to nothing at its ends",
    "to-hollow-shim": "set it straight, with shims of {by} behind it there",
    "to-hump-shim": "set it straight, with shims of {by} behind its ends",
    "to-hollow-caulk": "set it straight to its line, and caulk the gap of {by} there, at its wall edge",
    "to-hump-caulk": "set it straight to its line, and caulk the gap of {by} at both ends, at its wall edge",
    "to-hollow-scribe": (
        "the gap of {by} there, at its wall edge, is too wide for caulk: scribe that edge, {by} off it at its ends, to "
        "nothing there"
    ),
    "to-hump-scribe": (
        "the gap of {by} at both ends, at its wall edge, is too wide for caulk: scribe that edge, {by} off it at that "
        "place, to nothing at its ends"
    ),
    # What makes a run longer or shorter than its wall.
    "run-to-spring-in": "to spring in",
    "run-on-base": "the face of the base in {what}",
    "run-on-rake": "along its longer edge at {what}",
    "lines-to-snap": "lines to snap: {down} down the wall from the ceiling, {out} out along the ceiling",
    # Blocking behind crown.
    "blocking-from": "+ wall edge of its crown",
    "blocking-short-left": "− short of its left end, as far as the crown stands out",
    "blocking-short-right": "− short of its right end, as far as the crown stands out",
    "blocking-so-long": "= blocking",
    "blocking-free-end": "nothing: it stops short",
    "blocking-rip": (
        "Rip it to a triangle, {down} down the wall by {out} along the ceiling: its face leaves the wall at {lean}. "
        "Screw it to studs and joists before the crown goes up."
    ),
}
