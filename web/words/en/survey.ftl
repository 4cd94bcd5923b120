## The room in hand: its plan, what to do now.

survey-plan = Plan of { $room }
survey-walls = Walls, doors and what is in the way
survey-differs = What differs in this room
survey-rooms = Other rooms, or a new one
survey-year = Save the year
    .asked = year
    .unknown = Nobody knows
    .done = { $house }: { $year }
survey-walk = Next: walk the room
    .on = Next: walk on to the next wall
    .how = Start at the door and go round from left to right, facing each wall.
survey-start = Start at the door
    .on = Walk on
survey-next = Next: { $title }
    .unread = Not read yet: { $title }
    .asleep = Whether it is wanted shows when the engine is awake; you can read it now.
    .later = Left for later, still wanted. { $hint }
    .unreached = Can't reach
survey-breath = Say all of wall { $wall } in one breath
survey-look = Look again: { $title }
    .readings = See its readings
survey-done = Every wanted reading is here
    .once = Everything here is read once
    .told = A reading can be taken again at any time: touch its line.
    .pieces = See the pieces
survey-wall = wall { $wall }
    .empty = nothing in it
survey-struck = Struck

## The list of readings.

readings = Readings
readings-others = Other readings you may take
readings-find = Find a reading
    .hint = a wall's number, door, corner
readings-read = Read
readings-line = { $wall } { $title }
    .wall = wall { $wall },
    .sought = wall { $wall }, { $title }
    .wanted = wanted
    .unread = not read

## Entering one reading.

reading = Reading
reading-none = There is nothing here to read now.
reading-take = Read it
    .now = Read it now
reading-again = Read it again
reading-number = reading { $number }
reading-pad = Enter the reading
reading-by = Read
reading-by-corner = degrees on a gauge
reading-by-sides = three sides
reading-onward = then back to the room
    .next = next: { $title }
    .then = then: { $title }
reading-done = { $title }: { $text }
reading-saved = { $title }: { $text }, saved here.
    .check = { $title }: { $note }
reading-held = Where it is held

## Every reading of one figure.

row-why = { $hint } Used for: { $why }.
row-readings = Every reading, as typed
    .none = Not read yet.
row-struck = struck
    .done = { $text }: struck
row-restored = { $text }: restored

## Rooms, and a first start.

rooms = Rooms
rooms-house = Another house
rooms-line =
    { $walls ->
        [one] { $walls } wall
       *[other] { $walls } walls
    }
    .open = { rooms-line }, not walked round yet
rooms-open = Open
    .what = { $room }: open
    .in-hand = In hand
rooms-rename = Another name for { $room }, or strike it
    .name = Its name
rooms-new = A new room in { $house }
    .name = its name
    .make = Make the room
first = A new notebook
    .told = Everything you write stays on this device and works without a signal.
first-invented = Look around in an invented room
    .done = An invented room
first-house = Name the house, and its year
    .hint = Any name you will know it by.
    .unnamed = My house
first-room = The first room
    .hint = Its name, such as Sewing room.

## A wall said in one breath.

breath = Say the wall
breath-text = What you read, in one breath
    .hint =
        { MEASURE() ->
            [millimeters] Touch the keyboard's microphone, or type: wall two, 2450, window at 770, 915 wide.
           *[other] Touch the keyboard's microphone, or type: wall two, ninety-six and three eighths, window at thirty and a quarter, thirty-six wide.
        }
breath-parts = Its parts
breath-doubt = Answer what is in doubt, or leave it out; then all of it is saved at once.
breath-save =
    { $count ->
        [0] Save the readings
        [one] Save { $count } reading
       *[other] Save { $count } readings
    }
breath-heard = heard: { $words }
breath-out = Leave out
    .what = Leave out { $words }

## Walking the room.

walk = Walk: { $room }
walk-back = Back to the walk
walk-first = Stand at the door
    .how = Stand at the door and face the wall that it is in. It is wall 1; the next one is to its right.
    .start = Start with wall 1
walk-wall = Wall { $wall }
    .faced = You face wall { $wall }
walk-so-far =
    { $walls ->
        [one] { $walls } wall so far
       *[other] { $walls } walls so far
    }
walk-turn = Corner at its right end
walk-turn-inside = inside
    .corner = inside corner
    .next = Next wall: inside corner
walk-turn-outside = outside
    .corner = outside corner
    .next = Next wall: outside corner
walk-door = Door in this wall
walk-window = Window in this wall
walk-cased = Opening without a door
walk-thing = Cabinet, tub, tile or other thing in the way
walk-floor = wall { $wall }, along the floor
walk-breath = Say all of it in one breath
walk-battens = Battens on this wall
walk-strike = Strike wall { $wall }
    .done = wall { $wall } struck
walk-close = Back at the first wall
    .done = { $room } is walked round
walk-reopen = There is another wall before the first
    .done = { $room } is open again
walk-forgotten = A wall was forgotten after this one
    .done = Another wall after wall { $wall }
walk-differs = Differs
    .what = What differs at the { $thing }
walk-take = Strike the { $thing }
walk-restore = Restore the { $thing }

## What one opening, or thing in the way, has otherwise.

opening = What differs
opening-title = The { $thing }, wall { $wall }
opening-told = Set here only what this one is to have otherwise than the others in { $room }.
opening-settings = What it differs in

## Something in the way of the base.

thing = In the way
thing-title = In the way, wall { $wall }
thing-put = { $thing } in wall { $wall }
thing-kind = What is it?
    .other = or in your own words
thing-once = One in an alcove is written on one wall alone: how deep it is tells the walls beside it.
thing-laid = Paper and paint end at its top. Round an alcove, write it on each of the walls.
thing-kind-cabinet = cabinet
thing-kind-tub = tub
thing-kind-hearth = hearth
thing-kind-radiator = radiator
thing-kind-register = register
thing-kind-pipe = pipe
thing-kind-outlet = outlet
thing-kind-stair_skirt = stair skirt
thing-kind-medicine_cabinet = medicine cabinet
thing-kind-tile = tile
thing-kind-wainscot = wainscot
thing-rake = Rake
    .hint = degrees from level, such as 37; empty for a square end
thing-rises = The stairs rise
thing-rises-left = to the left
thing-rises-right = to the right
thing-toe = Toe kick, height
    .hint = from the floor; empty as the room's, none if there is none
thing-toe-back = Toe kick, how far back
    .hint = from its face; empty as the room's
thing-base = The base
thing-base-stops = stops at it
    .said = base stops at it
thing-base-notch = is notched round it
    .said = base is notched round it
thing-base-over = runs past it
    .said = base runs past it

## Battens of one wall.

battens-title = Battens, wall { $wall }
battens = Battens
battens-setting-width = Width of a batten
    .hint = across its face
battens-setting-thickness = Thickness
    .hint = { $usual }, until you set it
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
