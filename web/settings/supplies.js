// @ts-check
// What the supplies of a room are counted by, group by group, each under the prefix of its settings. Names, words, no figures.

const WANTED = [
  ["yes", "yes"],
  ["no", "no"],
];

/**
 * Something counted by the package: how much one does, and what it costs.
 * @param {string} key @param {string} title @param {string} covers
 */
const sundry = (key, title, covers) => ({
  title,
  picks: /** @type {[string, string, string[][]][]} */ ([[`${key}.wanted`, `${title}, wanted`, WANTED]]),
  rows: [
    [`${key}.covers`, `${title}, one does`, covers, "plain"],
    [`${key}.price`, `${title}, price`, "of one, in dollars", "plain"],
  ],
});

/** @type {Record<string, import("./trims.js").Group>} */
export const SUPPLIES = {
  caulk: {
    title: "Caulk",
    picks: [
      ["caulk.wanted", "Caulk, wanted", WANTED],
      [
        "caulk.shape",
        "Caulk, shape of the bead",
        [
          ["fillet", "fillet"],
          ["round", "round"],
          ["square", "square"],
        ],
      ],
    ],
    rows: [
      ["caulk.size", "Caulk, size of the bead", "a fillet's leg, a round one's diameter"],
      ["caulk.tube", "Caulk, in a tube", "such as 10.1 fl oz, 300 ml", "plain"],
      ["caulk.waste", "Caulk, wasted", "per cent of each tube", "plain"],
      ["caulk.price", "Caulk, price", "of a tube, in dollars", "plain"],
    ],
  },
  adhesive: {
    title: "Adhesive",
    picks: [["adhesive.wanted", "Adhesive, wanted", WANTED]],
    rows: [
      ["adhesive.size", "Adhesive, thickness of the bead", "as it comes out of the nozzle"],
      ["adhesive.apart", "Adhesive, beads no more apart than", "on the back of a panel, and one at each edge"],
      ["adhesive.tube", "Adhesive, in a tube", "such as 10 fl oz, 28 fl oz", "plain"],
      ["adhesive.waste", "Adhesive, wasted", "per cent of each tube", "plain"],
      ["adhesive.price", "Adhesive, price", "of a tube, in dollars", "plain"],
    ],
  },
  nail: {
    title: "Nails",
    picks: [["nail.wanted", "Nails, wanted", WANTED]],
    rows: [
      ["nail.board", "Plaster or board", "how thick it is, between the trim and the studs; 0 where there is none"],
      ["nail.bite", "Nails, at least into the wood behind", "what holds"],
      ["nail.apart", "Nails, apart", "along each piece; the distance of the studs"],
      ["nail.crown", "Crown, thickness at its edges", "where a nail goes through it"],
    ],
    tables: [
      [
        "nail.boxes",
        "Boxes of nails",
        "Each length that you can buy: then nails are chosen of these, and boxes are counted.",
        [
          ["length", "length", "text", "", "must"],
          ["count", "in a box", "numeric", "1"],
          ["price", "price", "decimal"],
        ],
      ],
    ],
  },
  filler: sundry("filler", "Filler", "how many holes; a tub"),
  sandpaper: sundry("sandpaper", "Sandpaper", "square feet of trim; a sheet"),
  tape: sundry("tape", "Masking tape", "feet; a roll"),
  paste: sundry("paste", "Paste", "square feet of paper, by the label; a gallon"),
  cloth: sundry("cloth", "Drop cloths", "square feet of floor; a cloth"),
};
