// @ts-check
// How things stand, in words: is the engine awake, is there a signal, how much is saved here.
import { html } from "./ui.js";
import { useNotebook } from "./notebook.js";

export function Status() {
  const { engine, sync, counts } = useNotebook();
  return html`<span class="status">${statusWords({ engine, sync, counts })}</span>`;
}

/** `pending` are saved here and not yet on the laptop. @param {{engine: string, sync: string, counts: {pending: number}}} facts */
export function statusWords({ engine, sync, counts }) {
  const words = [sync, counts.pending ? `${counts.pending} saved here` : ""];
  if (engine !== "awake") words.unshift(engine === "waking" ? "engine waking" : "engine not running");
  return words.filter(Boolean).join(" · ");
}
