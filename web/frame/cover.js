// @ts-check
// Offline cover in words: whether this device has the whole page and opens it without the laptop, and what to do if not.
import { useNotebook } from "../notebook/notebook.js";
import { useWatched } from "../controls/watch.js";
import { say } from "../words/words.js";

/**
 * `short` stands on every screen; `words` under House.
 * @typedef {{ ready: boolean, short: string, words: string }} Cover
 */

const TROUBLES = ["untrusted", "unable", "full"];

/**
 * @param {{ kept: boolean, progress: { kept: number, of: number } | null, trouble: string }} update
 * @returns {Cover}
 */
export function coverOf({ kept, progress, trouble }) {
  if (kept) return told("ready");
  if (trouble) return told(TROUBLES.includes(trouble) ? trouble : "failed", { why: trouble });
  return progress ? told("counted", progress) : told("coming");
}

/** @param {string} name @param {{ why?: string, kept?: number, of?: number }} [facts] @returns {Cover} */
function told(name, { why = "", kept = 0, of = 0 } = {}) {
  const short = say(`offline-cover-${name}.short`, { kept, of });
  return { ready: name === "ready", short, words: say(`offline-cover-${name}`, { why, kept, of }) };
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
