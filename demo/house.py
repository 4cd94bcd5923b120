"""The demo house: the sewing room, back stair hall and bath of an invented 1936 bungalow, as a journal.

Run it to write house.json beside it. Everything is made up: house, figures and prices. The figures are written in all
the ways a person writes them; the rooms close to within what a tape can tell.
"""

import json
from pathlib import Path

from covered import cover_rooms
from told import Journal, Room


def heights(journal: Journal, opening: str, left: str, right: str, corners: tuple[str, str]) -> None:
    """What casing wants of an opening, besides its width."""
    journal.read(opening, "left", left)
    journal.read(opening, "right", right)
    for side, corner in zip(("left", "right"), corners, strict=True):
        journal.read(opening, f"{side}_corner", corner)


def sewing_room(journal: Journal, house: str) -> Room:
    """A door, a bay, a chimney breast, a niche for a radiator, and one corner well out of square."""
    room = journal.new("room", house=house, name="Sewing room", closed=True)
    walls: list[str] = []

    def wall(turn: str, *lengths: str, corner: str = "", sides: str = "") -> str:
        walls.append(journal.new("wall", room=room, after=walls[-1] if walls else None, turn=turn))
        journal.read(walls[-1], "length", *lengths)
        journal.read(walls[-1], "sides" if sides else "corner", sides or corner)
        return walls[-1]

    def thing(of: str, at: str, *widths: str, kind: str, base: str = "") -> str:
        if base:
            found = journal.new("obstacle", wall=of, kind=kind, base=base)
        else:
            found = journal.new("opening", wall=of, kind=kind)
        journal.read(found, "at", at)
        journal.read(found, "width", *widths)
        return found

    door_wall = wall("inside", "11' 9 3/8\"", "141 3/8", corner="90.0")
    door = thing(door_wall, "14 1/2", "30 1/8", "30 1/8", kind="door")
    heights(journal, door, "80 3/16", "80 1/16", ("90.2", "89.8"))
    thing(door_wall, "47 3/8", "12", kind="floor register", base="over")
    on_stool = thing(wall("outside", "41 5/8", corner="134.8"), "8 1/2", "26", kind="window")
    heights(journal, on_stool, "46 1/4", "46 1/4", ("90.0", "90.0"))
    journal.read(on_stool, "sash", "3 7/8", "3 13/16")
    wall("inside", "27 1/16", corner="134.9")
    framed = thing(wall("inside", "3' 7 1/2\"", corner="135.1"), "6 3/4", "30", kind="window")
    journal.say("setting", of=framed, name="window.style", value="picture")
    journal.say("setting", of=framed, name="extension.wanted", value="yes")
    heights(journal, framed, "36 1/8", "36 1/8", ("90.0", "90.0"))
    for place, depths in (("left", "3/8, 1/2, 1/2"), ("right", "1/2, 1/2, 1/2"), ("head", "3/8, 1/2"),
                          ("sill", "1/2, 1/2")):  # fmt: skip
        journal.read(framed, f"depth_{place}", depths)
    wall("outside", "27", corner="135.0")
    wall("inside", "27 7/8", corner="90.0")
    cabinet_wall = wall("inside", "46 7/8", sides="24, 24, 33 15/16")
    cabinet = thing(cabinet_wall, "24 1/2", "22 3/8", kind="built-in cabinet", base="stops")
    journal.read(cabinet, "depth", "14 3/16")
    wall("outside", "14 3/16", corner="90.6")
    breast = wall("outside", corner="89.4")
    slip, _, _ = journal.read(breast, "length", "55 5/16", "54 5/16", "54 5/16")
    journal.say("strike", entry=slip, why="an inch out: the tape was held at its 1 in mark")
    wall("inside", "14 1/4 shy", corner="90.3")
    wall("inside", "3 foot 8 and 11 sixteenths", sides="24, 24, 33 5/16")
    wall("outside", "40 1/8", corner="90.0")
    wall("inside", "238 mm", corner="90.0")
    thing(wall("inside", "36 1/8", corner="90.0"), "5", "1 1/4", kind="radiator pipe", base="notch")
    wall("outside", "9 3/8", corner="90.0")
    wall("inside", "6 ft 3 1/4", corner="91.6")
    return room, walls


