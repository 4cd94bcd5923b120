// @ts-check
// What can be set, group by group: name in the journal, words on the screen, what it is for. Names, words, no figures.

/**
 * A `row` is [name, label, hint], with "plain" after it where what is written is no length; a `pick` is [name, legend, choices]; `boards` is [name, of what].
 * `ofWindows`: of no other opening; a `table` is [name, label, hint, cells], for rows of any kind.
 * @typedef {{key?: string, title: string, ofWindows?: boolean, picks?: [string, string, string[][]][], rows?: string[][], boards?: string[][], tables?: [string, string, string, string[][]][]}} Group
 */

import { SUPPLIES } from "./supplies.js";
import { THINGS } from "./things.js";

const WANTED = [
  ["yes", "yes"],
  ["no", "no"],
];
const INSIDE = [
  ["cope", "coped"],
  ["miter", "mitered"],
  ["butt", "butted"],
];
const THICK = "measure it: boards are thinner than their name";

/** @type {Record<string, Group>} */
const BASE = {
  base: {
    title: "Base",
    picks: [
      ["base.wanted", "Base, wanted", WANTED],
      [
        "base.inside",
        "Base, inside corners",
        INSIDE,
      ],
      [
        "base.floor",
        "Base on a floor that falls",
        [
          ["follow", "lies on it"],
          ["scribe", "level, and scribed"],
          ["taper", "level, and ripped to a taper"],
        ],
      ],
      [
        "bow.beyond",
        "On a wall that bows more",
        [
          ["shim", "straight, and shimmed"],
          ["scribe", "planed to it"],
        ],
      ],
      [
        "scarf.place",
        "Where boards are joined",
        [
          ["plan", "where boards cost least"],
          ["even", "short boards long"],
          ["offcut", "longest offcut"],
        ],
      ],
    ],
    rows: [
      ["base.height", "Base, height", "the board's width, floor to top"],
      ["base.thickness", "Base, thickness", THICK],
      ["bow.spring", "Base and rails, sprung to a bow", "in the middle of 8 ft, at most: a longer board gives more"],
      ["light.from", "Light comes from", "windows, none, or a wall's number: joints open away from it", "plain"],
      ["base.scarf", "Base, scarf", "degrees from square, where boards are joined; of every molding", "plain"],
    ],
    boards: [["base.stock", "base"]],
  },
};

/** What goes round an opening: these one opening may differ in from its room. @type {Record<string, Group>} */
const OPENINGS = {
  casing: {
    title: "Casing",
    picks: [
      ["casing.wanted", "Casing, wanted", [...WANTED, ["none", "there is none"]]],
      [
        "head",
        "Casing, at the head",
        [
          ["mitered", "mitered"],
          ["butted", "butted over the legs"],
        ],
      ],
    ],
    rows: [
      ["casing.width", "Casing, width", "across the face of a leg"],
      ["casing.thickness", "Casing, thickness", "at its outer edge, where base meets it"],
      ["reveal", "Reveal", "how far the casing stands back from the jamb's edge"],
      ["casing.head_width", "Casing, width of the head", "where it is another than the legs'; or none"],
      ["casing.overhang", "Casing, overhang", "how far a butted head runs past each leg"],
      ["casing.clearance", "Casing, kept clear below", "under the legs, for a floor still to come"],
    ],
    boards: [
      ["casing.stock", "casing"],
      ["casing.head_stock", "casing for heads, where they are wider"],
    ],
  },
  plinth: {
    title: "Plinths",
    rows: [
      ["plinth.height", "Plinth, height", "of the block a leg stands on; or none"],
      ["plinth.width", "Plinth, width", "the leg's, if none is said"],
      ["plinth.thickness", "Plinth, thickness", "as thick as casing and base, or more"],
    ],
    boards: [["plinth.stock", "plinths"]],
  },
  dressed: {
    title: "Blocks, built-up heads, backband",
    rows: [
      ["block.size", "Corner block, size", "each side of it, on a butted head's legs; or none"],
      ["block.thickness", "Corner block, thickness", THICK],
      ["fillet.thickness", "Fillet, thickness", "under a butted head; or none"],
      ["fillet.overhang", "Fillet, overhang", "past the head, at each end"],
      ["head_cap.thickness", "Head cap, thickness", "on a butted head; or none"],
      ["head_cap.overhang", "Head cap, overhang", "past the head, at each end"],
      ["backband.width", "Backband, width", "round the outer edge of mitered casing; 0 for none"],
      ["backband.thickness", "Backband, thickness", THICK],
    ],
    boards: [
      ["block.stock", "corner blocks"],
      ["fillet.stock", "fillet"],
      ["head_cap.stock", "head cap"],
      ["backband.stock", "backband"],
    ],
  },
  window: {
    title: "Windows",
    ofWindows: true,
    picks: [
      [
        "window.style",
        "Windows, below",
        [
          ["stool", "stool and apron"],
          ["picture", "framed as a picture"],
        ],
      ],
    ],
    rows: [
      ["stool.thickness", "Stool, thickness", "heights are read to where it lies, and it is taken off the legs"],
      ["stool.horn", "Stool, horn", "how far it runs past the casing, at its ends and in front"],
      ["apron.width", "Apron, width", "the casing's, if none is said"],
      ["apron.thickness", "Apron, thickness", "the casing's, if none is said"],
    ],
    boards: [
      ["stool.stock", "stool"],
      ["apron.stock", "apron, if it is not casing"],
    ],
  },
  extension: {
    title: "Jamb extension of windows",
    ofWindows: true,
    picks: [["extension.wanted", "Jamb extension, wanted", WANTED]],
    rows: [
      ["extension.thickness", "Jamb extension, thickness", THICK],
      ["extension.step", "Jamb extension, step", "how far it stands back from the jamb's face"],
    ],
    boards: [["extension.stock", "jamb stock"]],
  },
};

