"""Money: planned against spent, and what the next rooms may cost, with a range that the measured rooms fit."""

from datetime import UTC, datetime, timedelta
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.costs.next_rooms import Rough, derive_ranges
from scantling.engine.costs.seen import date_of, derive_seen
from scantling.engine.notebook import fold

from tests.asked import ask, refusal
from tests.entries import House

PLANNED = [{"name": "base", "price": "84.20", "seen": "2026-03-14"}, {"name": "paint", "price": "115.50"}]


def test_what_is_over_is_told_thing_by_thing_and_what_it_comes_to():
    receipts = [{"name": "base", "price": "80.00", "date": "2026-03-20"}, {"name": "base", "price": "9.75"}]
    found = ask("spent", planned=PLANNED, receipts=receipts)
    base, paint = found["lines"]
    assert (base["planned"], base["spent"], base["over"], base["seen"]) == ("84.20", "89.75", "5.55", "2026-03-14")
    assert (paint["spent"], paint["over"]) == ("0.00", None)
    assert (found["planned"], found["spent"], found["expected"]) == ("199.70", "89.75", "205.25")


def test_less_than_planned_is_below_nothing_and_what_nobody_planned_is_a_line_of_its_own():
    found = ask("spent", planned=PLANNED, receipts=[{"name": "base", "price": "80"}, {"name": "blade", "price": "31"}])
    assert [(line["name"], line["over"]) for line in found["lines"]] == [
        ("base", "-4.20"), ("paint", None), ("blade", "31.00"),
    ]  # fmt: skip


@pytest.mark.parametrize("price", ["", "0", "free", True, None], ids=str)
def test_a_price_of_nothing_is_told_and_the_others_are_counted(price):
    found = ask("spent", planned=[*PLANNED, {"name": "caulk", "price": price}])
    assert [(one["name"], one["key"]) for one in found["problems"]] == [("caulk", "no-price")]
    assert found["planned"] == "199.70"


def test_a_date_that_is_none_is_refused():
    assert refusal("spent", planned=[{"name": "base", "price": "1", "seen": "last week"}])[1] == "planned.0.seen"


rows = st.lists(st.tuples(st.sampled_from(["base", "paint", "caulk"]), st.integers(1, 99999)), max_size=8)


@given(rows, rows)
def test_every_cent_is_in_one_line(planned, receipts):
    def money(some):
        return [{"name": name, "price": f"{cents // 100}.{cents % 100:02d}"} for name, cents in some]

    found = ask("spent", planned=money(planned), receipts=money(receipts))
    assert round(float(found["planned"]) * 100) == sum(cents for _, cents in planned)
    assert round(float(found["spent"]) * 100) == sum(cents for _, cents in receipts)


SEWING = {"name": "sewing room", "perimeter": "48 ft", "openings": 3, "cost": "450.00"}
HALL = {"name": "hall", "perimeter": "31 ft", "openings": 1}


def test_one_room_alone_tells_the_next_with_half_either_way():
    (room,) = ask("next_rooms", measured=[SEWING], coming=[HALL])["rooms"]
    # 90 ft of trim cost 450: 5 a foot; 31 and a door's 14 are 45 ft: 225, and half of it either way.
    assert (room["low"], room["high"]) == ("112.50", "337.50")
    assert room["working"] == "31 ft round + 1 × 14 ft an opening = 45 ft"


def test_rooms_that_agree_narrow_the_range_and_say_by_how_much():
    alike = {**SEWING, "name": "bedroom", "cost": "468.00"}
    found = ask("next_rooms", measured=[SEWING, alike], coming=[HALL])
    assert (found["low"], found["high"]) == ("216.00", "243.36")
    assert "to within 4 %" in found["said"]


def test_a_room_without_a_cost_is_told_and_with_none_at_all_nothing_is():
    coming = [{"name": "hall", "perimeter": "31 ft"}]
    found = ask("next_rooms", measured=[SEWING, {**SEWING, "name": "attic", "cost": "0"}], coming=coming)
    assert [one["name"] for one in found["problems"]] == ["attic"]
    assert refusal("next_rooms", measured=[{**SEWING, "cost": ""}], coming=coming)[0] == "no-rooms"


sizes = st.tuples(st.integers(10, 90), st.integers(0, 6), st.integers(1000, 200_000))


@given(st.lists(sizes, min_size=1, max_size=5))
def test_every_measured_room_lies_in_the_range_that_is_told_for_its_size(measured):
    rooms = [Rough(str(n), Fraction(feet), doors, cents) for n, (feet, doors, cents) in enumerate(measured)]
    for room, told in zip(rooms, derive_ranges(rooms, rooms), strict=True):
        assert told.low <= room.cents <= told.high


@given(st.integers(0, 253402300799999))
def test_the_day_of_a_stamp_is_the_day_that_the_calendar_has(ms):
    day = datetime(1970, 1, 1, tzinfo=UTC) + timedelta(milliseconds=ms)
    assert date_of(f"{ms:012x}-0000-{'a' * 16}") == day.strftime("%Y-%m-%d").zfill(10)


def test_a_price_is_seen_on_the_day_since_which_it_stands():
    house = House()
    day = timedelta(days=1) // timedelta(milliseconds=1)
    rows = [{"length": "8 ft", "price": "10.40"}, {"length": "12 ft", "price": "15.60"}]
    for days, price in ((0, "15.60"), (2, "15.60"), (4, "16.10")):
        house.clock = 0x019CEC1E0840 + days * day
        house.say("setting", of=house.house, name="base.stock", value=[rows[0], {**rows[1], "price": price}])
    seen = derive_seen(fold(house.entries).about("setting", house.house))
    assert seen == {("8 ft", "10.40"): "2026-03-14", ("12 ft", "16.10"): "2026-03-18"}
