## The sheet that every screen is written on.

page-screens = Screens
page-view = Where it is
page-newer = A new version is here: take it under House
page-revision = revision { $entries }
page-counted = page { $page } of { $pages }
page-overdue =
    { $count ->
        [one] 1 entry is on this device alone, for more than a week: save it under House
       *[other] { $count } entries are on this device alone, some for more than a week: save them under House
    }
page-older = This is how things stood before the last entries: the engine is not running.
    .waking = This is how things stood before the last entries: the engine is waking.

## How things stand, in a few words beside the title.

status-waking = engine waking
status-failed = engine not running
status-pending = { $count } saved here

## What stands where there is nothing to show yet.

no-room = No room yet
    .hint = Walk a room first: everything else follows from its readings.
    .way = Make a house and a room
asleep = { $what } are being worked out.
    .one = { $what } is being worked out.
    .waking = Engine waking. { $what } will appear here.
    .failed =
        { $what } cannot be worked out: the engine is not running ({ $why }).
        Readings can still be taken and are kept. { $way }
    .way = Start it again under House

## A screen that failed.

failed = This screen failed
    .why = It could not be shown: { $why }.
    .lost =
        Nothing is lost: what was saved is in the notebook on this device. Only what was typed here and not saved
        must be typed again.
    .save = Save the notebook to a file
    .again = Try this screen again
    .house = To the house

## A list as a file.

list-files = Save as a file
list-files-csv = CSV
    .next = for a spreadsheet
list-files-json = JSON
    .next = all that is known
list-files-of-boards = { $room }, boards
list-files-of-labels = { $room }, labels
list-files-of-shopping = { $room }, to buy
list-files-of-strips = { $room }, strips

## Cautions.

cautions = Cautions
    .heard =
        { $count ->
            [one] Heard: put it aside in this house
           *[other] Heard: put them aside in this house
        }

## The invented room.

invented = This room is invented, to look around in.
invented-house = An invented house
invented-room = Invented room
invented-struck = The invented house struck

## Whether the page opens without a signal: `.short` beside the title of every screen, the rest under House.

offline-cover-ready = Ready for no signal: this device has the whole page.
    .short = opens offline
offline-cover-coming = Being made ready for no signal: stay near the laptop until it is done.
    .short = getting ready
offline-cover-counted = Being made ready for no signal, { $kept } of { $of } files: stay near the laptop until it is done.
    .short = { $kept } of { $of } files kept
offline-cover-failed =
    Not ready for no signal: the page could not be fetched whole ({ $why }). It is tried again when you come back to it
    near the laptop.
    .short = not kept yet
offline-cover-untrusted =
    Not ready for no signal: a browser keeps a page only from an address that it trusts, and this one is not. Open the
    page by the laptop's https address: House on the laptop shows it, with the steps for this device.
    .short = not kept: address not trusted
offline-cover-unable =
    Not ready for no signal: this browser keeps no page. It is an old one, or this is a private window. A private window
    keeps nothing: readings go when it is closed. Open the page in an ordinary window of a browser of the last few years,
    or save the notebook to a file before you close this one.
    .short = not kept by this browser
offline-cover-full =
    Not ready for no signal: there is no room left on this device for the page, about 20 MB. Free some space, then open
    the page again near the laptop.
    .short = not kept: no room left

## Everything by keyboard. The letters are those that the page hears, in every language.

keys = Keys
    .on = Turn single keys on
    .off = Turn single keys off
keys-line-digits = the screens, as the tabs stand; at a tape, the digit
    .key = 1 to { $last }
keys-line-fine = on the inch, by thirty-seconds
    .key = Shift ← →
keys-line-list = to the list
    .key = L
keys-line-lines = the line before, the next line
    .key = ↑ ↓
keys-line-open = opens the line
    .key = Enter
keys-line-next = to what is done next
    .key = N
keys-line-find = find in the list
    .key = F
keys-line-back = to the list, from one of its lines
    .key = Esc
keys-line-plan = the plan closer, farther, whole; the arrows move it
    .key = + − 0
keys-line-undo = strikes what was written last on this page
    .key = Ctrl Z
keys-line-help = this list
    .key = ?

## What was done, and could not be. `$what` is what was written, such as "wall 1, along the floor: 63 1/4".

act-saved = { $what }, saved here.
act-failed = Not saved. { $why }
act-slipped = That came to nothing: { $why }
act-none = Nothing that was written on this page is left to strike.
act-taken-back = { $what }: taken back. Struck, not lost.
pasted = the pasted text
handed-text = the shared text
handed-what = what was shared
handed-lost =
    it did not come in, for this device had not kept the page yet, or has no room left. Share it once more, or choose it
    here.
longer-cut-off = The notebook changed, so the longer look was ended; look again if you like.
longer-nothing = The longer look came to nothing: { $why }
outline-wall = wall

## What there is to read while the engine sleeps.

plain-at = wall { $wall }, left corner to the { $thing }
plain-jambs = wall { $wall }, { $thing }, jamb to jamb
plain-left = wall { $wall }, { $thing }, height at the left
plain-right = wall { $wall }, { $thing }, height at the right
plain-sash = wall { $wall }, { $thing }, sash to the wall
plain-edges = wall { $wall }, { $thing }, from edge to edge
plain-wall = wall { $wall }, along the floor
plain-corner-inside = corner { $wall }, inside
plain-corner-outside = corner { $wall }, outside

## What the engine draws.

drawn-at-saw = At the saw
    .what = Piece { $letter } at the saw: left { $left }, right { $right }
drawn-hanging = As it hangs
    .what = Piece { $letter } as it hangs: { $left } at its left end, { $right } at its right
drawn-wall = Wall { $wall } from in front
drawn-walls = Each wall from in front
drawn-places = Where they go
    .plan = Plan of { $room } with its pieces by letter
closer = { $what }, closer
closer-look-closer = Closer
    .what = Closer: { $what }
closer-look-farther = Farther
    .what = Farther: { $what }
closer-look-whole = Whole
    .what = Whole: { $what }
closer-way-left = left
    .what = left: move { $what }
closer-way-up = up
    .what = up: move { $what }
closer-way-down = down
    .what = down: move { $what }
closer-way-right = right
    .what = right: move { $what }