def stair_hall(journal: Journal, house: str) -> Room:
    """An L with an outside corner, a door, and an opening without one to the stair."""
    room = journal.new("room", house=house, name="Back stair hall", closed=True)
    after: str | None = None
    walls = []
    for turn, length, corner in (
        ("inside", "58 1/4", "90.0"),
        ("inside", "10' 0 3/4\"", "89.9"),
        ("inside", "34 1/2", "90.1"),
        ("outside", "71 1/8", "90.0"),
        ("inside", "23 3/4", "90.0"),
        ("inside", "49 5/8", "90.0"),
    ):
        after = journal.new("wall", room=room, after=after, turn=turn)
        walls.append(after)
        journal.read(after, "length", length)
        journal.read(after, "corner", corner)
    door = journal.new("opening", wall=walls[0], kind="door")
    journal.read(door, "at", "13")
    journal.read(door, "width", "30 1/8")
    heights(journal, door, "80 1/4", "80 1/4", ("90.0", "90.0"))
    stair = journal.new("opening", wall=walls[5], kind="cased")
    journal.read(stair, "at", "8 1/4")
    journal.read(stair, "width", "31 7/8", "31 15/16")
    heights(journal, stair, "81", "81 1/8", ("90.0", "90.0"))
    return room, walls


def bath(journal: Journal, house: str) -> Room:
    """Long and narrow: a tub in an alcove at the far end, a vanity, a door tight in its corner, shoe, 8 ft boards."""
    room = journal.new("room", house=house, name="Bath", closed=True)
    after: str | None = None
    walls = []
    for length, corner in (("60 1/8", "90.1"), ("11' 0 1/4\"", "90.0"), ("60 1/8", "89.9"), ("132 1/4", "90.0")):
        after = journal.new("wall", room=room, after=after, turn="inside")
        walls.append(after)
        journal.read(after, "length", length)
        journal.read(after, "corner", corner)
    door = journal.new("opening", wall=walls[0], kind="door")
    journal.read(door, "at", "28 5/8")
    journal.read(door, "width", "30")
    heights(journal, door, "80 1/8", "80 1/8", ("90.0", "90.0"))
    for wall, kind, base, figures in (
        (walls[1], "vanity", "stops", {"at": "6 1/4", "width": "36", "depth": "21", "height": "34 1/2"}),
        (walls[1], "floor register", "notch", {"at": "70", "width": "12", "height": "4"}),
        (walls[2], "tub", "stops", {"at": "0", "width": "60 1/8", "depth": "30 1/4", "height": "17"}),
        (walls[3], "toilet", "over", {"at": "48", "width": "20", "depth": "28", "height": "30"}),
    ):
        found = journal.new("obstacle", wall=wall, kind=kind, base=base)
        for what, text in figures.items():
            journal.read(found, what, text)
    journal.read(walls[3], "studs", "14 1/2, every 16")
    journal.say("setting", of=room, name="shoe.wanted", value="yes")
    for name, length, price in (("base.stock", "8 ft", "10.40"), ("shoe.stock", "8 ft", "4.15")):
        journal.say("setting", of=room, name=name, value=[{"length": length, "price": price, "limit": None}])
    return room, walls


def build() -> dict:
    """The whole demo as {"entries": […]}."""
    journal = Journal()
    journal.say("device", name="demo phone")
    house = journal.new("house", name="The bungalow", built=1936)
    for name, value in (
        ("base.height", "5 1/2"),
        ("base.thickness", "9/16"),
        ("base.inside", "cope"),
        ("casing.width", "3 1/2"),
        ("casing.thickness", "11/16"),
        ("reveal", "3/16"),
    ):
        journal.say("setting", of=house, name=name, value=value)
    rows = (("8 ft", "10.40"), ("10 ft", "13.35"), ("12 ft", "15.60"), ("16 ft", "21.95"))
    stock = [{"length": length, "price": price, "limit": None} for length, price in rows]
    stock.append({"length": "38 1/2", "price": "0", "limit": "1"})
    journal.say("setting", of=house, name="base.stock", value=stock)
    for name, priced in (
        ("casing.stock", (("7 ft", "9.15"), ("8 ft", "10.20"), ("14 ft", "17.60"))),
        ("stool.stock", (("6 ft", "14.75"),)),
        ("extension.stock", (("6 ft", "8.30"), ("8 ft", "10.95"))),
    ):
        rows = [{"length": length, "price": price, "limit": None} for length, price in priced]
        journal.say("setting", of=house, name=name, value=rows)
    cover_rooms(journal, house, sewing_room(journal, house), stair_hall(journal, house), bath(journal, house))
    return {"entries": journal.entries}


if __name__ == "__main__":
    written = json.dumps(build(), indent=1, ensure_ascii=False) + "\n"
    (Path(__file__).parent / "house.json").write_text(written, encoding="utf-8")
