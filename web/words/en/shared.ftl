## What several rooms of the page say.

back = Back
close = Close
save = Save
    .what = Save { $what }
saved = Saved
strike = Strike
    .it = Strike it
    .what = Strike { $what }
    .done = { $what } struck
    .text = { $what }: struck
restore = Restore
    .what = Restore { $what }
    .done = { $what } restored
    .text = { $what }: restored
named = { $name }: { $text }
working = The working
to-readings = To the readings
back-to-room = Back to the room
look-first = Look at these first
to-read = To read
rooms-find = Find a room
    .hint = its name
house-name = Name of the house
save-name = Save the name
count-of = { $count } of { $what }
still-missing = Still missing
    .prices = Set lengths and prices

## The screens, as the tabs name them.

screen-survey = Survey
screen-pieces = Pieces
screen-boards = Boards
screen-cover = Cover
screen-supplies = Supplies
screen-sums = Sums
screen-house = House

## Lengths inside running text, the units beside a figure, and money.

length-inches = { $length } in
unit-ft = ft
unit-in = in
unit-mm = mm
dollars = ${ $amount }
    .each = at { dollars }

## Openings, inside a sentence.

opening-kind-door = door
opening-kind-window = window
opening-kind-cased = cased opening

## How a piece stands.

piece-state-to-cut = to cut
piece-state-cut = cut
piece-state-fitted = fitted
piece-state-recut = recut

## How a line of a list to tick off stands; `.told` when it was touched.

tick-done = done
    .told = { $what }: done
tick-skipped = skipped
    .told = { $what }: skipped
tick-cut = cut
    .told = { $what }: cut
tick-hung = hung
    .told = { $what }: hung
tick-bought = bought
    .told = { $what }: bought
tick-to-buy = to buy
tick-dismissed = dismissed
    .told = { $what }: dismissed
tick-not-yet = not yet
    .told = { $what }: not yet

## What can be touched on any screen.

problems = Needs attention
jump = Jump to a letter
find-none = Nothing here is called that.
year-built = Year it was built
    .hint = Leave it empty if nobody knows. Older paint needs care.
    .wrong = Write the year in four digits, such as 1936, or leave it empty.
