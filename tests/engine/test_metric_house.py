"""A house that shows its lengths in millimeters, walked whole: what is left in inches, feet, gallons or fractions."""

import csv
import html
import io
import json
import re
from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from typing import Any

import pint
import pytest
from scantling.engine.desk import QUESTIONS, Desk, answer
from scantling.engine.questions.written import LISTS
from scantling.engine.shown.shown_in import MILLIMETERS, showing
from scantling.engine.tape.measures import (
    FOOT,
    GALLON,
    LITER,
    METER,
    MILLILITER,
    SQUARE_FOOT,
    SQUARE_METER,
    format_number,
    format_run,
)

from tests.entries import Device
from tests.parity_questions import DEMO, make_questions

REGISTRY = pint.UnitRegistry(non_int_type=Fraction)
ENTRIES = json.loads(DEMO.read_text(encoding="utf-8"))["entries"]
HOUSE = next(one["body"]["house"] for one in ENTRIES if one["kind"] == "house")
#: So many questions of one name: more say nothing new, and take long.
OF_ONE_KIND = 14
#: An inch mark, a foot mark, a unit that is not metric, a fraction.
CUSTOMARY = re.compile(
    r"""\d\s*["″”]|\d'(?!\d)|\d[\d ./]*\ ?(?:ins?|ft|yd|gal|qt|pt|oz|lb)\b|\binch|\bfeet\b|\bfoot\b|\bft\b|\bsq\b"""
    r"""|square\ f|gallon|quart\b|\bpint|ounce|\d/\d|[¼½¾⅛⅜⅝⅞]|cu(?:bic)?\ in""",
    re.VERBOSE | re.IGNORECASE,
)
#: What is no unit where it stands, or no word of ours: the lower end of a thing, a part of a sentence, what was typed,
#: what is printed on a roll, and the paneling that the demo's people named.
NO_UNIT = re.compile(
    r"\bfoot\b|\d in (?:all|a box|a quarter)\b|“[^”]*”|[0-9a-f-]{36}|wall w9|such as 64/32|Beadboard 1/4", re.IGNORECASE
)
#: Where something customary may stand, and why. A path is searched for, in the order of the answer's names.
STAYS: dict[str, str] = {
    r"\.exact$|\.takes$|\.key$|\.body\b|\.accept\b|remember|\.by$|\.at$|settings\.|\.area$|\.(?:profile|of)$|profiles\[\]$":
        "what goes into an entry or a question, or what a thing is found by: it is the same in every house",
    r"\.text$|\.readings\[\]|\.typed|as.cut|readings\[\]\.words|(?:places|said)\[\]\.shown$":
        "what a person read or wrote, as it was typed",
    r"\.article\.name|\.(?:name|called)$|goods\[\]\.name|rows\[\]\.name|name_shown|unpriced\[\]$|tubes\[\]\.name":
        "a name that a person gave a thing: Beadboard 1/4; and the names that boards are bought and found by",
    r"found_by": "a search finds a profile by either name",
    r"read\.answer\.feet$": "the other way to say a reading, for who asks for it",
    r"\.doubt$": "what was read before, as it was typed",
    r"\.written$|taken\[\]$|working\[\]\.shown$|sums\[\]\.(?:reading|again)$":
        "a sum that was typed in inches or with no unit, as it is kept: what it comes to changes with no setting",
    r"defaults\.lengths$|hair\.error\.message$": "one of the choices by its name",
}
#: The same by what stands there.
SO_SAID: dict[str, str] = {
    r"\d+ of \d+ (?:gal|qt)$": "a can by its label, as it was typed: so it stands on the shelf",
    r"^(?:wanted: |to buy: )?\d+ ft \(\d+\.\d\d m\)$":
        "film that is priced by the foot is cut off by the foot; 11.20 / m is by the meter",
}


def strings_of(told: Any, path: str) -> Iterator[tuple[str, str]]:
    """Every text of an answer with where it stands, those written in its drawings too."""
    if isinstance(told, dict):
        for name, below in told.items():
            yield from strings_of(json.loads(below) if name == "json" else below, f"{path}.{name}")
    elif isinstance(told, list):
        for below in told:
            yield from strings_of(below, f"{path}[]")
    elif isinstance(told, str) and told.startswith("<svg"):
        for written, labelled in re.findall(r">([^<>]+)<|aria-label=\"([^\"]+)\"", told):
            yield f"{path} drawn", html.unescape(written or labelled)
    elif isinstance(told, str) and path.endswith(".csv"):
        for row in csv.DictReader(io.StringIO(told)):
            yield from ((f"{path} {column}", f"{column}: {cell}") for column, cell in row.items())
    elif isinstance(told, str):
        yield path, told


