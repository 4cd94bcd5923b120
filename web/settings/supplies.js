// @ts-check
// What the supplies of a room are counted by, group by group, each under the prefix of its settings. Names, no figures.
import { say } from "../words/words.js";
import { LENGTH, lengthRow, pick, plainRow, table, yesOrNo } from "./said.js";

/**
 * Something counted by the package: how much one does, and what it costs.
 * @param {string} key @param {string} title @param {string} [unit] of how much, where that is metric
 */
const sundry = (key, title, unit = "") => ({
  title,
  picks: [yesOrNo(`${key}.wanted`)],
  rows: [plainRow(`${key}.covers`, unit), plainRow(`${key}.price`)],
});

/** @type {Record<string, import("./trims.js").Group>} */
export const SUPPLIES = {
  caulk: {
    title: say("group-caulk"),
    picks: [yesOrNo("caulk.wanted"), pick("caulk.shape", ["fillet", "round", "square"])],
    rows: [lengthRow("caulk.size"), plainRow("caulk.tube", "ml"), plainRow("caulk.waste"), plainRow("caulk.price")],
  },
  adhesive: {
    title: say("group-adhesive"),
    picks: [yesOrNo("adhesive.wanted")],
    rows: [
      lengthRow("adhesive.size"),
      lengthRow("adhesive.apart"),
      plainRow("adhesive.tube", "ml"),
      plainRow("adhesive.waste"),
      plainRow("adhesive.price"),
    ],
  },
  nail: {
    title: say("group-nail"),
    picks: [yesOrNo("nail.wanted")],
    rows: [lengthRow("nail.board"), lengthRow("nail.bite"), lengthRow("nail.apart"), lengthRow("nail.crown")],
    tables: [
      table("nail.boxes", [
        ["length", say("cell-length"), "text", "", "must", LENGTH],
        ["count", say("cell-in_box"), "numeric", "1"],
        ["price", say("cell-price"), "decimal"],
      ]),
    ],
  },
  filler: sundry("filler", say("group-filler")),
  sandpaper: sundry("sandpaper", say("group-sandpaper"), "m2"),
  tape: sundry("tape", say("group-tape"), "m"),
  paste: sundry("paste", say("group-paste"), "m2"),
  cloth: sundry("cloth", say("group-cloth"), "m2"),
};
