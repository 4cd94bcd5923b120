"""What is said of what is put round a window: its stool and apron, its jamb extension, its order."""

TEXTS = {
    "window.picture-butted": "A picture frame is mitered at all four corners: choose a mitered head, or a stool.",
    "window.no-sash-room": "From sash to wall is only {sash}, and the stool needs {play} of play: read it again.",
    "order-stool": "The stool: extension and legs stand on it.",
    "order-extension": "The extension: side strips first, then those that lie over their ends.",
    "order-casing": "The legs, and the head to fit them.",
    "order-picture": "The head, the legs to meet it, and the sill to close the frame.",
    "order-apron": "The apron last, as long as the casing is wide.",
    # The stool.
    "stool-between": "Between the jambs it is {length} long; the horns begin at the plane of the wall.",
    "stool-notch": "Notch its back corners for the wall: {cuts}, {deep} deep from the edge at the sash.",
    "stool-notch-scribe": (
        "Notch its back corners for the wall: {cuts}, {deep} deep from the edge at the sash; scribe that to the wall."
    ),
    "stool-notch-along": "{along} along at {where}",
    "stool-notch-between": "Notch it between {one} and {other}: {near} to {far} from its left end.",
    "stool-notch-between-deep": "Notch it between {one} and {other}: {near} to {far} from its left end, {deep} deep.",
    "stool-sash": "+ closed sash to the wall",
    "stool-play": "− play at the sash",
    "stool-casing-thick": "+ the casing's thickness",
    "stool-past-casing": "+ past the casing in front, as a horn is long",
    "stool-casing": "+ casing at {where}",
    "stool-casing-ripped": "+ casing at {where}, ripped",
    "stool-horn": "+ horn at {where}",
    "stool-horn-short": (
        "The side wall leaves {horn} of the horn at {where}: the stool ends square against it."
    ),
    "stool-no-horn": "The side wall leaves no horn at {where}: the stool ends square against it.",
    "stool-sash-unread": (
        "The stool's width wants one more reading: from the closed sash to the plane of the wall."
    ),
    "stool-sash-differs": "The depth from sash to wall differs by {by}: the least counts, scribe the rest.",
    # The apron and its returns.
    "apron-between": "+ between the legs, along the stool",
    "apron-minus-return": "− the return at {where}",
    "apron-thick": "+ the apron's thickness",
    "apron-return-small": "Cut it off the end of a long board, and glue it: it is too small to hold or to nail.",
    # The strips of a jamb extension.
    "strip-rip-marks": "Rip to {blank}, mark the width at each point, and plane to the marks.",
    "strip-rip-taper": "Rip to {blank}, then taper in a straight line from {first} to {last}.",
    "strip-rip-parallel": "Rip to {blank}, parallel.",
    "strip-stands": "{rip} It then stands {stands}.",
    "strip-proud": "{by} proud at point {place}",
    "strip-shy": "{by} shy at point {place}",
    "strip-solid": "Use solid wood: the edge of fiberboard splits when it is nailed.",
    "strip-wide-at": "wide at point {count}",
    "strip-blank": "blank to rip, with {by} to plane off",
    "strip-thin": "The {strip} is {most} at most and would split: relieve the casing's back instead.",
    "strip-runs-out": "The {strip} runs out to nothing: plane the jamb there so that it can end square.",
    "plus-over-strip": "+ over the {strip}",
    "extension-left": "left strip",
    "extension-right": "right strip",
    "extension-head": "head strip",
    "extension-sill": "sill strip",
    "unread-depths": "No strip yet at the {places}: the depth from jamb to wall is not read there.",
    # What the depths of a window say together.
    "depths-twist": (
        "The wall is twisted by {by} here: miters gape in front until the casing is packed out."
    ),
    "depths-proud": "The {jamb} stands proud of the wall by {by}: plane it flush.",
    "depths-far-proud": "The {jamb} stands proud of the wall by {by}: bring the wall out, or move the jamb in.",
    "depths-differ": "Where {side} and {level} meet, {one} and {other} were read: read both again.",
    "side-left": "left",
    "side-right": "right",
    "side-head": "head",
    "side-sill": "sill",
}
