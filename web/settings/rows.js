// @ts-check
// Settings that are a list: rows of texts, one cell of which says whether a row is there at all.
import { html, useId, useState } from "../controls/ui.js";
import { Button } from "../controls/controls.js";
import { useLengths } from "../notebook/notebook.js";
import { asWritten, withUnit } from "../notebook/write.js";
import { say } from "../words/words.js";
import { LENGTH } from "./said.js";

/** @typedef {import("./said.js").Cell} Cell */

/** @param {any} cell */
const text = (cell) => String(cell ?? "").trim();

/** The rows that are there, every cell a text or nothing. @param {any[]} rows @param {Cell[]} cells */
function tidy(rows, cells) {
  const must = cells.find((cell) => cell[4])?.[0] ?? cells[0][0];
  return rows
    .filter((row) => text(row[must]))
    .map((row) => Object.fromEntries(cells.map(([name, , , instead]) => [name, text(row[name]) || (instead ?? null)])));
}

/**
 * What was typed, with the units that a house of millimeters leaves out; what stood there before stays as it was.
 * @param {any[]} rows @param {any[]} saved @param {Cell[]} cells @param {string} lengths
 */
function measured(rows, saved, cells, lengths) {
  const stood = new Set(saved.flatMap((row) => cells.map(([name]) => `${name} ${text(row[name])}`)));
  const write = (/** @type {any} */ row, /** @type {Cell} */ [name, , , , , unit]) => {
    const typed = text(row[name]);
    if (!unit || stood.has(`${name} ${typed}`)) return row[name];
    return unit === LENGTH ? asWritten(typed, lengths) : withUnit(typed, lengths, unit);
  };
  return rows.map((row) => Object.fromEntries(cells.map((cell) => [cell[0], write(row, cell)])));
}

/**
 * @param {{words: string, of?: string, cells: Cell[], saved: any[], wrong?: string, onSave: (rows: object[]) => void,
 *   children?: any}} props `words`: where the catalog has them, under `table-`; `of`: what it is of, if many share them
 */
export function Rows({ words, of = "", cells, saved, wrong, onSave, children }) {
  const blank = Object.fromEntries(cells.map(([name]) => [name, ""]));
  const [rows, setRows] = useState(/** @type {any[]} */ ([...saved, blank]));
  const put = (/** @type {number} */ place, /** @type {object} */ change) => {
    const changed = rows.map((row, at) => (at === place ? { ...row, ...change } : row));
    setRows(Object.values(changed.at(-1)).some(Boolean) ? [...changed, blank] : changed);
  };
  const filled = tidy(measured(rows, saved, cells, useLengths()), cells);
  const changed = JSON.stringify(filled) !== JSON.stringify(tidy(saved, cells));
  const id = useId();
  return html`<section class="stock" aria-labelledby=${id}>
    <h2 id=${id}>${say(`table-${words}.title`, { of })}</h2>
    ${wrong ? html`<p class="wrong">${wrong}</p>` : null}
    <p class="pencil">${say(`table-${words}.hint`)}</p>
    <table>
      <thead><tr>${cells.map(([name, cell]) => html`<th scope="col" key=${name}>${cell}</th>`)}</tr></thead>
      <tbody>
        ${rows.map(
          (row, place) => html`<tr key=${place}>
            ${cells.map(
              ([name, cell, mode]) => html`<td key=${name}>
                <input type="text" inputmode=${mode} autocomplete="off"
                  aria-label=${say(`table-${words}.cell`, { cell, of, row: place + 1 })} value=${row[name] ?? ""}
                  onInput=${(event) => put(place, { [name]: event.currentTarget.value })} />
              </td>`,
            )}
          </tr>`,
        )}
      </tbody>
    </table>
    <${Button} disabled=${!changed} label=${say(`table-${words}.heard`, { of })} onTouch=${() => onSave(filled)}>
      ${say(`table-${words}.save`)}<//>
    ${children}
  </section>`;
}
