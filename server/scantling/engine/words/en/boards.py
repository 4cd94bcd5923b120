"""What is said of board cases: why one has no plan, and what is wrong with a plan that was given."""

TEXTS = {
    "boards.no-stock": "There is no board to cut from. Add a length on sale, or an offcut on hand.",
    "boards.no-pieces": "There is no piece to cut. Add at least one length.",
    "boards.too-many-pieces": "{count} pieces are too many for one plan. Plan {most} at a time, profile by profile.",
    "boards.too-many-stock": "{count} lengths of board are too many for one plan. Give at most {most}.",
    "boards.piece-not-positive": "Piece {number} has no length. Give every piece a length above zero.",
    "boards.stock-not-positive": "Board {number} has no length. Give every board a length above zero.",
    "boards.price-negative": "Board {number} has a price below zero. Use 0 for a board on hand.",
    "boards.limit-negative": "Board {number} has a limit below zero. Leave the limit out when there are enough.",
    "boards.kerf-negative": "The kerf is below zero. Give the width that the blade takes, or 0.",
    "boards.end-trim-negative": "The end trim is below zero. Give what is cut off one board in all, or 0.",
    "boards.hold-negative": "The length to hold is below zero. Give the least length to keep in the hand, or 0.",
    "boards.piece-too-long": (
        "Piece {number}, {length}, is longer than every board gives, by {over}. Add a longer board, or scarf it: it "
        "takes {boards} boards at least, and every lap a stud behind it."
    ),
    "boards.no-board-left": "No board gives any length: they are all used up, or the end trim takes all of them.",
    "boards.no-plan-found": "No plan was found in the time allowed. Allow more time, or add boards.",
    "boards.not-enough-stock": "The boards on hand are too few for these pieces. Add boards, or raise a limit.",
    "boards.unknown-board": "Board {number} of the plan is cut from a length that the case does not have.",
    "boards.empty-board": "Board {number} of the plan has no piece. Leave it out.",
    "boards.board-too-short": "Board {number} of the plan is too short for its pieces and the kerfs between them.",
    "boards.unknown-piece": "The plan cuts piece {number}, which the case does not have.",
    "boards.piece-not-cut-once": "Piece {number} is cut {times} times. Cut every piece once.",
    "boards.over-limit": "Length {number} is taken {times} times, and there are only {limit}.",
    "boards.not-the-cost": "The boards cost {cost}, not {said}.",
    "boards.no-such-cut": "A saw setting is from 0 to {most} degrees from square.",
    "boards.ends-not-matched": "Give the ends of every piece, or of none: there are {count} for {pieces} pieces.",
}
