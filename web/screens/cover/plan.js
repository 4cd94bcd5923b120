// @ts-check
// The plan of a covering as the engine drew it: each wall with its strips, the roll or the sheets with what is cut from them,
// or the areas that are painted; and the working.
import { html } from "../../controls/ui.js";
import { Drawing } from "../../drawings/drawing.js";
import { say } from "../../words/words.js";

/** @param {{answer: any}} props */
export function CoverPlan({ answer }) {
  if (answer.seams) return html`<${Seams} seams=${answer.seams} />`;
  if (answer.panes) return html`<${Panes} panes=${answer.panes} />`;
  if (answer.sheets) return html`<${Sheets} sheets=${answer.sheets} />`;
  if (answer.paint) return html`<${Paint} answer=${answer} />`;
  return null;
}

/** @param {{lines: string[]}} props */
function Working({ lines }) {
  if (!lines.length) return null;
  return html`<details class="more"><summary>${say("working")}</summary>
    <ol class="steps">${lines.map((words) => html`<li key=${words}>${words}</li>`)}</ol>
  </details>`;
}

/** @param {{seams: any}} props */
function Seams({ seams }) {
  return html`<section class="seams" aria-label=${say("seams")}>
    ${seams.said.map((/** @type {string} */ words) => html`<p key=${words}>${words}</p>`)}
    ${seams.stretches.map(
      (one, place) => html`<div key=${place}>
        <p>${one.start} ${one.mismatch ? one.mismatch.said : ""}</p>
        <${Drawing} svg=${one.drawing} kind="stretch" label=${say("seams.flat")} />
        <p class="pencil">${say(one.mismatch ? "seams.drawn-meeting" : "seams.drawn", { said: one.said })}</p>
      </div>`,
    )}
    <details class="more"><summary>${say("drawn-walls")}</summary>
      <div class="walls-drawn">
        ${seams.drawings.map(
          (one) => html`<${Drawing} svg=${one.drawing} kind="wall-drawn" label=${say("seams.wall", { wall: one.name })}
            key=${`${one.wall} ${one.name}`} />`,
        )}
      </div>
    </details>
    <${Rolls} cutting=${seams.cutting} />
    <${Working} lines=${seams.working} />
  </section>`;
}

/** What comes from each roll, in the order it is cut. @param {{cutting: any[]}} props */
function Rolls({ cutting }) {
  return html`<details class="more for-paper"><summary>${say("rolls")}</summary>
    <ol class="rows">
      ${cutting.map(
        (roll) => html`<li class="row" key=${roll.roll}><span class="row-words"><span>${say("rolls-roll", { roll: String(roll.roll) })}</span>
          <small>${roll.pieces.map(rolled).join("; ")}</small>
          <small>${say("rolls-left", { length: roll.offcut.shown })}</small></span></li>`,
      )}
    </ol>
  </details>`;
}

/** A piece as it comes from its roll. @param {any} piece */
function rolled({ strip, what, cut, down }) {
  const facts = { strip: String(strip), length: cut.shown, from: down.shown };
  return what === "whole" ? say("rolls-whole", facts) : say("rolls-piece", { ...facts, what });
}

/** @param {{panes: any}} props */
function Panes({ panes }) {
  return html`<section aria-label=${say("panes")}>
    <p>${say("panes.length", { length: panes.length.shown, said: panes.said })}</p>
    ${panes.drawing ? html`<${Drawing} svg=${panes.drawing} kind="layout" label=${say("panes.drawn")} />` : null}
    <ul class="rows">
      ${panes.layout.map((one) => {
        const blank = panes.blanks.find((/** @type {any} */ each) => each.pane === one.pane);
        return html`<li class="row" key=${one.pane}><span class="row-words"><span>${blank.name}</span>
          <small>${marked(one.marks)}</small>
          <small>${trimmed(blank)}</small></span></li>`;
      })}
    </ul>
    <${Working} lines=${[...panes.blanks.flatMap((blank) => blank.working.map((words) => `${blank.name}, ${words}`)), ...panes.working]} />
  </section>`;
}

/** Where a blank's edges lie on the roll, its cut end nearest. @param {{top: string, left: string}} marks */
const marked = ({ top, left }) => say("panes-marks", { top: say(`panes-side-${top}`), left: say(`panes-side-${left}`) });

/** What a blank is trimmed to, each figure as it was read. @param {{widths: any[], heights: any[]}} blank */
function trimmed({ widths, heights }) {
  const [across, up] = [widths, heights].map((some) => some.map((one) => one.shown).join(", "));
  return say("panes-trimmed", { widths: across, heights: up });
}

/** @param {{sheets: any}} props */
function Sheets({ sheets }) {
  return html`<section aria-label=${say("sheets")}>
    <p>${sheets.said}</p>
    <div class="walls-drawn">
      ${sheets.sheets.map(
        (one, place) => html`<${Drawing} svg=${one.drawing} kind="layout"
          label=${say("sheets.drawn", { sheet: String(place + 1) })} key=${place} />`,
      )}
    </div>
    <${Working} lines=${[...sheets.panels.flatMap((one) => one.working.map((words) => `${one.name}, ${words}`)), ...sheets.working]} />
  </section>`;
}

/** @param {{answer: any}} props */
function Paint({ answer }) {
  const [product] = answer.paint.products;
  const sizes = answer.article.settings["paint.cans"] ?? [];
  const counted = (/** @type {any} */ { can, count, size }) =>
    say("count-of", { count: String(count), what: sizes[can]?.size ?? size });
  return html`<section aria-label=${say("cans")}>
    ${
      product.cans.length
        ? html`<table class="to-buy"><caption>${say("cans")}</caption><tbody>
          ${product.cans.map((can) => html`<tr key=${can.can}><th scope="row">${counted(can)}</th><td>${say("dollars.each", { amount: can.price })}</td></tr>`)}
        </tbody></table>`
        : null
    }
    ${product.left ? html`<p>${say("cans.left", { amount: product.left.shown })}</p>` : null}
    ${product.advice.map((/** @type {string} */ words) => html`<p key=${words}>${words}</p>`)}
    <ul class="rows">
      ${answer.surfaces.map((one) => html`<li class="row" key=${one.name}><span class="row-words"><span>${one.name}</span></span><b>${one.shown}</b></li>`)}
    </ul>
    <${Working} lines=${[...answer.surfaces.flatMap((one) => one.working), ...product.working]} />
  </section>`;
}
