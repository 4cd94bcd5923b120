// @ts-check
// What the label of a paper, a film, a sheet or a paint says, and where and how it goes on a room. Names, no figures.
import { say } from "../words/words.js";
import { LENGTH, pick, plain, row, table } from "./said.js";

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
        row("paper.width"),
        row("paper.length"),
        row("paper.repeat"),
        plain("paper.drop"),
        row("paper.overlap"),
        plain("paper.tolerance"),
        plain("paper.price"),
      ],
    },
  },
  paint: {
    name: say("sort-paint"),
    label: {
      title: say("group-label"),
      rows: [plain("paint.coats"), plain("paint.spread", "m2/l"), plain("paint.loss"), plain("paint.keep", "l")],
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
      rows: [row("film.width"), row("film.length"), row("film.gap"), row("film.allowance"), plain("film.price")],
    },
  },
  sheet: {
    name: say("sort-sheet"),
    label: {
      title: say("group-label"),
      picks: [pick("sheet.turnable", ["no", "yes"])],
      rows: [row("sheet.width"), row("sheet.length"), row("sheet.kerf"), row("sheet.gap"), plain("sheet.price")],
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
        row("cover.from_floor"),
        row("cover.from_ceiling"),
        row("cover.height"),
        row("cover.trim"),
        row("cover.turn"),
        row("cover.sliver"),
        row("cover.mark"),
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
        row("cover.from_floor", "painted.from_floor"),
        row("cover.from_ceiling", "painted.from_ceiling"),
        row("cover.height"),
        plain("cover.growth"),
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
