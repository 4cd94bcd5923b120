"""Moldings against plane and solid geometry that shares no formula with the engine, over rooms made at random.

Lines and planes are worked here from where a room's corners truly lie (tests/random_rooms.py): the lines that faces of
base, shoe and crown follow are the outline set in, and their corners are where those lines cross.
"""

import itertools
import json
import math
from pathlib import Path
from random import Random

import pytest
from shapely import Polygon, box

from tests.random_rooms import Made, make_room
from tests.rooms import Facts, ask, oblong, room, thing, wall

CLOSED = 1e-4
SEEDS = range(110)
SHOE, SPRING, WIDTH = 0.5, 38.0, 3.625
Point = tuple[float, float]


def set_in(made: Made, depths: list[float]) -> list[Point]:
    """The outline moved into the room by a depth for each wall: the corner at the left end of every wall."""
    count = len(made.corners)
    lines = [_line(made.corners[place], made.corners[(place + 1) % count], depths[place]) for place in range(count)]
    return [_crossing(lines[place - 1], lines[place]) for place in range(count)]


def _line(start: Point, end: Point, depth: float) -> tuple[Point, Point]:
    length = math.dist(start, end)
    dx, dy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    return (start[0] + depth * dy, start[1] - depth * dx), (dx, dy)  # the room lies on the right of the walk


def _crossing(one: tuple[Point, Point], other: tuple[Point, Point]) -> Point:
    ((px, py), (dx, dy)), ((qx, qy), (ex, ey)) = one, other
    along = ((qx - px) * ey - (qy - py) * ex) / (dx * ey - dy * ex)
    return (px + along * dx, py + along * dy)


def whole_walls(made: Made, part: str, **standard: str) -> list[tuple[int, Facts]]:
    """The pieces of one molding that run a wall from corner to corner, by the wall's place."""
    made.facts["standard"] |= {name.replace("__", "."): value for name, value in standard.items()}
    found = []
    for piece in ask("pieces", made.facts)["pieces"]:
        if piece["part"] == part and all(piece[side]["meets"].startswith("corner ") for side in ("left", "right")):
            found.append((int(piece["wall"].removeprefix("w")) - 1, piece))
    return found


def side(corners: list[Point], place: int) -> float:
    return math.dist(corners[place], corners[(place + 1) % len(corners)])


@pytest.mark.parametrize("inside", ["cope", "miter"])
def test_a_shoe_follows_the_line_where_the_faces_of_the_base_cross_and_is_mitered_to_where_its_own_do(inside):
    # Source: plane geometry, worked here.
    checked = mitered = 0
    for seed in SEEDS:
        made = make_room(seed, 14)
        behind = set_in(made, made.thickness)
        before = set_in(made, [thickness + SHOE for thickness in made.thickness])
        for place, piece in whole_walls(made, "shoe", shoe__wanted="yes", shoe__inside=inside):
            assert piece["back"]["inches"] == pytest.approx(side(behind, place), abs=CLOSED), made.facts
            checked += 1
            if all(piece[end]["joint"] in ("miter", "cope") for end in ("left", "right")):
                assert piece["front"]["inches"] == pytest.approx(side(before, place), abs=CLOSED), made.facts
                mitered += 1
    assert checked > 300
    assert mitered > (300 if inside == "miter" else 50)


def test_crown_is_as_long_at_wall_and_ceiling_as_the_lines_it_touches_and_is_cut_in_the_plane_between_them():
    # Source: vectors, worked here: the upright plane through a corner's two points, one where the walls meet and one
    # where the ceiling edges cross, and the plane of each molding's back.
    out, down = WIDTH * math.sin(math.radians(SPRING)), WIDTH * math.cos(math.radians(SPRING))
    checked = 0
    for seed in SEEDS:
        made = make_room(seed, 14)
        above = set_in(made, [out] * len(made.corners))
        standard = {"crown__wanted": "yes", "crown__inside": "miter", "crown__width": "3 5/8", "crown__spring": "38"}
        for place, piece in whole_walls(made, "crown", **standard):
            assert piece["back"]["inches"] == pytest.approx(side(made.corners, place), abs=CLOSED)
            # Where a wall is too short for its two ends the ceiling edges have crossed, and there is no such piece.
            assert piece["front"]["inches"] == pytest.approx(side(above, place), abs=CLOSED), made.facts
            for at, end in ((place, piece["left"]), ((place + 1) % len(made.corners), piece["right"])):
                miter, bevel = _cut_in_space(made, place, at, above[at], down)
                assert end["saw"] == pytest.approx(miter, abs=1e-4)
                assert end["bevel"] == pytest.approx(bevel, abs=1e-4)
                checked += 1
    assert checked > 1000


def _cut_in_space(made: Made, place: int, at: int, ceiling: Point, down: float) -> tuple[float, float]:
    """Miter and bevel, lying flat, of the end at a corner of the molding on a wall."""
    start, end = made.corners[place], made.corners[(place + 1) % len(made.corners)]
    _, (dx, dy) = _line(start, end, 0)
    (cx, cy), (tx, ty) = made.corners[at], ceiling
    cut = (tx - cx, ty - cy, down)  # along the cut, up the back of the molding
    along = cut[0] * dx + cut[1] * dy
    across = math.sqrt(sum(value * value for value in cut) - along * along)
    miter = math.degrees(math.atan2(abs(along), across))
    out = -(cut[0] * -dy + cut[1] * dx)
    back = (-dy * -down, dx * -down, -out)  # square to the wall's line and to the way up the molding
    upright = (cy - ty, tx - cx, 0.0)  # square to the plane of the cut
    return miter, math.degrees(math.asin(min(1.0, abs(_dot(back, upright)) / (_size(back) * _size(upright)))))


