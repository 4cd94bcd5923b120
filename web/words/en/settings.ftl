## What can be set, group by group; a setting by its name in the journal, its choices and what it is for beside it.

settings-look = to look at
settings-count = { $count } set
settings-said = { $what }: { $value }

# What counts where nothing is set: what is usual, or what the house or the room has.
above-usual =
    .none = until you set it
    .value = { $value }, until you set it
    .back = No longer set
    .again = { $what }: no longer set
above-house =
    .none = in the house
    .value = { $value }, in the house
    .back = As in the house
    .again = { $what }: as in the house
above-room =
    .none = in the room
    .value = { $value }, in the room
    .back = As in the room
    .again = { $what }: as in the room

setting-wanted =
    .yes = yes
    .no = no
    .none = there is none
setting-inside =
    .cope = coped
    .miter = mitered
    .butt = butted
setting-measured = measure it: boards are thinner than their name

## Rows of a table, each cell by what stands over it.

cell-area = area
cell-at = from left
cell-foot = foot
cell-head = head
cell-height = height
cell-in_box = in a box
cell-length = length
cell-many = how many
cell-name = name
cell-openings = doors, windows
cell-perimeter = once round
cell-price = price
cell-profile = profile
cell-room = room
cell-size = size
cell-wall = wall
cell-width = width
table-boards =
    .title = Boards of { $of }
    .hint =
        { MEASURE() ->
            [millimeters] Each length once, as 3.6 m or 3600. Price in dollars, 0 for a board on hand. How many, or empty for as many as wanted.
           *[other] Each length once, as 12 ft or 144. Price in dollars, 0 for a board on hand. How many, or empty for as many as wanted.
        }
    .save = Save the boards
    .heard = Save the boards of { $of }
    .cell = { $cell }, board { $row } of { $of }
table-other-stock =
    .title = Boards of other profiles
    .hint = The profile as it is named under Pieces or Boards. { table-boards.hint }
    .save = Save the boards
    .heard = Save the boards of other profiles
    .cell = { $cell }, board { $row } of other profiles
table-next-rooms =
    .title = Rooms to come
    .hint =
        { MEASURE() ->
            [millimeters] Rough sizes do: once round, as 14 m; how many doors and windows; floor to ceiling, as 2.4 m.
           *[other] Rough sizes do: once round, as 46 ft; how many doors and windows; floor to ceiling, as 8 ft.
        }
    .save = Save the rooms to come
    .heard = Save the rooms to come
    .cell = { $cell }, room { $row } to come

## Of a house, a room or an opening.

group-lengths = How lengths are shown
setting-lengths = Lengths are shown in
    .inches = inches
    .feet-and-inches = feet and inches
    .millimeters = millimeters

group-base = Base
setting-base-wanted = Base, wanted
setting-base-inside = Base, inside corners
setting-base-floor = Base on a floor that falls
    .follow = lies on it
    .scribe = level, and scribed
    .taper = level, and ripped to a taper
setting-bow-beyond = On a wall that bows more
    .shim = straight, and shimmed
    .scribe = planed to it
setting-scarf-place = Where boards are joined
    .plan = where boards cost least
    .even = short boards long
    .offcut = longest offcut
setting-base-height = Base, height
    .hint = the board's width, floor to top
setting-base-thickness = Base, thickness
    .hint = { setting-measured }
setting-bow-spring = Base and rails, sprung to a bow
    .hint =
        { MEASURE() ->
            [millimeters] in the middle of 2.4 m, at most: a longer board gives more
           *[other] in the middle of 8 ft, at most: a longer board gives more
        }
setting-light-from = Light comes from
    .hint = windows, none, or a wall's number: joints open away from it
setting-base-scarf = Base, scarf
    .hint = degrees from square, where boards are joined; of every molding
setting-base-stock = base

group-casing = Casing
setting-casing-wanted = Casing, wanted
setting-head = Casing, at the head
    .mitered = mitered
    .butted = butted over the legs
setting-casing-width = Casing, width
    .hint = across the face of a leg
setting-casing-thickness = Casing, thickness
    .hint = at its outer edge, where base meets it
setting-reveal = Reveal
    .hint = how far the casing stands back from the jamb's edge
setting-casing-head_width = Casing, width of the head
    .hint = where it is another than the legs'; or none
