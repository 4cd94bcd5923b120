"""Caulk, adhesive and nails against a table worked apart and against published figures."""

from fractions import Fraction

import pytest
from scantling.engine.supplies.beads import derive_bead_length, derive_bead_section
from scantling.engine.supplies.fasteners import judge_nail
from scantling.engine.tape.lengths import parse_length

from tests.asked import ask

# Source: geometry: 231/128 cubic inches in a US fluid ounce (NIST Handbook 44, appendix C) over the bead's section;
# feet from a tube of 10.1 fl oz by size: round by its diameter, fillet by its leg, square by its side.
CAULK = [
    ("1/8", 123.77, 194.42, 97.21),
    ("3/16", 55.01, 86.41, 43.21),
    ("1/4", 30.94, 48.61, 24.30),
    ("3/8", 13.75, 21.60, 10.80),
]
FLUID_OUNCE = Fraction(231, 128)


@pytest.mark.parametrize(("size", "round_", "fillet", "square"), CAULK)
def test_a_tube_of_caulk_goes_as_far_as_the_table_says(size, round_, fillet, square):
    for shape, feet in (("round", round_), ("fillet", fillet), ("square", square)):
        found = ask("supplies", joints=[{"length": "10 ft", "shape": shape, "size": size}])["tubes"][0]["feet_a_tube"]
        assert found == pytest.approx(feet, abs=0.011)


@pytest.mark.parametrize(
    ("ounces", "size", "feet"), [("10", "1/4", 30.6), ("10", "3/8", 13.6), ("28", "1/4", 85.8), ("28", "3/8", 38.1)]
)
def test_a_tube_of_adhesive_goes_as_far_as_its_volume(ounces, size, feet):
    # Source: the same geometry, for a round bead.
    reach = derive_bead_length(Fraction(ounces) * FLUID_OUNCE, derive_bead_section("round", parse_length(size)))
    assert float(reach.inches) / 12 == pytest.approx(feet, abs=0.06)


def test_a_metric_tube_goes_as_far():
    # Source: the same geometry: 300 ml over a round bead of 5 mm is 15.3 m, over a fillet of 5 mm 24 m.
    for shape, meters in (("round", 15.3), ("fillet", 24.0)):
        joint = {"length": "10 m", "shape": shape, "size": "5 mm", "tube": "300 ml"}
        feet = ask("supplies", joints=[joint])["tubes"][0]["feet_a_tube"]
        assert feet * 0.3048 == pytest.approx(meters, abs=0.05)


def test_a_nail_for_base_over_board_is_two_inches():
    # Source: a housing columnist and a second page: trim + wallboard + 3/4 into framing: 9/16 + 1/2 + 3/4 = 1 13/16.
    (found,) = ask("supplies", fasteners=[{"through": ["9/16", "1/2"], "along": "82"}])["boxes"]
    assert (found["length"]["shown"], found["bite"]["shown"]) == ('2"', '15/16"')
    # Source: NAVEDTRA 14044: casing nails in pairs about 16 in apart: six pairs in a leg of 82.
    assert found["count"] == 12


@pytest.mark.parametrize(("length", "bite", "deep"), [("2", "15/16", False), ("2 1/2", "1 7/16", True)])
def test_a_nail_that_goes_deeper_than_a_cable_may_be_off_is_told(length, bite, deep):
    # Source: NEC 300.4(A)(1): a bored hole's edge is 1 1/4 in or more from the stud's face.
    nail = judge_nail([parse_length("9/16"), parse_length("1/2")], parse_length(length))
    assert (nail.bite, nail.deep) == (parse_length(bite), deep)
