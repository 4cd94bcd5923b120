"""What is said of runs along walls: ends, scarfs, returns, reveals, toe kicks, and what to know before cutting."""

TEXTS = {
    "run.too-short": "{part}: between {what} is only {by} of wall, which its joints take up. Fill it by hand.",
    "run.closed-off": "Between {what} is only {by} of wall, and no board goes there. Fill it by hand.",
    "run.above-ceiling": "On {wall} a rail would reach {top} up, and the ceiling is at {ceiling}: put it lower.",
    "run.crown-on-casing": (
        "The crown comes down to {crown}, and the casing of the {what} goes up to {casing}: choose a narrower crown or "
        "head, or stop the crown there."
    ),
    "run.no-wall-left": "{part}: between {what} the base it lies on leaves no room for it.",
    "run.no-room": "The casing of {what} would reach {by} past {other}: read both again, or rip the casing.",
    # Where a run is, and what it comes up against.
    "run-between": "between {left} and {right}",
    "run-right-of": "right of {left}",
    "run-left-of": "left of {right}",
    "meets-arris": "the arris of {what}",
    "meets-walk-began": "where the walk began",
    "meets-walk-so-far": "where the walk has come to",
    # The figures that make up its length.
    "run-along-chair_rail": "{wall}, along the chair rail",
    "run-along-picture_rail": "{wall}, along the picture rail",
    "run-along-ceiling": "{wall}, along the ceiling",
    "run-to-thing": "to the {thing}",
    "run-backband": "backband",
    "run-horn": "horn",
    "run-clearance": "clearance",
    "run-past-casing": "how far its {what} stands past the casing",
    "above-tape-away": "{wall} leans away, {high} above the tape",
    "above-tape-in": "{wall} leans in, {high} above the tape",
    "above-tape-corner": "{wall} stands in a corner that leans, {high} above the tape",
    "below-tape-away": "{wall} leans away, {high} below the tape",
    "below-tape-in": "{wall} leans in, {high} below the tape",
    "below-tape-corner": "{wall} stands in a corner that leans, {high} below the tape",
    "crown.no-spring": "A spring of {degrees} is no lean: write the angle at the wall, between 0 and 90, such as 38.",
    "crown.no-room-side": "{degrees} degrees is no corner: write the room-side angle, above 0 and below 360.",
    "crown.wrong-turn": (
        "A corner of {degrees} degrees is an outside one: leave the turn out, or write {other}."
    ),
    "toe.toe-too-high": "The toe kick of the {what} is {toe} high, and the {what} itself {tall}: read one again.",
    "toe.toe-too-deep": "The toe kick of the {what} goes {toe} back, and the {what} is {deep} deep: read one again.",
    "toe-rip": "Rip it to {high}, the height of the toe kick.",
    "toe-along": "the {thing}, side to side",
    "meets-side-of": "the side of the {thing}",
    "run-lap": "lap over the casing",
    "run-scarf-half": "half the scarf",
    "run-to-stud": "to the stud's middle",
    "scarf-at": "the scarf at {at}",
    "meets-its-end": "its end",
    "meets-end-left": "the left end of its {part}",
    "meets-end-right": "the right end of its {part}",
    "return-thick": "thickness of the stock",
    "return-glue": "Glue it: it is too small to nail.",
    # Base that goes on into an opening without casing.
    "arris-depth": "+ depth of the reveal",
    "arris-behind": "+ what it lies on, round the arris",
    "arris-place-left": "in the reveal of the {thing}, its left side",
    "arris-place-right": "in the reveal of the {thing}, its right side",
    "arris-unread": "How deep the {thing} is, is not read: the piece that goes on into it waits for that.",
    # Where boards are joined, and why there.
    "on-stud.one": "on the stud at {places}",
    "on-stud.other": "on the studs at {places}",
    "joined-where": "joined {where}: {why}",
    "joined-for-offcut": "so the longest offcut is as long as can be",
    "joined-for-board": "so the shortest board is as long as can be",
    # What is still to read.
    "run-corner-at-floor": "Corner {number} was read at the floor, and that stands in for the ceiling's.",
    "run-corner-unread": "Corner {number} has not been read and is taken as square: read it before cutting.",
    "run-neighbor-unread": "{wall} is still to read: what comes from there may change this.",
    "run-depth-left": "The {thing} round its left corner may stand in the way here: read how deep it is.",
    "run-depth-right": "The {thing} round its right corner may stand in the way here: read how deep it is.",
    "run-not-round": "The room has not been walked round yet: do not cut the end that nothing is known beyond.",
    # A floor that falls along it.
    "falls-left-follow": (
        "The floor falls {by} to the left along it: it lies on the floor, its top out of level by as much."
    ),
    "falls-left-scribe": (
        "The floor falls {by} to the left along it: set it level and scribe its foot: {by} off at the right, nothing "
        "at the left."
    ),
    "falls-left-taper": (
        "The floor falls {by} to the left along it: rip its foot in a straight line, {by} off at the right to nothing "
        "at the left."
    ),
    "falls-right-follow": (
        "The floor falls {by} to the right along it: it lies on the floor, its top out of level by as much."
    ),
    "falls-right-scribe": (
        "The floor falls {by} to the right along it: set it level and scribe its foot: {by} off at the left, nothing "
        "at the right."
    ),
    "falls-right-taper": (
        "The floor falls {by} to the right along it: rip its foot in a straight line, {by} off at the left to nothing "
        "at the right."
    ),
    # Its ends.
    "miter-not-square": "Corner of {degrees}, not 90: try the setting on scrap first.",
    "at-rake-top": (
        "Its {side} meets {meets} at half its rake: lean the blade {bevel}, {by} longer at the top than at the foot."
    ),
    "at-rake-foot": (
        "Its {side} meets {meets} at half its rake: lean the blade {bevel}, {by} longer at the foot than at the top."
    ),
    "on-falling-floor-top": (
        "Its {side} end is cut plumb on the falling floor: {by} longer at the top than at the foot. Lean the blade "
        "{bevel}."
    ),
    "on-falling-floor-foot": (
        "Its {side} end is cut plumb on the falling floor: {by} longer at the foot than at the top. Lean the blade "
        "{bevel}."
    ),
    "out-of-plumb-top": (
        "Its {side} corner is out of plumb: {by} longer at the top than at the foot. Lean the blade {bevel}."
    ),
    "out-of-plumb-foot": (
        "Its {side} corner is out of plumb: {by} longer at the foot than at the top. Lean the blade {bevel}."
    ),
    "coped-twice": "Coped at both ends: fit it when both its neighbors are up.",
    "coped-for-light": "Its {side} end is coped, so that the joint is turned away from the light.",
    "coped-twice-for-light": (
        "Its left and right ends are coped, so that the joints are turned away from the light."
    ),
    "proud-eased": "It stands {by} out past the casing: ease its {ends} end back to it.",
    "proud-notched": (
        "It stands {by} out past the casing: notch the back of its {ends} end, {along} along and {deep} deep, to lie "
        "over its edge."
    ),
    "proud-butted": "It stands {by} out past the casing: its {ends} end is butted, and stays proud.",
    "over-scarf": (
        "Its {side} end laps over the board beyond, which is up: cut it to what is left. Glue it, and nail it to the "
        "stud."
    ),
    "over-scarf-lit": (
        "Its {side} end laps over the board beyond, which is up: cut it to what is left. Glue it, and nail it to the "
        "stud. It opens away from the light."
    ),
    "under-scarf": "Its {side} end lies under: on the stud. Glue it, and nail it to the stud.",
    "under-scarf-lit": (
        "Its {side} end lies under: on the stud. Glue it, and nail it to the stud. It opens away from the light."
    ),
    "run-narrow": (
        "There is only {by} of wall for it: fill that with a strip held in the gap and marked there, or with caulk."
    ),
    # What it crosses.
    "crosses-plate": (
        "It crosses the plate of the {thing}, {near} to {far} from the left: move one of them, or notch it."
    ),
    "notch-for-unplaced": "Notch it for the {thing}, once it is read where that stands.",
    "notch-at": "{near} to {far} from the left along its back",
    "notch-at-up": "{near} to {far} from the left along its back, {up} up",
    "notch-for": "Notch it for the {thing}: {span}.",
    "notch-for-wider": "Notch it for the {thing}: {span}, and {wider} wider each way.",
}
