"""Built-up heads: a fillet under a butted head and a cap on it, each past the head's ends by its own overhang.

Off until their thickness is set. The fillet lies on the legs, so the head comes as much higher and no piece is longer
for it; ends are left square, or eased. Common practice, no source.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from scantling.engine.standard import Standard, profile_name
from scantling.engine.tape.lengths import Length
from scantling.engine.trim.openings.frame import flat_end
from scantling.engine.trim.piece import Kind, Piece, Step
from scantling.engine.words import say


def build_up(standard: Standard, pieces: Sequence[Piece]) -> list[Piece]:
    """The pieces of one opening with what its head is built up of, in the order in which that goes up."""
    built: list[Piece] = []
    for piece in pieces:
        if piece.kind == Kind.HEAD and not any(end.joint == "miter" for end in (piece.left, piece.right)):
            built += [*_level(piece, "fillet", standard), piece, *_level(piece, "head cap", standard)]
        else:
            built.append(piece)
    return built


def _level(head: Piece, part: str, standard: Standard) -> Iterator[Piece]:
    thick: Length | None
    thick, past = {
        "fillet": (standard.fillet_thickness, standard.fillet_overhang),
        "head cap": (standard.head_cap_thickness, standard.head_cap_overhang),
    }[part]
    if thick is None:
        return
    square, length = flat_end("square", say("built-up-free-end")), head.back + past * 2
    yield replace(
        head,
        key=f"{head.key} {part}",
        kind=Kind.BUILT_UP,
        part=part,
        profile=profile_name(part, thick),
        back=length,
        left=square,
        right=square,
        working=(Step(say("built-up-head"), head.back), Step(say("built-up-overhang"), past * 2),
                 Step(say("equals-end-to-end"), length)),
        flags=(),
    )  # fmt: skip
