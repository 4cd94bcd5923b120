"""Questions for comparing two machines: some of every kind, easy and nasty, the same list each time it is made.

A browser and a laptop are asked the same JSON and must answer with the same bytes. The list begins by taking the demo
house, so that questions about its rooms have a notebook to read. Boards are small cases: the search is long elsewhere.
"""

import json
from itertools import product
from pathlib import Path
from random import Random
from typing import Any

from scantling.engine.desk import Desk, answer
from scantling.engine.questions.written import LISTS

from tests.cut_lists import issue, listed, mark
from tests.entries import four_walls
from tests.random_rooms import make_room, odd_room
from tests.rooms import Facts, oblong, room, thing, wall

DEMO = Path(__file__).parents[1] / "demo" / "house.json"
NEAREST = ("1/16", "1/32", "1/8", "1", "1/64")
STOCK = (
    {"length": "8 ft", "price": "10.40"},
    {"length": "12 ft", "price": "15.60"},
    {"length": "38 1/2", "price": "0", "limit": 1},
)
READS = (
    "63 1/4", "63-1/4", "63.25", "5' 3 1/4\"", "5ft 3 1/4 in", "5-3-1/4", "5′ 3¼″", "1607 mm", "1.607 m", "160.7 cm",
    "2 yd", "sixty three and a quarter", "5 foot 3 and 1 eighth", "63 1/4 strong", "63 1/4 shy", "a hair", "0", "1/3",
    "3 1/7", "63 1/", "63 1/0", "", " ", "-4", "63 1/4 1/8", "fish", "9" * 30, "𝟞𝟛 ¼", "٦٣", "63\u00a01/4", "\ud800",
    "63\n1/4", "dix pouces", "1e3", "0x10", "63,25", "11' 12\"", "100000", "1/64", "1/128", "12 ft 11 63/64",
)  # fmt: skip
SUMS = (
    "63 1/4 - 2*(3 1/2 + 3/16)", "half of 63 1/4", "3 of 24", "92 5/8 / 3", "7' 8 5/16\" + 3' 4 15/16\"",
    "5' 3 1/8 × 4", "(1 + 2) * 3", "10 ft / 16", "12 * 10 ft * 2", "8 ft * 12 ft", "1607 mm + 1/16", "24 / 0", "1 + ",
    "((((1", "", "2 + fish", "63 1/4 ÷ 2 − 1/8", "100 1/3 - 1/3", "4 * 23.999", "third of 10", "10 ft - 12 ft",
)  # fmt: skip


def make_questions() -> list[Any]:
    """The whole list: JSON values, each a question or something that is none."""
    demo = json.loads(DEMO.read_text(encoding="utf-8"))["entries"]
    groups = (
        _of_notebook(demo),
        _of_lengths(),
        _of_corners(),
        _of_rooms(),
        _of_moldings(),
        _of_odd_rooms(),
        _of_accepted(demo),
        _of_boards(),
        _of_cut_list(),
        _of_openings(),
        _of_rows_and_toe_kicks(),
        _of_own_pieces(),
        _of_wood(),
        _of_coverings(),
        _of_entries(demo),
        _of_nothing(),
    )
    return [question for group in groups for question in group]


