// @ts-check
// What can be set, group by group: name in the journal, words on the screen, what it is for. Names, words, no figures.

/**
 * A `row` is [name, label, hint], with "plain" after it where what is written is no length; a `pick` is [name, legend, choices]; `boards` is [name, of what].
 * @typedef {{title: string, picks?: [string, string, string[][]][], rows?: string[][], boards?: string[][]}} Group
 */

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
    ],
    rows: [
      ["base.height", "Base, height", "the board's width, floor to top"],
      ["base.thickness", "Base, thickness", THICK],
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
      ["casing.wanted", "Casing, wanted", WANTED],
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
  window: {
    title: "Windows",
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
    picks: [["extension.wanted", "Jamb extension, wanted", WANTED]],
    rows: [
      ["extension.thickness", "Jamb extension, thickness", THICK],
      ["extension.step", "Jamb extension, step", "how far it stands back from the jamb's face"],
    ],
    boards: [["extension.stock", "jamb stock"]],
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
    ],
    INSIDE.slice(0, 2),
  ),
  ends: {
    title: "Ends of moldings",
    picks: [
      [
        "open_end",
        "An end in the open",
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
    ],
    rows: [
      ["kerf", "Kerf", "what the blade takes away"],
      ["end_trim", "Trimmed from each board", "both ends together, before the first piece"],
      ["joint.gap", "Gap a joint may show", "a piece whose readings leave more is measured in place"],
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

/** All that a house or a room may set, and what one opening may. */
export const OF_ROOM = Object.values({ ...BASE, ...OPENINGS, ...MOLDINGS, ...STOCK, ...CUTTING });
export const OF_OPENING = Object.values(OPENINGS);

/** What each setting is called, for any screen that has to name one. */
export const SETTING_NAMES = new Map(
  OF_ROOM.flatMap(({ picks = [], rows = [], boards = [] }) => [
    ...[...picks, ...rows].map(([name, label]) => /** @type {[string, string]} */ ([name, label])),
    ...boards.map(([name, of]) => /** @type {[string, string]} */ ([name, `Boards of ${of}`])),
  ]),
);
