"""Base against plane geometry: every board of a room built as a polygon from its answer alone, and laid along its wall.

By a library that knows nothing of trim (shapely, planar predicates): joints close, and no board stands in another, in a
casing or in a wall.

What is taken from the answer: back, front, cut, and at each end joint, saw and long edge. What is taken from the room:
where its corners lie, where its doors and cabinets stand, how thick each board is.
"""

import math
from dataclasses import dataclass

import pytest
from shapely import LineString, Point, Polygon

from tests.random_rooms import Made, make_room
from tests.rooms import Facts, pieces

# A ten-thousandth of an inch. Lengths go in to 1e-6 and come out to 1e-6, saw settings to 1e-6 of a degree.
CLOSED = 1e-4
SEEDS = range(240)


@dataclass
class Wall:
    """A wall in plan: points by how far along it from its left end and how far into the room."""

    start: tuple[float, float]
    end: tuple[float, float]

    def __post_init__(self) -> None:
        self.length = math.dist(self.start, self.end)
        self.along = tuple((b - a) / self.length for a, b in zip(self.start, self.end, strict=True))

    def point(self, along: float, inward: float) -> tuple[float, float]:
        (x, y), (dx, dy) = self.start, self.along
        return (x + along * dx + inward * dy, y + along * dy - inward * dx)

    def where(self, point: tuple[float, float]) -> tuple[float, float]:
        (x, y), (dx, dy) = self.start, self.along
        px, py = point[0] - x, point[1] - y
        return (px * dx + py * dy, px * dy - py * dx)


@dataclass
class Board:
    """A board laid on its wall: ends along the wall, of back and face, left and right."""

    piece: Facts
    wall: Wall
    thickness: float
    back: tuple[float, float]
    face: tuple[float, float]

    def end(self, side: int) -> tuple[tuple[float, float], tuple[float, float]]:
        """The two corners of an end in plan: at the back, at the face."""
        return self.wall.point(self.back[side], 0), self.wall.point(self.face[side], self.thickness)

    @property
    def face_line(self) -> LineString:
        return LineString([self.wall.point(along, self.thickness) for along in self.face])


@dataclass
class Run:
    """Where base is wanted along a wall, as the test works it out; None where an end is at a corner."""

    wall: int
    left: float | None
    right: float | None


def runs_of(made: Made) -> list[Run]:
    found = []
    for wall, breaks in enumerate(made.breaks):
        edge: float | None = None
        for start, end, _ in breaks:
            found.append(Run(wall, edge, start))
            edge = end
        found.append(Run(wall, edge, None))
    return found


def walls_of(made: Made) -> list[Wall]:
    return [Wall(a, b) for a, b in zip(made.corners, made.corners[1:] + made.corners[:1], strict=True)]


def boards_of(made: Made) -> list[Board]:
    """Every board of the room, in the order of its runs. A board is found by its wall and what its left end meets."""
    walls = walls_of(made)
    answered = {(piece["wall"], piece["left"]["meets"]): piece for piece in pieces(made.facts)}
    boards = []
    for run in runs_of(made):
        before = [facts for _, end, facts in made.breaks[run.wall] if end == run.left]
        corner = run.wall if run.wall else len(walls)
        kind = before[0]["kind"] if before else ""
        meets = f"the {'cased opening' if kind == 'cased' else kind}" if kind else f"corner {corner}"
        piece = answered.pop((f"w{run.wall + 1}", meets))
        boards.append(_laid(made, walls, run, piece))
    assert not answered, "a piece on no wall that wants one"
    return boards


def _laid(made: Made, walls: list[Wall], run: Run, piece: Facts) -> Board:
    wall, thickness = walls[run.wall], made.thickness[run.wall]
    starts = 0.0 if run.left is None else run.left
    if piece["left"]["joint"] == "butt":
        starts = _where_the_face_line_crosses(wall, walls[run.wall - 1], made.thickness[run.wall - 1])
    back = (starts, starts + piece["back"]["inches"])
    left, right = _lean(piece["left"], thickness), _lean(piece["right"], thickness)
    return Board(piece, wall, thickness, back, (back[0] - left, back[1] + right))


def _lean(end: Facts, thickness: float) -> float:
    """How much farther out the face reaches than the back, by the saw setting and the long edge alone."""
    if end["long_edge"] == "none":
        assert end["saw"] == 0
        return 0.0
    reach = thickness * math.tan(math.radians(end["saw"]))
    return reach if end["long_edge"] == "front" else -reach


def _where_the_face_line_crosses(wall: Wall, other: Wall, thickness: float) -> float:
    """How far along a wall the face line of a board on another wall crosses it."""
    (px, py), (dx, dy) = other.point(0, thickness), other.along
    (qx, qy), (ex, ey) = wall.start, wall.along
    return ((px - qx) * dy - (py - qy) * dx) / (ex * dy - ey * dx)


def standing(board: Board, boards: dict[tuple[int, int], Board], place: int, count: int) -> Polygon:
    """What of a board stands in the room once it is coped.

    A cope is cut along the line that an inside miter shows: all wood behind that line is taken away, so that the other
    board's face passes where the miter's wedge was. In plan, at the height where the profile is thickest, the wedge
    between the miter and the other board's face line is gone: the end of what is left runs along that face line.
    """
    ends = []
    for side in (0, 1):
        back, face = board.end(side)
        if board.piece[("left", "right")[side]]["joint"] == "cope":
            other = boards[(place - 1) % count, 1] if side == 0 else boards[(place + 1) % count, 0]
            back = board.wall.point(_where_the_face_line_crosses(board.wall, other.wall, other.thickness), 0)
        ends.append((back, face))
    (left_back, left_face), (right_back, right_face) = ends
    return Polygon([left_back, right_back, right_face, left_face])


