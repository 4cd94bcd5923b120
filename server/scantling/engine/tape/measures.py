"""Areas, volumes and plain numbers beside lengths: in square feet and gallons, or in square meters and liters.

Everything is counted in square and cubic inches; only texts differ, by what lengths are shown in.
"""

from fractions import Fraction

from scantling.engine.shown.shown_in import MILLIMETERS_PER_INCH, format_decimal, is_metric
from scantling.engine.tape.lengths import ONE, Length, format_exact, round_to
from scantling.engine.words import say

SQUARE_FOOT = Fraction(144)
FOOT = Fraction(12)
# US gallon: NIST Handbook 44, appendix C, from memory. The others by the international inch, exactly.
GALLON = Fraction(231)
METER = 1000 / MILLIMETERS_PER_INCH
SQUARE_METER = METER**2
MILLILITER = (10 / MILLIMETERS_PER_INCH) ** 3
LITER = 1000 * MILLILITER


def format_number(amount: Fraction, places: int = 4) -> str:
    """A plain number for the working: a fraction, or decimals where lengths have them; "about" where that is not all.

    >>> from scantling.engine.shown.shown_in import MILLIMETERS, showing
    >>> with showing(MILLIMETERS): format_number(Fraction(9, 2)), format_number(Fraction(1, 3), 2)
    ('4.5', 'about 0.33')
    """
    if not is_metric():
        return format_exact(amount)
    rounded = round_to(Length(amount * 10**places), ONE).inches / 10**places
    return _about(format_decimal(rounded), rounded != amount)


def _about(figure: str, is_rounded: bool) -> str:
    return say("about", figure=figure) if is_rounded else figure


def format_area(square_inches: Fraction) -> str:
    """An area beside lengths in a line of working, in the square of their unit: whole square millimeters."""
    if not is_metric():
        return say("in-square-inches", figure=format_exact(square_inches))
    square = square_inches * MILLIMETERS_PER_INCH**2
    whole = round_to(Length(square), ONE).inches
    return _about(f"{whole} mm²", whole != square)


def format_surface(square_inches: Fraction) -> str:
    """An area in a line of working.

    >>> format_surface(Fraction(2400)), format_rough_surface(Fraction(2400))
    ('16 2/3 sq ft', '17 sq ft')
    >>> from scantling.engine.shown.shown_in import MILLIMETERS, showing
    >>> with showing(MILLIMETERS): format_surface(Fraction(2400)), format_rough_surface(Fraction(2400))
    ('about 1.55 m²', '1.5 m²')
    """
    if is_metric():
        return f"{format_number(square_inches / SQUARE_METER, 2)} m²"
    return say("in-square-feet", figure=format_exact(square_inches / SQUARE_FOOT))


def format_rough_surface(square_inches: Fraction) -> str:
    """An area to look at: no walls are known to a tenth of a square meter."""
    if is_metric():
        return f"{float(square_inches / SQUARE_METER):.1f} m²"
    return say("in-square-feet", figure=f"{float(square_inches / SQUARE_FOOT):.0f}")


def format_volume(cubic_inches: Fraction) -> str:
    """What stands in cans.

    >>> format_volume(GALLON)
    '1.00 gal'
    >>> from scantling.engine.shown.shown_in import MILLIMETERS, showing
    >>> with showing(MILLIMETERS): format_volume(GALLON)
    '3.79 L'
    """
    if is_metric():
        return f"{float(cubic_inches / LITER):.2f} L"
    return say("in-gallons", figure=f"{float(cubic_inches / GALLON):.2f}")


def format_content(cubic_inches: Fraction) -> str:
    """What stands in tubes, or is laid out of one.

    >>> format_content(Fraction(18))
    '18.00 cu in'
    """
    if is_metric():
        return f"{float(cubic_inches / MILLILITER):.1f} ml"
    return say("in-cubic-inches", figure=f"{float(cubic_inches):.2f}")


def format_section(square_inches: Fraction) -> str:
    """The section of a bead.

    >>> format_section(Fraction(1, 128))
    '0.0078 sq in'
    """
    if is_metric():
        return f"{float(square_inches * MILLIMETERS_PER_INCH**2):.2f} mm²"
    return say("in-square-inches", figure=f"{float(square_inches):.4f}")


def format_spread(spread: Fraction) -> str:
    """How far paint goes, from the square inches that a cubic inch of it covers.

    >>> format_spread(375 * SQUARE_FOOT / GALLON)
    '375 sq ft a gallon'
    >>> from scantling.engine.shown.shown_in import MILLIMETERS, showing
    >>> with showing(MILLIMETERS): format_spread(375 * SQUARE_FOOT / GALLON)
    'about 9.2 m² a liter'
    """
    if is_metric():
        return say("spread-a-liter", figure=format_number(spread * LITER / SQUARE_METER, 2))
    return say("spread-a-gallon", figure=format_exact(spread * GALLON / SQUARE_FOOT))


def format_run(inches: Fraction) -> str:
    """A way along floor or wall that is told in feet: 46 ft.

    >>> from scantling.engine.shown.shown_in import MILLIMETERS, showing
    >>> with showing(MILLIMETERS): format_run(46 * FOOT)
    'about 14.02 m'
    """
    if is_metric():
        return f"{format_number(inches / METER, 2)} m"
    return say("in-feet", figure=format_exact(inches / FOOT))
