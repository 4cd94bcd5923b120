## Where a reading is entered.

pad-waiting = Touch the mark you see, or hold it for thirty-seconds; type, or say it.
pad-echo =
    .waking = Engine waking: this will be saved as typed.
    .failed = The engine is not running: this will be saved as typed.
pad-digits = digits
pad-decimal = point
pad-rub-out = Rub out

## The tape.

pad-length = type it or say it
pad-inch = the inch, in sixteenths
    .near = the inch, in thirty-seconds
    .whole = on the inch
pad-lean = how it lies on the mark
pad-lean-shy = a hair shy
    .short = shy
pad-lean-none = on the mark
pad-lean-strong = a hair strong
    .short = strong

## A corner, on a gauge or by three sides.

pad-degrees = degrees, such as 91 or 88.5
    .square = square, 90
pad-sides = type this side or say it
    .which = Side
pad-sides-here = along this wall
pad-sides-next = along the next wall
pad-sides-across = across, end to end

## Depths of a jamb, studs.

pad-points = type this point or say it
    .which = Point
    .next = next point
    .proud = jamb stands proud
pad-studs =
    { MEASURE() ->
        [millimeters] from the left corner: 370, every 400
       *[other] from the left corner: 14 1/2, every 16
    }
    .next = next stud
    .every = and so on, every …

## How a wall bows, leans, and how its floor falls.

pad-bow =
    { MEASURE() ->
        [millimeters] 6 hollow at 1200, 6 hump at 1200, or 0
       *[other] 1/4 hollow at 48, 1/4 hump at 48, or 0
    }
    .none = straight
pad-bow-hollow = hollow at …
pad-bow-hump = hump at …
pad-gap-lean =
    { MEASURE() ->
        [millimeters] 6 top, 6 foot, or 0
       *[other] 1/4 top, 1/4 foot, or 0
    }
    .top = off at the top
    .foot = off at the foot
    .none = plumb
pad-gap-fall =
    { MEASURE() ->
        [millimeters] 12 right, 12 left, or 0
       *[other] 1/2 right, 1/2 left, or 0
    }
    .left = lower at the left
    .right = lower at the right
    .none = level
