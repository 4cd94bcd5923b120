// @ts-check
// The tape: the sums that are kept, the newest first, each as it was typed with what it comes to. A long one is shown in
// parts; the struck ones are folded away and never gone.
import { html, useState } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { link } from "../../controls/route.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { strikeAll } from "../../notebook/write.js";
import { say } from "../../words/words.js";

const AT_ONCE = 30;
/** So many stand over the pad on a phone. */
const LAST = 2;

/** @param {any} answer one of a length, an area, a number @returns {string} */
export function shownOf(answer) {
  return (answer.length ?? answer.area ?? answer.number).shown;
}

/** @param {{short: boolean}} props `short`: the last of it */
export function SumTape({ short }) {
  const { engine, room } = useNotebook();
  const [skip, setSkip] = useState(0);
  const { answer } = useAnswer({ ask: "tape", room: room?.id, most: AT_ONCE, skip: short ? 0 : skip });
  if (!answer) return engine === "waking" ? html`<p class="pencil" role="status">${say("sums-waking")}</p>` : null;
  const { sums, total, struck } = answer;
  if (!total && !struck.length) return html`<p class="pencil">${say("tape.empty")}</p>`;
  const shown = short ? sums.slice(0, LAST) : sums;
  const lines = shown.map((/** @type {any} */ one) => html`<${TapeLine} kept=${one} key=${one.sum} />`);
  return html`<ol class="rows" aria-label=${say("tape.heard")}>${lines}</ol>
    ${short ? null : html`<${Parts} skip=${skip} total=${total} onSkip=${setSkip} /><${Struck} struck=${struck} />`}`;
}

/** @param {{kept: any}} props */
function TapeLine({ kept: { sum, text, note, room, worked, error } }) {
  const about = [note, room, worked?.remainder?.inches ? worked.remainder_said : ""].filter(Boolean).join(" · ");
  return html`<li><a class="row" href=${link("sums", "line", sum)}>
    <span class="row-words"><span>${text}</span><small class=${error ? "wrong" : ""}>${error ?? about}</small></span>
    ${worked ? html`<${Figure} shown=${shownOf(worked)} unit=${Boolean(worked.length)} />` : null}
  </a></li>`;
}

/** @param {{skip: number, total: number, onSkip: (skip: number) => void}} props */
function Parts({ skip, total, onSkip }) {
  if (total <= AT_ONCE) return null;
  return html`<div class="side-by-side">
    <${Button} disabled=${skip === 0} onTouch=${() => onSkip(Math.max(0, skip - AT_ONCE))}>${say("tape.newer")}<//>
    <${Button} disabled=${skip + AT_ONCE >= total} onTouch=${() => onSkip(skip + AT_ONCE)}>${say("tape.older")}<//>
  </div>`;
}

/** @param {{struck: any[]}} props */
function Struck({ struck }) {
  const { journal, act } = useNotebook();
  if (!struck.length) return null;
  const restore = (/** @type {any} */ one) =>
    act(() => strikeAll(journal, one.strikes, "restored by hand"), say("restore.text", { what: one.text }));
  return html`<details class="more"><summary>${say("tape.struck")}</summary>
    <ul class="rows">${struck.map(
      (one) => html`<li class="row" key=${one.sum}>
        <span class="row-words"><s>${one.text}</s><small>${one.note}</small></span>
        <${Button} label=${say("restore.what", { what: one.text })} onTouch=${() => restore(one)}>${say("restore")}<//>
      </li>`,
    )}</ul></details>`;
}

/** The tape by itself. */
export function WholeTape() {
  return html`<${Page} title=${say("tape")} tab="sums" kind="form">
    <${SumTape} short=${false} />
    <p class="onward low"><a href=${link("sums")}>${say("sum-write")}</a></p>
  <//>`;
}