/** What is true of one opening alone, and no room has. @type {Record<string, Group>} */
const ONE_ONLY = {
  beside: {
    title: "Beside another window",
    ofWindows: true,
    picks: [
      [
        "window.mulled",
        "One casing with the next window to its right",
        [
          ["no", "each has its own"],
          ["yes", "they share one"],
        ],
      ],
    ],
  },
};

/** A molding that runs along the walls, wanted or not. @param {string} key @param {string} title @param {string[][]} rows */
const molding = (key, title, rows, inside = INSIDE) => ({
  title,
  picks: /** @type {[string, string, string[][]][]} */ ([
    [`${key}.wanted`, `${title}, wanted`, WANTED],
    [`${key}.inside`, `${title}, inside corners`, inside],
  ]),
  rows: rows.map(([name, label, hint, ...plain]) => [`${key}.${name}`, `${title}, ${label}`, hint, ...plain]),
  boards: [[`${key}.stock`, title.toLowerCase()]],
});

/** @type {Record<string, Group>} */
const MOLDINGS = {
  cap: molding("cap", "Base cap", [
    ["width", "width", "out from the wall"],
    ["thickness", "thickness", THICK],
  ]),
  shoe: molding("shoe", "Shoe", [
    ["height", "height", "up the face of the base"],
    ["thickness", "thickness", "out from the face of the base"],
  ]),
  chair_rail: molding("chair_rail", "Chair rail", [
    ["height", "height", "from the floor to its lower edge"],
    ["width", "width", "across its face"],
    ["thickness", "thickness", THICK],
  ]),
  picture_rail: molding("picture_rail", "Picture rail", [
    ["height", "height", "from the floor to its lower edge"],
    ["width", "width", "across its face"],
    ["thickness", "thickness", THICK],
  ]),
  crown: molding(
    "crown",
    "Crown",
    [
      ["width", "width", "across its whole face, lying flat"],
      ["spring", "spring", "degrees between its back and the wall", "plain"],
      ["spring_in", "cut long", "where it is coped at both ends, to spring in"],
    ],
    INSIDE.slice(0, 2),
  ),
  blocking: {
    title: "Blocking for crown",
    picks: [["blocking.wanted", "Blocking for crown, wanted", WANTED]],
    rows: [["blocking.gap", "Blocking, behind the crown", "how far its face stands off the crown's back"]],
    boards: [["blocking.stock", "crown blocking"]],
  },
  toe: {
    title: "Toe kicks of cabinets",
    rows: [
      ["toe.height", "Toe kick, height", "from the floor to where the cabinet comes forward; or none"],
      ["toe.depth", "Toe kick, depth", "how far it is set back from the cabinet's face"],
    ],
  },
  ends: {
    title: "Ends of moldings",
    picks: [
      [
        "open_end",
        "A free end",
        [
          ["square", "cut square"],
          ["returned", "returned to the wall"],
        ],
      ],
      [
        "proud_end",
        "An end thicker than the casing",
        [
          ["eased", "eased back to it"],
          ["returned", "returned to it"],
          ["notched", "notched over its edge"],
          ["butted", "butted, and left proud"],
        ],
      ],
      [
        "casing.arris",
        "Base at an opening without casing",
        [
          ["ended", "ends at its arris"],
          ["wrapped", "is wrapped into it"],
        ],
      ],
      [
        "thing.end",
        "An end at a tub or cabinet",
        [
          ["square", "cut square"],
          ["scribed", "scribed to it"],
        ],
      ],
      [
        "casing.corner",
        "Two legs of casing in one corner",
        [
          ["keeps", "the left wall's keeps its width"],
          ["yields", "the left wall's gives way"],
        ],
      ],
    ],
  },
};