setting-casing-overhang = Casing, overhang
    .hint = how far a butted head runs past each leg
setting-casing-clearance = Casing, kept clear below
    .hint = under the legs, for a floor still to come
setting-casing-stock = casing
setting-casing-head_stock = casing for heads, where they are wider

group-plinth = Plinths
setting-plinth-height = Plinth, height
    .hint = of the block a leg stands on; or none
setting-plinth-width = Plinth, width
    .hint = the leg's, if none is said
setting-plinth-thickness = Plinth, thickness
    .hint = as thick as casing and base, or more
setting-plinth-stock = plinths

group-dressed = Blocks, built-up heads, backband
setting-block-size = Corner block, size
    .hint = each side of it, on a butted head's legs; or none
setting-block-thickness = Corner block, thickness
    .hint = { setting-measured }
setting-fillet-thickness = Fillet, thickness
    .hint = under a butted head; or none
setting-fillet-overhang = Fillet, overhang
    .hint = past the head, at each end
setting-head_cap-thickness = Head cap, thickness
    .hint = on a butted head; or none
setting-head_cap-overhang = Head cap, overhang
    .hint = past the head, at each end
setting-backband-width = Backband, width
    .hint = round the outer edge of mitered casing; 0 for none
setting-backband-thickness = Backband, thickness
    .hint = { setting-measured }
setting-block-stock = corner blocks
setting-fillet-stock = fillet
setting-head_cap-stock = head cap
setting-backband-stock = backband

group-window = Windows
setting-window-style = Windows, below
    .stool = stool and apron
    .picture = framed as a picture
setting-stool-thickness = Stool, thickness
    .hint = heights are read to where it lies, and it is taken off the legs
setting-stool-horn = Stool, horn
    .hint = how far it runs past the casing, at its ends and in front
setting-apron-wanted = Apron under the stool, wanted
setting-apron-width = Apron, width
    .hint = the casing's, if none is said
setting-apron-thickness = Apron, thickness
    .hint = the casing's, if none is said
setting-stool-stock = stool
setting-apron-stock = apron, if it is not casing

group-extension = Jamb extension of windows
setting-extension-wanted = Jamb extension, wanted
setting-extension-thickness = Jamb extension, thickness
    .hint = { setting-measured }
setting-extension-step = Jamb extension, step
    .hint = how far it stands back from the jamb's face
setting-extension-stock = jamb stock

group-beside = Beside another window
setting-window-mulled = One casing with the next window to its right
    .no = each has its own
    .yes = they share one

group-cap = Base cap
setting-cap-wanted = Base cap, wanted
setting-cap-inside = Base cap, inside corners
setting-cap-width = Base cap, width
    .hint = out from the wall
setting-cap-thickness = Base cap, thickness
    .hint = { setting-measured }
setting-cap-stock = base cap

group-shoe = Shoe
setting-shoe-wanted = Shoe, wanted
setting-shoe-inside = Shoe, inside corners
setting-shoe-height = Shoe, height
    .hint = up the face of the base
setting-shoe-thickness = Shoe, thickness
    .hint = out from the face of the base
setting-shoe-stock = shoe

group-chair_rail = Chair rail
setting-chair_rail-wanted = Chair rail, wanted
setting-chair_rail-inside = Chair rail, inside corners
setting-chair_rail-height = Chair rail, height
    .hint = from the floor to its lower edge
setting-chair_rail-width = Chair rail, width
    .hint = across its face
setting-chair_rail-thickness = Chair rail, thickness
    .hint = { setting-measured }
setting-chair_rail-stock = chair rail

group-picture_rail = Picture rail
setting-picture_rail-wanted = Picture rail, wanted
setting-picture_rail-inside = Picture rail, inside corners
setting-picture_rail-height = Picture rail, height
    .hint = from the floor to its lower edge
setting-picture_rail-width = Picture rail, width
    .hint = across its face
setting-picture_rail-thickness = Picture rail, thickness
    .hint = { setting-measured }
setting-picture_rail-stock = picture rail

group-crown = Crown
setting-crown-wanted = Crown, wanted
setting-crown-inside = Crown, inside corners
setting-crown-width = Crown, width
    .hint = across its whole face, lying flat
setting-crown-spring = Crown, spring
    .hint = degrees between its back and the wall
