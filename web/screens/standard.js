// @ts-check
// The standard of a house: profiles, joints, reveal, and the boards that can be bought. Each is saved as it was written.
import { html, useState } from "../parts/ui.js";
import { Button, Choice, Field } from "../parts/controls.js";
import { Asleep } from "../parts/empty.js";
import { useAnswer, useNotebook } from "../parts/notebook.js";
import { Page } from "../parts/page.js";
import { go } from "../parts/route.js";
import { setSetting } from "../parts/write.js";

/** Name in the journal, words on the screen, what it is for. */
const MEASURES = [
  ["base.height", "Base, height", "the board's width, floor to top"],
  ["base.thickness", "Base, thickness", "measure it: boards are thinner than their name"],
  ["casing.width", "Casing, width", "across the face of a leg"],
  ["casing.thickness", "Casing, thickness", "at its outer edge, where base meets it"],
  ["reveal", "Reveal", "how far the casing stands back from the jamb's edge"],
];
const CUTTING = [
  ["kerf", "Kerf", "what the blade takes away"],
  ["end_trim", "Trimmed from each board", "both ends together, before the first piece"],
  ["hold", "Least length to hold", "a shorter piece is not cut by holding it at the saw"],
  ["spare_sticks", "Spare boards", "how many more of each profile, against a spoilt cut"],
  ["overage", "Overage, in per cent", "so much more length than the pieces are, against waste and bad ends"],
];
const SHARED = [
  ["no", "a cut for each"],
  ["yes", "one cut for both"],
];
const INSIDE = [
  ["cope", "coped"],
  ["miter", "mitered"],
  ["butt", "butted"],
];
const HEADS = [
  ["mitered", "mitered"],
  ["butted", "butted over the legs"],
];
/** A board's row: name in the journal, words on the screen, keyboard. */
const CELLS = [
  ["length", "length", "text"],
  ["price", "price", "decimal"],
  ["limit", "how many", "numeric"],
];
const NO_STOCK = { length: "", price: "", limit: "" };

/** What each setting is called, for any screen that has to name one. */
export const SETTING_NAMES = new Map([
  ...[...MEASURES, ...CUTTING].map(([name, label]) => /** @type {[string, string]} */ ([name, label])),
  ["base.inside", "Base, inside corners"],
  ["head", "Casing, at the head"],
  ["shared_miters", "Two ends that lean alike, side by side"],
  ["base.stock", "Boards of base"],
]);

/** @param {{house: any, known: any}} props `known` is what the engine says of it, once awake */
export function Standard({ house, known }) {
  return html`<${Page} title=${`The standard of ${house.name}`} tab="house" kind="form standard">
    ${known ? html`<${Settings} house=${house} known=${known} />` : html`<${Asleep} what="The standard" />`}
    <div class="low last-row"><${Button} onTouch=${() => go("house")}>Back<//></div>
  <//>`;
}

/** @param {{house: any, known: any}} props */
function Settings({ house, known }) {
  const measures = (/** @type {string[][]} */ rows) =>
    rows.map(([name, label, hint]) => html`<${Measure} ...${{ house, known, name, label, hint }} key=${name} />`);
  const stock = known.settings["base.stock"] ?? [];
  return html`
    ${measures(MEASURES)}
    <${Pick} house=${house} known=${known} name="base.inside" choices=${INSIDE} />
    <${Pick} house=${house} known=${known} name="head" choices=${HEADS} />
    <${StockList} house=${house} known=${known} rows=${stock} key=${JSON.stringify(stock)} />
    <h2>Cutting</h2>
    ${measures(CUTTING)}
    <${Pick} house=${house} known=${known} name="shared_miters" choices=${SHARED} />`;
}

/** Saving one setting, which takes the place of what was said before. @param {any} house @param {any} known */
function useSetting(house, known) {
  const { journal, act } = useNotebook();
  return (/** @type {string} */ name, /** @type {string | object[]} */ value, /** @type {string} */ words) =>
    act(() => setSetting(journal, house.id, name, value, known.setting_entries[name] ?? []), words);
}

/** @param {{house: any, known: any, name: string, label: string, hint: string}} props */
function Measure({ house, known, name, label, hint }) {
  const saved = known.settings[name] ?? "";
  const [text, setText] = useState(saved);
  const save = useSetting(house, known);
  const { answer, error } = useAnswer(text.trim() && text !== saved ? { ask: "read", text: text.trim() } : null);
  const keep = () => answer && save(name, text.trim(), `${label}: ${text}`);
  const wrong = error?.message ?? known.setting_errors[name] ?? "";
  return html`<div class="setting">
    <${Field} label=${label} value=${text} onInput=${setText} onEnter=${keep} hint=${answer?.words ?? hint}
      wrong=${wrong} holds="${known.defaults[name]}, until you set it" />
    <${Button} label="Save ${label}" disabled=${!answer} onTouch=${keep}>
      ${text && text === saved ? "Saved" : "Save"}
    <//>
  </div>`;
}

/** @param {{house: any, known: any, name: string, choices: any}} props */
function Pick({ house, known, name, choices }) {
  const save = useSetting(house, known);
  const legend = SETTING_NAMES.get(name);
  const value = known.settings[name] ?? known.defaults[name];
  return html`<${Choice} name=${name} legend=${legend} choices=${choices} value=${value}
    onPick=${(chosen) => save(name, chosen, `${legend}: ${chosen}`)} />`;
}

/** Rows with a length, every cell a text or nothing. @param {any[]} rows */
function tidy(rows) {
  const text = (/** @type {any} */ cell) => String(cell ?? "").trim();
  return rows
    .filter((row) => text(row.length))
    .map(({ length, price, limit }) => ({
      length: text(length),
      price: text(price) || "0",
      limit: text(limit) || null,
    }));
}

/** The boards that can be bought or are on hand. @param {{house: any, known: any, rows: any[]}} props */
function StockList({ house, known, rows: saved }) {
  const [rows, setRows] = useState(/** @type {any[]} */ ([...saved, NO_STOCK]));
  const save = useSetting(house, known);
  const put = (/** @type {number} */ place, /** @type {object} */ change) => {
    const changed = rows.map((row, at) => (at === place ? { ...row, ...change } : row));
    setRows(changed.at(-1)?.length ? [...changed, NO_STOCK] : changed);
  };
  const filled = tidy(rows);
  const changed = JSON.stringify(filled) !== JSON.stringify(tidy(saved));
  const wrong = known.setting_errors["base.stock"];
  return html`<section class="stock" aria-labelledby="stock">
    <h2 id="stock">Boards of base</h2>
    ${wrong ? html`<p class="wrong">${wrong}</p>` : null}
    <p class="pencil">Each length once, as 12 ft or 144. Price in dollars, 0 for a board on hand. How many, or empty for
      as many as wanted.</p>
    <table>
      <thead><tr>${CELLS.map(([name, words]) => html`<th scope="col" key=${name}>${words}</th>`)}</tr></thead>
      <tbody>
        ${rows.map(
          (row, place) => html`<tr key=${place}>
            ${CELLS.map(
              ([name, words, mode]) => html`<td key=${name}>
                <input type="text" aria-label="${words}, board ${place + 1}" inputmode=${mode} autocomplete="off"
                  value=${row[name] ?? ""} onInput=${(event) => put(place, { [name]: event.currentTarget.value })} />
              </td>`,
            )}
          </tr>`,
        )}
      </tbody>
    </table>
    <${Button} disabled=${!changed} onTouch=${() => save("base.stock", filled, "Boards")}>Save the boards<//>
  </section>`;
}
