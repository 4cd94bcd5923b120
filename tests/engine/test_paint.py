"""Paint: how much of each product, the cheapest cans that hold it, and areas from a surveyed room."""

import itertools
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.coverings.paint.cans import Can, choose_cans, derive_paint

from tests.asked import ask
from tests.rooms import oblong, thing

GALLON_AND_QUART = [{"size": "1 gal", "price": "38.50"}, {"size": "1 qt", "price": "14.20"}]


def painted(area, **product):
    (found,) = ask("paint", surfaces=[{"area": area}], products=[{"cans": GALLON_AND_QUART, **product}])["products"]
    return found


def test_two_coats_of_a_room_are_cans_and_what_is_left():
    found = painted("504 sq ft", coats=2, spread=350)
    assert found["need"]["gallons"] == 2.88
    assert [(can["size"], can["count"]) for can in found["cans"]] == [("1.00 gal", 3)]
    assert (found["cost"], found["left"]["gallons"]) == ("115.50", 0.12)
    assert found["working"][0] == "504 sq ft × 2 coats ÷ 350 sq ft a gallon = 2.88 gal"


def test_quarts_are_bought_only_while_they_are_cheaper_than_a_gallon():
    assert [can["count"] for can in painted("350", coats=1, spread=700)["cans"]] == [2]  # 28.40, and a gallon is 38.50
    (gallon,) = painted("350", coats=1, spread=460)["cans"]  # four quarts would be 42.60 or more
    assert (gallon["can"], gallon["count"]) == (0, 1)


def test_what_is_kept_for_touching_up_is_bought_and_counted_as_left():
    plain, kept = painted("400", coats=1, spread=400), painted("400", coats=1, spread=400, keep="1 qt")
    assert (plain["cost"], plain["left"]["gallons"]) == ("38.50", 0)
    assert (kept["cost"], kept["left"]["gallons"]) == ("52.70", 0.25)
    assert plain["advice"] != [] == kept["advice"]


def test_metric_spread_and_cans_come_to_the_same():
    found = painted("40 m2", coats=1, spread="10 m2/l", cans=[{"size": "2.5 l", "price": "30.00"}])
    assert [can["count"] for can in found["cans"]] == [2]
    assert found["left"]["gallons"] == pytest.approx(1 / 3.785411784, abs=1e-6)


def test_paint_lost_in_tray_and_roller_is_mixed_too():
    # Source: practical spread = theoretical × (1 − loss), a glossary of coatings.
    assert painted("350", coats=1, spread=350, loss=20)["need"]["gallons"] == 1.25


def test_each_product_goes_on_its_own_surfaces():
    surfaces = [{"name": "walls", "area": 384}, {"name": "ceiling", "area": 120}]
    one = {"coats": 1, "spread": 100, "cans": GALLON_AND_QUART}
    products = [{"on": [on], **one} for on in ("walls", "ceiling", "floor")]
    found = ask("paint", surfaces=surfaces, products=products)
    assert [one["need"]["gallons"] for one in found["products"]] == [3.84, 1.2, 0]
    assert [(one["product"], one["key"]) for one in found["problems"]] == [(2, "no-surface"), (2, "no-area")]


@pytest.mark.parametrize(
    ("cans", "keys"),
    [
        ([], ["no-cans"]),
        ([{"size": "1", "price": ""}], ["no-price", "no-cans"]),
        ([{"size": "1", "price": "0"}], ["no-price", "no-cans"]),
        ([{"size": "1", "price": "0"}, *GALLON_AND_QUART], ["no-price"]),
    ],
    ids=["no can", "no price", "a price of nothing", "one of three"],
)
def test_what_has_no_can_or_no_price_is_told_and_the_other_products_are_answered(cans, keys):
    good = {"coats": 1, "spread": 400, "cans": GALLON_AND_QUART}
    found = ask("paint", surfaces=[{"area": 400}], products=[{**good, "cans": cans}, good])
    assert [one["key"] for one in found["problems"]] == keys
    assert found["products"][1]["cost"] == "38.50"
    assert (found["products"][0]["cost"] is None) == ("no-cans" in keys)


def test_a_slip_of_the_pen_is_not_a_thousand_cans():
    found = ask("paint", surfaces=[{"area": "9999999"}], products=[{"spread": 1, "cans": GALLON_AND_QUART}])
    assert [one["key"] for one in found["problems"]] == ["too-much"]


def test_a_can_too_small_for_the_job_is_told_and_the_others_are_chosen_from():
    cans = [{"size": "1 ml", "price": "0.01"}, *GALLON_AND_QUART]
    (found,) = (answer := ask("paint", surfaces=[{"area": 4000}], products=[{"spread": 400, "cans": cans}]))["products"]
    assert [(one["key"], one["product"]) for one in answer["problems"]] == [("too-small", 0)]
    assert [(can["can"], can["count"]) for can in found["cans"]] == [(1, 20)]


def test_cans_that_all_cost_alike_by_the_quart_are_as_few_as_can_be():
    # With a price that follows the size, every way to fill the need costs the same: there are more than could be tried.
    cans = [Can(size - 1, Fraction(size), 100 * size) for size in range(1, 21)]
    choice = choose_cans(cans, Fraction(487))
    assert (choice.cents, sum(choice.counts), choice.holds) == (48_700, 25, 487)


