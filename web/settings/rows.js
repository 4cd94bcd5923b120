// @ts-check
// Settings that are a list: rows of texts, one cell of which says whether a row is there at all.
import { html, useId, useState } from "../controls/ui.js";
import { Button } from "../controls/controls.js";
import { say } from "../words/words.js";

/** @typedef {import("./said.js").Cell} Cell */

/** The rows that are there, every cell a text or nothing. @param {any[]} rows @param {Cell[]} cells */
function tidy(rows, cells) {
  const text = (/** @type {any} */ cell) => String(cell ?? "").trim();
  const must = cells.find((cell) => cell[4])?.[0] ?? cells[0][0];
  return rows
    .filter((row) => text(row[must]))
    .map((row) => Object.fromEntries(cells.map(([name, , , instead]) => [name, text(row[name]) || (instead ?? null)])));
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
  const filled = tidy(rows, cells);
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