def _of_notebook(demo: list[dict[str, Any]]) -> list[Any]:
    rooms = [entry["body"]["room"] for entry in demo if entry["kind"] == "room"]
    walls = [entry["body"]["wall"] for entry in demo if entry["kind"] == "wall"]
    questions: list[Any] = [{"ask": "notebook"}, {"ask": "take", "entries": demo}, {"ask": "notebook"}]
    names = ("survey", "pieces", "needs", "plan", "boards_for_room", "closure", "supplies", "coverings",
             "shopping")  # fmt: skip
    for name, nearest in product(names, ("1/16", "1/32")):
        questions += [{"ask": name, "room": each, "nearest": nearest} for each in (*rooms, "no room of that name")]
    profiles = ("base 9/16 × 5 1/2", "casing 11/16 × 2 1/4", "none")
    questions += [
        {"ask": "boards_if", "room": each, "profile": profile, "length": "14 ft", "price": "20.00"}
        for each in rooms
        for profile in profiles
    ]
    houses = [entry["body"]["house"] for entry in demo if entry["kind"] == "house"]
    questions += [
        {"ask": name, "house": house}
        for name in ("spent", "stock", "next_rooms", "cautions", "compare")
        for house in (*houses, "no house")
    ]
    questions += [{"ask": name, "room": room} for name in ("work", "spent") for room in (*rooms, "no room")]
    questions += [
        {"ask": "covering", "room": room, "covering": entry["body"]["covering"]}
        for entry in demo if entry["kind"] == "covering"
        for room in (entry["body"]["room"], rooms[-1])
    ]  # fmt: skip
    said = ("wall two, ninety-six and three eighths, window at thirty and a quarter", "wall 9 fish", "", "9" * 1001)
    questions += [{"ask": "breath", "room": rooms[0], "text": text, "wall": wall}
                  for text in said for wall in (walls[0], None)]  # fmt: skip
    photo = {"attachment": rooms[0], "of": walls[0], "blob": "0f" * 32, "size": 3, "type": "image/jpeg", "name": "stud"}
    told = {**demo[-1], "id": "0190bbbb-0000-7000-8000-000000000000", "kind": "attachment", "body": photo}
    questions += [{"ask": "take", "entries": [told]}, {"ask": "attachments", "of": walls[0]}, {"ask": "attachments"}]
    marks = (
        ("stroke", {"attachment": rooms[0], "points": [[0, 0], [10_000, 9]]}),
        ("pin", {"pin": walls[0], "attachment": rooms[0], "of": walls[0], "what": "length", "x": 1, "y": 2}),
        ("pin", {"pin": walls[1], "attachment": rooms[0], "of": rooms[0], "what": "cut", "x": 3, "y": 4}),
        *(("sum", {"sum": of, "of": room, "text": text, "note": "so"})
          for of, room, text in ((walls[0], None, "127 / 3"), (walls[1], rooms[0], "fish"))),
    )  # fmt: skip
    marked = [{**told, "id": f"0190bbbb-0000-7000-8000-{place:012x}", "kind": kind, "body": body}
              for place, (kind, body) in enumerate(marks, 1)]  # fmt: skip
    questions += [{"ask": "take", "entries": marked}]
    questions += [{"ask": "photo", "attachment": of} for of in (rooms[0], walls[0])]
    questions += [{"ask": "figures", "room": room} for room in (*rooms, "no room")]
    questions += [{"ask": "tape", **part} for part in ({}, {"most": 1, "skip": 1}, {"most": 0})]
    return questions + [{"ask": "survey", "room": rooms[0], "in_hand": wall} for wall in walls[:4]]


def _of_lengths() -> list[Any]:
    reads = [{"ask": "read", "text": text, "nearest": NEAREST[place % 5]} for place, text in enumerate(READS)]
    return reads + [{"ask": "sum", "text": text, "nearest": NEAREST[place % 5]} for place, text in enumerate(SUMS)]


def _of_accepted(demo: list[dict[str, Any]]) -> list[Any]:
    """A plan accepted in the demo house as a page does it, and what is shown of the room from then on."""
    room = next(entry["body"]["room"] for entry in demo if entry["kind"] == "room")
    about = {"ask": "boards_for_room", "room": room}
    said = Desk(demo).answer(about)["answer"]["plans"][0]["accept"]
    boards = [{**board, "board": f"0000000a-0000-4000-8000-{place:012x}", "bought": place > 0}
              for place, board in enumerate(said["body"]["boards"])]  # fmt: skip
    device = "0a" * 8
    entry = {"id": "0000000a-0001-7000-8000-000000000001", "device": device, "seq": 1, "version": 1, "kind": "plan",
             "stamp": f"00000000000a-0000-{device}", "body": {**said["body"], "boards": boards},
             "supersedes": said["supersedes"]}  # fmt: skip
    return [{"ask": "check", "entries": [entry]}, {"ask": "take", "entries": [entry]}, about,
            {"ask": "take", "entries": [{**entry, "kind": "strike", "id": "0000000a-0002-7000-8000-000000000001",
             "body": {"entry": entry["id"], "why": "tried"}}]}, about]  # fmt: skip


