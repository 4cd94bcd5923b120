"""How much of its article a covering wants: rolls, feet, sheets or paint; and what that comes to at its price."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.bodies import FILM, PAINT, PAPER, SHEET
from scantling.engine.costs.seen import date_of, derive_seen
from scantling.engine.notebook import Notebook
from scantling.engine.questions.amounts import split_price
from scantling.engine.questions.covered.planned import PlannedCovering
from scantling.engine.questions.question import Answer
from scantling.engine.shown.shown_in import is_metric
from scantling.engine.standard import parse_price
from scantling.engine.tape.figures import parse_figure
from scantling.engine.tape.lengths import parse_length
from scantling.engine.tape.measures import FOOT, GALLON, METER, format_volume
from scantling.engine.words import say, say_counted

ROLL, BY_FOOT, BY_METER, SHEET_OF, VOLUME = "roll", "ft", "m", "sheet", "paint"


@dataclass(frozen=True, slots=True)
class ArticleAmount:
    """`count` of a unit, of paint cubic inches; `cents` each, None where no price was said."""

    unit: str
    count: Fraction
    cents: int | None = None
    working: tuple[str, ...] = ()

    @property
    def words(self) -> str:
        return say_amount(self.unit, self.count)


def say_amount(unit: str, count: Fraction) -> str:
    """
    >>> say_amount("roll", Fraction(3)), say_amount("paint", Fraction(231))
    ('3 rolls', '1.00 gal')
    """
    if unit == VOLUME:
        return format_volume(count)
    if unit == BY_FOOT and is_metric():  # its price is by the foot, so that is how it is bought
        return say("feet-in-meters", feet=count, meters=f"{float(count * FOOT / METER):.2f}")
    if unit in (BY_FOOT, BY_METER):
        return say("in-feet", figure=count) if unit == BY_FOOT else f"{count} m"
    return say_counted(f"so-many-{unit}", count)


def derive_amount(planned: PlannedCovering) -> ArticleAmount | None:
    """What a covering wants in all; None where its plan says nothing yet."""
    answer, article = planned.answer, planned.article
    if answer is None:
        return None
    price, by = split_price(article.facts.get("price") or "")
    cents = parse_price(price) if price else None
    if article.sort == PAPER:
        rolls = answer["rolls"]["guaranteed"]
        return None if rolls is None else ArticleAmount(ROLL, Fraction(rolls), cents, tuple(answer["said"][:1]))
    if article.sort == SHEET:
        return ArticleAmount(SHEET_OF, Fraction(answer["count"]), cents, (answer["said"],)) if answer["count"] else None
    if article.sort == FILM:
        return _film(planned, answer, cents, METER if by == BY_METER else FOOT)
    (product,) = answer["products"]
    return ArticleAmount(VOLUME, _paint(planned), None, tuple(product["working"]))


def _film(planned: PlannedCovering, answer: Answer, cents: int | None, each: Fraction) -> ArticleAmount | None:
    length = parse_figure(answer["length"]["exact"] or "")
    if not length:
        return None
    shown = answer["length"]["shown"]
    said = (say("film-off-the-roll", length=shown, said=answer["said"]),)
    roll = planned.article.facts.get("length")
    if roll is None:
        return ArticleAmount(BY_METER if each == METER else BY_FOOT, Fraction(-(-length.inches // each)), cents, said)
    count = Fraction(-(-length.inches // parse_length(roll).inches))
    return ArticleAmount(ROLL, count, cents, (*said, say("film-rolls", length=shown, roll=roll, count=count)))


def _paint(planned: PlannedCovering) -> Fraction:
    """Exactly what `paint` counted, which shows it to a millionth of a gallon."""
    assert planned.answer is not None
    (product,) = planned.answer["products"]
    return Fraction(str(product["need"]["gallons"])) * GALLON


def derive_price_day(notebook: Notebook, planned: PlannedCovering) -> str:
    """The day on which its price was seen: of cans, the oldest that still stands; empty where there is none."""
    name = "paint.cans" if planned.article.sort == PAINT else f"{planned.article.sort}.price"
    return price_day(notebook, planned.article.id, [name])


def price_day(notebook: Notebook, of: str, names: Sequence[str]) -> str:
    """The oldest day on which any of some prices was written down."""
    days: list[str] = []
    for name in names:
        said = [entry for entry in notebook.about("setting", of) if entry.body["name"] == name]
        standing = [entry for entry in said if notebook.strike_of(entry.id) is None]
        if standing and isinstance(standing[-1].body["value"], list):
            days += derive_seen(standing).values()
        elif standing:
            days.append(date_of(notebook.heads(standing)[-1].stamp))
    return min(days, default="")
