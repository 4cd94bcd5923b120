// @ts-check
// The tape: a length written, said, or touched together from digits, the inch and a hair under or over its mark.
import { html } from "../controls/ui.js";
import { useAnswer } from "../notebook/notebook.js";
import { Inch } from "./inch.js";
import { Digits, Leans, Written } from "./pad.js";
import { setMark, splitPlain } from "./typing.js";

/** @param {{text: string, onText: (text: string) => void, onEnter: () => void}} props */
export function Tape({ text, onText, onEnter }) {
  return html`
    <${Written} label="type it or say it" text=${text} onText=${onText} onEnter=${onEnter} />
    <${Leans} text=${text} onText=${onText} />
    <${InchOf} text=${text} onText=${onText} />
    <${Digits} text=${text} onText=${onText} />`;
}

/** @param {{text: string, onText: (text: string) => void}} props */
export function InchOf({ text, onText }) {
  const plain = splitPlain(text);
  const whole = plain?.whole ?? "";
  const { answer } = useAnswer(whole ? { ask: "sum", text: `${whole} + 1` } : null);
  return html`<${Inch} mark=${plain?.mark ?? ""} chosen=${Boolean(text)} whole=${whole || "0"}
    next=${whole ? (answer?.length?.shown ?? "").replace('"', "") : "1"} onMark=${(mark) => onText(setMark(text, mark))} />`;
}
