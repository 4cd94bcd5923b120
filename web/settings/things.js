// @ts-check
// What one thing in the way may have otherwise than its room: stairs their rake, any other its toe kick, its ends, and the wall behind it.
import { say } from "../words/words.js";
import { lengthRow, pick, plainRow } from "./said.js";

/** @type {Record<string, import("./trims.js").Group>} */
export const THINGS = {
  stairs: {
    title: say("group-stairs"),
    picks: [pick("thing.rises", ["left", "right"])],
    rows: [plainRow("thing.rake")],
  },
  toe: {
    title: say("group-toe.one"),
    rows: [lengthRow("toe.height", "here.toe_height"), lengthRow("toe.depth", "here.toe_depth")],
  },
  at: {
    title: say("group-at"),
    picks: [pick("thing.end", ["square", "scribed"], "here.end", "thing.end")],
    rows: [lengthRow("thing.clearance", "here.clearance")],
  },
  behind: {
    title: say("group-behind"),
    picks: [pick("thing.behind", ["usual", "covered", "bare"])],
  },
};