/** @type {Record<string, Group>} */
const CUTTING = {
  cutting: {
    title: "Cutting",
    picks: [
      [
        "shared_miters",
        "Two ends that lean alike, side by side",
        [
          ["no", "a cut for each"],
          ["yes", "one cut for both"],
        ],
      ],
      [
        "grain.order",
        "Pieces of a board cut",
        [
          ["no", "as the saw is set"],
          ["yes", "as they hang, for the grain"],
        ],
      ],
    ],
    rows: [
      ["kerf", "Kerf", "what the blade takes away"],
      ["end_trim", "Trimmed from each board", "both ends together, before the first piece"],
      ["slack", "Kept to spare on each board", "for a piece that comes out longer"],
      ["joint.gap", "Gap a joint may show", "a piece whose readings leave more is measured in place"],
      ["cope.least", "Shortest board to cope", "a shorter one runs through where its neighbor can be coped"],
      ["thing.clearance", "Kept clear of a tub", "between a board's end and what stands on the floor, for the caulk"],
      ["saw.range", "How far the saw turns", "degrees from square, by its own scale", "plain"],
      ["hold", "Least length to hold", "a shorter piece is not cut by holding it at the saw"],
      ["spare_sticks", "Spare boards", "how many more of each profile, against a spoilt cut", "plain"],
      ["overage", "Overage, in per cent", "so much more length than the pieces are, for waste and bad ends", "plain"],
    ],
  },
};

/** @type {Record<string, Group>} */
const STOCK = {
  other: { title: "Other profiles", boards: [["other.stock", "other profiles"]] },
  wood: {
    title: "Wood",
    picks: [
      [
        "wood.cut",
        "Wood, sawn",
        [
          ["flat", "flat"],
          ["quarter", "quarter"],
        ],
      ],
    ],
    rows: [
      ["wood.species", "Wood, species", "such as poplar: then wide stock tells how far it moves", "plain"],
      ["wood.from", "Wood, moisture now", "per cent, when it is cut", "plain"],
      ["wood.to", "Wood, moisture in use", "per cent, in the driest or dampest season", "plain"],
    ],
  },
};

/** A house shows its lengths in one way, in every room. @type {Record<string, Group>} */
const SHOWN = {
  lengths: {
    title: "How lengths are shown",
    picks: [
      [
        "lengths",
        "Lengths are shown in",
        [
          ["inches", "inches"],
          ["feet and inches", "feet and inches"],
          ["millimeters", "millimeters"],
        ],
      ],
    ],
  },
};

/** All that a house may set, a room, one opening, and one thing in the way. */
export const OF_HOUSE = keyed({ ...SHOWN, ...BASE, ...OPENINGS, ...MOLDINGS, ...STOCK, ...CUTTING, ...SUPPLIES });
export const OF_ROOM = keyed({ ...BASE, ...OPENINGS, ...MOLDINGS, ...STOCK, ...CUTTING, ...SUPPLIES });
export const OF_OPENING = keyed({ ...OPENINGS, ...ONE_ONLY });
export const OF_THING = keyed(THINGS);

/** @param {Record<string, Group>} groups @returns {Group[]} */
function keyed(groups) {
  return Object.entries(groups).map(([key, group]) => ({ key, ...group }));
}

/** What each setting is called, for any screen that has to name one. */
export const SETTING_NAMES = new Map(
  [...OF_THING, ...OF_ROOM, ...keyed(ONE_ONLY)].flatMap(({ picks = [], rows = [], boards = [], tables = [] }) => [
    ...[...picks, ...rows, ...tables].map(([name, label]) => /** @type {[string, string]} */ ([name, label])),
    ...boards.map(([name, of]) => /** @type {[string, string]} */ ([name, `Boards of ${of}`])),
  ]),
);
