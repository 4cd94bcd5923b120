"""What is said of boards to buy, their proof, and of cutting them."""

TEXTS = {
    "price-as-text": 'Write a price as text, such as "19.98", or in whole cents.',
    "boards-if.no-such-profile": "The room needs no piece of {profile} with boards to cut it from.",
    "spoiled.no-such-piece": "The room has no piece {text}: ask for one by its letter.",
    "spoiled.not-wanted": "{letter} is no longer wanted as the room reads now: it need not be cut again.",
    "spoiled.not-issued": "{letter} is not issued yet: issue the list first.",
    "spoiled.salvaged": "{letter} is there already: it is of no board.",
    "spoiled.fitted": "{letter} is fitted: mark it recut, if it comes down again.",
    "spoiled.not-read": "{sentence}",
    "spoiled.longer": "{letter} was to be {cut}: no more than that is left of it.",
    # What is missing for a plan.
    "boards-no-piece": "There is no piece to cut yet: read a wall first.",
    "boards-no-piece-in-house": "No room has a piece to cut yet that lies on no board bought for it.",
    "boards-unpriced": "No stock lengths yet for {profile}: add lengths and prices to the standard under House.",
    "boards-piece-longer": "{letter} is longer than every board by {by}: add a longer one.",
    # A plan: what it comes to, and how well that is known.
    "boards-in-all.one": "{count} board: {lengths}.",
    "boards-in-all.other": "{count} boards: {lengths}.",
    "plan-accepted": "Accepted: this plan is shown on every device until another is accepted.",
    "plan-cheapest-and-fewest": (
        "Cheapest: ${cost}. Proved: no plan under ${cost} exists, nor one at that price with fewer boards."
    ),
    "plan-cheapest": "Cheapest: ${cost}. Proved: no plan under ${cost} exists.",
    "plan-not-proved": "Not proved: a cheaper plan may exist.",
    "plan-within": "Within ${by} of the best possible.",
    "plan-blank": "{letter} leaves too little to hold in any order: cut it from a blank of {least} or more.",
    "board-left-of": "left of {board}",
    "board-left-of-other-room": "left of another room's board",
    "board-left-of-other-room-uncut": "left of another room's board, once that is cut",
    "slack-all": "Each board keeps {length} to spare. Without that you would save {saved}.",
    "slack-but-for.one": (
        "Each board keeps {length} to spare, but for {letters}: it fills its board. "
        "Without that you would save {saved}."
    ),
    "slack-but-for.other": (
        "Each board keeps {length} to spare, but for {letters}: each fills its board. "
        "Without that you would save {saved}."
    ),
    "slack-saves-nothing": "nothing",
    "so-many-board.one": "{count} board",
    "so-many-board.other": "{count} boards",
    # A proof gone through again.
    "proof-holds-fewest": "It holds: no plan under ${cost} exists, nor one at that price with fewer boards.",
    "proof-holds": "It holds: no plan under ${bound} exists.",
    "proof-costs-more": "This plan costs ${cost}: at most ${by} more than the best.",
    "proof-broken": "It does not hold: a board can hold more points than rule {numbers} says.",
    "proof-unexplained": (
        "It does not hold: nothing speaks against these numbers of boards, stock by stock: {lists}."
    ),
    "proof-resting": (
        "Not confirmed: {count} of the lists that the planner says it tried in full could not be tried again in the "
        "time."
    ),
    "proof-too-long": "Not confirmed: the proof is too long to be gone through here.",
    # Other lengths than those that are sold.
    "boards-if-only": "Only {length}",
    "boards-if-with": "With {length} at ${price}",
    "boards-if-none": "{what}: some piece does not come out of it.",
    "boards-if-more": "{what}: ${cost}, ${by} more.",
    "boards-if-less": "{what}: ${cost}, ${by} less.",
    "boards-if-same": "{what}: ${cost}, the same.",
    # At the saw.
    "saw-board": "board {number} of {count}, {size}",
    "saw-board-proposed": "board {number} of {count}, {size}, proposed",
    "saw-is-there": "it is there",
    "saw-board-for-several": "a board for several rooms",
    "saw-no-board": "no board planned",
    "order-by-board.one": "By board, {count} setting",
    "order-by-board.other": "By board, {count} settings",
    "order-by-setting.one": "By setting, {count} setting",
    "order-by-setting.other": "By setting, {count} settings",
    "saw-other-edge": "{length} along the {edge}",
    "saw-spoken": (
        "Piece {letter}, {part}. {length}, {cut_from}. Left end: {left}. Right end: {right}. Lay it {edges}."
    ),
    "saw-test-cut": "Test cut, {words}.",
    # A piece that is spoiled.
    "spoiled-comes-back": "{letter}, {part}, comes back to be cut again.",
    "spoiled-of-board": "{length} of board {number} of {count}, {size}, is used up.",
    "spoiled-of-its-board": "{length} of its board is used up.",
    "spoiled-along": "{letter} along its board",
    "spoiled-kerf": "+ the kerf",
    "spoiled-used-up": "= used up",
    "spoiled-nothing-left": "Nothing of it stands on the rack.",
    "spoiled-left": "{length} of it stands on the rack for another piece, if that can be held at the saw.",
    "spoiled-costs": "That is ${cost} more to buy.",
    "spoiled-costs-nothing": "Nothing more is to buy for it: it comes of what is here or planned.",
}
