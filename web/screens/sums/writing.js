// @ts-check
// A sum, typed or touched together, and what it comes to. What is begun stays while one looks at the tape, or for a
// figure to bring in; what is kept goes on the tape.
import { html, useRef, useState } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { link } from "../../controls/route.js";
import { recall, remember } from "../../controls/scrap.js";
import { useWide } from "../../controls/wide.js";
import { Figure } from "../../controls/figure.js";
import { Page } from "../../frame/page.js";
import { MILLIMETERS, useAnswer, useLengths, useNotebook } from "../../notebook/notebook.js";
import { saySum } from "../../notebook/write.js";
import { Inch } from "../../pad/inch.js";
import { DIGITS } from "../../pad/pad.js";
import { say } from "../../words/words.js";
import { shownOf, SumTape } from "./tape.js";

const BEGUN = "scantling sum";
/** What a line may end in for a figure to follow at once. */
const OPEN = /(^|[-+−×÷*/(]|\bof)\s*$/;
/** What is written, as the engine reads it; what it is called; and what stands on its button, if no word does. */
const SIGNS = [
  [" + ", "plus", "+"],
  [" − ", "minus", "−"],
  [" × ", "times", "×"],
  [" ÷ ", "divided", "÷"],
  ["(", "open", "("],
  [")", "close", ")"],
  ["' ", "feet"],
  ['"', "inches"],
  ["half of ", "half"],
  [" of ", "of"],
];
/** Where lengths are in millimeters. */
const METRIC_SIGNS = [
  ...SIGNS.filter(([, name]) => name !== "feet" && name !== "inches"),
  [" mm", "mm", "mm"],
  [".", "point"],
];
/** What Rub out takes back at once: a word, a mark, a sign, one digit. */
const LAST_SAID = /\s*(half of|of|mm|\d{1,2}\/\d{1,2}|\S)\s*$/;
const LAST_MARK = /(?:^|[^\d/])(\d{1,2}\/\d{1,2})$/;

/** Puts a text in the sum that is begun: as the next figure, added to what stands there. @param {string} text */
export function bring(text) {
  const begun = recall(BEGUN) ?? "";
  remember(BEGUN, OPEN.test(begun) ? `${begun}${text}` : `${begun.trimEnd()} + ${text}`);
}

/** Begins with a sum that was written before. @param {string} text */
export function beginWith(text) {
  remember(BEGUN, text);
}

export function Writing() {
  const { journal, act, room } = useNotebook();
  const wide = useWide();
  const [text, setText] = useState(() => recall(BEGUN) ?? "");
  const bare = useLengths() === MILLIMETERS ? { bare: MILLIMETERS } : {};
  const { answer, error } = useAnswer(text.trim() ? { ask: "sum", text: text.trim(), ...bare } : null);
  const last = useRef(text);
  const write = (/** @type {string} */ typed) => {
    last.current = typed;
    remember(BEGUN, typed);
    setText(typed);
  };
  const keep = async () => {
    if (!answer) return;
    const sum = answer.written;
    const said = { of: room?.id ?? null, text: sum, note: "" };
    const kept = await act(() => saySum(journal, said), say("sum-keep.done", { sum }));
    if (kept && last.current === text) write(""); // what was typed meanwhile is the next sum's
  };
  return html`<${Page} title=${say("screen-sums")} tab="sums" kind="sums">
    <section class="kept" aria-label=${say("tape")}><${SumTape} short=${!wide} /></section>
    <div class="ways">
      ${wide ? null : html`<a href=${link("sums", "tape")}>${say("tape.whole")}</a>`}
      ${room ? html`<a href=${link("sums", "bring")}>${say("sum-bring")}</a>` : null}
    </div>
    <section class="answer"><${Result} text=${text} answer=${answer} error=${error} /></section>
    <section class="pad" aria-label=${say("sum-write")}>
      <${SumPad} text=${text} onText=${write} onEnter=${keep} />
      <div class="last-row">
        <${Button} disabled=${!text} onTouch=${() => write("")}>${say("sum-clear")}<//>
        <${Button} kind="main" disabled=${!answer} onTouch=${keep}>${say("sum-keep")}<//>
      </div>
    </section>
  <//>`;
}

/** What it comes to and how it was taken; half a sum is not yet wrong. @param {{text: string, answer: any, error: any}} props */
function Result({ text, answer, error }) {
  const { engine } = useNotebook();
  if (text && engine !== "awake") {
    return html`<p class="pencil" role="status">${say(engine === "waking" ? "sums-waking" : "sums-failed")}</p>`;
  }
  if (error) return html`<p class=${/[\d)]\s*$/.test(text) ? "wrong" : "pencil"} role="status">${error.message}</p>`;
  if (!answer) return null;
  const notes = [answer.remainder_said, ...answer.taken].filter(Boolean);
  return html`<p class="hero" role="status">
      <${Figure} shown=${shownOf(answer)} size=${answer.area ? "row" : "big"} unit=${Boolean(answer.length)} />
    </p>
    ${notes.map((words) => html`<p class="pencil" key=${words}>${words}</p>`)}`;
}

/** @param {{text: string, onText: (text: string) => void, onEnter: () => void}} props */
function SumPad({ text, onText, onEnter }) {
  const add = (/** @type {string} */ sign) => onText(text.endsWith(" ") ? text + sign.trimStart() : text + sign);
  const mark = lastMark(text);
  const metric = useLengths() === MILLIMETERS;
  return html`
    <div class="written">
      <input type="text" aria-label=${say("sum-field")} placeholder=${say("sum-field")} autocomplete="off"
        autocapitalize="off" spellcheck=${false} value=${text} onInput=${(event) => onText(event.currentTarget.value)}
        onKeyDown=${(event) => event.key === "Enter" && onEnter()} />
      <${Button} disabled=${!text} onTouch=${() => onText(text.replace(LAST_SAID, ""))}>${say("sum-rub-out")}<//>
    </div>
    <div class="signs" role="group" aria-label=${say("sum-signs")}>
      ${(metric ? METRIC_SIGNS : SIGNS).map(
        ([sign, name, seen = say(`sign-${name}`)]) =>
          html`<${Button} label=${say(`sign-${name}`)} onTouch=${() => add(sign)} key=${name}>${seen}<//>`,
      )}
    </div>
    ${metric ? null : html`<${Inch} mark=${mark} chosen=${mark !== ""} whole="" next="" onMark=${(label) => onText(withMark(text, label))} />`}
    <div class="digits" role="group" aria-label=${say("sum-digits")}>
      ${DIGITS.map(
        (digit) => html`<${Button} kind="key" onTouch=${() => onText(text + digit)} key=${digit}>${digit}<//>`,
      )}
    </div>`;
}

/** The fraction that the line ends in. @param {string} text */
function lastMark(text) {
  return LAST_MARK.exec(text)?.[1] ?? "";
}

/** @param {string} text @param {string} mark */
function withMark(text, mark) {
  const bare = lastMark(text) ? text.replace(/\s*\d{1,2}\/\d{1,2}$/, "") : text;
  if (!mark) return bare;
  return /\d$/.test(bare) ? `${bare} ${mark}` : bare + mark;
}
