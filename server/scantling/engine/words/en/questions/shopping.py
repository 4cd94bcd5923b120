"""What is said of what is used up, bought and paid for."""

TEXTS = {
    # So many of what is bought; some packages are called otherwise in metric.
    "so-many-piece.one": "{count} piece",
    "so-many-piece.other": "{count} pieces",
    "so-many-tube.one": "{count} tube",
    "so-many-tube.other": "{count} tubes",
    "so-many-box.one": "{count} box",
    "so-many-box.other": "{count} boxes",
    "so-many-filler.one": "{count} half-pint tub",
    "so-many-filler.other": "{count} half-pint tubs",
    "so-many-sandpaper.one": "{count} sheet",
    "so-many-sandpaper.other": "{count} sheets",
    "so-many-tape.one": "{count} 60-yard roll",
    "so-many-tape.other": "{count} 60-yard rolls",
    "so-many-paste.one": "{count} gallon",
    "so-many-paste.other": "{count} gallons",
    "so-many-cloth.one": "{count} drop cloth",
    "so-many-cloth.other": "{count} drop cloths",
    "nails-loose": "{count} nails",
    "nails-for": "{count} for {names}",
    "tubes-for.one": "{count} tube for {names}",
    "tubes-for.other": "{count} tubes for {names}",
    "boards-for-several.one": "{count} board planned for several rooms.",
    "boards-for-several.other": "{count} boards planned for several rooms.",
    "count-of-size": "{count} of {size}",
    "count-of-size-for-several": "{count} of {size}, planned for several rooms",
    "line-bought-changed": "Ticked off as {was}, and now it is {now}.",
    # Tubes, nails and packages, and how they were counted.
    "nameless-caulk": "caulk {number}",
    "nameless-adhesive": "adhesive {number}",
    "nameless-fastener": "fastener {number}",
    "trim-for-nails": "Give the length of trim, or of each piece of it.",
    "supplies-of-what": "Give joints, beads, fasteners or sundries to count, or a room.",
    "tubes-counted": "{volume} ÷ ({tube} a tube − {waste} %) = {count}",
    "boxes-counted": "⌈{count} ÷ {held} in a box⌉ = {boxes}",
    "nail-into-stud": "the stud",
    "nail-into-jamb": "the jamb",
    "nail-into-base": "the base",
    "nail-length": "{through} + {bite} into {into} = {least}: {length}",
    "nails-each": "{pieces} pieces, {length} in all, each {rows} × (⌊its length ÷ {apart}⌋ + 1) = {count}",
    "nail-too-short": "It goes {bite} into {into}, and {wanted} is wanted: take {need} or longer.",
    "packages-as-set": "{wanted} ÷ {each} a {package} (as you set it) = {count}",
    "packages-usual": "{wanted} ÷ {each} a {package} (common practice, until you set it) = {count}",
    # Money.
    "costs-of-what": "Give rooms that are measured and rooms to come, or a house.",
    "the-house": "the house",
    "costs-in-all": "spent ${spent}, and planned for what is not bought yet ${planned}: ${all} in all",
    "costs-no-room": "No room to come is written down yet.",
    "costs-rough-trim": "{round} round + {openings} × {door} an opening = {along}",
    "costs-from-one": (
        "Told from one room, which nothing checks: {percent} either way. Measure another to narrow it."
    ),
    "costs-from-several": (
        "Told from {rooms} rooms; each was told from the others to within {percent}, which is counted in."
    ),
}
