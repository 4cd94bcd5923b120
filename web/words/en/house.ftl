## House: its rooms, where each thing is found.

house-make = Make a house and a room
house-work = The order of work: { $room }
house-money = Money: planned and spent, receipts, the next rooms
house-stock = On hand: rolls, cans, boards left over
house-standard = The standard: base, casing, boards and prices
house-keeping = This notebook: sync, files, devices
house-rooms = Another room
house-rename = Name and year, or strike it
house-gone = It is struck, or on another device still.
house-room-wanted = { $readings } read · { $wanted } wanted
    .none = Nothing wanted
house-room-read = { $readings } read · nothing wanted
    .open = { $readings } read · not walked round yet
house-room-look = { $count } to look at
room-unnamed = the room
conflicts = Said two ways
    .told = Two devices wrote different things while apart. Touch the one that is right; the other is struck, not lost.
conflicts-done = { $name }: { $value }
aside = Cautions put aside
aside-again = Tell it again
    .what = Tell again: { $word }

## Rooms compared.

compared = Rooms compared
compared-rooms = The rooms
compared-money = Money: planned and spent
compared-table = The rooms of the house, compared
compared-room = Room
compared-open = not walked round yet
compared-column-read = Read
compared-column-wanted = Wanted
compared-column-to_cut = To cut
compared-column-cut = Cut
compared-column-fitted = Fitted
compared-column-boards = Boards to buy
compared-column-planned = Planned
compared-column-spent = Spent
compared-column-doubts = To look at

## The standard of a house, and what a room has otherwise.

standard = The standard
standard-title = The standard of { $house }
standard-settings = The settings
standard-exceptions = What rooms have otherwise
standard-exception = { $name }: { $value }
    .list = { $name }: { $count } listed
standard-room = What differs in { $room }
    .told = The standard of { $house } counts in every room. Set here only what this room is to have otherwise.

## Money.

money = Money
money-figures = The figures
money-house = In the house
    .told = in the end, by what is planned now
money-rooms = Room by room
money-things = Thing by thing
money-planned = planned
money-spent = spent
money-less = ${ $amount } less
money-over = ${ $amount } over
money-seen = price seen { $date }
money-unpriced = Planned, and without a price yet: { $things }.
money-receipt = Enter a receipt
money-receipts = Receipts
lot = { $count } × { $name }
    .called = { $count } × { $name }, { $called }
lot-strike = Strike { $count } { $name }
next-rooms-title = The next rooms
next-rooms-all = { $cost } for all of them
next-rooms-cost = ${ $low } to ${ $high }
next-rooms-done = The rooms to come

## A receipt, or what is just there.

receipt = A receipt
receipt-figures = Its figures
receipt-for = For
receipt-any-room = any room
receipt-thing = What
    .other = something else
receipt-things = The things to choose of
receipt-can = Which can
receipt-name = What it is
    .hint = as the plan calls it, or in your own words
receipt-boards = Which boards came is ticked off on { $supplies }.
receipt-count = How many
    .hint = rolls, cans, sheets, boards
receipt-price = Paid in all
    .hint = dollars, such as 85.00
receipt-date = On
    .hint = year, month, day
receipt-note = Note
    .hint = its batch number, the shop
receipt-done = { $count } { $name }

## On hand.

stock = On hand
stock-things = The things on hand
stock-came = Everything that came
stock-put = Put something on the shelf
stock-shelf = To cover with
    .none = No paper, paint, film or sheet yet.
stock-none = none here
stock-count-used = { $count } up
stock-count-wanted = { $count } wanted
stock-count-over = { $count } over
stock-articles = By their labels
stock-boards = Boards left over
    .none = A board is left over once all is cut that was planned from it, if what remains can be held at the saw.
article = By its label
article-label = Its label
article-name = Its name
    .hint = as you would ask for it in the shop
article-strike = Strike it from the house
    .told = Where a room is covered with it, another is then to be chosen there.

## The order of work.

work = Work: { $room }
work-steps = The steps
work-group-today = Today
work-group-later = Later
work-group-done = Done
work-doubts = Read again
    .told = Read before a step that changes them
work-place = Read in place
    .told = The casing is up. A length read now stands before the room's sum.
work-state-skipped = not in this room
work-state-early = done before its time
work-waits = waits for { $steps }
work-done = done
    .what = { $step }: done
work-skip = skip
    .what = { $step }: not in this room
work-undo = not yet
    .what = { $step }: not yet
work-short-hazards = hazards
work-short-strip = strip
work-short-boxes = boxes
work-short-walls = walls
work-short-stock = stock
work-short-ceiling = ceiling
work-short-floor = floor
work-short-jambs = jambs
work-short-windows = windows
work-short-casing = casing
work-short-built_in = built in
work-short-crown = crown
work-short-wainscot = wainscot
work-short-base = base
work-short-fill = fill
work-short-trim_paint = trim paint
work-short-seal = seal
work-short-paper = paper
work-short-plates = plates
work-short-film = film

## Keeping the notebook: sync, devices, what was set aside.