def _of_corners() -> list[Any]:
    gauges = [
        {"ask": "corner", "turn": turn, "corner": gauge, "thickness": thickness}
        for turn, gauge, thickness in product(
            ("inside", "outside"), ("90", "88.5", "91.3", "135", "45.7", "60", "150"), ("9/16", "18 mm")
        )
    ]
    meets = [{**question, "meets": "3/4"} for question in gauges[::3]]
    sides = [
        {"ask": "corner", "turn": turn, "sides": three, "thickness": "3/4"}
        for turn, three in product(
            ("inside", "outside"),
            (
                ["36", "48", "60"],
                ["24", "24", "33 7/8"],
                ["600 mm", "600 mm", "850 mm"],
                ["12", "12", "30"],
                ["24", "24"],
            ),
        )
    ]
    wrong = ("0", "180", "269", "360", "x", "", "-90", "90.0000000001", "1e1")
    return gauges + meets + sides + [{"ask": "corner", "corner": text, "thickness": "9/16"} for text in wrong]


def _of_rooms() -> list[Any]:
    rooms = [make_room(seed).facts for seed in range(40)]
    rooms += [
        oblong(thing("door", "30", "30 1/8"), base__inside=inside, base__stock=list(STOCK))
        for inside in ("cope", "miter", "butt")
    ]
    rooms.append(room(*(wall(f"w{number}", "1607 mm", corner="89.9") for number in range(60))))
    questions = [{"ask": "pieces", "room": each, "nearest": NEAREST[place % 5]} for place, each in enumerate(rooms)]
    questions += [{"ask": name, "room": each} for each in rooms[::4] for name in ("needs", "plan", "boards_for_room")]
    questions += [{"ask": "closure", "room": wrong} for each in rooms[1:40:3] for wrong in (each, _an_inch_out(each))]
    questions += [{"ask": "closure", "room": _an_inch_out(each)} for each in rooms[40:]]
    drawn = [
        {"ask": "small_drawings", "room": each, "pieces": pieces}
        for each, pieces in product(rooms[::6], (["A", "D", "ZZ"], "A"))
    ]
    drawn += [{"ask": "piece_rows", "room": each} for each in (*rooms[::6], "nowhere")]
    drawn += [{"ask": "pieces", "room": each, "piece": letter} for each in rooms[::6] for letter in ("A", "ZZ")]
    drawn += [{"ask": "drawn", "room": each, "piece": letter} for each in rooms[::6] for letter in ("A", "D", "ZZ")]
    drawn += [{"ask": "files", "room": "no room of that name"}]
    drawn += [{"ask": "saw", "room": rooms[4], "order": order} for order in ("board", "setting", "chance")]
    return questions + drawn + [{"ask": "boards_for_room", "room": each} for each in rooms[40:43]]