setting-crown-spring_in = Crown, cut long
    .hint = where it is coped at both ends, to spring in
setting-crown-stock = crown

group-blocking = Blocking for crown
setting-blocking-wanted = Blocking for crown, wanted
setting-blocking-gap = Blocking, behind the crown
    .hint = how far its face stands off the crown's back
setting-blocking-stock = crown blocking

group-toe = Toe kicks of cabinets
    .one = Toe kick
setting-toe-height = Toe kick, height
    .hint = from the floor to where the cabinet comes forward; or none
setting-toe-depth = Toe kick, depth
    .hint = how far it is set back from the cabinet's face

group-ends = Ends of moldings
setting-open_end = A free end
    .square = cut square
    .returned = returned to the wall
setting-proud_end = An end thicker than the casing
    .eased = eased back to it
    .returned = returned to it
    .notched = notched over its edge
    .butted = butted, and left proud
setting-casing-arris = Base at an opening without casing
    .ended = ends at its arris
    .wrapped = is wrapped into it
setting-thing-end = An end at a tub or cabinet
    .square = cut square
    .scribed = scribed to it
setting-casing-corner = Two legs of casing in one corner
    .keeps = the left wall's keeps its width
    .yields = the left wall's gives way

group-other = Other profiles

group-wood = Wood
setting-wood-cut = Wood, sawn
    .flat = flat
    .quarter = quarter
setting-wood-species = Wood, species
    .hint = such as poplar: then wide stock tells how far it moves
setting-wood-from = Wood, moisture now
    .hint = per cent, when it is cut
setting-wood-to = Wood, moisture in use
    .hint = per cent, in the driest or dampest season

group-cutting = Cutting
setting-shared_miters = Two ends that lean alike, side by side
    .no = a cut for each
    .yes = one cut for both
setting-grain-order = Pieces of a board cut
    .no = as the saw is set
    .yes = as they hang, for the grain
setting-kerf = Kerf
    .hint = what the blade takes away
setting-end_trim = Trimmed from each board
    .hint = both ends together, before the first piece
setting-slack = Kept to spare on each board
    .hint = for a piece that comes out longer
setting-joint-gap = Gap a joint may show
    .hint = a piece whose readings leave more is measured in place
setting-cope-least = Shortest board to cope
    .hint = a shorter one runs through where its neighbor can be coped
setting-thing-clearance = Kept clear of a tub
    .hint = between a board's end and what stands on the floor, for the caulk
setting-saw-range = How far the saw turns
    .hint = degrees from square, by its own scale
setting-hold = Least length to hold
    .hint = a shorter piece is not cut by holding it at the saw
setting-spare_sticks = Spare boards
    .hint = how many more of each profile, against a spoilt cut
setting-overage = Overage, in per cent
    .hint = so much more length than the pieces are, for waste and bad ends

## By what supplies are counted.

group-caulk = Caulk
setting-caulk-wanted = Caulk, wanted
setting-caulk-shape = Caulk, shape of the bead
    .fillet = fillet
    .round = round
    .square = square
setting-caulk-size = Caulk, size of the bead
    .hint = a fillet's leg, a round one's diameter
setting-caulk-tube = Caulk, in a tube
    .hint =
        { MEASURE() ->
            [millimeters] such as 300
           *[other] such as 10.1 fl oz, 300 ml
        }
setting-caulk-waste = Caulk, wasted
    .hint = per cent of each tube
setting-caulk-price = Caulk, price
    .hint = of a tube, in dollars

group-adhesive = Adhesive
setting-adhesive-wanted = Adhesive, wanted
setting-adhesive-size = Adhesive, thickness of the bead
    .hint = as it comes out of the nozzle
setting-adhesive-apart = Adhesive, beads no more apart than
    .hint = on the back of a panel, and one at each edge
setting-adhesive-tube = Adhesive, in a tube
    .hint =
        { MEASURE() ->
            [millimeters] such as 290, 825
           *[other] such as 10 fl oz, 28 fl oz
        }
setting-adhesive-waste = Adhesive, wasted
    .hint = per cent of each tube
setting-adhesive-price = Adhesive, price
    .hint = of a tube, in dollars

group-nail = Nails
setting-nail-wanted = Nails, wanted
setting-nail-board = Plaster or board
    .hint = how thick it is, between the trim and the studs; 0 where there is none
