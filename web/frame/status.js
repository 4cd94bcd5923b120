// @ts-check
// How things stand, in words: is the engine awake, is there a signal, how much is saved here, and does the page
// open without a signal.
import { html } from "../controls/ui.js";
import { useNotebook } from "../notebook/notebook.js";
import { say } from "../words/words.js";
import { useCover } from "./cover.js";

const BETWEEN = " · ";

export function Status() {
  const { engine, sync, counts } = useNotebook();
  const { short } = useCover();
  const words = statusWords({ engine, sync, counts, cover: short });
  const parts = words.split(BETWEEN).map((one, place) => (place ? `· ${one}` : one));
  return html`<p class="aside status" title=${words}>${parts.map((one, place) => html`${place ? " " : ""}<span>${one}</span>`)}</p>`;
}

/**
 * `pending` are saved here and not yet on the laptop. It has one line, and what that has no room for is left out, for to come
 * and go on a second would move the whole page under the finger: what matters most stands first. House tells all of it.
 * @param {{engine: string, sync: string, counts: {pending: number}, cover: string}} facts
 */
export function statusWords({ engine, sync, counts, cover }) {
  const pending = counts.pending ? say("status-pending", { count: counts.pending }) : "";
  if (engine === "waking") return [say("status-waking"), pending].filter(Boolean).join(BETWEEN);
  return [engine === "awake" ? "" : say("status-failed"), sync, pending, cover].filter(Boolean).join(BETWEEN);
}