def _of_moldings() -> list[Any]:
    """Rooms given every molding, corners at odd angles and walls leaning; and what was read behind walls."""
    names = ("cap", "shoe", "chair_rail", "picture_rail", "crown")
    wanted = {f"{name}.wanted": "yes" for name in names} | {"base.stock": list(STOCK), "proud_end": "returned"}
    rooms = [make_room(seed, 9).facts for seed in range(50, 60)]
    for place, each in enumerate(rooms):
        each["standard"] |= wanted | {"crown.spring": ("38", "45", "52.5")[place % 3]}
        for one in each["walls"]:
            one |= {"studs": "7 1/2, every 16", "plumb": ("1/4 top", "3/16 foot", "0")[place % 3],
                    "bow": ("1/2 hollow at 20", "1/4 hump at 30", "0")[place % 3]}  # fmt: skip
    questions: list[Any] = [{"ask": name, "room": each} for each in rooms for name in ("pieces", "needs")]
    behind = [("studs", text) for text in ("14 1/2, 30 1/2", "14 1/2, every 16", "every 16", "oak", "")]
    behind += [("plumb", text) for text in ("1/4 top", "3/32 foot", "0", "1/4", "9 top")]
    behind += [("bow", text) for text in ("1/4 hollow at 48", "1/4 hump", "0", "9 hump at 4")]
    held = [("wall", "corner"), ("window", "depth_head"), ("thing", "depth"), ("thing", "sash"), ("roof", "length")]
    questions += [{"ask": "held", "of": of, "what": what} for of, what in held]
    return questions + [{"ask": "behind", "what": what, "text": text} for what, text in behind]


def _an_inch_out(facts: Facts) -> Facts:
    """The room with its second wall read an inch too long."""
    first, second, *others = facts["walls"]
    longer = {**second, "length": f"{float(second['length'].split()[0]) + 1:.6f}"}
    return {**facts, "walls": [first, longer, *others]}


def _of_odd_rooms() -> list[Any]:
    rooms = [odd_room(Random(seed)) for seed in range(50)]
    names = ("pieces", "needs", "plan", "boards_for_room", "closure")
    return [{"ask": names[place % 5], "room": each} for place, each in enumerate(rooms)]


def _of_boards() -> list[Any]:
    lengths = ("14 3/16", "24 1/2", "36 1/8", "41 7/8", "54 5/16", "7 1/4", "75 13/16", "93 1/16", "11 63/64")
    rng = Random(1)
    cases: list[Any] = [
        {
            "ask": "boards", "kerf": rng.choice(("0", "1/8", "3/32")), "end_trim": rng.choice(("0", "1/2")),
            "hold": rng.choice(("0", "6", "12")), "stock": list(STOCK),
            "pieces": [rng.choice(lengths) for _ in range(rng.randint(1, 9))],
        }
        for _ in range(24)
    ]  # fmt: skip
    cents = [{"length": "144", "price": 1560, "limit": None}]
    cases.append(
        {"ask": "boards", "stock": cents, "pieces": ["47", "47", "47", "20"], "price_unit": "cent", "kerf": "1/8"}
    )
    cases += [
        {"ask": "boards", "stock": [], "pieces": ["10"]},
        {"ask": "boards", "stock": list(STOCK), "pieces": []},
        {"ask": "boards", "stock": list(STOCK), "pieces": ["200"]},
        {"ask": "boards", "stock": [{"length": "8 ft", "price": "ten"}], "pieces": ["20"]},
        {"ask": "boards", "stock": [{"length": "8 ft", "price": 9.5}], "pieces": ["20"]},
    ]
    return [*cases, *_of_mitered_boards(), *_of_proofs(cases[:12])]


def _of_mitered_boards() -> list[Any]:
    cuts = [
        {"saw": saw, "long_edge": edge, "gains": gains}
        for saw, edge, gains in (
            ("0", "none", "0"),
            ("45", "front", "9/16"),
            ("45", "back", "9/16"),
            ("44.3", "outer", "2 1/4"),
            ("95", "back", "1"),
        )
    ]
    rng = Random(2)
    lengths = ("14 3/16", "24 1/2", "36 1/8", "5 1/8")
    return [
        {"ask": "boards", "stock": list(STOCK), "kerf": "1/8", "shared_miters": shared, "pieces": pieces,
         "ends": [{"left": rng.choice(cuts[: kinds]), "right": rng.choice(cuts[: kinds])} for _ in pieces]}
        for kinds, shared, pieces in product((3, 4, 5), (True, False), (list(lengths), list(lengths) * 2))
    ]  # fmt: skip


