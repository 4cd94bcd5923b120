// @ts-check
// What can be touched: one wide button for the thing to do, quieter ones beside it, fields, and choices of one among few.
import { html, useEffect, useId, useState } from "./ui.js";
import { useOnce } from "./once.js";
import { say } from "../words/words.js";

/**
 * @param {{onTouch?: () => void, kind?: "main" | "side" | "plain" | "key", next?: string, type?: string, label?: string,
 *   pressed?: boolean, disabled?: boolean, children?: any}} props
 *   `next` is a second, smaller line: what comes after
 */
export function Button({ onTouch, kind = "side", next, type = "button", label, pressed, disabled = false, children }) {
  const touch = useOnce(onTouch);
  return html`<button class="button button-${kind}" type=${type} onClick=${touch} aria-label=${label}
    aria-pressed=${pressed === undefined ? null : String(pressed)} disabled=${disabled}>
    <span>${children}</span>${next ? html`<small>${next}</small>` : null}
  </button>`;
}

/**
 * @param {{label: string, value: string, onInput: (text: string) => void, hint?: any, wrong?: string, mode?: string, holds?: string,
 *   onEnter?: () => void}} props
 */
export function Field({ label, value, onInput, hint, wrong, mode = "text", holds, onEnter }) {
  const id = useId(); // by its label two rooms' fields would share one, and a label would lead to the other
  const enter = useOnce(onEnter);
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <input id=${id} type="text" inputmode=${mode} autocomplete="off" autocapitalize="off" spellcheck=${false} value=${value}
      placeholder=${holds} aria-invalid=${wrong ? "true" : null} aria-describedby="${id}-hint"
      onInput=${(event) => onInput(event.currentTarget.value)}
      onKeyDown=${(/** @type {KeyboardEvent} */ event) => {
        if (event.key !== "Enter" || !onEnter) return;
        event.preventDefault();
        enter();
      }} />
    <p id="${id}-hint" class=${wrong ? "wrong" : "pencil"}>${wrong || hint}</p>
  </div>`;
}

/**
 * One of a few, all in view. What was picked shows until `value` says the same, for a page is drawn anew while that is
 * written, and would show it turned back; where it came to nothing, what stands shows again.
 * @param {{name: string, legend: any, choices: any[][], value: string, onPick: (value: string) => any}} props
 *   `choices` are pairs of value and words; `onPick` resolves to nothing where nothing was written
 */
export function Choice({ name, legend, choices, value, onPick }) {
  const [picked, setPicked] = useState(/** @type {string | null} */ (null));
  useEffect(() => setPicked(null), [value]);
  const pick = async (/** @type {string} */ key) => {
    setPicked(key);
    const done = await onPick(key);
    if (!done) setPicked((last) => (last === key ? null : last)); // another may have been picked since
  };
  return html`<fieldset class="choice">
    <legend>${legend}</legend>
    <div class="choice-row">
      ${choices.map(
        ([key, words]) => html`<label class="pick" key=${key}>
        <input type="radio" name=${name} value=${key} checked=${key === (picked ?? value)} onChange=${() => pick(key)} />
        <span>${words}</span>
      </label>`,
      )}
    </div>
  </fieldset>`;
}

/**
 * Whether a line is looked for by these words: each stands somewhere in it, and a number as a number, wall 1 not in wall 12.
 * @param {string} text @param {string} words
 */
export function isFound(text, words) {
  const here = text.toLowerCase();
  const numbers = here.match(/\d+/g) ?? [];
  const sought = words.toLowerCase().split(/\s+/).filter(Boolean);
  return sought.every((word) => (/^\d+$/.test(word) ? numbers.includes(word) : here.includes(word)));
}

/** More lines than this of one sort are searched and jumped through. */
export const MANY = 8;

/** The letter that a name is looked up by; its line says it as `data-initial`. @param {string} name */
export const initial = (name) => name.trim().charAt(0).toUpperCase();

/** As names are looked up: Attic 9 before Attic 10. @param {{name: string}} one @param {{name: string}} other */
export const byName = (one, other) => one.name.localeCompare(other.name, undefined, { numeric: true });

/** A long list jumped through: touching a letter leads to the first line of it. @param {{names: string[]}} props */
export function Jump({ names }) {
  const letters = [...new Set(names.map(initial))].toSorted();
  const jump = (/** @type {string} */ letter) => {
    const line = [...document.querySelectorAll("[data-initial]")].find((one) => one.getAttribute("data-initial") === letter);
    line?.closest("details")?.setAttribute("open", "");
    const touched = /** @type {HTMLElement | null | undefined} */ (line?.matches("a, button") ? line : line?.querySelector("a, button"));
    touched?.focus();
    line?.scrollIntoView({ block: "center" });
  };
  if (letters.length < 2) return null;
  return html`<nav class="choice-row numbers" aria-label=${say("jump")}>
    ${letters.map((letter) => html`<${Button} onTouch=${() => jump(letter)} key=${letter}>${letter}<//>`)}
  </nav>`;
}

/** Looking for a line of a long list. @param {{label: string, hint: string, value: string, onInput: (text: string) => void, onEnter?: () => void, none?: boolean}} props */
export function Find({ label, hint, value, onInput, onEnter, none }) {
  return html`<div class="find"><${Field} ...${{ label, value, onInput, onEnter }} holds=${hint} hint="" wrong=${none ? say("find-none") : ""} /></div>`;
}
