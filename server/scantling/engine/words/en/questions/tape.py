"""What is said of lengths, corners and crown as they are worked out, and of what is cut to them."""

TEXTS = {
    "lean-strong": "{words}, strong",
    "lean-shy": "{words}, shy",
    # A corner, by gauge or by three sides.
    "corner-three-sides": "Give three sides: two along the walls, then the one across.",
    "corner-one-source": "Give either the gauge's reading or three sides.",
    "corner-by-gauge-inside": "inside corner: the gauge reads {gauge}, ± {off}",
    "corner-by-gauge-outside": "outside corner: the gauge reads {gauge}, ± {off}",
    "corner-by-sides-inside": "inside corner: the three sides make {gauge}, ± {off}",
    "corner-by-sides-outside": "outside corner: the three sides make {gauge}, ± {off}",
    "room-side-of-corner": "room side: 360° − {gauge} = {corner}",
    "corner-saw": "saw, from square: (180° − {gauge}) ÷ 2 = {saw}",
    "corner-point": "the board's point: {gauge} ÷ 2 = {point}",
    # Crown at a corner.
    "crown-spring-inside": (
        "spring {spring}° from the wall ({rest}° from the ceiling); inside corner, the gauge reads {gauge}°"
    ),
    "crown-spring-outside": (
        "spring {spring}° from the wall ({rest}° from the ceiling); outside corner, the gauge reads {gauge}°"
    ),
    "crown-flat-miter": "flat: miter = atan(sin {spring} ÷ tan({gauge} ÷ 2)) = {miter}°",
    "crown-flat-bevel": "flat: bevel = asin(cos {spring} × cos({gauge} ÷ 2)) = {bevel}°",
    "crown-nested": "nested, ceiling edge on the table and wall edge up the fence: saw {saw}, no bevel",
    "crown-ends-inside": "the wall edge is the long one at this end; try both settings on two scraps first",
    "crown-ends-outside": "the ceiling edge is the long one at this end; try both settings on two scraps first",
    "crown-ends-straight": "straight on: neither edge is longer; try both settings on two scraps first",
    # Things round an opening and along a span, and wood that moves.
    "casing-head-corners": "Give two head corners, left and right.",
    "spacing-count-or-gap": "Give either a count or the widest gap.",
    "spacing-fewest": "fewest items for a gap of {gap} or less: {count}",
    "spacing-gap": "gap = ({span} − {count} × {width}) ÷ {gaps} = {gap}",
    "spacing-pitch": "pitch = {width} + {gap} = {pitch}",
    "spacing-astray": "mark each from one end: the rounded pitch, stepped off, would put the last {off} astray",
    "moisture-unread": "{given} is not a moisture content: write percent such as 8 or 7.5.",
    "miter-stays": "The miter stays as it is.",
    "miter-drying": "Drying, the miter opens at its inner edge.",
    "miter-swelling": "Swelling, the miter opens at its outer edge.",
    "movement-by-flat": "change = {width} × {part} (tangential, per point) × ({end} − {start}) = {change}",
    "movement-by-quarter": "change = {width} × {part} (radial, per point) × ({end} − {start}) = {change}",
    "moved-miter": "miter: {change} × 1.4142 (across a 45) = {gap}",
}