def _of_proofs(cases: list[Any]) -> list[Any]:
    """Plans with their proofs, as they were given and with more claimed than they bear."""
    asked = []
    for case in cases:
        given = answer(case)["answer"]
        asked += [
            {**case, "ask": "prove", "answer": given},
            {**case, "ask": "prove", "answer": {**given, "cost": "99"}},
        ]
    return [*asked, {**cases[0], "ask": "prove", "answer": {}}]


def _of_cut_list() -> list[Any]:
    house = four_walls(letter="c")
    issue(house, house.room)
    for letter, state, as_cut in (
        ("A", "cut", "119 7/8"),
        ("B", "cut", None),
        ("B", "fitted", None),
        ("C", "cut", "f"),
    ):
        mark(house, house.room, letter, state, as_cut)
    piece = listed(house.entries, house.room)["D"]["id"]
    house.read(piece, "in_place", "119 15/16", "120", "fish")
    house.read(listed(house.entries, house.room)["C"]["place_of"], "salvaged", "f", "121 1/3")
    house.read(house.walls[2], "length", "1607 mm")
    house.new("opening", wall=house.walls[3], kind="door")
    asked: list[Any] = [{"ask": "take", "entries": house.entries}]
    asked += [{"ask": name, "room": house.room} for name in ("pieces", "boards_for_room", "saw", "files", "survey")]
    asked += [{"ask": "list_files", "room": house.room, "of": of} for of in (*LISTS, "no such list")]
    asked += [{"ask": "boards_for_house", "house": of} for of in (house.house, "no house of that name")]
    made = {"list": "00000000-1111-4000-8000-000000000000"}
    asked += [{"ask": "issue", "room": room, **made} for room in (house.room, "no room of that name")]
    asked += [{"ask": "fit", "room": room} for room in (house.room, "no room of that name")]
    asked += [{"ask": "hair", "room": house.room, "piece": letter, "by": by, "way": way}
              for letter in ("A", "B", "C", "D", "Z")
              for by, way in (("1/64", "off"), ("1/32", "more"), ("1", "off"))]  # fmt: skip
    asked += [{"ask": "spoiled", "room": house.room, "piece": letter, "left": left}
              for letter, left in (("A", None), ("D", "30"), ("D", "fish"), ("Z", None))]  # fmt: skip
    marks = (("cut", None), ("recut", None), ("cut", "95"), ("sawn", None))
    asked += [{"ask": "mark", "room": house.room, "piece": piece, "state": state, "as_cut": as_cut}
              for state, as_cut in marks]  # fmt: skip
    return [*asked, {"ask": "mark", "room": house.room, "piece": "x", "state": "cut"}]


def _of_rows_and_toe_kicks() -> list[Any]:
    """Windows that share a casing, a cabinet with a toe kick, a miter past the saw's range."""
    row = [thing("window", at, "24", name=at, left="48", right="48 1/8", settings={"window.mulled": mulled})
           for at, mulled in (("10", "yes"), ("36 1/2", "no"))]  # fmt: skip
    cabinet = thing("cabinet", "84", "36", "stops", name="c", depth="24", height="34 1/2")
    walls = [wall("w1", "120", corner="88", things=[*row, cabinet]), wall("w2", "100", "outside", corner="70"),
             wall("w3", "50")]  # fmt: skip
    facts = room(*walls, closed=False, casing__wanted="yes", toe__height="4", shoe__wanted="yes", open_end="returned")
    return [{"ask": "pieces", "room": facts}, {"ask": "behind", "what": "salvaged", "text": "58 1/4 × 5 1/2, 3, 2 7/8"}]