setting-nail-bite = Nails, at least into the wood behind
    .hint = what holds
setting-nail-apart = Nails, apart
    .hint = along each piece; the distance of the studs
setting-nail-crown = Crown, thickness at its edges
    .hint = where a nail goes through it
table-nail-boxes =
    .title = Boxes of nails
    .hint = Each length that you can buy: then nails are chosen of these, and boxes are counted.
    .save = Save the boxes
    .heard = Save the boxes of nails
    .cell = { $cell }, box { $row } of nails

group-filler = Filler
setting-filler-wanted = Filler, wanted
setting-filler-covers = Filler, one does
    .hint = how many holes; a tub
setting-filler-price = Filler, price
    .hint = of one, in dollars

group-sandpaper = Sandpaper
setting-sandpaper-wanted = Sandpaper, wanted
setting-sandpaper-covers = Sandpaper, one does
    .hint =
        { MEASURE() ->
            [millimeters] square meters of trim; a sheet
           *[other] square feet of trim; a sheet
        }
setting-sandpaper-price = Sandpaper, price
    .hint = of one, in dollars

group-tape = Masking tape
setting-tape-wanted = Masking tape, wanted
setting-tape-covers = Masking tape, one does
    .hint =
        { MEASURE() ->
            [millimeters] meters; a roll
           *[other] feet; a roll
        }
setting-tape-price = Masking tape, price
    .hint = of one, in dollars

group-paste = Paste
setting-paste-wanted = Paste, wanted
setting-paste-covers = Paste, one does
    .hint =
        { MEASURE() ->
            [millimeters] square meters of paper, by the label; a pail
           *[other] square feet of paper, by the label; a gallon
        }
setting-paste-price = Paste, price
    .hint = of one, in dollars

group-cloth = Drop cloths
setting-cloth-wanted = Drop cloths, wanted
setting-cloth-covers = Drop cloths, one does
    .hint =
        { MEASURE() ->
            [millimeters] square meters of floor; a cloth
           *[other] square feet of floor; a cloth
        }
setting-cloth-price = Drop cloths, price
    .hint = of one, in dollars

## Of one thing in the way.

group-stairs = Rake of the stairs
setting-thing-rises = The stairs rise
    .left = to the left
    .right = to the right
setting-thing-rake = Rake
    .hint = degrees from level, such as 37, or none: then the base ends square

setting-here-toe_height = Toe kick, height
    .hint = from the floor to where it comes forward; none if there is none
setting-here-toe_depth = Toe kick, depth
    .hint = how far it is set back from the face

group-behind = Paper and paint behind it
setting-thing-behind = The wall behind it
    .usual = as is usual
    .covered = covered
    .bare = left as it is

group-at = Boards that end at it
setting-here-end = Their ends
setting-here-clearance = Kept clear of it
    .hint = between a board's end and it, for the caulk

## What the label of a paper, a paint, a film or a sheet says.

group-label = What its label says

sort-paper = Wallpaper
setting-paper-match = Match
    .free = free
    .straight = straight
    .half-drop = half-drop
    .drop = a drop over more strips
setting-paper-hanging = Hung with
    .paste = paste on the paper
    .paste-the-wall = paste on the wall
    .peel-and-stick = sticks by itself
setting-paper-width = Width of a roll
    .hint = of pasted paper, once it has swelled
setting-paper-length = Length of a roll
    .hint =
        { MEASURE() ->
            [millimeters] such as 10.05 m
           *[other] such as 33 ft, 10.05 m
        }
setting-paper-repeat = Repeat
    .hint = from one mark of the pattern to the next
setting-paper-drop = Strips until the pattern is level again
    .hint = of a drop match
setting-paper-overlap = Overlap
    .hint = of each strip over the one before it
setting-paper-tolerance = Tolerance
    .hint = per cent that a roll may be short or narrow
setting-paper-price = Price of a roll
    .hint = in dollars

sort-paint = Paint
setting-paint-coats = Coats
    .hint = primer is a paint of its own, of one coat
setting-paint-spread = How far it spreads
    .hint =
        { MEASURE() ->
            [millimeters] square meters a coat, of a liter
           *[other] square feet a coat, of a gallon; or such as 10 m2/l
        }
setting-paint-loss = Lost in tray and roller
    .hint = per cent
