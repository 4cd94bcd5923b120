// @ts-check
// The pad: two rows of five digits, and the words for a hair under or over the mark. It only ever changes a text.
import { html } from "../controls/ui.js";
import { Button } from "../controls/controls.js";
import { useOnce } from "../controls/once.js";
import { say } from "../words/words.js";
import { addDigit, rubOut, setLean, splitPlain } from "./typing.js";

export const DIGITS = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "0"];
/** As the text has them, with none between. */
const LEANS = ["shy", "", "strong"];

/** @param {{text: string, onText: (text: string) => void}} props */
export function Digits({ text, onText }) {
  return html`<div class="digits" role="group" aria-label=${say("pad-digits")}>
    ${DIGITS.map((digit) => html`<${Button} kind="key" onTouch=${() => onText(addDigit(text, digit))} key=${digit}>${digit}<//>`)}
  </div>`;
}

/** @param {{text: string, onText: (text: string) => void}} props */
export function Leans({ text, onText }) {
  const lean = splitPlain(text)?.lean ?? /\b(shy|strong)\s*$/.exec(text)?.[1] ?? "";
  return html`<div class="leans" role="group" aria-label=${say("pad-lean")}>
    ${LEANS.map(
      (one) => html`<${Button} pressed=${one === lean} onTouch=${() => onText(setLean(text, one))} key=${one}>
        ${say(`pad-lean-${one || "none"}`)}<//>`,
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
    <${Button} disabled=${!text} onTouch=${() => onText(rubOut(text))}>${say("pad-rub-out")}<//>
  </div>`;
}
