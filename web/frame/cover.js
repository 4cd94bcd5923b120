// @ts-check
// Offline cover in words: whether this device has the whole page and opens it without the laptop, and what to do if not.
import { useNotebook } from "../notebook/notebook.js";
import { useWatched } from "../controls/watch.js";

/**
 * `short` stands on every screen; `words` under House.
 * @typedef {{ ready: boolean, short: string, words: string }} Cover
 */

/** @type {Record<string, Cover>} */
const TROUBLES = {
  untrusted: {
    ready: false,
    short: "not kept: address not trusted",
    words:
      "Not ready for no signal: a browser keeps a page only from an address that it trusts, and this one is not. " +
      "Open the page by the laptop’s https address: House on the laptop shows it, with the steps for this device.",
  },
  unable: {
    ready: false,
    short: "not kept by this browser",
    words:
      "Not ready for no signal: this browser keeps no page. It is an old one, or this is a private window. A private " +
      "window keeps nothing: readings go when it is closed. Open the page in an ordinary window of a browser of the " +
      "last few years, or save the notebook to a file before you close this one.",
  },
  full: {
    ready: false,
    short: "not kept: no room left",
    words:
      "Not ready for no signal: there is no room left on this device for the page, about 20 MB. Free some space, then " +
      "open the page again near the laptop.",
  },
};

/**
 * @param {{ kept: boolean, progress: { kept: number, of: number } | null, trouble: string }} update
 * @returns {Cover}
 */
export function coverOf({ kept, progress, trouble }) {
  if (kept) return { ready: true, short: "opens offline", words: "Ready for no signal: this device has the whole page." };
  if (trouble) return TROUBLES[trouble] ?? failed(trouble);
  const files = progress ? `${progress.kept} of ${progress.of} files` : "";
  return {
    ready: false,
    short: files ? `${files} kept` : "getting ready", // no longer than what follows it, or the page would move
    words: `Being made ready for no signal${files && `, ${files}`}: stay near the laptop until it is done.`,
  };
}

/** @param {string} why @returns {Cover} */
function failed(why) {
  return {
    ready: false,
    short: "not kept yet",
    words: `Not ready for no signal: the page could not be fetched whole (${why}). It is tried again when you come back to it near the laptop.`,
  };
}

export function useCover() {
  const { update } = useNotebook().services;
  return coverOf(
    useWatched(
      (listen) => update.onAvailable(listen),
      () => update.standing,
    ),
  );
}
