## Battens of one wall.

battens-title = Battens, wall { $wall }
battens = Battens
battens-setting-width = Width of a batten
    .hint = across its face
battens-setting-thickness = Thickness
    .hint = 3/4, until you set it
battens-setting-height = Height
    .hint = the length each is cut to
battens-setting-most_gap = Widest gap
    .hint = the fewest battens that keep to it; empty when you write a count
battens-setting-count = Count
    .hint = so many, for a wall in one stretch; empty when you write a gap
battens-setting-avoid = Keep clear of
    .hint = outlet, switch: what stands on the wall by these names
battens-ends = At the ends
    .done = Ends
    .item = a batten at both
    .gap = a gap at both
    .one = a batten at one
battens-row =
    { $count ->
        [one] { $count } batten
       *[other] { $count } battens
    }
    .placed = { battens-row }, { $place }
    .gap = Gap { $gap }
    .clear = { $counts } battens would clear everything.
    .told = Left edge of each, every mark from the left end of the stretch: never step off the gap.
battens-mark = from the left corner { $length }
    .over = lies { $length } over the { $thing }
