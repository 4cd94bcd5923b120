// @ts-check
// What the label of a paper, a film, a sheet or a paint says, and where and how it goes on a room. Names, words, no figures.

/** @typedef {import("./trims.js").Group} Group */

const TURNABLE = [
  ["no", "no, its top stays up"],
  ["yes", "yes"],
];

/** By sort: what it is called, and what its label says. @type {Record<string, {name: string, label: Group}>} */
export const ARTICLES = {
  paper: {
    name: "Wallpaper",
    label: {
      title: "What its label says",
      picks: [
        [
          "paper.match",
          "Match",
          [
            ["free", "free"],
            ["straight", "straight"],
            ["half-drop", "half-drop"],
            ["drop", "a drop over more strips"],
          ],
        ],
        [
          "paper.hanging",
          "Hung with",
          [
            ["paste", "paste on the paper"],
            ["paste the wall", "paste on the wall"],
            ["peel and stick", "sticks by itself"],
          ],
        ],
      ],
      rows: [
        ["paper.width", "Width of a roll", "of pasted paper, once it has swelled"],
        ["paper.length", "Length of a roll", "such as 33 ft, 10.05 m"],
        ["paper.repeat", "Repeat", "from one mark of the pattern to the next"],
        ["paper.drop", "Strips until the pattern is level again", "of a drop match", "plain"],
        ["paper.overlap", "Overlap", "of each strip over the one before it"],
        ["paper.tolerance", "Tolerance", "per cent that a roll may be short or narrow", "plain"],
        ["paper.price", "Price of a roll", "in dollars", "plain"],
      ],
    },
  },
  paint: {
    name: "Paint",
    label: {
      title: "What its label says",
      rows: [
        ["paint.coats", "Coats", "primer is a paint of its own, of one coat", "plain"],
        ["paint.spread", "A gallon spreads over", "square feet a coat; or such as 10 m2/l", "plain"],
        ["paint.loss", "Lost in tray and roller", "per cent", "plain"],
        ["paint.keep", "Kept for touching up", "such as 1 qt", "plain"],
      ],
      tables: [
        [
          "paint.cans",
          "Cans it is sold in",
          "Each size once, as 1 gal or 1 qt, with its price in dollars: the cheapest that hold enough are chosen.",
          [
            ["size", "size", "text", "", "must"],
            ["price", "price", "decimal"],
          ],
        ],
      ],
    },
  },
  film: {
    name: "Film for glass",
    label: {
      title: "What its label says",
      picks: [["film.turnable", "May a pane's film lie sideways on the roll?", TURNABLE]],
      rows: [
        ["film.width", "Width of the roll", "what lies across it"],
        ["film.length", "Length of a roll", "nothing where it is cut off by the foot"],
        ["film.gap", "Left open at every edge", "what the knife runs along"],
        ["film.allowance", "Trimmed off", "each way, in all"],
        ["film.price", "Price", "of a roll, or of a foot, in dollars", "plain"],
      ],
    },
  },
  sheet: {
    name: "Panels from sheets",
    label: {
      title: "What its label says",
      picks: [["sheet.turnable", "May a panel lie sideways on the sheet?", TURNABLE]],
      rows: [
        ["sheet.width", "Width of a sheet", "such as 48"],
        ["sheet.length", "Length of a sheet", "such as 96, or 8 ft"],
        ["sheet.kerf", "Kerf", "what the blade takes away"],
        ["sheet.gap", "Left open at every edge", "for the wood to move"],
        ["sheet.price", "Price of a sheet", "in dollars", "plain"],
      ],
    },
  },
};

const SIZES = [
  ["name", "name", "text"],
  ["widths", "width", "text", "", "must"],
  ["heights", "height", "text", ""],
];
const SEVERAL = "Where one was read more than once, write all: 20, 20 1/16, 20.";

/** Where and how each sort goes on. @type {Record<string, Group[]>} */
export const COVERS = {
  paper: [
    {
      key: "height",
      title: "How high, and how it is cut",
      rows: [
        ["cover.from_floor", "Begins above the floor", "the top of the base, if nothing is said"],
        ["cover.from_ceiling", "Ends below the ceiling", "where a rail or crown is in the way"],
        ["cover.height", "Floor to ceiling", "for walls whose own height is not read"],
        ["cover.trim", "Trimmed off each strip", "at top and foot together"],
        ["cover.turn", "Turned round an inside corner", "under the next part of the strip"],
        ["cover.sliver", "No strip narrower than", "beside a corner or an opening"],
        ["cover.mark", "From the top down to the pattern’s mark", "on strip 1"],
      ],
    },
    {
      key: "panels",
      title: "Panels between rails, in place of whole walls",
      tables: [
        [
          "cover.panels",
          "Panels",
          "The wall by its number, from its left end to the panel, and how wide; foot and head above the floor.",
          [
            ["name", "name", "text"],
            ["wall", "wall", "text", "", "must"],
            ["at", "from left", "text", ""],
            ["width", "width", "text", ""],
            ["bottom", "foot", "text", ""],
            ["top", "head", "text", ""],
          ],
        ],
      ],
    },
  ],
  paint: [
    {
      key: "own",
      title: "Something of your own, and how it is counted",
      rows: [
        ["cover.height", "Floor to ceiling", "for walls whose own height is not read"],
        ["cover.growth", "What curves add to trim", "per cent of its face and edge", "plain"],
      ],
      tables: [
        [
          "cover.surfaces",
          "What it goes on",
          "walls, ceiling or trim, counted from the survey; or a name of your own, with its area: door, 40 sq ft.",
          [
            ["name", "name", "text", "", "must"],
            ["area", "area", "text"],
          ],
        ],
      ],
    },
  ],
  film: [{ key: "panes", title: "The panes", tables: [["cover.panes", "Panes", SEVERAL, SIZES]] }],
  sheet: [
    {
      key: "sheets",
      title: "The panels",
      tables: [["cover.sheets", "Panels", SEVERAL, [...SIZES, ["count", "how many", "numeric"]]]],
    },
  ],
};