can = st.tuples(st.integers(1, 12), st.integers(1, 400))
sizes = st.lists(can, min_size=1, max_size=3, unique_by=lambda one: one[0])


@given(sizes, st.integers(1, 40))
def test_no_other_choice_of_cans_that_hold_enough_is_cheaper(sizes, need):
    # Source: every choice tried.
    cans = [Can(place, Fraction(size), cents) for place, (size, cents) in enumerate(sizes)]
    choice = choose_cans(cans, Fraction(need))
    every = itertools.product(*(range(-(-need // size) + 1) for size, _ in sizes))
    enough = [counts for counts in every if sum(n * size for n, (size, _) in zip(counts, sizes, strict=True)) >= need]
    cheapest = min(sum(n * cents for n, (_, cents) in zip(counts, sizes, strict=True)) for counts in enough)
    assert choice.cents == cheapest
    assert choice.holds == sum(n * size for n, (size, _) in zip(choice.counts, sizes, strict=True)) >= need


@given(st.integers(1, 2000), st.integers(1, 5), st.integers(50, 500), st.integers(0, 40))
def test_more_coats_and_more_loss_never_need_less_paint(area, coats, spread, loss):
    one = derive_paint(Fraction(area), coats, Fraction(spread), Fraction(loss))
    assert one <= derive_paint(Fraction(area), coats + 1, Fraction(spread), Fraction(loss))
    assert one <= derive_paint(Fraction(area), coats, Fraction(spread), Fraction(loss + 1))


def areas(facts, **more):
    found = ask("paint_areas", room=facts, **more)
    return {one["name"]: one for one in found["surfaces"]}


def test_walls_are_counted_without_their_openings():
    # 36 ft round and 8 ft high, less a door of 30 by 80: 288 − 16 2/3.
    found = areas(oblong(thing("door", "20", "30", left="80", right="80")), height="96")
    assert found["walls"]["square_feet"] == pytest.approx(288 - 30 * 80 / 144, abs=1e-6)
    assert found["ceiling"]["square_feet"] == pytest.approx(80, abs=1e-4)


def test_an_opening_that_is_not_read_is_not_taken_off_and_told():
    found = areas(oblong(thing("window", "20", "30")), height="96")["walls"]
    assert found["square_feet"] == 288
    assert found["missing"] == ["window: not taken off, for its size is not read"]


def test_a_wall_without_height_is_told_and_the_others_are_counted():
    facts = oblong()
    for wall in facts["walls"][1:]:
        wall["height"] = "96"
    found = areas(facts)["walls"]
    assert found["square_feet"] == pytest.approx((96 + 120 + 96) * 96 / 144)
    assert found["missing"] == ["wall 1: its height is not read"]


def test_walls_without_height_are_told_in_one_sentence():
    (told,) = areas(oblong())["walls"]["missing"]
    assert all(f"wall {number}" in told for number in (1, 2, 3, 4))
    assert told.endswith(": no height is read; write floor to ceiling once for all of them, or read each")


def test_trim_is_counted_by_its_developed_width():
    # Base of 5 1/2 by 9/16: face and edge are 6 1/16, and an eighth more for its curves.
    found = areas(oblong(base__inside="butt"), growth=0)["trim"]
    more = areas(oblong(base__inside="butt"))["trim"]
    assert more["square_feet"] == pytest.approx(found["square_feet"] * 1.125, rel=1e-5)
    assert "developed" in more["working"][0]


def test_a_base_cap_is_painted_too():
    # 432 in round the room by a face of 1 1/8 and an edge of 1/2, and what the copes take up.
    facts = oblong(base__wanted="no", cap__wanted="yes", cap__inside="miter")
    found = areas(facts, growth=0)["trim"]
    assert found["missing"] == []
    assert found["square_feet"] == pytest.approx(432 * 1.625 / 144, rel=1e-3)


@pytest.mark.parametrize(("sash", "counted"), [("4", True), (None, False)])
def test_a_stool_is_painted_as_wide_as_it_is_ripped_once_its_sash_is_read(sash, counted):
    read = {} if sash is None else {"sash": sash}
    window = thing("window", "40", "30", left="48", right="48", sill="30", **read)
    found = areas(oblong(window, base__wanted="no", casing__wanted="yes", stool__thickness="1"), growth=0)["trim"]
    # 4 less 1/16 of play, the casing's 11/16 and a horn's 1/2 in front: 5 1/8, and its edge of 1.
    assert any(line.startswith("stool:") and "× 6 1/8 developed" in line for line in found["working"]) is counted
    assert (found["missing"] == []) is counted


def test_areas_go_on_to_paint_as_they_are_written():
    surfaces = [{"name": one["name"], "area": one["area"]} for one in areas(oblong(), height="96").values()]
    product = {"on": ["walls"], "spread": 288, "coats": 1, "cans": GALLON_AND_QUART}
    found = ask("paint", surfaces=surfaces, products=[product])
    assert found["products"][0]["need"]["gallons"] == 1
