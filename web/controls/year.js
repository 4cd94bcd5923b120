// @ts-check
// The year a house was built, or nothing where nobody knows: old paint is taken more care of then.
import { html } from "./ui.js";
import { Field } from "./controls.js";
import { say } from "../words/words.js";

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
  const wrong = /^\d{0,4}$/.test(built.trim()) ? "" : say("year-built.wrong");
  return html`<${Field} label=${say("year-built")} value=${built} onInput=${onBuilt} mode="numeric" wrong=${wrong}
    hint=${say("year-built.hint")} />`;
}
