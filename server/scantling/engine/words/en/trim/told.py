"""What is told of any piece by its length."""

TEXTS = {
    "doubt-worst": "± {likely} 19 times in 20; {worst} were all {count} readings and marks out at once",
    "measure-in-place": (
        "Measure this one in place: its joints bear {bears}, and the readings leave ± {leave}."
    ),
    "short-blank": "Too short to hold at the saw: cut it from the end of a blank of {blank} or more.",
    # That no board on the list is so long, and what to do about it.
    "longer-than-stock": "Longer than any board on the list, {longest} usable.",
    "longer-than-stock-read-studs": (
        "Longer than any board on the list, {longest} usable: read where the studs of wall {wall} are, to join it on "
        "one."
    ),
    "longer-than-stock-no-stud": (
        "Longer than any board on the list, {longest} usable, and no stud of wall {wall} is where boards so long could "
        "be joined."
    ),
    # Steeper than the saw turns.
    "steep": (
        "Its {end} wants {wants} on the saw, which turns to {turns}: clamp it along a wedge of {wedge} at the fence "
        "and set {left_over}."
    ),
    "steep-or-cope": (
        "Its {end} wants {wants} on the saw, which turns to {turns}: clamp it along a wedge of {wedge} at the fence "
        "and set {left_over}, or cope it."
    ),
    # Returns, which are cut off one blank.
    "returns-one": (
        "Glue it: it is too small to nail. Cut it off the end of one blank of {blank} or more."
    ),
    "returns-both": (
        "Glue them: they are too small to nail. Cut both returns of this profile off the end of one blank of {blank} "
        "or more."
    ),
    "returns-all": (
        "Glue them: they are too small to nail. Cut all {count} returns of this profile off the end of one blank of "
        "{blank} or more."
    ),
    # What the seasons do to it.
    "movement-wider": (
        "{wood} {width} wide, {sawn}, from {first:g} to {last:g} % moisture: {change} wider."
    ),
    "movement-narrower": (
        "{wood} {width} wide, {sawn}, from {first:g} to {last:g} % moisture: {change} narrower."
    ),
    "movement-miter-opens": "A flat miter across it would open {gap}.",
    "sawn-flat": "flat-sawn",
    "sawn-quarter": "quarter-sawn",
}