def asked_of_the_house() -> Iterator[dict[str, Any]]:
    """Every question of the desk that takes no more than a room, a house or a covering, of all that the demo has."""
    ids = {kind: [one["body"][kind] for one in ENTRIES if one["kind"] == kind] for kind in ("room", "covering", "wall")}
    room_of = {one["body"]["covering"]: one["body"]["room"] for one in ENTRIES if one["kind"] == "covering"}
    of_room = (
        "survey", "needs", "closure", "plan", "figures", "pieces", "piece_rows", "free", "battens", "fit", "files",
        "boards_for_room", "saw", "coverings", "supplies", "shopping", "work", "spent", "paint_areas", "tape",
    )  # fmt: skip
    yield {"ask": "notebook"}
    yield from ({"ask": name, "room": room} for room in ids["room"] for name in of_room)
    yield from ({"ask": "list_files", "room": room, "of": of} for room in ids["room"] for of in LISTS)
    yield from ({"ask": "elevation", "room": room, "wall": str(wall)} for room in ids["room"] for wall in range(1, 9))
    yield from ({"ask": "covering", "room": room_of[one], "covering": one} for one in ids["covering"])
    of_house = ("spent", "stock", "next_rooms", "cautions", "compare", "boards_for_house")
    yield from ({"ask": name, "house": HOUSE} for name in of_house)


@pytest.fixture(scope="module")
def texts() -> list[tuple[str, str]]:
    """What the demo house answers once it is set to millimeters; and other rooms, asked for millimeters."""
    device = Device()
    device.say("setting", of=HOUSE, name="lengths", value=MILLIMETERS)
    house = Desk([*ENTRIES, *device.entries])
    found = [text for question in asked_of_the_house() for text in strings_of(house.answer(question), question["ask"])]
    others, asked_yet = Desk(), Counter[str]()
    for question in make_questions():
        if not isinstance(question, dict) or question.get("ask") not in QUESTIONS:
            continue
        asked_yet[question["ask"]] += 1
        if question["ask"] == "take":
            others.answer(question)
        elif asked_yet[question["ask"]] <= OF_ONE_KIND:
            found += strings_of(others.answer({**question, "shown_in": MILLIMETERS}), question["ask"])
    return found


def test_nothing_is_left_in_inches_feet_gallons_or_fractions(texts):
    left = {
        (path, found[0], text)
        for path, text in texts
        if (found := CUSTOMARY.search(NO_UNIT.sub("", text)))
        and not any(re.search(stays, path) for stays in STAYS)
        and not any(re.search(said, text) for said in SO_SAID)
    }
    assert not left, "\n".join(f"{path}: {found}: {text}" for path, found, text in sorted(left))


def test_most_of_what_is_asked_was_answered_and_is_in_millimeters_meters_and_liters(texts):
    said = " ".join(text for _, text in texts)
    for unit in (" mm", " m²", " m² a liter", " L", " ml", " mm²", " m round"):
        assert unit in said, unit
    assert sum(" mm" in text for _, text in texts) > 1000


@pytest.mark.parametrize(
    ("ours", "unit", "into"),
    [
        (FOOT, "foot", "inch"), (METER, "meter", "inch"), (SQUARE_FOOT, "foot ** 2", "inch ** 2"),
        (SQUARE_METER, "meter ** 2", "inch ** 2"), (GALLON, "gallon", "inch ** 3"), (LITER, "liter", "inch ** 3"),
        (MILLILITER, "milliliter", "inch ** 3"),
    ],
    ids=lambda one: one if isinstance(one, str) else "",
)  # fmt: skip
def test_every_unit_that_is_shown_is_what_pint_has_it_to_be(ours, unit, into):
    assert REGISTRY.Quantity(Fraction(1), unit).to(into).magnitude == ours


def test_a_rounded_figure_of_the_working_says_about():
    with showing(MILLIMETERS):
        assert (format_run(25 * FOOT), format_run(46 * FOOT)) == ("7.62 m", "about 14.02 m")
        assert (format_number(Fraction(-5, 4)), format_number(Fraction(2, 3))) == ("-1.25", "about 0.6667")


def told(question: dict[str, Any]) -> Any:
    answered = answer(question)
    return answered.get("answer") or answered["error"]["key"]


