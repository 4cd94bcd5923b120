// @ts-check
// Notes on a screen: what is wrong, in red and in words.
import { html } from "./ui.js";
import { say } from "../words/words.js";

/** @param {{problems: {key: string, message: string}[]}} props */
export function Problems({ problems }) {
  if (!problems?.length) return null;
  return html`<ul class="problems" aria-label=${say("problems")}>
    ${problems.map(({ message }) => html`<li key=${message}>${message}</li>`)}
  </ul>`;
}

/** A refusal of the engine's. @param {{error: {message: string} | null}} props */
export function Refusal({ error }) {
  return error ? html`<p class="wrong" role="alert">${error.message}</p>` : null;
}