@pytest.fixture(scope="module")
def rooms() -> list[tuple[Made, list[Board]]]:
    return [(made, boards_of(made)) for made in map(make_room, SEEDS)]


def at_corners(made: Made, boards: list[Board]) -> dict[tuple[int, int], Board]:
    """The boards by wall and side (0 left, 1 right) that reach a corner there."""
    found = {}
    for run, board in zip(runs_of(made), boards, strict=True):
        if run.left is None:
            found[run.wall, 0] = board
        if run.right is None:
            found[run.wall, 1] = board
    return found


def test_the_rooms_are_of_every_sort(rooms):
    angles = [angle for made, _ in rooms for angle in made.angles]
    ends = [piece[side] for _, boards in rooms for piece in (b.piece for b in boards) for side in ("left", "right")]
    kinds = {(end["joint"], end["turn"], end["long_edge"]) for end in ends}
    assert min(angles) == 60
    assert max(angles) == 300
    assert {len(made.corners) for made, _ in rooms} == set(range(3, 25))
    assert kinds >= {
        ("miter", "outside", "front"), ("miter", "inside", "back"), ("cope", "inside", "back"),
        ("butt", "inside", "back"), ("butt", "inside", "front"), ("butt", "inside", "none"),
        ("square", "inside", "none"), ("square", "inside", "back"), ("square", "inside", "front"),
        ("square", None, "none"),
    }  # fmt: skip
    assert sum(len(set(made.thickness)) > 1 for made, _ in rooms) > 30


def test_front_and_cut_are_the_lengths_of_the_polygon_that_the_saw_settings_make(rooms):
    for _, boards in rooms:
        for board in boards:
            assert board.face[1] - board.face[0] == pytest.approx(board.piece["front"]["inches"], abs=CLOSED)
            reach = max(*board.back, *board.face) - min(*board.back, *board.face)
            assert reach == pytest.approx(board.piece["cut"]["inches"], abs=CLOSED)


def test_the_right_end_of_every_board_is_where_its_run_ends(rooms):
    # The left end was laid there; the right end follows from the length in the answer.
    for made, boards in rooms:
        walls = walls_of(made)
        for run, board in zip(runs_of(made), boards, strict=True):
            ends = board.wall.length if run.right is None else run.right
            if board.piece["right"]["joint"] == "butt":
                after = (run.wall + 1) % len(walls)
                ends = _where_the_face_line_crosses(board.wall, walls[after], made.thickness[after])
            assert board.back[1] == pytest.approx(ends, abs=CLOSED), made.facts


def test_every_joint_closes(rooms):
    met = {"miter": 0, "cope": 0, "butt": 0}
    for made, boards in rooms:
        corners = at_corners(made, boards)
        for place in range(len(made.corners)):
            left, right = corners[place, 1], corners[(place + 1) % len(made.corners), 0]
            joint = _check_joint(left, right)
            met[joint] += 1
    assert min(met.values()) > 200, met


def _check_joint(left: Board, right: Board) -> str:
    """The joint of two boards in a corner, shown to close."""
    joints = {left.piece["right"]["joint"], right.piece["left"]["joint"]}
    if joints == {"miter"}:
        # The cut faces lie on each other: back on back, at the wall's corner, and face on face.
        for one, other in zip(left.end(1), right.end(0), strict=True):
            assert math.dist(one, other) < CLOSED
        return "miter"
    (joint,) = joints - {"square"}
    fitted, through = ((left, 1), (right, 0)) if left.piece["right"]["joint"] == joint else ((right, 0), (left, 1))
    back, face = fitted[0].end(fitted[1])
    through_back, _ = through[0].end(through[1])
    corner = left.wall.end
    # The board that runs through reaches the corner along its wall; the face of the other ends on its face.
    assert math.dist(through_back, corner) < CLOSED
    assert through[0].face_line.distance(Point(face)) < CLOSED
    if joint == "cope":
        # The long point of the miter it is coped from reaches the corner: the blank has the wood for the whole profile.
        assert math.dist(back, corner) < CLOSED
    else:
        # Not only its face: the whole of a butted end lies along that face. In a corner wider than square the board
        # that runs through ends square, and the last of the butted end passes it: so its face's line is carried on.
        across = through[0].wall.where(back)[1]
        assert across == pytest.approx(through[0].thickness, abs=CLOSED)
    return joint


def test_no_board_goes_through_a_wall(rooms):
    for made, boards in rooms:
        inside = Polygon(made.corners).buffer(CLOSED, join_style="mitre", mitre_limit=10)
        for board in boards:
            assert inside.covers(Polygon([*board.end(0), *reversed(board.end(1))])), (made.facts, board.piece)


def test_no_two_boards_stand_in_one_place(rooms):
    for made, boards in rooms:
        corners = at_corners(made, boards)
        count = len(made.corners)
        shapes = [standing(board, corners, run.wall, count) for run, board in zip(runs_of(made), boards, strict=True)]
        for place, shape in enumerate(shapes):
            assert shape.is_valid
            less = shape.buffer(-CLOSED, join_style="mitre")
            assert not any(less.intersects(other) for other in shapes[place + 1 :]), made.facts


def test_base_dies_into_the_edge_of_every_casing_and_into_none(rooms):
    died = 0
    for made, boards in rooms:
        for run, board in zip(runs_of(made), boards, strict=True):
            for side, edge in ((0, run.left), (1, run.right)):
                if edge is not None:
                    assert board.piece[("left", "right")[side]]["joint"] == "square"
                    assert board.back[side] == pytest.approx(edge, abs=CLOSED)
                    assert board.face[side] == pytest.approx(edge, abs=CLOSED)
                    died += 1
    assert died > 500
