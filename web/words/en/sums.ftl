## Sums: one that is written, the tape of those kept, one of them in hand, and the readings to bring into one.

sums-waking = Engine waking.
sums-failed = The engine is not running.

sum-write = Write a sum
sum-field = a sum
sum-clear = Clear
sum-rub-out = Rub out
sum-keep = Keep it
    .done = { $sum }: kept
sum-bring = Bring a reading
sum-signs = signs
sum-digits = digits

# A key of the pad, as it is heard; and seen, where no sign stands on it.
sign-plus = plus
sign-minus = minus
sign-times = times
sign-divided = divided by
sign-open = open bracket
sign-close = close bracket
sign-feet = feet
sign-inches = inches
sign-half = half of
sign-of = of
sign-mm = millimeters
sign-point = point

tape = The tape
    .whole = The whole tape
    .heard = Sums kept, the newest first
    .empty =
        { MEASURE() ->
            [millimeters] Write a sum as you would on a scrap of board: 1607 − 2 × (89 + 5).
           *[other] Write a sum as you would on a scrap of board: 63 1/4 − 2 × (3 1/2 + 3/16).
        }
        One that you keep stays here, on the tape, and can be put in a reading.
    .newer = Newer sums
    .older = Older sums
    .struck = Struck sums

## One sum in hand.

sum = A sum
    .none = There is no such sum on the tape now.
    .working = Working
    .again = Use it again
    .strike = Strike this sum
sum-note = Note
    .holds = what it was for
    .save = Save the note
    .done = { $sum }: note

sum-into = Put { $length } in a reading
    .none = No tape reads that, so it goes in no reading.
    .rounded = To the nearest { $to }, for it is no figure on a tape.
    .wanted = Readings wanted
    .more = Another reading of { $room }
    .others = Other readings
    .done = { $figure }: { $length }, from the sum { $sum }
    .sum = Bring { $length } into a sum

## The readings that may be brought into one.

bring-list = Readings to bring
bring-none = Nothing is read in this room yet.
bring-asleep = The readings are being worked out.
bring-back = Back to the sum
