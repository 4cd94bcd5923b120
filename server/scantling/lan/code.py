"""QR codes: for a terminal as text, for a page as the path of a drawing."""

from __future__ import annotations

import io

import segno

BORDER = 4


def terminal_code(text: str) -> str:
    """The code in half blocks, dark on light whatever the colors of the terminal."""
    out = io.StringIO()
    segno.make(text, micro=False).terminal(out, compact=True)
    return out.getvalue()


def code_path(text: str) -> dict[str, object]:
    """The side of the code with its quiet zone, in modules, and the dark ones as a path of unit squares in it."""
    rows = [bytes(row) for row in segno.make(text, micro=False).matrix]
    path = "".join(
        f"M{column + BORDER} {line + BORDER}h1v1h-1z"
        for line, row in enumerate(rows)
        for column, dark in enumerate(row)
        if dark
    )
    return {"side": len(rows) + 2 * BORDER, "path": path}
