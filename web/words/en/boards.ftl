## Boards of one room, and of several.

boards-title = Boards: { $room }
boards-asleep = The boards
boards-all = All together, still to buy: { $sum }
boards-elsewhere = On boards planned for several rooms: { $letters }.
boards-pieces = See the pieces
boards-house = Boards: several rooms
    .way = Plan several rooms at once
    .back = Back to { $room } alone
    .rooms = Rooms planned together
boards-apart = Plan room by room again
    .next = what was accepted for several rooms is struck
    .done = Planned room by room again

## A plan of one profile's boards.

boards-drawn = Boards of { $profile }, listed below
boards-changed = Readings changed since the plan was accepted, so this one is new:
    .stays = What is cut and what is bought stays as it is.
boards-buy = To buy
    .none = Nothing to buy: all of it is here.
    .together = Together
boards-accept = Accept this plan
    .next = shown on every device from then on
    .done = The plan for { $profile } is accepted
boards-look = Look longer
    .next = in the background, a minute at most
    .found = This is the best that was found in a longer look.
boards-looking = Looking longer; you can go on meanwhile.
    .stop = Stop looking
boards-list = Board by board
boards-left = { $length } left
boards-bought = Bought
    .not = Not bought after all
    .what = Board { $board } of { $length }: bought
boards-piece = { $letter } ends at { $length }
    .stands = { $letter } { $state }
    .shares = { $letter } ends at { $length } (its left end is the cut before)
    .last = { $letter } ends at { $length } (last: it may still change)
    .shares-last = { $letter } ends at { $length } (its left end is the cut before) (last: it may still change)

## Other lengths, and prices.

boards-lengths = What other lengths would change
    .asleep = Working it out.
boards-length = One more length
    .hint =
        { MEASURE() ->
            [millimeters] such as 4.2 m
           *[other] such as 14 ft
        }
    .try = Try it
boards-length-price = At a price of
    .hint = such as 19.98
boards-prices = Prices of { $profile }
    .ask = What does { $profile } cost?
    .hint = A board of each length that your yard has, in dollars; leave the others empty.
    .save = Save these prices
    .done = Boards of { $profile }