def _of_openings() -> list[Any]:
    opening = {"width": ["30 1/8", "30 3/16"], "left": "80 3/16", "right": "80 1/4", "head_corners": ["90", "89.4"]}
    casing = {"ask": "casing", "opening": opening, "reveal": "3/16", "leg_width": "2 1/4", "head_width": "2 1/4",
              "thickness": "11/16"}  # fmt: skip
    window = {"ask": "window", "opening": opening, "reveal": "1/4", "casing": "2 1/4", "style": "stool", "horn": "3/4",
              "left_stop": "20", "right_stop": "30", "depths": {"left": ["1/2", "9/16", "5/8"], "right": ["1/2"],
              "head": ["1/2", "1/2"], "sill": ["3/8"]}}  # fmt: skip
    changes: list[dict[str, Any]] = [
        {}, {"head": "butted", "overhang": "1/2"}, {"head": "crooked"}, {"reveal": "0"}, {"opening": {"width": "30"}},
        {"left_stop": "1"}, {"nearest": "1/32"},
    ]  # fmt: skip
    only_casing = [{"plinth": "6"}, {"clearance": "1/4"}, {"leg_width": "3 1/2"}, {"thickness": "0"}]
    only_window = [
        {"style": "picture"},
        {"horn": "0"},
        {"depths": {"left": ["-1/8"], "right": ["1"]}},
        {"casing": "-1"},
    ]
    questions: list[Any] = [{**asked, **change} for asked in (casing, window) for change in changes]
    return questions + [casing | change for change in only_casing] + [window | change for change in only_window]


def _of_own_pieces() -> list[Any]:
    """Free pieces and battens: sums that name figures, and marks that dodge an outlet."""
    texts = ("wall 2 - 1/4", "half of wall 1 + reveal", "wall 1 × wall 2", "wall 9", "wall 1-1/4", "largest wall 1", "")
    free = [{"id": f"f{place}", "name": f"shelf {place}", "profile": "shelf", "text": text, "count": str(place + 1)}
            for place, text in enumerate(texts)]  # fmt: skip
    wants = ({"count": "9"}, {"most_gap": "14"}, {"count": "70"}, {"count": "9", "ends": "gap"}, {"count": "x"})
    rooms = []
    for want in wants:
        facts = oblong(thing("outlet", "17", "3", "over"), wood__species="red oak", wood__from="8", wood__to="11")
        given = {"width": "2 1/2", "height": "40", **want}
        facts["walls"][0]["settings"] = {f"battens.{name}": text for name, text in given.items()}
        rooms.append({**facts, "free": free})
    tried: list[Any] = [{"ask": "free", "room": rooms[0], "text": text} for text in (*texts, *SUMS)]
    no_room = [{"ask": name, "room": "no room of that name"} for name in ("free", "battens")]
    asked = [{"ask": name, "room": facts} for facts in rooms for name in ("pieces", "battens", "plan")]
    walls = [{"ask": "elevation", "room": rooms[1], "wall": wall} for wall in ("1", "w2", "4", "9")]
    return [*asked, *tried, *no_room, *walls]


def _of_wood() -> list[Any]:
    compound: list[Any] = [
        {"ask": "compound", "spring": spring, "corner": corner}
        for spring, corner in product(("38", "45", "52"), ("90", "89.5", "91", "135", "270", "268.8", "0", "180"))
    ]
    spacing = {"ask": "spacing", "span": "137 5/16", "width": "2 1/2"}
    changes: list[dict[str, Any]] = [
        {"count": 9}, {"count": 9, "ends": "gap"}, {"count": 9, "ends": "one"}, {"most_gap": "14"}, {"count": 0},
        {"count": 2.5}, {"count": 99}, {"count": 5, "avoid": [{"at": "33", "width": "5"}]}, {},
    ]  # fmt: skip
    movement = [
        {"ask": "movement", "species": species, "cut": cut, "width": "5 1/2", "from": "6", "to": moisture}
        for species, cut, moisture in product(("red oak", "no such tree"), ("flat", "quarter"), ("12", "4.5", "x"))
    ]
    return compound + [spacing | change for change in changes] + movement


