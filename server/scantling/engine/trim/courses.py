"""The moldings that a room is given, each by its name in a sentence and by what breaks it along a wall."""

from scantling.engine.standard import Standard
from scantling.engine.trim.cornice import crown_course
from scantling.engine.trim.rail import chair_rail_course, picture_rail_course
from scantling.engine.trim.runs import BASE, Course
from scantling.engine.trim.shoe import SHOE


def derive_courses(its: Standard) -> dict[str, Course]:
    """What is wanted, from the floor up."""
    known = {
        "base": BASE,
        "cap": BASE,
        "shoe": SHOE,
        "chair_rail": chair_rail_course(its),
        "picture_rail": picture_rail_course(its),
        "crown": crown_course(its),
    }
    return {name.replace("_", " "): course for name, course in known.items() if its.wants(name)}