def _dot(a: tuple[float, ...], b: tuple[float, ...]) -> float:
    return sum(x * y for x, y in zip(a, b, strict=True))


def _size(a: tuple[float, ...]) -> float:
    return math.sqrt(_dot(a, a))


TABLE = json.loads((Path(__file__).parent / "crown.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize(("spring", "corner", "miter", "bevel"), [row for row in TABLE["rows"] if row[1] < 180])
def test_crown_in_a_room_is_cut_to_the_settings_of_the_table(spring, corner, miter, bevel):
    # Source: crown.json, which says how its figures were come by.
    for turn in ("inside", "outside"):
        facts = room(
            wall("w1", "120", turn, str(corner)), wall("w2", "120"), closed=False, base__wanted="no",
            crown__wanted="yes", crown__inside="miter", crown__spring=str(spring), crown__width="2",
        )  # fmt: skip
        ends = [piece[side] for piece in ask("pieces", facts)["pieces"] for side in ("left", "right")]
        mitered = [end for end in ends if end["joint"] == "miter"]
        assert len(mitered) == 2
        for end in mitered:
            assert (end["saw"], end["bevel"]) == pytest.approx((miter, bevel), abs=6e-5)
            assert end["nested"] == (180 - corner) / 2


@pytest.mark.parametrize("seed", range(80))
def test_the_boards_of_a_scarfed_run_fill_it_without_a_gap_or_a_lap_and_meet_on_a_stud(seed):
    # Source: plane geometry by shapely: each board a polygon by its lengths, saw settings and long edges alone.
    rng = Random(seed)
    length, thickness = rng.randint(960, 4000) / 16, rng.choice((8, 9, 10, 12)) / 16
    first, every, usable = rng.randint(1, 24), rng.choice((12, 16, 19.2, 24)), rng.choice((8, 10, 12, 16)) * 12 - 0.5
    facts = oblong(
        thing("door", "30", "30"), base__thickness=str(thickness), base__scarf=str(rng.choice((0, 15, 30, 45))),
        base__inside=rng.choice(("miter", "cope", "butt")),
        base__stock=[{"length": str(usable + 0.5), "price": "1"}],
    )  # fmt: skip
    place = rng.choice((1, 2, 3))
    for at in (place, (place + 2) % 4):
        facts["walls"][at]["length"] = str(length)
    facts["walls"][place]["studs"] = f"{first}, every {every}"
    boards = [piece for piece in ask("pieces", facts)["pieces"] if piece["wall"] == f"w{place + 1}"]
    if len(boards) == 1:
        assert boards[0]["cut"]["inches"] <= usable or "longer-than-stock" in {
            flag["key"] for flag in boards[0]["flags"]
        }
        return
    boards = _from_the_left(boards)
    shapes, at = [], 0.0
    for board in boards:
        assert board["cut"]["inches"] <= usable + CLOSED
        back, left, right = board["back"]["inches"], _lean(board["left"], thickness), _lean(board["right"], thickness)
        shapes.append(Polygon([(at, 0), (at + back, 0), (at + back + right, thickness), (at - left, thickness)]))
        at += back
    ends = _lean(boards[0]["left"], thickness), _lean(boards[-1]["right"], thickness)
    run = Polygon([(0, 0), (at, 0), (at + ends[1], thickness), (-ends[0], thickness)])
    assert sum(shape.area for shape in shapes) == pytest.approx(run.area, abs=CLOSED)
    joined = shapes[0]
    for before, after in itertools.pairwise(shapes):
        assert before.intersection(after).area < CLOSED
        assert before.distance(after) < CLOSED
        joined = joined.union(after)
    assert joined.symmetric_difference(run).area < CLOSED
    taken = 0.0 if boards[0]["left"]["joint"] != "butt" else thickness
    for board, shape in zip(boards, shapes, strict=True):
        if board["right"]["joint"] == "scarf":
            _, _, right, _ = shape.bounds
            middle = taken + (right - abs(_lean(board["right"], thickness)) / 2)
            assert min(abs(middle - first - every * step) for step in range(400)) < CLOSED
    assert box(-9, -1, at + 9, thickness + 1).covers(joined)


def _lean(end: Facts, thickness: float) -> float:
    if end["long_edge"] == "none":
        return 0.0
    reach = thickness * math.tan(math.radians(end["saw"]))
    return reach if end["long_edge"] == "front" else -reach


def _from_the_left(boards: list[Facts]) -> list[Facts]:
    """The boards in a row: each meets the next one's scarf by name."""
    row = [board for board in boards if board["left"]["joint"] != "scarf"]
    while row[-1]["right"]["joint"] == "scarf":
        row += [board for board in boards if board["left"]["meets"] == row[-1]["right"]["meets"]]
    assert len(row) == len(boards)
    return row