def _of_coverings() -> list[Any]:
    rolls: list[dict[str, Any]] = [
        {"width": "20 1/2", "length": "33 ft", "repeat": repeat, "match": match}
        for repeat, match in product(("0", "12 5/8", "25 1/4", "500"), ("free", "straight", "half-drop"))
    ]
    metric = {"width": "0.53 m", "length": "10.05 m", "repeat": "0.64 m", "tolerance": 1.5}
    rolls += [metric | {"match": "drop", "drop": 3}]
    return [
        {"ask": "strips", "height": height, "roll": roll} | walls
        for roll in rolls
        for height, walls in (("94 1/2", {"widths": ["120", "37 1/4"]}), ("40 ft", {"perimeter": "40 ft"}))
    ] + _of_layouts()


def _of_layouts() -> list[Any]:
    random = Random(11)
    sizes = [
        [{side: f"{random.randint(20, 200) / 4}" for side in ("widths", "heights")} for _ in range(count)]
        for count in (1, 3, 6, 9)
    ]
    sheet = {"width": "48", "length": "96", "price": "41.20"}
    asked: list[Any] = [
        {"ask": ask, name: some, "turnable": turnable} | more
        for some, turnable in product(sizes, (False, True))
        for ask, name, more in (("panes", "panes", {"roll_width": "36"}), ("sheets", "panels", {"sheet": sheet}))
    ]
    asked += [*_of_paint(), *_of_supplies(), *_of_seams(), *_of_work(), *_of_costs()]
    return [*asked, {"ask": "panes", "panes": [], "roll_width": "36"}, {"ask": "sheets", "panels": [], "sheet": sheet}]


def _of_paint() -> list[Any]:
    cans = [{"size": "1 gal", "price": "38.50"}, {"size": "1 qt", "price": "14.20"}, {"size": "2.5 l", "price": ""}]
    products: list[dict[str, Any]] = [
        {"coats": 2, "spread": 350, "cans": cans},
        {"coats": 1, "spread": "10 m2/l", "loss": 10, "keep": "1 qt", "cans": cans[::2], "name": "primer"},
        {"spread": 300, "on": ["ceiling", "floor"], "cans": []},
    ]
    surfaces: list[dict[str, Any]] = [{"area": "384 sq ft"}, {"name": "ceiling", "area": "11.2 m2"}]
    return [
        {"ask": "paint", "surfaces": surfaces, "products": products},
        {"ask": "paint", "surfaces": surfaces[:1], "products": [products[0] | {"spread": 0}]},
        {"ask": "paint_areas", "room": oblong(thing("door", "20", "30", left="80", right="80")), "height": "96"},
        {"ask": "paint_areas", "room": oblong(thing("window", "20", "30", left="40"))},
        {"ask": "paint_areas", "room": "no such room"},
    ]


def _of_seams() -> list[Any]:
    roll: dict[str, Any] = {"width": "20 1/2", "length": "33 ft", "repeat": "21", "match": "half-drop"}
    door = thing("door", "20", "30", left="80", right="80", name="door")
    window = thing("window", "70", "30", left="40", right="40", sill="30", name="window")
    facts = oblong(door, window)
    mores: list[dict[str, Any]] = [
        {}, {"walls": ["w1"]}, {"walls": ["w9"]}, {"start": {"of": "window", "how": "strip"}, "mismatch": "corner 2"},
        {"roll": {"width": "0.53 m", "length": "10.05 m", "repeat": "0.64 m", "match": "drop", "drop": 3}},
        {"roll": roll | {"length": "7 ft"}},
        {"panels": [{"wall": "w1", "at": "5", "width": "31", "bottom": "35", "top": "80"}]},
    ]  # fmt: skip
    return [{"ask": "seams", "room": facts, "height": "96", "roll": roll} | more for more in mores]


def _of_work() -> list[Any]:
    return [
        {"ask": "work", "done": done, "skipped": skipped, "since": done[-1:]}
        for done in ([], ["hazards"], ["hazards", "strip", "floor"], ["dance"])
        for skipped in ([], ["boxes", "crown"])
    ]


