// @ts-check
// The screens by the word of their address. The survey is there from the first paint on; the others come right after it,
// or when one goes to them, whichever is sooner.
import { html, useEffect, useState } from "../controls/ui.js";
import { Survey } from "./survey/screen.js";

/** @type {Record<string, () => Promise<any>>} */
const LATER = {
  pieces: async () => (await import("./pieces/screen.js")).Pieces,
  boards: async () => (await import("./boards/screen.js")).Boards,
  cover: async () => (await import("./cover/screen.js")).Cover,
  supplies: async () => (await import("./supplies/screen.js")).Supplies,
  sums: async () => (await import("./sums/screen.js")).Sums,
  house: async () => (await import("./house/screen.js")).House,
  photo: async () => (await import("./photo/screen.js")).PhotoInHand,
};

/** A screen that is nothing to see until it has come; one that cannot come fails as any other, and is tried again so. */
function later(/** @type {() => Promise<any>} */ bring) {
  /** @type {any} */
  let come = null;
  return function Later(/** @type {{place: string[]}} */ { place }) {
    const [Screen, setScreen] = useState(() => come);
    const [wrong, setWrong] = useState(/** @type {unknown} */ (null));
    useEffect(() => {
      const show = (/** @type {any} */ found) => setScreen(() => (come = found));
      if (!Screen) bring().then(show, setWrong);
    }, []);
    if (wrong) throw wrong;
    return Screen ? html`<${Screen} place=${place} />` : null;
  };
}

/** No prototype: an address may name anything, `constructor` too. @type {Record<string, any>} */
const SCREENS = {
  __proto__: null,
  survey: Survey,
  ...Object.fromEntries(Object.entries(LATER).map(([name, bring]) => [name, later(bring)])),
};

/** The screen that an address names, or the survey. @param {string} name */
export const screenOf = (name) => SCREENS[name] ?? Survey;

/** Asks for all that are not here yet, so that a signal lost from now on is missed by none. */
export function bringAll() {
  for (const bring of Object.values(LATER)) bring().catch(() => {}); // who goes there is told
}
