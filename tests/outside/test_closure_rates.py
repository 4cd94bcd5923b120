"""How often a room is doubted: rooms made at random, read as an honest person reads them, and read three inches wrong.

No published figures: the rates are counted over readings drawn at random, with a gauge that is out by 0.1° and a tape
that is out by 1/32 in, each one time in three (standard deviations), shown to a tenth of a degree and a sixteenth.
"""

import copy
from random import Random

import pytest

from tests.random_rooms import make_room
from tests.rooms import ask

ROOMS = 300
WALLS = 8


def read_honestly(facts, rng):
    """What tape and gauge show of a room."""
    read = copy.deepcopy(facts)
    for wall in read["walls"]:
        sixteenths = round((float(wall["length"]) + rng.gauss(0, 1 / 32)) * 16)
        wall["length"] = f"{sixteenths / 16:.4f}"
        wall["corner"]["corner"] = f"{float(wall['corner']['corner']) + rng.gauss(0, 0.1):.1f}"
    return read


def read_wrong(facts, rng):
    wall = rng.choice(facts["walls"])
    wall["length"] = f"{float(wall['length']) + rng.choice((-3, 3)):.4f}"
    return facts


@pytest.fixture(scope="module")
def rooms():
    return [make_room(seed, WALLS).facts for seed in range(ROOMS)]


def doubted(rooms, read):
    rng = Random(1936)
    return sum(not ask("closure", read(facts, rng))["closes"] for facts in rooms)


def test_of_a_hundred_honest_rooms_no_more_than_two_are_doubted(rooms):
    assert doubted(rooms, read_honestly) <= ROOMS * 2 // 100


def test_of_a_hundred_rooms_with_a_wall_three_inches_out_all_but_three_are_doubted(rooms):
    def read(facts, rng):
        return read_wrong(read_honestly(facts, rng), rng)

    assert doubted(rooms, read) >= ROOMS * 97 // 100
