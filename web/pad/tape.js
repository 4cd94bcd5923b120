// @ts-check
// The tape: a length written, said, or touched together from digits, the inch and a hair under or over its mark.
import { html } from "../controls/ui.js";
import { Button } from "../controls/controls.js";
import { MILLIMETERS, useAnswer, useLengths } from "../notebook/notebook.js";
import { say } from "../words/words.js";
import { Inch } from "./inch.js";
import { Digits, Leans, Written } from "./pad.js";
import { addDigit, setMark, splitPlain } from "./typing.js";

/** @param {{text: string, onText: (text: string) => void, onEnter: () => void}} props */
export function Tape({ text, onText, onEnter }) {
  const metric = useLengths() === MILLIMETERS;
  return html`
    <${Written} label=${say("pad-length")} text=${text} onText=${onText} onEnter=${onEnter} />
    ${metric ? null : html`<${Leans} text=${text} onText=${onText} />`}
    <${InchOf} text=${text} onText=${onText} />
    <${Digits} text=${text} onText=${onText} />`;
}

/** @param {{text: string, onText: (text: string) => void}} props */
export function InchOf({ text, onText }) {
  const metric = useLengths() === MILLIMETERS;
  const plain = splitPlain(text);
  const whole = plain?.whole ?? "";
  const { answer } = useAnswer(whole && !metric ? { ask: "sum", text: `${whole} + 1` } : null);
  // A metric tape is read as it is printed: its figures need a point, and no inch.
  if (metric) return html`<div class="leans"><${Button} onTouch=${() => onText(addDigit(text, "."))}>${say("pad-decimal")}<//></div>`;
  return html`<${Inch} mark=${plain?.mark ?? ""} chosen=${Boolean(text)} whole=${whole || "0"}
    next=${whole ? (answer?.length?.shown ?? "").replace('"', "") : "1"} onMark=${(mark) => onText(setMark(text, mark))} />`;
}
