"""Cautions: facts and who decides, each beginning with the word that it is known by."""

TEXTS = {
    "caution-saw": (
        "Saw: keep at least 12 in of board on the held side, clamp it, hands 6 in or more clear; let the blade "
        "stop before you lift or reach. Cut short pieces from long stock. Eyes and ears covered."
    ),
    "caution-old-paint": (
        "Old paint: in a house built before 1978 it may hold lead. Test it, or take it that it does: no dry "
        "sanding, no flame; contain, work wet, clean with a HEPA vacuum, keep children out."
    ),
    "caution-noise": (
        "Noise: most saws, nailers and sanders are over 85 dBA; at 94 a day's dose is used up in an hour, at 100 "
        "in a quarter. Cover your ears."
    ),
    "caution-fireplace": (
        "Fireplace: wood must stay clear of its opening or of a stove; the code and the appliance's label say how "
        "far."
    ),
    "caution-lifting": "Lifting: boards of 16 ft and bundles are heavy and whip; two people.",
    "caution-pulling": (
        "Pulling: expect nails, glass, and wires behind old trim. Gloves and eyes covered; pull nails through the "
        "back."
    ),
    "caution-escape": (
        "Escape: stops, stool and casing must not make an escape window's opening smaller. Local code says how "
        "large."
    ),
    "caution-overhead": (
        "Overhead: a long stick wants two people. Ladder 4 up for 1 out, face it, three points of contact, not on "
        "its top cap or top step; do not reach."
    ),
    "caution-nailer": (
        "Nailer: finger off the trigger when moving, a full sequential trigger, hand 12 in or more from the nose, "
        "unplugged or off its hose before a jam is cleared. Eyes and ears covered."
    ),
    "caution-behind": (
        "Behind the wall: cables may lawfully be 1 1/4 in from a stud's face and pipes nearer. Look for both "
        "first; stay clear above, below and beside boxes and plumbing."
    ),
    "caution-fumes": (
        "Fumes: open windows and run a fan out of one, while you work and for 2 to 3 days after. Solvents and "
        "adhesives: no flame or pilot light; the label says how."
    ),
    "caution-old-walls": (
        "Old walls: old joint compound, texture, and some wall coverings and adhesives may hold asbestos. Do not "
        "sand or scrape them until they are tested; what is sound, leave alone."
    ),
    "caution-plates": (
        "Plates: power off and tested before they come off; nothing goes over a receptacle's face, and paste is "
        "wet. If in doubt, a licensed electrician."
    ),
    "caution-outlets": (
        "Outlets: power off and tested. In wood or another surface that burns a box must stand flush, in drywall "
        "or tile at most 1/4 in back: use an extender. If in doubt, a licensed electrician."
    ),
    "caution-rags": (
        "Rags: those with drying oils can catch fire by themselves. Spread them flat outdoors, or in a metal can "
        "of water."
    ),
    "caution-ladder": (
        "Ladder: 4 up for 1 out, face it, three points of contact, not on its top cap or top step; do not reach."
    ),
    "caution-dust": (
        "Dust: wear at least a fitted N95, take it off by vacuum, wipe wet, do not sweep. Some compounds hold "
        "silica."
    ),
    "caution-glass": (
        "Glass: within 60 in of a tub or shower, in doors and beside them it must be safety glazing, by the mark "
        "etched in it; film does not make it so."
    ),
    "caution-film": (
        "Film: one that takes up heat can crack glass. Ask its maker first about insulated, wired, textured, "
        "thick, shaded or damaged glass. It must not hide how an escape window opens."
    ),
    "caution-mold": (
        "Mold: where a wall is damp or has mold, stop, and find where the water comes from before anything covers "
        "it."
    ),
    "caution-tail": "General information: your tool's manual, local code and licensed trades come first.",
    "caution-lead-rule": (
        "Lead rule: paid work that disturbs more than 6 sq ft of old paint in a room, or replaces a window, "
        "follows it."
    ),
    "caution-lead": (
        "Lead rule: paid work that disturbs more than 6 sq ft of old paint in a room, or replaces a window, must "
        "follow it; what is taken off counts in full. Trim {high} high comes to 6 sq ft at {long}. States may be "
        "stricter; the hazard is the same whoever works."
    ),
    "caution-cable": (
        "It goes {bite} into the stud, where a cable may lawfully be 1 1/4 in from its face: take a shorter one."
    ),
}
#: The figures of these lines where lengths are shown in millimeters, each rounded to the careful side: what must stay
#: clear is no less, what a rule begins at or what may lie near is no more.
FIGURES = {
    "at least 12 in": "at least 305 mm", "6 in or more": "155 mm or more", "12 in or more": "305 mm or more",
    "16 ft": "4.8 m", "1 1/4 in": "31 mm", "1/4 in": "6 mm", "within 60 in": "within 1525 mm", "6 sq ft": "0.55 m²",
}  # fmt: skip
