"""What lengths are shown in: inches, feet and inches, or millimeters. Only texts differ; every length stays exact.

One answer is made in one of them: `showing` says which for as long as it lasts, in this thread alone, and the texts are
made by `lengths`, which asks `shown_in`. What is a name or goes into an entry is never written by it, or a change of
mind would give a profile another name.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from fractions import Fraction

INCHES, FEET, MILLIMETERS = "inches", "feet and inches", "millimeters"
SHOWN_IN = (INCHES, FEET, MILLIMETERS)
#: The international inch, exactly. Written here, because pint takes a slow phone a second to load.
MILLIMETERS_PER_INCH = Fraction(127, 5)
#: Figures to cut by are shown to half of a tape's millimeter; what is shown finer than a sixteenth, to a tenth.
TO_CUT, FINE = Fraction(1, 2), Fraction(1, 10)

_SHOWN_IN: ContextVar[str] = ContextVar("lengths shown in", default=INCHES)


def shown_in() -> str:
    """What the answer that is being made shows its lengths in.

    >>> shown_in()
    'inches'
    """
    return _SHOWN_IN.get()


def is_metric() -> bool:
    """Whether it is millimeters, so that areas, volumes and plain numbers are shown as those who use them do."""
    return shown_in() == MILLIMETERS


@contextmanager
def showing(lengths: str) -> Iterator[None]:
    """Texts made meanwhile show their lengths so."""
    before = _SHOWN_IN.set(lengths)
    try:
        yield
    finally:
        _SHOWN_IN.reset(before)


def to_millimeters(inches: Fraction, step: Fraction) -> Fraction:
    """Millimeters to the nearest step, from midway to the even one.

    >>> to_millimeters(Fraction(253, 4), TO_CUT)
    Fraction(3213, 2)
    """
    steps, over = divmod(inches * MILLIMETERS_PER_INCH / step, 1)
    up = over > Fraction(1, 2) or (over == Fraction(1, 2) and steps % 2 == 1)
    return step * (int(steps) + up)


def format_decimal(amount: Fraction) -> str:
    """An amount that ends after a few places, without those that say nothing.

    >>> format_decimal(Fraction(3213, 2)), format_decimal(Fraction(-5))
    ('1606.5', '-5')
    """
    places = next(places for places in range(10) if (amount * 10**places).denominator == 1)
    whole, decimals = divmod(abs(int(amount * 10**places)), 10**places)
    return f"{'-' if amount < 0 else ''}{whole}{f'.{decimals:0{places}}' if places else ''}"
