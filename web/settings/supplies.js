// @ts-check
// What the supplies of a room are counted by, group by group, each under the prefix of its settings. Names, no figures.
import { say } from "../words/words.js";
import { LENGTH, pick, plain, row, table, wanted } from "./said.js";

/**
 * Something counted by the package: how much one does, and what it costs.
 * @param {string} key @param {string} title @param {string} [unit] of how much, where that is metric
 */
const sundry = (key, title, unit = "") => ({
  title,
  picks: [wanted(`${key}.wanted`)],
  rows: [plain(`${key}.covers`, unit), plain(`${key}.price`)],
});

/** @type {Record<string, import("./trims.js").Group>} */
export const SUPPLIES = {
  caulk: {
    title: say("group-caulk"),
    picks: [wanted("caulk.wanted"), pick("caulk.shape", ["fillet", "round", "square"])],
    rows: [row("caulk.size"), plain("caulk.tube", "ml"), plain("caulk.waste"), plain("caulk.price")],
  },
  adhesive: {
    title: say("group-adhesive"),
    picks: [wanted("adhesive.wanted")],
    rows: [
      row("adhesive.size"),
      row("adhesive.apart"),
      plain("adhesive.tube", "ml"),
      plain("adhesive.waste"),
      plain("adhesive.price"),
    ],
  },
  nail: {
    title: say("group-nail"),
    picks: [wanted("nail.wanted")],
    rows: [row("nail.board"), row("nail.bite"), row("nail.apart"), row("nail.crown")],
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