def _of_costs() -> list[Any]:
    prices = [{"name": "base", "price": "84.20", "seen": "2026-03-14"}, {"name": "caulk", "price": "0"}]
    rooms = [
        {"name": f"room {n}", "perimeter": f"{30 + n} ft", "openings": n, "cost": f"{300 + 31 * n}"} for n in range(3)
    ]
    coming = [{"name": "hall", "perimeter": "31 ft", "openings": 1}]
    return [
        {"ask": "spent", "planned": prices, "receipts": [{"name": "base", "price": "89.75"}]},
        {"ask": "spent", "planned": [{"name": "base", "seen": "once"}]},
        {"ask": "next_rooms", "measured": rooms, "coming": coming},
        {"ask": "next_rooms", "measured": rooms[:1], "coming": coming},
        {"ask": "next_rooms", "measured": [], "coming": coming},
    ]


def _of_supplies() -> list[Any]:
    joints = [{"length": "36 ft"}, {"length": "12 ft", "shape": "round", "size": "1/4"}, {"length": "9", "size": "0"}]
    nails: list[dict[str, Any]] = [
        {"through": ["9/16", "1/2"], "along": "36 ft", "box": 500, "price": "9.80"},
        {"through": ["9/16", "1/2"], "along": "36 ft", "length": "2 1/2"},
        {"through": ["3", "1"], "along": "36 ft"},
    ]
    sundries = [{"name": "paste", "amount": "384", "price": "12"}, {"name": "filler", "amount": 40, "covers": 100}]
    return [
        {"ask": "supplies", "joints": joints, "beads": joints[:2], "fasteners": nails, "sundries": sundries},
        {"ask": "supplies"},
    ]


def _of_entries(demo: list[dict[str, Any]]) -> list[Any]:
    wrongs: list[dict[str, Any]] = [
        {"id": "7"}, {"device": "phone"}, {"seq": 0}, {"seq": True}, {"seq": 1.0}, {"stamp": "yesterday"},
        {"version": 2}, {"version": "1"}, {"kind": "Wall"}, {"kind": "ghost"}, {"body": {}}, {"body": []},
        {"body": {"house": "x"}},
        {"supersedes": None}, {"supersedes": ["x"]}, {"more": 1}, {"body": {**demo[1]["body"], "name": "n" * 10_000}},
        {"body": {**demo[1]["body"], "name": "\ud800"}}, {"body": {**demo[1]["body"], "built": "1936"}},
    ]  # fmt: skip
    entries = [{**demo[1], **wrong} for wrong in wrongs]
    names = ("take", "check")
    each = [{"ask": names[place % 2], "entries": [entry]} for place, entry in enumerate(entries)]
    return [*each, {"ask": "take", "entries": entries}, {"ask": "check", "entries": entries}, {"ask": "notebook"}]


def _of_nothing() -> list[Any]:
    return [
        None, 17, "read", [], {}, {"ask": None}, {"ask": "nothing of the kind"}, {"ask": "read"},
        {"ask": "read", "text": 5},
        {"ask": "read", "text": "1", "nearest": "1/3"}, {"ask": "read", "text": "1", "nearest": None},
        {"ask": "read", "text": "1", "more": 1}, {"ask": "pieces"}, {"ask": "pieces", "room": {}},
        {"ask": "pieces", "room": {"walls": [{}]}}, {"ask": "pieces", "room": oblong(base__thickness="0")},
        {"ask": "pieces", "room": oblong(base__inside="glue")}, {"ask": "pieces", "room": oblong(base__glue="hide")},
        {"ask": "check"}, {"ask": "notebook", "more": 1}, {"ask": "take"}, {"ask": "take", "entries": 5},
        {"ask": "take", "entries": [5, "x"]}, {"ask": "boards"},
    ]  # fmt: skip
