## Photos of a thing, small; and one as large as the screen, with what is drawn and pinned on it.

# What a photo is of, inside a sentence.
photo-of-wall = wall { $wall }
photo-of-thing = the { $thing } in wall { $wall }
photo-of-piece = piece { $letter }
photo-of-gone = something that is not in the house now

photo-words = Photo of { $subject }, { $day }
    .named = Photo of { $subject }, { $day }: { $name }

photos = Photos of { $subject }
    .struck = Struck photos
photo-take = Take a photo
    .heard = Take a photo of { $subject }
    .done = Photo of { $subject }
    .smaller = A photo is being made smaller. You need not wait for it.
photo-choose = Choose pictures
    .heard = Choose pictures of { $subject }

photo-here = not on the laptop yet
photo-away = not on this device yet
photo-broken = { $photo }: this browser cannot show it.
photo-unreadable =
    This browser cannot read that picture. Take it with “{ photo-take }”, or have your phone save it as JPEG and choose it again.
photo-undrawn =
    The picture could not be made smaller: this device has too little memory free. Close other apps, then try again.

## One photo in hand.

photo-none = There is no photo here now.
    .title = A photo
photo-struck = struck
photo-strike = Strike this photo
photo-restore = Restore this photo
    .heard = Restore: { $photo }

photo-caption = Caption
    .holds = what it shows
    .save = Save the caption
    .done = { $photo }: caption

photo-draw = Draw on it
    .told = Draw with a finger. Each line is kept when you lift it.
    .line = { $photo }: a line
    .done = Done
photo-line-back = Take back the last line
    .done = { $photo }: the last line taken back
photo-line-again = Bring a line back
    .done = { $photo }: a line brought back

## Figures pinned on it.

pins = Figures pinned on it
    .struck = Struck pins
    .choose = Figures to pin
    .none = What this photo is of has no figures yet.
pins-while-awake = The figures are being worked out.
pins-while-waking = Engine waking: it knows the figures.
pins-while-failed = The engine is not running, which knows the figures.

pin = Pin a figure
    .where = Touch where it was taken, then choose the figure.
    .spot = Where the pin goes: the arrow keys move it
    .leave = Leave it
    .done = { $figure }: pinned
    .of = a figure of { $subject }
    .unread = not read yet
pin-move = Move
    .heard = Move the pin: { $figure }
    .where = Touch where “{ $figure }” was taken.
    .keep = Keep it here
    .done = { $figure }: pin moved
pin-strike = Strike the pin: { $figure }
    .done = { $figure }: pin struck
pin-restore = Restore the pin: { $figure }
    .done = { $figure }: pin restored
