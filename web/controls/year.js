// @ts-check
// The year a house was built, or nothing where nobody knows: old paint is taken more care of then.
import { html } from "./ui.js";
import { Field } from "./controls.js";

/** Four digits, or nothing. @param {string} text */
export function isYear(text) {
  return /^(\d{4})?$/.test(text.trim());
}

/** @param {string} text one that is a year @returns {number | null} */
export function parseYear(text) {
  return text.trim() ? Number(text) : null;
}

/** @param {{built: string, onBuilt: (text: string) => void}} props */
export function Year({ built, onBuilt }) {
  const wrong = /^\d{0,4}$/.test(built.trim()) ? "" : "Write the year in four digits, such as 1936, or leave it empty.";
  return html`<${Field} label="Year it was built" value=${built} onInput=${onBuilt} mode="numeric" wrong=${wrong}
    hint="Leave it empty if nobody knows. Older paint needs care." />`;
}
