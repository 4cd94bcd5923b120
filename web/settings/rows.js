// @ts-check
// Settings that are a list: rows of texts, one cell of which says whether a row is there at all.
import { html, useState } from "../controls/ui.js";
import { Button } from "../controls/controls.js";

/**
 * A cell is [name in the journal, words on the screen, keyboard, what stands in its place where nothing is written].
 * The first of a table that has a "must" for its fifth is the one that a row is known by.
 * @typedef {string[]} Cell
 */

/** @type {Cell[]} */
const BOARDS = [
  ["length", "length", "text", "", "must"],
  ["price", "price", "decimal", "0"],
  ["limit", "how many", "numeric"],
];
/** What a row of boards has besides, where they are of any profile. @type {Cell} */
const PROFILE = ["profile", "profile", "text", ""];
const ABOUT_BOARDS =
  "Each length once, as 12 ft or 144. Price in dollars, 0 for a board on hand. How many, or empty for as many as wanted.";

/** The table of a list of boards. @param {string[]} boards @returns {[string, string, string, Cell[]]} */
export function boardsTable([name, of]) {
  const other = name === "other.stock";
  const hint = other ? `The profile as it is named under Pieces or Boards. ${ABOUT_BOARDS}` : ABOUT_BOARDS;
  return [name, `Boards of ${of}`, hint, other ? [PROFILE, ...BOARDS] : BOARDS];
}

/** The rows that are there, every cell a text or nothing. @param {any[]} rows @param {Cell[]} cells */
function tidy(rows, cells) {
  const text = (/** @type {any} */ cell) => String(cell ?? "").trim();
  const must = cells.find((cell) => cell[4])?.[0] ?? cells[0][0];
  return rows
    .filter((row) => text(row[must]))
    .map((row) => Object.fromEntries(cells.map(([name, , , instead]) => [name, text(row[name]) || (instead ?? null)])));
}

/**
 * @param {{label: string, hint: string, cells: Cell[], saved: any[], wrong?: string, onSave: (rows: object[]) => void,
 *   children?: any}} props
 */
export function Rows({ label, hint, cells, saved, wrong, onSave, children }) {
  const blank = Object.fromEntries(cells.map(([name]) => [name, ""]));
  const [rows, setRows] = useState(/** @type {any[]} */ ([...saved, blank]));
  const put = (/** @type {number} */ place, /** @type {object} */ change) => {
    const changed = rows.map((row, at) => (at === place ? { ...row, ...change } : row));
    setRows(Object.values(changed.at(-1)).some(Boolean) ? [...changed, blank] : changed);
  };
  const filled = tidy(rows, cells);
  const changed = JSON.stringify(filled) !== JSON.stringify(tidy(saved, cells));
  const what = label.charAt(0).toLowerCase() + label.slice(1);
  const one = what.replace(/^boards of/, "board of");
  const id = `rows-${label.replace(/\W/g, "-")}`;
  return html`<section class="stock" aria-labelledby=${id}>
    <h2 id=${id}>${label}</h2>
    ${wrong ? html`<p class="wrong">${wrong}</p>` : null}
    <p class="pencil">${hint}</p>
    <table>
      <thead><tr>${cells.map(([cell, words]) => html`<th scope="col" key=${cell}>${words}</th>`)}</tr></thead>
      <tbody>
        ${rows.map(
          (row, place) => html`<tr key=${place}>
            ${cells.map(
              ([cell, words, mode]) => html`<td key=${cell}>
                <input type="text" aria-label="${words}, ${numbered(one, place + 1)}" inputmode=${mode} autocomplete="off"
                  value=${row[cell] ?? ""} onInput=${(event) => put(place, { [cell]: event.currentTarget.value })} />
              </td>`,
            )}
          </tr>`,
        )}
      </tbody>
    </table>
    <${Button} disabled=${!changed} label="Save the ${what}" onTouch=${() => onSave(filled)}>Save the ${what.replace(/ of .*$/, "")}<//>
    ${children}
  </section>`;
}

/** A row by its number: board 2 of base, panes 1. @param {string} what @param {number} number */
function numbered(what, number) {
  const [, first, rest = ""] = /^(\S+)(.*)$/.exec(what) ?? ["", what];
  return `${first} ${number}${rest}`;
}
