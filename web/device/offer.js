// @ts-check
// The browser's offer to keep the page as an app, heard from the start of the page on: it is made once, before anybody
// looks for it.
import { Listeners } from "../listeners.js";

/** @type {Listeners<[]>} */
const listeners = new Listeners();
/** The browser's offer, good for one time; and whether it was installed from this page. */
let standing = { offer: /** @type {any} */ (null), done: false };

/** @param {Partial<typeof standing>} news */
function become(news) {
  standing = { ...standing, ...news };
  listeners.tell();
}

export function hearOffer() {
  addEventListener("beforeinstallprompt", (event) => {
    event.preventDefault(); // else some browsers lay it over the lower half, where a reading is entered
    become({ offer: event });
  });
  addEventListener("appinstalled", () => become({ offer: null, done: true }));
}

export const offered = {
  onChange: (/** @type {() => void} */ listen) => listeners.add(listen),
  standing: () => standing,
  /** Shows it, and has it no more. */
  take() {
    const { offer } = standing;
    become({ offer: null });
    offer?.prompt();
  },
};
