// @ts-check
// The pad: two rows of five digits, and the words for a hair under or over the mark. It only ever changes a text.
import { html } from "../controls/ui.js";
import { Button } from "../controls/controls.js";
import { useOnce } from "../controls/once.js";
import { addDigit, rubOut, setLean, splitPlain } from "./typing.js";

export const DIGITS = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "0"];
const LEANS = [
  ["shy", "a hair shy"],
  ["", "on the mark"],
  ["strong", "a hair strong"],
];

/** @param {{text: string, onText: (text: string) => void}} props */
export function Digits({ text, onText }) {
  return html`<div class="digits" role="group" aria-label="digits">
    ${DIGITS.map((digit) => html`<${Button} kind="key" onTouch=${() => onText(addDigit(text, digit))} key=${digit}>${digit}<//>`)}
  </div>`;
}

/** @param {{text: string, onText: (text: string) => void}} props */
export function Leans({ text, onText }) {
  const lean = splitPlain(text)?.lean ?? /\b(shy|strong)\s*$/.exec(text)?.[1] ?? "";
  return html`<div class="leans" role="group" aria-label="how it lies on the mark">
    ${LEANS.map(
      ([word, words]) => html`<${Button} pressed=${word === lean} onTouch=${() => onText(setLean(text, word))}
      key=${words}>${words}<//>`,
    )}
  </div>`;
}

/**
 * The text itself, to type into or dictate, with the way to take back.
 * @param {{text: string, onText: (text: string) => void, onEnter: () => void, label: string}} props
 */
export function Written({ text, onText, onEnter, label }) {
  const once = useOnce(onEnter);
  const enter = (/** @type {KeyboardEvent} */ event) => {
    if (event.key !== "Enter") return;
    event.preventDefault();
    once();
  };
  return html`<div class="written">
    <input type="text" aria-label=${label} placeholder=${label} autocomplete="off" autocapitalize="off" spellcheck=${false}
      enterkeyhint="done" value=${text} onKeyDown=${enter}
      onInput=${(event) => onText(event.currentTarget.value)} />
    <${Button} disabled=${!text} onTouch=${() => onText(rubOut(text))}>Rub out<//>
  </div>`;
}
