// @ts-check
// The figures that are pinned on a photo, in words too; and those that may be pinned there, to choose from.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { link } from "../../controls/route.js";
import { useNotebook } from "../../notebook/notebook.js";
import { strikeAll, strikeOut } from "../../notebook/write.js";
import { subjectOf } from "../../photos/taken.js";
import { say } from "../../words/words.js";

/** @typedef {import("../../photos/marked.js").Pin} Pin */

/**
 * Each pin with what its figure is now; while no engine says so, with what it is of.
 * @param {Pin[]} pins @param {any} answer @param {any} notebook
 */
export function told(pins, answer, { outline, entries }) {
  const of = new Map((answer?.pins ?? []).map((/** @type {any} */ one) => [one.pin, one]));
  return pins.map((pin) => {
    const found = of.get(pin.id) ?? figureOf(pin, answer) ?? {};
    const plain = say("pin.of", { subject: subjectOf(pin.of, outline, entries) });
    const { title = plain, shown = "", note = "", state = "" } = found;
    return { ...pin, title, note, state, figure: shown, shown: shown || (state ? say("pin.unread") : "") };
  });
}

/** @param {Pin} pin @param {any} answer */
function figureOf({ of, what }, answer) {
  return answer?.figures.find((/** @type {any} */ one) => one.of === of && one.what === what);
}

/** @param {{pins: any[], onLit: (pin: string | null) => void, onMove: (pin: any) => void}} props */
export function Pins({ pins, onLit, onMove }) {
  const [standing, struck] = [pins.filter((one) => !one.struck), pins.filter((one) => one.struck)];
  return html`${
    standing.length
      ? html`<ul class="rows" aria-label=${say("pins")}>
        ${standing.map((pin) => html`<${PinLine} pin=${pin} onLit=${onLit} onMove=${onMove} key=${pin.id} />`)}</ul>`
      : null
  }
  ${
    struck.length
      ? html`<details class="more"><summary>${say("pins.struck")}</summary>
        <ul class="rows">${struck.map((pin) => html`<${StruckPin} pin=${pin} key=${pin.id} />`)}</ul></details>`
      : null
  }`;
}

/** @param {{pin: any, onLit: (pin: string | null) => void, onMove: (pin: any) => void}} props */
function PinLine({ pin, onLit, onMove }) {
  const { journal, act } = useNotebook();
  const { id, of, what, title, figure, note, state } = pin;
  const struck = say("pin-strike.done", { figure: title });
  const strike = () => act(() => strikeOut(journal, "pin", { pin: id }, "struck by hand"), struck);
  const lit = { onPointerEnter: () => onLit(id), onPointerLeave: () => onLit(null), onFocusIn: () => onLit(id), onFocusOut: () => onLit(null) };
  const isRow = state !== "gone" && !["cut", "in_place", "salvaged"].includes(what);
  return html`<li class="row" ...${lit}>
    <span class="row-words">
      ${isRow ? html`<a href=${link("survey", "row", of, what)}>${title}</a>` : html`<span>${title}</span>`}
      <small class=${state === "check" || state === "gone" ? "wrong" : ""}>${note}</small>
    </span>
    <${Figure} shown=${figure} />
    <span class="both">
      <${Button} label=${say("pin-move.heard", { figure: title })} onTouch=${() => onMove(pin)}>${say("pin-move")}<//>
      <${Button} label=${say("pin-strike", { figure: title })} onTouch=${strike}>${say("strike")}<//>
    </span>
  </li>`;
}

/** @param {{pin: any}} props */
function StruckPin({ pin }) {
  const { journal, act } = useNotebook();
  const figure = pin.title;
  const restored = say("pin-restore.done", { figure });
  const restore = () => act(() => strikeAll(journal, pin.strikes, "restored by hand"), restored);
  return html`<li class="row"><span class="row-words"><s>${figure}</s></span>
    <${Button} label=${say("pin-restore", { figure })} onTouch=${restore}>${say("restore")}<//></li>`;
}

/** The figures that this photo may show. @param {{answer: any, onPick: (figure: any) => void}} props */
export function Figures({ answer, onPick }) {
  const { engine } = useNotebook();
  const state = engine === "awake" || engine === "waking" ? engine : "failed";
  if (!answer) return html`<p class="pencil" role="status">${say(`pins-while-${state}`)}</p>`;
  if (!answer.figures.length) return html`<p class="pencil">${say("pins.none")}</p>`;
  return html`<ul class="rows" aria-label=${say("pins.choose")}>
    ${answer.figures.map(
      (/** @type {any} */ one) => html`<li key=${`${one.of} ${one.what}`}><button class="row" onClick=${() => onPick(one)}>
        <span class="row-words"><span>${one.title}</span><small>${one.note}</small></span><${Figure} shown=${one.shown} />
      </button></li>`,
    )}
  </ul>`;
}
