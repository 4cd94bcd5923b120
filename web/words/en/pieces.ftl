## The list of pieces.

pieces-title = Pieces: { $room }
pieces-asleep = The pieces
pieces-list = List
pieces-way = To the pieces
pieces-find = Find a piece
    .hint = its letter, a wall, casing, base
pieces-broken-ring = A letter in a broken ring may change until the list is issued.
    .heard = letter not issued
pieces-to-cut = To cut
pieces-cut = Cut
pieces-fitted = Fitted
pieces-alike = { $count }, each ± { $length }
pieces-blank = from a blank of { $length }
pieces-gone = No longer wanted
pieces-add = Add a piece of your own
pieces-fit = Fit them, in their order
pieces-none = No pieces yet
    .hint = A piece appears once its wall and both its corners are read.
issue = Issue the list
    .done = The list is issued
issued = As issued
    .hint = As issued; what has changed since shows when the engine is awake.
    .doubted = { $state } · two pieces have this letter
issued-mark-cut = Mark { $letter } cut
issued-mark-fitted = Mark { $letter } fitted
piece-files-svg = SVG
    .next = the plan
piece-files-wall = Wall { $wall } as SVG
    .all = One wall from in front, as SVG
    .file = { $room }, wall { $wall }

## One piece.

piece-asleep = Its ends and the working
piece-cut-from = { $edge }, ± { $length }
piece-along = along the { $edge }
piece-tried = Test cut, { $what }
piece-why = Why
piece-step = read as { $readings }
piece-there = It is there already, to be trimmed
piece-place = Measure it in place
    .short = Measure in place
piece-recut = Recut it
piece-as-cut = Enter its length as cut
piece-later = Later
piece-last = the last
piece-mark-cut = Mark it cut
piece-mark-fitted = Mark it fitted
piece-marked-cut = Piece { $letter } cut
piece-marked-fitted = Piece { $letter } fitted
piece-marked-recut = Piece { $letter } recut

# How it stands is told in a row, such as "cut to 63 1/4, read as 63 3/16; measured in place".
piece-stands = { $state } to { $length }
    .read = read as { $text }
    .new = its letter is not issued yet
    .place = measured in place
    .there = there already
piece-said = What was said of it
    .marked = marked { $what }
    .place = measured in place: { $what }
    .there = there already: { $what }
piece-end-left = left: { $joint }
piece-end-right = right: { $joint }
piece-saw = saw { $saw } from square
    .point = point of the board { $point }
    .long = long point at the { $edge }
    .flat = lying flat: miter { $miter }, bevel { $bevel }
    .nested = standing at its spring: saw { $saw }, no bevel
    .leaned = blade leaned { $bevel }
joints-turn = Turn a joint round
joints-stick = Its stick is thicker or thinner
    .hint =
        { MEASURE() ->
            [millimeters] such as 13.5; empty for the profile's
           *[other] such as 17/32; empty for the profile's
        }
    .profile = as its profile

## A tape held to a piece, or to its place.

at-piece = Enter the reading
    .next = then back
at-piece-cut = { $letter } as cut
    .hint = Hold the tape { $edge }.
at-piece-place = { $letter } in place
at-piece-there = { $letter } is there

## A piece of one's own.

free = A piece of your own
    .change = Change or strike this piece
free-name = What it is
    .hint = shelf, ledger, filler strip
free-stock = Its stock
    .hint =
        { MEASURE() ->
            [millimeters] a profile by its name, for the boards: shelf 19 × 240
           *[other] a profile by its name, for the boards: shelf 3/4 × 9 1/2
        }
    .here = stock in this room
free-length = Its length
    .hint =
        { MEASURE() ->
            [millimeters] a sum, which may name what was read: wall 3 − 6
           *[other] a sum, which may name what was read: wall 3 − 1/4
        }
free-figures = Figures of this room
free-count = How many
    .hint = all alike

## At the saw.

saw = At the saw
    .next = { $count } to cut, one at a time
    .asleep = The pieces to cut
    .none = Nothing is left to cut
saw-of = { $part }, { $profile }
    .recut = { $part }, { $profile }, { $recut }
saw-cut = Cut
    .at = Cut, but at …
    .next = then { $letter }, { $board }
saw-spoiled = Spoiled …
saw-read = Read aloud
spoiled = { $letter } spoiled
    .asleep = What that comes to
spoiled-left = What can still be used of it
    .hint = How long it is without the spoiled end; empty where none of it is.
spoiled-again = Cut it again
    .next = it is on the list again
tried = Test cuts
    .hint =
        Cut two scraps at the setting and hold them in the corner, before the board is cut. What they show is told with
        every piece that is cut to it.
tried-note = Note a test cut
tried-none = nothing noted
tried-end-left = left end: { $text }
tried-end-right = right end: { $text }
tried-at-left = { $corner }, at the left end
tried-at-right = { $corner }, at the right end
tried-showed = What scraps showed: { $name }
    .hint = such as 45.5 fits, or 45.5 open at the face, use 45.7
    .long = Say it in 200 letters.

## Fitting.

fit = Fit
    .asleep = The pieces to fit
    .left = Left to fit
    .issue = Issue the list before its pieces are marked.
fit-next = then { $letter }
fit-hangs = Piece { $letter } as it hangs
fit-hairs = A hair off { $letter }, or more of it
fit-hair = What a hair does
    .write = Write it down: { $hair }
fit-moved = before: { $length }
    .why = Why { $rest }
    .rest = { $letter } goes with it

## Labels for the pieces.

labels = Labels for the pieces
    .asleep = The labels
    .issue = Issue the list first: a label is for a letter that stays.
    .sheet = Sheet
    .hint = Print at full size, on one plain sheet first: hold it against the labels.
    .print = Print the labels
labels-title = Labels: { $room }
labels-sheet-thirty = Letter, 30 labels
labels-sheet-twenty-one = A4, 21 labels

## Each wall from in front, on paper.

walls = Walls from in front, to print
    .asleep = The walls
    .print = Print the walls
walls-title = Walls from in front: { $room }