SUMS = [
    pytest.param("1607 - 2*89", "1607 mm - 2*89 mm", "1429 mm", id="a count and two lengths"),
    pytest.param("half of 1607", "half of 1607 mm", "803.5 mm", id="a part of a length"),
    pytest.param("2*89 - 1607 + 3 of 5", "2*89 mm - 1607 mm + 3 of 5 mm", "-1414 mm", id="counts in front"),
    pytest.param("1607 / 3", "1607 mm / 3", "535.5 mm", id="divided by a count"),
    pytest.param("2 × (30+5) + 1 ft", "2 × (30 mm+5 mm) + 1 ft", "375 mm", id="a unit of another sort stays"),
    pytest.param("sixty three minus two", "sixty three mm minus two mm", "61 mm", id="said"),
    pytest.param("1.607 m - 7", "1.607 m - 7 mm", "1600 mm", id="meters"),
    pytest.param("63 1/4 - 2", "63 1/4 - 2", "1556 mm", id="a fraction is read off a tape in inches"),
]


@pytest.mark.parametrize(("text", "written", "shown"), SUMS)
def test_a_sum_with_no_unit_is_in_millimeters_where_it_is_asked_so_and_is_kept_with_them(text, written, shown):
    asked = {"ask": "sum", "text": text, "bare": MILLIMETERS, "shown_in": MILLIMETERS}
    worked = told(asked)
    assert (worked["written"], worked["length"]["shown"]) == (written, shown)
    again = told({"ask": "sum", "text": written})
    assert (again["length"]["exact"], again["written"]) == (worked["length"]["exact"], written)


def test_a_free_piece_is_kept_with_its_millimeters_and_the_names_of_its_figures():
    device = Device()
    device.say("setting", of=HOUSE, name="lengths", value=MILLIMETERS)
    room = next(one["body"]["room"] for one in ENTRIES if one["kind"] == "room")
    desk = Desk([*ENTRIES, *device.entries])
    asked = {"ask": "free", "room": room, "text": "wall 1 - 2 × 100", "bare": MILLIMETERS}
    trial = desk.answer(asked)["answer"]["trial"]
    assert trial["written"] == "wall 1 - 2 × 100 mm"
    again = desk.answer({**asked, "text": trial["written"], "bare": "inches"})["answer"]["trial"]
    assert again["length"] == trial["length"]
    assert desk.answer({**asked, "text": "wall 99 - 3"})["answer"]["trial"]["message"]


ACCEPTED = [
    pytest.param({"ask": "behind", "what": "studs", "text": "370 mm, every 400 mm"}, id="studs"),
    pytest.param({"ask": "behind", "what": "studs", "text": "37 cm, 0.77 m"}, id="studs in centimeters"),
    pytest.param({"ask": "behind", "what": "plumb", "text": "6 mm foot"}, id="a wall that leans"),
    pytest.param({"ask": "behind", "what": "plumb", "text": "0.6 cm top"}, id="a wall that leans away"),
    pytest.param({"ask": "behind", "what": "bow", "text": "6 mm hollow at 1200 mm"}, id="a bow"),
    pytest.param({"ask": "behind", "what": "bow", "text": "6 mm hump at 1.2 m"}, id="a hump"),
    pytest.param({"ask": "behind", "what": "fall", "text": "12 mm right"}, id="a floor that falls"),
    pytest.param({"ask": "corner", "turn": "inside", "sides": ["600 mm", "60 cm", "0.85 m"], "thickness": "18 mm"},
                 id="three sides"),
    pytest.param({"ask": "paint", "surfaces": [{"area": "35.7 m2"}, {"area": "2 sq m"}],
                  "products": [{"spread": "10 m2/l", "keep": "500 ml", "cans": [{"size": "2.5 L", "price": "30"}]}]},
                 id="areas, cans and a spread"),
    pytest.param({"ask": "strips", "height": "2.4 m", "widths": ["3 m", "95 cm"], "roll": {
        "width": "53 cm", "length": "10.05 m", "repeat": "640 mm", "match": "straight"}}, id="paper"),
    pytest.param({"ask": "sheets", "panels": [{"widths": "60 cm", "heights": "813 mm"}],
                  "sheet": {"width": "1.22 m", "length": "2.44 m", "price": "30"}}, id="sheets"),
    pytest.param({"ask": "supplies", "joints": [{"length": "30 m", "size": "3 mm", "tube": "300 ml"}],
                  "sundries": [{"name": "drop cloth", "amount": "160", "covers": "10 m2"},
                               {"name": "masking tape", "amount": "160", "covers": "50 m"}]}, id="supplies"),
    pytest.param({"ask": "boards", "pieces": ["1200 mm", "1.2 m"], "stock": [{"length": "2.4 m", "price": "9"}],
                  "kerf": "3 mm", "end_trim": "0", "hold": "0"}, id="boards"),
    pytest.param({"ask": "spacing", "span": "3.5 m", "width": "60 mm", "count": 5}, id="spacing"),
    pytest.param({"ask": "movement", "species": "red oak", "cut": "flat", "width": "140 mm", "from": "6", "to": "9"},
                 id="movement"),
    pytest.param({"ask": "next_rooms", "measured": [{"name": "a", "perimeter": "11 m", "openings": 1, "cost": "500"}],
                  "coming": [{"name": "b", "perimeter": "14 m", "openings": 2, "height": "2.4 m"}]}, id="rough rooms"),
]  # fmt: skip


