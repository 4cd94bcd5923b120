## One list of all that the room wants bought.

supplies-title = Supplies: { $room }
supplies-asleep = The things to buy
supplies-group-boards = Boards
supplies-group-coverings = To cover with
supplies-group-supplies = Used up
supplies-open =
    { $count ->
        [0] Everything is ticked off
        [one] { $count } line to buy
       *[other] { $count } lines to buy
    }
    .unpriced = { supplies-open }; no price yet: { $names }
supplies-cover = What covers the room
supplies-receipt = Enter a receipt
supplies-here = on hand: { $what }
    .enough = nothing to buy
supplies-seen = Price seen { $date }
supplies-line = { $what }, bought
counted-by = What the amounts go by
    .hint = For every room of { $house }. What differs in this room is set under { $way }.
    .way = what differs in it
