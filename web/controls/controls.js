// @ts-check
// What can be touched: one wide button for the thing to do, quieter ones beside it, fields, and choices of one among few.
import { html, useId } from "./ui.js";
import { useOnce } from "./once.js";

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
 * One of a few, all in view.
 * @param {{name: string, legend: any, choices: any[][], value: string, onPick: (value: string) => void}} props
 *   `choices` are pairs of value and words
 */
export function Choice({ name, legend, choices, value, onPick }) {
  return html`<fieldset class="choice">
    <legend>${legend}</legend>
    <div class="choice-row">
      ${choices.map(
        ([key, words]) => html`<label class="pick" key=${key}>
        <input type="radio" name=${name} value=${key} checked=${key === value} onChange=${() => onPick(key)} />
        <span>${words}</span>
      </label>`,
      )}
    </div>
  </fieldset>`;
}

/** Looking for a line of a long list. @param {{label: string, hint: string, value: string, onInput: (text: string) => void, onEnter?: () => void, none?: boolean}} props */
export function Find({ label, hint, value, onInput, onEnter, none }) {
  return html`<div class="find"><${Field} ...${{ label, value, onInput, onEnter }} holds=${hint} hint="" wrong=${none ? "Nothing here is called that." : ""} /></div>`;
}
