// @ts-check
// What the label of a paper, a film, a sheet or a paint says, and where and how it goes on a room. Names, no figures.
import { say } from "../words/words.js";
import { LENGTH, lengthRow, pick, plainRow, table } from "./said.js";

/** @typedef {import("./trims.js").Group} Group */

/** By sort: what it is called, and what its label says. @type {Record<string, {name: string, label: Group}>} */
export const ARTICLES = {
  paper: {
    name: say("sort-paper"),
    label: {
      title: say("group-label"),
      picks: [
        pick("paper.match", ["free", "straight", "half-drop", "drop"]),
        pick("paper.hanging", ["paste", "paste the wall", "peel and stick"]),
      ],
      rows: [
        lengthRow("paper.width"),
        lengthRow("paper.length"),
        lengthRow("paper.repeat"),
        plainRow("paper.drop"),
        lengthRow("paper.overlap"),
        plainRow("paper.tolerance"),
        plainRow("paper.price"),
      ],
    },
  },
  paint: {
    name: say("sort-paint"),
    label: {
      title: say("group-label"),
      rows: [plainRow("paint.coats"), plainRow("paint.spread", "m2/l"), plainRow("paint.loss"), plainRow("paint.keep", "l")],
      tables: [
        table("paint.cans", [
          ["size", say("cell-size"), "text", "", "must", "l"],
          ["price", say("cell-price"), "decimal"],
        ]),
      ],
    },
  },
  film: {
    name: say("sort-film"),
    label: {
      title: say("group-label"),
      picks: [pick("film.turnable", ["no", "yes"])],
      rows: [lengthRow("film.width"), lengthRow("film.length"), lengthRow("film.gap"), lengthRow("film.allowance"), plainRow("film.price")],
    },
  },
  sheet: {
    name: say("sort-sheet"),
    label: {
      title: say("group-label"),
      picks: [pick("sheet.turnable", ["no", "yes"])],
      rows: [lengthRow("sheet.width"), lengthRow("sheet.length"), lengthRow("sheet.kerf"), lengthRow("sheet.gap"), plainRow("sheet.price")],
    },
  },
};

const SIZES = [
  ["name", say("cell-name"), "text"],
  ["widths", say("cell-width"), "text", "", "must", LENGTH],
  ["heights", say("cell-height"), "text", "", "", LENGTH],
];

/** Where and how each sort goes on. @type {Record<string, Group[]>} */
export const COVERS = {
  paper: [
    {
      key: "height",
      title: say("group-height"),
      rows: [
        lengthRow("cover.from_floor"),
        lengthRow("cover.from_ceiling"),
        lengthRow("cover.height"),
        lengthRow("cover.trim"),
        lengthRow("cover.turn"),
        lengthRow("cover.sliver"),
        lengthRow("cover.mark"),
      ],
    },
    {
      key: "panels",
      title: say("group-panels"),
      tables: [
        table("cover.panels", [
          ["name", say("cell-name"), "text"],
          ["wall", say("cell-wall"), "text", "", "must"],
          ["at", say("cell-at"), "text", "", "", LENGTH],
          ["width", say("cell-width"), "text", "", "", LENGTH],
          ["bottom", say("cell-foot"), "text", "", "", LENGTH],
          ["top", say("cell-head"), "text", "", "", LENGTH],
        ]),
      ],
    },
  ],
  paint: [
    {
      key: "own",
      title: say("group-own"),
      rows: [
        lengthRow("cover.from_floor", "painted.from_floor"),
        lengthRow("cover.from_ceiling", "painted.from_ceiling"),
        lengthRow("cover.height"),
        plainRow("cover.growth"),
      ],
      tables: [
        table("cover.surfaces", [
          ["name", say("cell-name"), "text", "", "must"],
          ["area", say("cell-area"), "text", "", "", "m2"],
        ]),
      ],
    },
  ],
  film: [{ key: "panes", title: say("group-panes"), tables: [table("cover.panes", SIZES)] }],
  sheet: [
    {
      key: "sheets",
      title: say("group-sheets"),
      tables: [table("cover.sheets", [...SIZES, ["count", say("cell-many"), "numeric"]])],
    },
  ],
};
