// @ts-check
// Notes on a screen: what is wrong, in red and in words; and cautions, each said once where it matters.
import { html } from "./ui.js";

/** @param {{problems: {key: string, message: string}[]}} props */
export function Problems({ problems }) {
  if (!problems?.length) return null;
  return html`<ul class="problems" aria-label="Needs attention">
    ${problems.map(({ message }) => html`<li key=${message}>${message}</li>`)}
  </ul>`;
}

/** @param {{cautions: string[]}} props */
export function Cautions({ cautions }) {
  if (!cautions?.length) return null;
  return html`<ul class="cautions" aria-label="Cautions">${cautions.map((words) => html`<li key=${words}>${words}</li>`)}</ul>`;
}

/** A refusal of the engine's. @param {{error: {message: string} | null}} props */
export function Refusal({ error }) {
  return error ? html`<p class="wrong" role="alert">${error.message}</p>` : null;
}
