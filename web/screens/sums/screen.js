// @ts-check
// Sums: tape arithmetic by the engine. The line is typed or touched together here, and kept as a line to be used again.
import { html, useState } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { recall, remember } from "../../controls/scrap.js";
import { Figure } from "../../controls/figure.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { Inch } from "../../pad/inch.js";
import { DIGITS } from "../../pad/pad.js";

/** @typedef {{text: string, shown: string}} Line */

const KEPT = "scantling sums";
const MOST_KEPT = 30;
/** What is written, what it is called aloud, and what stands on its button. */
const SIGNS = [
  [" + ", "plus", "+"],
  [" − ", "minus", "−"],
  [" × ", "times", "×"],
  [" ÷ ", "divided by", "÷"],
  ["(", "open bracket", "("],
  [")", "close bracket", ")"],
  ["' ", "feet", "feet"],
  ['"', "inches", "inches"],
  ["half of ", "half of", "half of"],
  [" of ", "of", "of"],
];
/** What Rub out takes back at once: a word, a mark, a sign, one digit. */
const LAST_SAID = /\s*(half of|of|\d{1,2}\/\d{1,2}|\S)\s*$/;
const LAST_MARK = /(?:^|[^\d/])(\d{1,2}\/\d{1,2})$/;

export function Sums() {
  const [text, setText] = useState("");
  const [kept, setKept] = useState(keptLines);
  const { answer, error } = useAnswer(text.trim() ? { ask: "sum", text: text.trim() } : null);
  const keep = () => {
    if (!answer) return;
    const line = { text: text.trim(), shown: shownOf(answer) };
    const lines = [line, ...kept.filter((one) => one.text !== line.text)].slice(0, MOST_KEPT);
    remember(KEPT, JSON.stringify(lines));
    setKept(lines);
    setText("");
  };
  return html`<${Page} title="Sums" tab="sums" kind="sums">
    <section class="kept" aria-label="Sums on the page"><${Lines} lines=${kept} onPick=${setText} /></section>
    <section class="answer"><${Result} text=${text} answer=${answer} error=${error} /></section>
    <section class="pad" aria-label="Write a sum">
      <${SumPad} text=${text} onText=${setText} onEnter=${keep} />
      <div class="last-row">
        <${Button} disabled=${!text} onTouch=${() => setText("")}>Clear<//>
        <${Button} kind="main" disabled=${!answer} onTouch=${keep}>Keep this line<//>
      </div>
    </section>
  <//>`;
}

/** @param {{lines: Line[], onPick: (text: string) => void}} props */
function Lines({ lines, onPick }) {
  if (!lines.length) {
    return html`<p class="pencil">Write a sum as you would on a scrap of board: 63 1/4 − 2 × (3 1/2 + 3/16).
      A line you keep stays here and can be touched to use it again.</p>`;
  }
  return html`<ol class="rows">
    ${lines.map(
      ({ text, shown }) => html`<li key=${text}><button class="row" onClick=${() => onPick(text)}>
        <span class="row-words">${text}</span><${Figure} shown=${shown} unit=${shown.endsWith('"')} />
      </button></li>`,
    )}
  </ol>`;
}

/** What it comes to and how it was taken; half a sum is not yet wrong. @param {{text: string, answer: any, error: any}} props */
function Result({ text, answer, error }) {
  const { engine } = useNotebook();
  if (text && engine !== "awake") {
    return html`<p class="pencil" role="status">${engine === "waking" ? "Engine waking." : "The engine is not running."}</p>`;
  }
  if (error) return html`<p class=${/[\d)]\s*$/.test(text) ? "wrong" : "pencil"} role="status">${error.message}</p>`;
  if (!answer) return null;
  const notes = [answer.remainder_said, ...answer.taken].filter(Boolean);
  return html`<p class="hero" role="status">
      <${Figure} shown=${shownOf(answer)} size="big" unit=${Boolean(answer.length)} />
    </p>
    ${notes.map((words) => html`<p class="pencil" key=${words}>${words}</p>`)}`;
}

/** @param {{text: string, onText: (text: string) => void, onEnter: () => void}} props */
function SumPad({ text, onText, onEnter }) {
  const add = (/** @type {string} */ sign) => onText(text.endsWith(" ") ? text + sign.trimStart() : text + sign);
  const mark = lastMark(text);
  return html`
    <div class="written">
      <input type="text" aria-label="a sum" placeholder="a sum" autocomplete="off" autocapitalize="off"
        spellcheck=${false} value=${text} onInput=${(event) => onText(event.currentTarget.value)}
        onKeyDown=${(event) => event.key === "Enter" && onEnter()} />
      <${Button} disabled=${!text} onTouch=${() => onText(text.replace(LAST_SAID, ""))}>Rub out<//>
    </div>
    <div class="signs" role="group" aria-label="signs">
      ${SIGNS.map(
        ([sign, name, words]) => html`<${Button} label=${name} onTouch=${() => add(sign)} key=${name}>${words}<//>`,
      )}
    </div>
    <${Inch} mark=${mark} chosen=${mark !== ""} whole="" next="" onMark=${(label) => onText(withMark(text, label))} />
    <div class="digits" role="group" aria-label="digits">
      ${DIGITS.map(
        (digit) => html`<${Button} kind="key" onTouch=${() => onText(text + digit)} key=${digit}>${digit}<//>`,
      )}
    </div>`;
}

/** @param {any} answer one of a length, an area, a number @returns {string} */
function shownOf(answer) {
  return (answer.length ?? answer.area ?? answer.number).shown;
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

/** @returns {Line[]} */
function keptLines() {
  try {
    const lines = JSON.parse(recall(KEPT) ?? "[]");
    return Array.isArray(lines) ? lines.filter(({ text, shown }) => typeof text === "string" && typeof shown === "string") : [];
  } catch {
    return []; // a scrap of paper, no record: unreadable lines are let go
  }
}
