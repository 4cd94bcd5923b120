"""What the demo's rooms are covered with, what that costs, what was bought and what is done. All of it is made up."""

from told import Journal, Room

#: Walls of the sewing room by number: the chimney breast, papered, and the others.
BREAST = (8, 9, 10)
#: Floor to ceiling, read on one wall of each room and taken for the others.
HEIGHTS = ("96 1/4", "95 3/4", "96")
SUPPLIES = {
    "caulk.price": "5.40", "filler.price": "6.25", "sandpaper.price": "1.10", "tape.price": "7.80",
    "paste.price": "16.90", "cloth.price": "4.50", "adhesive.price": "7.15",
    "nail.boxes": [{"length": "1 1/2", "count": "1000", "price": "11.20"},
                   {"length": "2", "count": "1000", "price": "12.60"}],
    "next.rooms": [{"name": "Guest room", "perimeter": "46 ft", "openings": "3", "height": "96"},
                   {"name": "Upstairs hall", "perimeter": "38 ft", "openings": "5", "height": "92"}],
}  # fmt: skip
WALLS, CEILING, TRIM = ({"name": name, "area": None} for name in ("walls", "ceiling", "trim"))


def cover_rooms(journal: Journal, house: str, sewing: Room, hall: Room, bath: Room) -> None:
    """Paper on the chimney breast, film in a sash, beadboard up the stair, paint on the rest; prices; what is done."""
    for room, height in zip((sewing, hall, bath), HEIGHTS, strict=True):
        journal.read(room[1][0], "height", height)
    settings(journal, house, SUPPLIES)
    paper = paper_and_glaze(journal, house, sewing, hall)
    paint(journal, house, sewing, hall, bath)
    buy_and_do(journal, house, sewing[0], paper)


def settings(journal: Journal, of: str, said: dict) -> str:
    for name, value in said.items():
        journal.say("setting", of=of, name=name, value=value)
    return of


def article(journal: Journal, house: str, sort: str, name: str, **label: object) -> str:
    found = journal.new("article", house=house, sort=sort, name=name)
    return settings(journal, found, {f"{sort}.{key}": value for key, value in label.items()})


def cover(journal: Journal, room: Room, what: str, **where: object) -> str:
    found = journal.new("covering", room=room[0], article=what)
    return settings(journal, found, {f"cover.{key}": value for key, value in where.items()})


def only(room: Room, numbers: tuple[int, ...]) -> list[dict[str, str]]:
    return [{"wall": room[1][number - 1]} for number in numbers]


def paper_and_glaze(journal: Journal, house: str, sewing: Room, hall: Room) -> str:
    """Gives back the id of the paper."""
    paper = article(journal, house, "paper", "Fern and moth", width="20 1/2", length="33 ft", repeat="21",
                    match="half-drop", price="42.50")  # fmt: skip
    cover(journal, sewing, paper, walls=only(sewing, BREAST), height=HEIGHTS[0])
    film = article(journal, house, "film", "Frosted film", width="36", price="3.40")
    panes = [{"name": "sash, left", "widths": "13 1/8, 13 1/8, 13 3/16", "heights": "30 1/4, 30 5/16"},
             {"name": "sash, right", "widths": "13 1/8", "heights": "30 1/4"}]  # fmt: skip
    cover(journal, sewing, film, panes=panes)
    sheet = article(journal, house, "sheet", "Beadboard 1/4", width="48", length="96", price="34.80")
    panels = [{"name": "up the stair", "widths": "23 5/8", "heights": "32", "count": "5"},
              {"name": "by the door", "widths": "11 1/4", "heights": "32", "count": "1"}]  # fmt: skip
    cover(journal, hall, sheet, sheets=panels)
    return paper


def paint(journal: Journal, house: str, sewing: Room, hall: Room, bath: Room) -> None:
    """One color on the walls that are not papered, another on all trim."""
    sizes = ("1 gal", "1 qt")
    walls, trim = (
        article(journal, house, "paint", name, spread=spread, coats="2", keep=keep,
                cans=[{"size": size, "price": price} for size, price in zip(sizes, prices, strict=True)])
        for name, spread, keep, prices in (("Walls, oat", "375", "1 qt", ("46.00", "18.50")),
                                           ("Trim, chalk", "400", "1 pt", ("58.75", "21.75")))
    )  # fmt: skip
    others = tuple(number for number in range(1, len(sewing[1]) + 1) if number not in BREAST)
    cover(journal, sewing, walls, surfaces=[WALLS], walls=only(sewing, others), height=HEIGHTS[0])
    for room, height in ((hall, HEIGHTS[1]), (bath, HEIGHTS[2])):
        cover(journal, room, walls, surfaces=[WALLS, CEILING], height=height)
    for room in (sewing, hall, bath):
        cover(journal, room, trim, surfaces=[TRIM])


def buy_and_do(journal: Journal, house: str, sewing: str, paper: str) -> None:
    """Two rolls and the base are bought, some caulk was left over; the room is stripped."""
    for of, what, name, count, price, date, note in (
        (sewing, paper, "Fern and moth", "2", "85.00", "2026-03-21", "batch F-118"),
        (sewing, None, "base 9/16 × 5 1/2", "4", "66.20", "2026-03-21", ""),
        (house, None, "caulk", "1", "", "", "left over from the porch"),
    ):
        journal.new("lot", of=of, article=what, name=name, count=count, price=price, date=date, note=note)
    for step, state in (("hazards", "done"), ("strip", "done"), ("boxes", "done"), ("wainscot", "skipped")):
        journal.say("tick", of=sewing, list="work", key=step, state=state, remember="")
