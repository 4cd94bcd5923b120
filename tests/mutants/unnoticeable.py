"""Faults that change nothing anyone can be shown, by the line that they put in, each with why.

They were found by reading and count as not noticed all the same; who changes such a line reads its reason again.
"""

WHY = {
    "found.append((count + 2, clashes + (not last and place in taken), better, on))":
        "every way counts double then, and the fewest boards are the fewest still",
    "board = PlannedBoard(1, order, ZERO, derive_shared_cuts(case, order))":
        "which row of stock it is of is not asked where its pieces lie",
    "if more[0] < known.get(more[2:3], more[0] + 1):":
        "no way begun is dropped for a better one to the same place: the same order is found, later",
    "if found[1:3] not in longer or found[0] <= longer[found[1:3]][0]:":
        "of two orders with as many settings the other one is kept",
    "ways = [(at, *board[done]) for at, (board, done) in enumerate(zip(sets, cut, )) if done < len(board)]":
        "both are of one length; `strict` is there for who changes that",
    "for sign, bound in ((-2, run.left), (1, run.right))":
        "a term adds or takes off by whether its sign is above nothing",
}  # fmt: skip
