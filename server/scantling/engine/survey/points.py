"""Depths at a row of points, as they are written: from a jamb's edge to the plane of the wall."""


def point_readings(written: object) -> list[tuple[str, ...]]:
    """Readings of a row of points: one text, a list with a text for each point, or several such lists."""
    if written is None or written == []:
        return []
    if not isinstance(written, list | tuple):
        return [parse_points(str(written))]
    several = written if isinstance(written[0], list | tuple) else [written]
    return [tuple(str(point) for point in row) for row in several if row]


def parse_points(text: str) -> tuple[str, ...]:
    """Depths at several points in one text, parted as three sides are: "1/2, 5/8, 3/4"; one that is empty is left out.

    >>> parse_points("1/2, 5/8,")
    ('1/2', '5/8')
    """
    parts = (part.strip() for part in text.replace(";", ",").split(","))
    return tuple(part for part in parts if part) or (text,)
