"""What a room uses up, put as the question that counts it: joints, beads, fasteners and sundries of its pieces."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.coverings.paint.surfaces import derive_ceiling, derive_trim
from scantling.engine.questions.question import Raw
from scantling.engine.questions.said import Wrong, collect
from scantling.engine.questions.supplies.said import DEFAULTS, FIELDS, SORTS, SUNDRY_OF
from scantling.engine.standard import NO
from scantling.engine.supplies.fasteners import count_nails
from scantling.engine.supplies.from_pieces import Nailing, derive_joints, derive_nailing
from scantling.engine.survey.room import Room
from scantling.engine.tape.figures import format_figure
from scantling.engine.tape.lengths import ZERO, Length, parse_length
from scantling.engine.trim.piece import Piece


@dataclass(frozen=True, slots=True)
class Covered:
    """What a room's coverings add: square inches of paper to paste, whether paint goes on, and beads under panels."""

    pasted: Fraction = Fraction(0)
    painted: bool = False
    papered: bool = False
    beads: tuple[tuple[str, Length], ...] = ()


def compose(
    room: Room, pieces: Sequence[Piece], settings: Mapping[str, object], covered: Covered
) -> tuple[Raw, list[Wrong]]:
    """The question about a room's supplies, and settings that cannot be read, in whose place the usual stands."""
    said: dict[str, Raw] = {}
    wrong: list[Wrong] = []
    for sort in SORTS:
        said[sort], refused = collect(FIELDS, settings, sort)
        wrong += refused
    wanted = {sort for sort in SORTS if said[sort].pop("wanted", "") != NO}
    nailing = derive_nailing(room, pieces, _length(said["nail"], "crown")) if "nail" in wanted else []
    question = {
        "joints": [_bead(joint.name, joint.length, said["caulk"]) for joint in derive_joints(pieces)],
        "beads": [_bead(name, length, said["adhesive"]) for name, length in covered.beads],
        "fasteners": [_fastener(one, said["nail"]) for one in nailing],
        "sundries": list(_sundries(room, pieces, nailing, said, covered, wanted)),
    }
    question["joints"] = question["joints"] if "caulk" in wanted else []
    question["beads"] = question["beads"] if "adhesive" in wanted else []
    return question, wrong


def _length(said: Raw, name: str, sort: str = "nail") -> Length:
    return parse_length(str(said.get(name, DEFAULTS[f"{sort}.{name}"])))


def _exact(length: Length) -> Raw:
    return {"exact": format_figure(length)}


def _bead(name: str, length: Length, said: Raw) -> Raw:
    return {"name": name, "length": _exact(length), **{key: value for key, value in said.items() if key != "apart"}}


def _fastener(one: Nailing, said: Raw) -> Raw:
    board = _length(said, "board")
    through = [one.thick, board] if one.board and board else [one.thick]
    own = {key: value for key, value in said.items() if key in ("bite", "apart", "boxes")}
    return {
        "name": one.name, "through": [_exact(thick) for thick in through], "rows": one.rows, "into": one.into,
        "along": [_exact(length) for length in one.lengths], **own,
    }  # fmt: skip


def _sundries(
    room: Room, pieces: Sequence[Piece], nailing: Sequence[Nailing], said: dict[str, Raw], covered: Covered,
    wanted: set[str],
) -> list[Raw]:  # fmt: skip
    apart = _length(said["nail"], "apart")
    joints = sum((joint.length for joint in derive_joints(pieces)), start=ZERO)
    amounts = {
        "filler": Fraction(sum(count_nails(one.lengths, apart, one.rows) for one in nailing)),
        "sandpaper": derive_trim(room, list(pieces)).area / 144,
        "tape": joints.inches / 12 if covered.painted else Fraction(0),
        "paste": covered.pasted / 144,
        "cloth": derive_ceiling(room).area / 144 if covered.painted or covered.papered else Fraction(0),
    }
    return [
        {"name": SUNDRY_OF[sort], "amount": _hundredths(amount), **said[sort]}
        for sort, amount in amounts.items()
        if amount and sort in wanted
    ]


def _hundredths(amount: Fraction) -> str:
    """Up to the next hundredth, as a question carries it."""
    whole, cents = divmod(-(-amount * 100 // 1), 100)
    return f"{whole}.{cents:02d}".removesuffix(".00")
