// @ts-check
// The plan of a covering as the engine drew it: each wall with its strips, the roll or the sheets with what is cut from them,
// or the areas that are painted; and the working.
import { html } from "../../controls/ui.js";
import { Drawing } from "../../drawings/drawing.js";

/** @param {{answer: any}} props */
export function Plan({ answer }) {
  if (answer.seams) return html`<${Seams} seams=${answer.seams} />`;
  if (answer.panes) return html`<${Panes} panes=${answer.panes} />`;
  if (answer.sheets) return html`<${Sheets} sheets=${answer.sheets} />`;
  if (answer.paint) return html`<${Paint} answer=${answer} />`;
  return null;
}

/** Where a blank's edges lie on the roll, its cut end nearest. @type {Record<string, string>} */
const SIDES = { far: "far end", near: "near end", left: "left", right: "right" };

/** @param {{lines: string[]}} props */
function Working({ lines }) {
  if (!lines.length) return null;
  return html`<details class="more"><summary>The working</summary>
    <ol class="steps">${lines.map((words) => html`<li key=${words}>${words}</li>`)}</ol>
  </details>`;
}

/** @param {{seams: any}} props */
function Seams({ seams }) {
  return html`<section class="seams" aria-label="Seam plan">
    ${seams.said.map((/** @type {string} */ words) => html`<p key=${words}>${words}</p>`)}
    ${seams.stretches.map(
      (one, place) => html`<div key=${place}>
        <p>${one.start} ${one.mismatch ? one.mismatch.said : ""}</p>
        <${Drawing} svg=${one.drawing} kind="stretch" label="The walls laid out flat, strips by number as listed below" />
        <p class="pencil">The start is drawn in blue, thick on paper${one.mismatch ? "; where the ends meet, in red" : ""}. Dashed
          lines are marks of the pattern. ${one.said}</p>
      </div>`,
    )}
    <details class="more"><summary>Each wall from in front</summary>
      <div class="walls-drawn">
        ${seams.drawings.map((one) => html`<${Drawing} svg=${one.drawing} kind="wall-drawn" label="${one.name} with its strips by number" key=${`${one.wall} ${one.name}`} />`)}
      </div>
    </details>
    <${Rolls} cutting=${seams.cutting} />
    <${Working} lines=${seams.working} />
  </section>`;
}

/** What comes from each roll, in the order it is cut. @param {{cutting: any[]}} props */
function Rolls({ cutting }) {
  return html`<details class="more"><summary>Roll by roll</summary>
    <ol class="rows">
      ${cutting.map(
        (roll) => html`<li class="row" key=${roll.roll}><span class="row-words"><span>Roll ${roll.roll}</span>
          <small>${roll.pieces.map((one) => `strip ${one.strip}${one.what === "whole" ? "" : ` ${one.what}`}: ${one.cut.shown}, from ${one.down.shown}`).join("; ")}</small>
          <small>${roll.offcut.shown} left for certain</small></span></li>`,
      )}
    </ol>
  </details>`;
}

/** @param {{panes: any}} props */
function Panes({ panes }) {
  return html`<section aria-label="On the roll">
    <p>${panes.length.shown} off the roll. ${panes.said}</p>
    ${panes.drawing ? html`<${Drawing} svg=${panes.drawing} kind="layout" label="Blanks on the roll, listed below" />` : null}
    <ul class="rows">
      ${panes.layout.map((one) => {
        const blank = panes.blanks.find((/** @type {any} */ each) => each.pane === one.pane);
        return html`<li class="row" key=${one.pane}><span class="row-words"><span>${blank.name}</span>
          <small>mark its top at the ${SIDES[one.marks.top]}, its left at the ${SIDES[one.marks.left]}</small>
          <small>trimmed to ${blank.widths.map((w) => w.shown).join(", ")} × ${blank.heights.map((h) => h.shown).join(", ")}</small></span></li>`;
      })}
    </ul>
    <${Working} lines=${[...panes.blanks.flatMap((blank) => blank.working.map((words) => `${blank.name}, ${words}`)), ...panes.working]} />
  </section>`;
}

/** @param {{sheets: any}} props */
function Sheets({ sheets }) {
  return html`<section aria-label="On the sheets">
    <p>${sheets.said}</p>
    <div class="walls-drawn">
      ${sheets.sheets.map((one, place) => html`<${Drawing} svg=${one.drawing} kind="layout" label="Sheet ${place + 1}, its panels listed below" key=${place} />`)}
    </div>
    <${Working} lines=${[...sheets.panels.flatMap((one) => one.working.map((words) => `${one.name}, ${words}`)), ...sheets.working]} />
  </section>`;
}

/** @param {{answer: any}} props */
function Paint({ answer }) {
  const [product] = answer.paint.products;
  const sizes = answer.article.settings["paint.cans"] ?? [];
  return html`<section aria-label="Cans">
    ${
      product.cans.length
        ? html`<table class="to-buy"><caption>Cans</caption><tbody>
          ${product.cans.map((can) => html`<tr key=${can.can}><th scope="row">${can.count} of ${sizes[can.can]?.size ?? can.size}</th><td>at $${can.price}</td></tr>`)}
        </tbody></table>`
        : null
    }
    ${product.left ? html`<p>${product.left.shown} left over.</p>` : null}
    ${product.advice.map((/** @type {string} */ words) => html`<p key=${words}>${words}</p>`)}
    <ul class="rows">
      ${answer.surfaces.map((one) => html`<li class="row" key=${one.name}><span class="row-words"><span>${one.name}</span></span><b>${one.shown}</b></li>`)}
    </ul>
    <${Working} lines=${[...answer.surfaces.flatMap((one) => one.working), ...product.working]} />
  </section>`;
}