setting-paint-keep = Kept for touching up
    .hint = such as 1 qt
table-paint-cans =
    .title = Cans it is sold in
    .hint = Each size once, as 1 gal or 1 qt, with its price in dollars: the cheapest that hold enough are chosen.
    .save = Save the cans it is sold in
    .heard = Save the cans it is sold in
    .cell = { $cell }, can { $row } it is sold in

sort-film = Film for glass
setting-film-turnable = May a pane's film lie sideways on the roll?
    .no = no, its top stays up
    .yes = yes
setting-film-width = Width of the roll
    .hint = what lies across it
setting-film-length = Length of a roll
    .hint =
        { MEASURE() ->
            [millimeters] nothing where it is cut off by length
           *[other] nothing where it is cut off by the foot
        }
setting-film-gap = Left open at every edge
    .hint = what the knife runs along
setting-film-allowance = Trimmed off
    .hint = each way, in all
setting-film-price = Price
    .hint =
        { MEASURE() ->
            [millimeters] of a roll, in dollars; or by the meter, as 11.20 / m
           *[other] of a roll, or of a foot, in dollars
        }

sort-sheet = Panels from sheets
setting-sheet-turnable = May a panel lie sideways on the sheet?
    .no = no, its top stays up
    .yes = yes
setting-sheet-width = Width of a sheet
    .hint = such as 48
setting-sheet-length = Length of a sheet
    .hint =
        { MEASURE() ->
            [millimeters] such as 2440, or 2.44 m
           *[other] such as 96, or 8 ft
        }
setting-sheet-kerf = Kerf
    .hint = what the blade takes away
setting-sheet-gap = Left open at every edge
    .hint = for the wood to move
setting-sheet-price = Price of a sheet
    .hint = in dollars

## Where and how it goes on.

group-height = How high, and how it is cut
setting-cover-from_floor = Begins above the floor
    .hint = the top of the chair rail, or of the base, if nothing is said
setting-cover-from_ceiling = Ends below the ceiling
    .hint = where a rail is in the way; the foot of the crown, if nothing is said
setting-cover-height = Floor to ceiling
    .hint = for walls whose own height is not read
setting-cover-trim = Trimmed off each strip
    .hint = at top and foot together
setting-cover-turn = Turned round an inside corner
    .hint = under the next part of the strip
setting-cover-sliver = No strip narrower than
    .hint = beside a corner or an opening
setting-cover-mark = From the top down to the pattern's mark
    .hint = on strip 1

group-panels = Panels between rails, in place of whole walls
table-cover-panels =
    .title = Panels
    .hint = The wall by its number, from its left end to the panel, and how wide; foot and head above the floor.
    .save = Save the panels
    .heard = Save the panels
    .cell = { $cell }, panel { $row }

group-own = Something of your own, and how it is counted
setting-painted-from_floor = Walls, begins above the floor
    .hint = such as the top of a wainscot; the floor, if nothing is said
setting-painted-from_ceiling = Walls, ends below the ceiling
    .hint = the ceiling, if nothing is said
setting-cover-growth = What curves add to trim
    .hint = per cent of its face and edge
table-cover-surfaces =
    .title = What it goes on
    .hint =
        { MEASURE() ->
            [millimeters] walls, ceiling or trim, counted from the survey; or a name of your own, with its area in square meters: door, 3.7.
           *[other] walls, ceiling or trim, counted from the survey; or a name of your own, with its area: door, 40 sq ft.
        }
    .save = Save what it goes on
    .heard = Save what it goes on
    .cell = { $cell }, line { $row } of what it goes on

group-panes = The panes
table-cover-panes =
    .title = Panes
    .hint =
        { MEASURE() ->
            [millimeters] Where one was read more than once, write all: 508, 509.5, 508.
           *[other] Where one was read more than once, write all: 20, 20 1/16, 20.
        }
    .save = Save the panes
    .heard = Save the panes
    .cell = { $cell }, pane { $row }

group-sheets = The panels
table-cover-sheets =
    .title = Panels
    .hint =
        { MEASURE() ->
            [millimeters] Where one was read more than once, write all: 508, 509.5, 508.
           *[other] Where one was read more than once, write all: 20, 20 1/16, 20.
        }
    .save = Save the panels
    .heard = Save the panels
    .cell = { $cell }, panel { $row }
