"""Lists of a room as files: what their rows say is what the questions behind them answer."""

import csv
import io
import json
from decimal import Decimal

import pytest
from scantling.engine.questions.cutlist.files import format_table
from scantling.engine.questions.written import LISTS, format_csv, format_json, join_csv, join_json

from tests.covered import FILM, PAINT, PATTERNED, SHEET, article, ask, cover, walls
from tests.cut_lists import issue
from tests.entries import House, four_walls

STOCK = [{"length": "8 ft", "price": "9.40", "limit": None}, {"length": "12 ft", "price": "14.05", "limit": None}]


@pytest.fixture(scope="module")
def house() -> House:
    """A room with boards to buy, paper, film, panels and paint, its list issued."""
    made = four_walls()
    made.say("setting", of=made.house, name="base.stock", value=STOCK)
    cover(made, article(made, "paper", "Fern", PATTERNED), {"cover.walls": walls(made.walls[0])})
    panes = [{"name": "=1+2", "widths": "20", "heights": "30"}]
    cover(made, article(made, "film", "Frosted", FILM), {"cover.panes": panes})
    panels = [{"name": "low", "widths": "20", "heights": "30", "count": "3"}]
    cover(made, article(made, "sheet", "Beaded", SHEET), {"cover.sheets": panels})
    cover(made, article(made, "paint", "Oat", PAINT), {"cover.surfaces": "ceiling"})
    issue(made, made.room)
    return made


def table(house: House, of: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(ask(house, "list_files", of=of)["csv"], newline="")))


def known(house: House, of: str) -> dict[str, object]:
    (room,) = json.loads(ask(house, "list_files", of=of)["json"])
    return room


def test_every_piece_of_a_board_plan_has_its_row_with_its_place_on_its_board(house):
    plans = ask(house, "boards_for_room")["plans"]
    rows = table(house, "boards")
    cut = [(plan["profile_shown"], str(number), piece["letter"], piece["mark"]["shown"], str(piece["mark"]["inches"]))
           for plan in plans for number, board in enumerate(plan["boards"], start=1) for piece in board["pieces"]]
    assert cut
    assert [(row["profile"], row["board"], row["letter"], row["ends at"], row["ends at in inches"])
            for row in rows] == cut
    first = {(row["profile"], row["board"]): Decimal(row["price"]) for row in rows}
    assert sum(first.values()) == sum(Decimal(plan["total"]) for plan in plans)


def test_every_strip_pane_panel_and_coat_has_its_row_and_nothing_in_it_is_a_formula(house):
    rows = table(house, "strips")
    answers = known(house, "strips")["coverings"]
    by_sort = {one["article"]["sort"]: len(one["list"]) for one in answers}
    assert {sort: len({row["number"] for row in rows if row["sort"] == sort}) for sort in by_sort} == by_sort
    assert all(row["length"] and float(row["length in inches"]) for row in rows if row["sort"] != "paint")
    (film,) = [row for row in rows if row["sort"] == "film"]
    assert film["what"] == "'=1+2"


def test_what_is_to_buy_has_its_money_in_exact_decimals(house):
    rows = table(house, "shopping")
    answer = ask(house, "shopping")
    assert [row["to buy"] for row in rows] == [line["words"] for good in answer["goods"] for line in good["lines"]]
    assert sum(Decimal(row["cost"]) for row in rows if row["cost"]) == Decimal(answer["total"])


def test_only_an_issued_piece_has_a_label(house):
    letters = [piece["letter"] for piece in ask(house, "pieces")["pieces"]]
    assert [row["letter"] for row in table(house, "labels")] == letters
    assert table(four_walls(), "labels") == []


@pytest.mark.parametrize("of", LISTS)
def test_a_metric_house_counts_in_millimeters(of):
    house = four_walls()
    house.say("setting", of=house.house, name="lengths", value="millimeters")
    assert "inches" not in ask(house, "list_files", of=of)["csv"]


def test_a_table_of_pieces_counts_in_what_its_rooms_are_shown_in_however_they_say_it(house):
    metric, columns = four_walls(), set()
    metric.say("setting", of=metric.house, name="lengths", value="millimeters")
    rooms = [ask(metric, "pieces"), ask(house, "pieces")]
    for piece in rooms[0]["pieces"]:
        piece["cut"]["shown"] = "in another language"
    for given in ([rooms[0]], rooms, []):
        head, *_ = format_table(("a room", answer) for answer in given).splitlines()
        columns.add((len(given), *{"inches", "millimeters"} & set(head.split(","))))
    assert columns == {(1, "millimeters"), (2, "inches"), (0, "inches")}


def test_the_tables_of_rooms_are_one_and_a_header_that_differs_is_said():
    one, other = format_csv(("room", "inches"), [("Den", 1)]), format_csv(("room", "inches"), [("Attic", 2)])
    metric = format_csv(("room", "inches"), [("Hall", 3)], metric=True)
    joined = join_csv([one, other, metric])
    assert joined == "room,inches\r\nDen,1\r\nAttic,2\r\n\r\nroom,millimeters\r\nHall,3\r\n"
    assert join_csv([]) == ""
    lists = [format_json([{"room": name}]) for name in ("Den", "Attic")]
    assert json.loads(join_json(lists)) == [{"room": "Den"}, {"room": "Attic"}]
