// @ts-check
// How things stand, in words: is the engine awake, is there a signal, how much is saved here, and does the page
// open without a signal.
import { html } from "../controls/ui.js";
import { useNotebook } from "../notebook/notebook.js";
import { useCover } from "./cover.js";

export function Status() {
  const { engine, sync, counts } = useNotebook();
  const { short } = useCover();
  return html`<span class="status">${statusWords({ engine, sync, counts, cover: short })}</span>`;
}

/**
 * `pending` are saved here and not yet on the laptop.
 * @param {{engine: string, sync: string, counts: {pending: number}, cover: string}} facts
 */
export function statusWords({ engine, sync, counts, cover }) {
  const words = [sync, counts.pending ? `${counts.pending} saved here` : "", cover];
  if (engine !== "awake") words.unshift(engine === "waking" ? "engine waking" : "engine not running");
  return words.filter(Boolean).join(" · ");
}
