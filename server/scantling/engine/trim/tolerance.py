"""What a tape, a pencil and a gauge are worth: the figures that a ± is made of. Common practice, no source."""

from fractions import Fraction

from scantling.engine.lengths import THIRTY_SECOND

# Half a graduation of the tape at every reading, and as much at the pencil mark.
READING = THIRTY_SECOND
MARK = THIRTY_SECOND
# A corner that far from square shows when it is cut at 45.
NOT_SQUARE = Fraction(1, 4)
