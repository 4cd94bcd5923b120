"""What is said of questions, entries, settings and wood."""

TEXTS = {
    "question.no-such-question": "There is no question called {name}; ask one of: {names}.",
    "question.not-a-question": 'A question is an object with "ask" in it, such as {{"ask": "read", "text": "63 1/4"}}.',
    "question.not-json": "That is not JSON: {why}.",
    "question.bad-field": "{sentence}",
    "question.too-many-questions": (
        "That is {count:,} questions at once, and {most:,} is the most: ask in several requests."
    ),
    "question.too-much": "That holds more than {most} values, which is more than one question may: ask in parts.",
    "question.too-deep": "That is nested more than {most} deep: flatten it.",
    "question.too-great-a-number": "A number here is greater than anything that is measured or bought: check it.",
    "entry.not-an-entry": "A journal entry is an object with an id, a device and a body; this is {what}.",
    "entry.not-text": "{where} holds half a character (a lone surrogate), which cannot be stored; type it again.",
    "standard.not-a-choice": "{name} is one of {choices}, not {text}.",
    "standard.not-positive": "{name} must be more than nothing, not {text}.",
    "standard.too-thin": "{name} is no less than 1/64 in, the finest mark of a tape, not {text}.",
    "standard.not-money": "{text} is not a price: write dollars and cents such as 19.98.",
    "standard.not-a-count": "{text} is not a count: write how many there are, or leave it empty for any number.",
    "standard.not-so-many": "{name} is a whole number from 0 to {most}, not {text}.",
    "standard.not-stock": "Stock is a list of rows, each with a length and a price.",
    "standard.no-scarf": "A scarf of {text} is too long a lap: write degrees from square, up to 60, such as 30.",
    "standard.no-light": (
        "{text} is nowhere that light comes from: write windows, none, or the number of a wall, such as 2."
    ),
    "standard.no-range": "A saw that turns to {text} cuts no miter: write degrees from square, 45 or more, such as 50.",
    "standard.no-rake": (
        "{text} is no rake of a stair: write degrees from level, above 0 and under 60, such as 37; or none."
    ),
    "standard.no-spring": (
        "A spring of {text} is no lean: write the angle at the wall, above 0 and under 90, such as 38."
    ),
    "standard.no-profile": (
        "Boards of other profiles are rows, each with the name of its profile, a length and a price."
    ),
    "standard.no-moisture": "{text} is no moisture of dry wood: write a percentage up to 30, such as 8.",
    "standard.bad-value": "{name}: {sentence}",
    "wood.unknown-wood": "There is no coefficient for {text}; the table has {woods}.",
    "wood.green": "At {percent} % wood is green and does not yet shrink: write 30 or less.",
    "question-nested": "it is nested too deep",
    # What is to be written, and what is wrong with what was.
    "ask-exact": 'Give an exact length as answers do, such as {{"exact": "253/4"}}.',
    "ask-length": 'a length as text, such as "63 1/4"',
    "ask-length-as-text": 'Write a length as text, such as "63 1/4".',
    "ask-degrees": 'an angle in degrees, such as "91.5"',
    "ask-degrees-as-text": 'Write an angle in degrees, such as "91.5".',
    "ask-graduation": 'a graduation of the tape, such as "1/16"',
    "ask-fraction-of-inch": "Show figures to 1, 1/2, 1/4, 1/8, 1/16, 1/32 or 1/64 of an inch.",
    "ask-one-of": "Choose one of: {choices}.",
    "ask-unknown": "Nothing is read under this name: leave it out, or check how it is spelt.",
    "ask-object": "Write an object here: names and values in braces.",
    "ask-missing": '"{name}" is missing: write {wanted}.',
    "ask-null": '"{name}" is null: write {wanted}.',
    "ask-not-this": "This is not what is read here: write {wanted}.",
    "ask-each": "{wanted}, each {one}",
    "ask-list-of": "a list, each {one}",
    "ask-with": "{wanted} with {fields}",
    "ask-choice": "one of {choices}",
    "ask-a-whole": "a whole number",
    "ask-a-number": "a number",
    "ask-a-boolean": "true or false",
    "ask-a-text": "text",
    "ask-a-list": "a list",
    "ask-an-object": "an object",
    "ask-a-value": "a value",
    # What an entry must hold.
    "entry-itself": "The entry",
    "body-id": "Not a UUID.",
    "body-sum": "Write a sum.",
    "not-a-count": "Not a count.",
    "body-date": "Write a date as 2026-03-14.",
    "body-setting": "A setting is a text, or a list of rows of texts.",
    "body-list": "A list is of pieces, each with its id, key, letter, name, profile and figure.",
    "body-showed": "Say in 200 letters what it showed.",
    "body-name": "Give it a name.",
    "body-stock": "Name its stock.",
    "body-plan": "A plan is of boards, each with its name, length, price and pieces.",
    "body-stroke": (
        "A line is of 2 to {most} points, each two whole numbers from 0 to {parts}: in ten-thousandths of the photo, "
        "from its left and from its top."
    ),
    "body-place": "A place on a photo is a whole number from 0 to {parts}.",
    # How much wood moves, and who says so.
    "wood-table": "Wood Handbook (FPL-GTR-190), table 13-5",
    "wood-from-shrinkage": "from the shrinkage in the Wood Handbook (FPL-GTR-190), table 4-3",
    "wood-from-memory": (
        "from the shrinkage in the Wood Handbook (FPL-GTR-190), table 4-3, that shrinkage from memory"
    ),
    "wood-outside": (
        "The coefficients are for 6 to 14 % moisture: outside of that take the change as a rough figure."
    ),
    "wood-derived": "The coefficient for {wood} is worked out {source}.",
    "by-the-standard": "the standard",
    "by-common-practice": "common practice, until you set it",
    "standard-stock-length": "stock length",
}
