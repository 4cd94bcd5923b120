// @ts-check
// The screens by the word of their address. The survey is there from the first paint on; the others come later.
import { later } from "../later.js";
import { Survey } from "./survey/screen.js";

/** No prototype: an address may name anything, `constructor` too. @type {Record<string, any>} */
const SCREENS = {
  __proto__: null,
  survey: Survey,
  pieces: later(async () => (await import("./pieces/screen.js")).Pieces),
  boards: later(async () => (await import("./boards/screen.js")).Boards),
  cover: later(async () => (await import("./cover/screen.js")).Cover),
  supplies: later(async () => (await import("./supplies/screen.js")).Supplies),
  sums: later(async () => (await import("./sums/screen.js")).Sums),
  house: later(async () => (await import("./house/screen.js")).House),
  photo: later(async () => (await import("./photo/screen.js")).PhotoInHand),
};

/** The screen that an address names, or the survey. @param {string} name */
export const screenOf = (name) => SCREENS[name] ?? Survey;
