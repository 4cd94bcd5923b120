## What a room is covered with.

cover-title = Cover: { $room }
cover-asleep = The coverings
cover-none = Nothing is covered yet
    .hint = Wallpaper, paint, film on glass, panels: say which, and where, and it is counted from the survey.
cover-look = to look at
cover-new = Cover something
    .sort = With what
    .name = Its name
    .other = Or another, by its name
    .hint = as you would ask for it in the shop
    .go = Go on

## One covering.

covering = Covering
    .asleep = Its figures
    .others = What covers this room
    .buy = What to buy for the room
covering-cost = { dollars }
    .seen = { dollars }, at prices seen { $seen }
covering-missing = Still to say
    .hint = Write it below, and the plan appears here.
covering-said = What was said of it
covering-instead = Another in its place
covering-struck =
    .it = It
    .way = Strike it from this room
where-wall = Walls
    .all = All of them, until you mark some.
    .some = Only those that are marked.
    .on = { $wall }: covered
    .off = { $wall }: not covered
where-surface = It goes on
    .walls = The walls, until you mark something.
    .some = Only what is marked, and what you write below.
    .on = { $surface }: painted
    .off = { $surface }: not painted
where-counted-walls = walls
where-counted-ceiling = ceiling
where-counted-trim = trim

## The list to work by.

cover-list-paper = Strips, as they are cut
cover-list-film = Panes to cut
cover-list-sheet = Panels to cut
cover-list-paint = Coats

## The plan: seams and rolls.

seams = Seam plan
    .flat = The walls laid out flat, strips by number as listed below
    .drawn = The start is drawn in blue, thick on paper. Dashed lines are marks of the pattern. { $said }
    .drawn-meeting =
        The start is drawn in blue, thick on paper; where the ends meet, in red. Dashed lines are marks of the pattern.
        { $said }
    .wall = { $wall } with its strips by number
rolls = Roll by roll
rolls-roll = Roll { $roll }
rolls-left = { $length } left for certain
rolls-whole = strip { $strip }: { $length }, from { $from }
rolls-piece = strip { $strip } { $what }: { $length }, from { $from }
starts = Where to begin
    .chosen = chosen
    .dropped = Start no longer set
starts-search = Search for the best start again
    .next = every start is tried
starts-keep = Keep the start that was found
    .next = whatever is read from now on
    .done = This start is kept
starts-at = On the middle of { $name }
starts-how-strip = a strip
    .what = A strip on the middle of { $name }
    .done = A strip on { $name }
starts-how-seam = a seam
    .what = A seam on the middle of { $name }
    .done = A seam on { $name }
starts-meet = Where the ends meet
    .least = where it shows least

## The plan: panes, panels, cans.

panes = On the roll
    .length = { $length } off the roll. { $said }
    .drawn = Blanks on the roll, listed below
panes-marks = mark its top at the { $top }, its left at the { $left }
panes-side-far = far end
panes-side-near = near end
panes-side-left = left
panes-side-right = right
panes-trimmed = trimmed to { $widths } × { $heights }
sheets = On the sheets
    .drawn = Sheet { $sheet }, its panels listed below
cans = Cans
    .left = { $amount } left over.