@pytest.mark.parametrize("question", ACCEPTED)
def test_metric_is_taken_wherever_a_measure_is_typed(question):
    assert isinstance(told(question), dict), told(question)


def test_how_far_a_package_goes_may_be_said_with_its_unit_and_only_with_one_that_it_is_counted_by():
    def packages(name: str, covers: str, **more: Any) -> Any:
        asked = {"ask": "supplies", "sundries": [{"name": name, "amount": "160", "covers": covers}], **more}
        return told(asked)

    # 160 sq ft are 14.86 m², and two cloths of 10 m²; 160 ft of tape are 48.77 m
    assert packages("drop cloth", "10 m2", shown_in=MILLIMETERS)["packages"][0]["working"] == [
        "about 14.86 m² ÷ 10 m² a drop cloth (as you set it) = 2"
    ]
    assert packages("masking tape", "50 m", shown_in=MILLIMETERS)["packages"][0]["working"] == [
        "about 48.77 m ÷ 50 m a 55-m roll (as you set it) = 1"
    ]
    for name, covers in (("drop cloth", "50 m"), ("masking tape", "10 m2"), ("filler", "3 m"), ("drop cloth", "0 m2")):
        assert packages(name, covers) in ("bad-field", "unit-missing"), (name, covers)


def test_film_may_be_priced_by_the_meter_and_is_then_counted_in_them():
    film = next(one["body"]["article"] for one in ENTRIES if one["kind"] == "article" and one["body"]["sort"] == "film")
    room, covering = next((one["body"]["room"], one["body"]["covering"]) for one in ENTRIES
                          if one["kind"] == "covering" and one["body"]["article"] == film)  # fmt: skip
    device = Device()
    was = [one["id"] for one in ENTRIES if one["body"].get("name") == "film.price"]
    device.say("setting", was, of=film, name="film.price", value="11.20 / m")
    asked = {"ask": "covering", "room": room, "covering": covering}
    answered = Desk([*ENTRIES, *device.entries]).answer(asked)["answer"]
    assert (answered["amount"], answered["cost"], answered["article"]["setting_errors"]) == ("1 m", "11.20", {})


def test_what_is_usual_is_shown_to_a_house_in_its_own_measure():
    device = Device()
    device.say("setting", of=HOUSE, name="lengths", value=MILLIMETERS)
    (house,) = Desk([*ENTRIES, *device.entries]).answer({"ask": "notebook"})["answer"]["houses"]
    usual = house["defaults"]
    assert (usual["reveal"], usual["base.height"], usual["head"]) == ("4.8 mm", "139.7 mm", "mitered")
    assert (usual["caulk.tube"], usual["cloth.covers"], usual["filler.covers"]) == ("298.7 ml", "about 10.03 m²", "400")
    (inches,) = Desk(ENTRIES).answer({"ask": "notebook"})["answer"]["houses"]
    assert (inches["defaults"]["reveal"], inches["defaults"]["caulk.tube"]) == ("3/16", "10.1 fl oz")


def test_a_wall_said_in_one_breath_is_in_millimeters_where_that_is_asked():
    room = next(one["body"]["room"] for one in ENTRIES if one["kind"] == "room")
    wall = next(one["body"]["wall"] for one in ENTRIES if one["kind"] == "wall")
    asked = {"ask": "breath", "room": room, "wall": wall, "text": "wall 1, 3353, corner 90, door at 760, 8 ft high"}
    desk = Desk(ENTRIES)
    heard = {part["heard"]: part["reading"] for part in desk.answer({**asked, "bare": MILLIMETERS})["answer"]["parts"]}
    assert list(heard.values())[:3] == ["3353 mm", "90", "760 mm"]
    assert [part["reading"] for part in desk.answer(asked)["answer"]["parts"]][:3] == ["3353", "90", "760"]
    assert "8 ft" in " ".join(heard.values())