keeping = This notebook
keeping-stands =
    { $count ->
        [0] { $sync } · nothing the laptop lacks
       *[other] { $sync } · { $count } saved here and not yet on the laptop
    }
keeping-sync = Sync now
    .done = The laptop was asked.
keeping-build = Scantling, build { $build }
keeping-promised = This browser has promised to keep it.
    .not = This browser has not promised to keep it: it may clear it when room runs short, and a private window keeps nothing once it is closed. Share it with the laptop, or save it to a file.
keeping-unread =
    { $count ->
        [one] { $count } entry was written by a newer Scantling: kept and passed on, not read.
       *[other] { $count } entries were written by a newer Scantling: kept and passed on, not read.
    }
keeping-update = A new version of Scantling is on this device.
    .take = Use the new version
keeping-devices = Devices
    .unnamed = a device without a name
keeping-devices-wrote =
    { $count ->
        [one] { $count } entry
       *[other] { $count } entries
    }
keeping-name = Name this device
    .label = What to call it
    .hint = Such as phone, or laptop.
    .done = This device is called { $name }
install = Keep it as an app on this device
    .what =
        As an app it opens like any other app, without the browser's bars, and browsers keep longer what an app has saved
        than what a page has.
    .take = Install Scantling
    .done = Scantling is installed: open it where this device shows its apps.
    .empty =
        The app may begin with an empty notebook of its own: first share this one with the laptop, or save it to a file,
        and bring it in there.
install-home = Touch Share, then Add to Home Screen. Where there is no Share, it is in the browser's menu.
install-android = Open the browser's menu, then touch Install app or Add to Home screen.
install-table =
    Look for Install in the address bar or in the browser's menu; in Safari on a Mac it is File, Add to Dock. Not every
    browser installs pages: all of it works in a tab too.
felt = When something is saved
    .choose = Besides the words on the screen, on this device
felt-none = nothing
felt-vibration = vibration
felt-sound = a short sound
keeping-file = A file says otherwise
    .told = Kept apart: what is here stands.
keeping-refused = The laptop would not take
    .told = They are kept here and left out there.
    .again = Send them again
    .asked = The laptop was asked again.
keeping-left = { $kind }: { $text }
keeping-anew = Write it anew
    .done = Written anew
device-this = { $device }, this one

## Who may enter.

entrance = Who may enter
entrance-outside = This device is not paired with the laptop. What you measure stays here until it is.
entrance-inside = This device is paired with the laptop.
entrance-code = Code from the laptop
    .hint = On the laptop: House, or scantling pair.
entrance-name = What to call this device
    .usual = phone
entrance-enter = Pair this device
entrance-strike = Strike { $device } off
    .done = struck off
entrance-pair = Pair a device
entrance-shown = The code is { $code }. It lets one device in, once, within ten minutes.
entrance-new = A phone that is new to this laptop begins at { $address }
    .code = The address where a new phone begins, as a QR code
    .fingerprint = Fingerprint to compare: { $fingerprint }
entrance-known = One that trusts it already is paired by this:
    .code = The address with the code, as a QR code
entrance-off = A phone reaches this laptop when it is started with scantling serve --lan.

## By file.

file = By file
file-alone =
    { $count ->
        [one] { $count } entry is on this device alone: not on the laptop, and in no file.
       *[other] { $count } entries are on this device alone: not on the laptop, and in no file.
    }
    .none = Every entry is on the laptop or in a file as well.
file-save = Save to a file
    .new = Save what is new ({ $count })
file-share = Share the notebook
    .new = Share what is new ({ $count })
file-given =
    { $count ->
        [one] { $count } entry, handed over as { $file }. Look that it has arrived.
       *[other] { $count } entries, handed over as { $file }. Look that it has arrived.
    }
    .absent = It is not there
    .absent-done = Its entries count as in no file.
file-add = Add from a file
    .told = Or drop the file on this page, or paste its text. What is here already stays as it is, so a file may be added any number of times, on either side.
file-reading = The file is being read.
file-another =
    { $file } is of another notebook: no house of it is in this one. Nothing was added.
    .beside = Add its houses beside those here
file-unknown =
    { $file } was shared with this page, and names no house that is here. Nothing was added: add it if you know who shared
    it.
    .add = Add it
file-wrong = { $file }: { $why }
    .empty = { $file } holds no entry of a notebook: nothing was added.
file-read = The entries of the file are in the journal. { $added } added, { $known } were here already.
file-read-attached =
    { $count ->
        [one] { $count } attachment of it is here.
       *[other] { $count } attachments of it are here.
    }
file-read-other =
    { $count ->
        [one] { $count } entry of it says something else here: see below.
       *[other] { $count } entries of it say something else here: see below.
    }
file-short = The file was cut short: it says that it holds more.
file-left-out =
    { $count ->
        [one] Left out, damaged or no entries: line { $lines }.
       *[other] Left out, damaged or no entries: lines { $lines }.
    }
    .more = Left out, damaged or no entries: lines { $lines } and more.
    .save = Save what was left out
