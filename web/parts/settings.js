// @ts-check
// Settings of a house, a room or one opening, each saved as it was written, each to be struck for what is above it to count.
import { html, useState } from "./ui.js";
import { Button, Choice, Field } from "./controls.js";
import { useAnswer, useNotebook } from "./notebook.js";
import { setSetting, strikeAll } from "./write.js";

/**
 * What is set for a subject, and what counts where it sets nothing: `above`, called `from`.
 * `back` are the words for setting it no longer.
 * @typedef {{id: string, settings: any, setting_entries: any, setting_errors: any, above: any, from: string,
 *   back: string}} Subject
 */
/** @typedef {import("./trims.js").Group} Group */

/** A board's row: name in the journal, words on the screen, keyboard. */
const CELLS = [
  ["length", "length", "text"],
  ["price", "price", "decimal"],
  ["limit", "how many", "numeric"],
];
/** What a row of boards has besides, where they are of any profile. */
const PROFILE = ["profile", "profile", "text"];
const NO_STOCK = { length: "", price: "", limit: "" };

/** @param {{groups: Group[], subject: Subject, open?: string}} props `open` is the title of the group shown at first */
export function Settings({ groups, subject, open }) {
  return groups.map((group) => html`<${OneGroup} ...${{ group, subject }} opened=${group.title === open} key=${group.title} />`);
}

/** @param {{group: Group, subject: Subject, opened: boolean}} props */
function OneGroup({ group, subject, opened }) {
  const [open, setOpen] = useState(opened);
  const { title, picks = [], rows = [], boards = [] } = group;
  const said = [...picks, ...rows, ...boards].filter(([name]) => name in subject.settings).length;
  const wrong = [...picks, ...rows, ...boards].some(([name]) => subject.setting_errors[name]);
  return html`<details class="more group" open=${open} onToggle=${(event) => setOpen(event.currentTarget.open)}>
    <summary>${title}<small class=${wrong ? "wrong" : "pencil"}>${wrong ? "to look at" : said ? `${said} set` : ""}</small></summary>
    ${
      open
        ? html`<div class="settings">
          ${picks.map(([name, , choices]) => html`<${Pick} ...${{ subject, picks, name, choices }} key=${name} />`)}
          ${rows.map(
            ([name, label, hint, plain]) =>
              html`<${Measure} ...${{ subject, name, label, hint, plain: Boolean(plain) }} key=${name} />`,
          )}
          ${boards.map(([name, of]) => {
            const saved = subject.settings[name] ?? [];
            return html`<${StockList} ...${{ subject, name, of, saved }} key=${name + JSON.stringify(saved)} />`;
          })}
        </div>`
        : null
    }
  </details>`;
}

/**
 * Saving one setting, which takes the place of what was said before; or striking all that was ever said of it, so that
 * nothing older comes back.
 * @param {Subject} subject
 */
function useSetting(subject) {
  const { journal, act, entries } = useNotebook();
  const said = (/** @type {string} */ name) =>
    entries.filter(({ kind, body }) => kind === "setting" && body.of === subject.id && body.name === name);
  return {
    save: (/** @type {string} */ name, /** @type {string | object[]} */ value, /** @type {string} */ words) =>
      act(() => setSetting(journal, subject.id, name, value, subject.setting_entries[name] ?? []), words),
    drop: (/** @type {string} */ name, /** @type {string} */ words) =>
      act(
        () =>
          strikeAll(
            journal,
            said(name).map(({ id }) => id),
            "no longer set",
          ),
        words,
      ),
  };
}

/** As what is above has it again. @param {{subject: Subject, name: string, label: string}} props */
function Drop({ subject, name, label }) {
  const { drop } = useSetting(subject);
  if (!(name in subject.settings)) return null;
  return html`<${Button} kind="plain" label="${label}: ${subject.back.toLowerCase()}"
    onTouch=${() => drop(name, `${label}: ${subject.back.toLowerCase()}`)}>${subject.back}<//>`;
}

/** @param {{subject: Subject, name: string, label: string, hint: string, plain: boolean}} props `plain`: no length */
function Measure({ subject, name, label, hint, plain }) {
  const saved = subject.settings[name] ?? "";
  const [text, setText] = useState(saved);
  const { save } = useSetting(subject);
  const typed = text.trim();
  const none = (typed === "none" || (plain && typed !== "")) && typed !== saved;
  const { answer, error } = useAnswer(typed && typed !== saved && !none ? { ask: "read", text: typed } : null);
  const ready = Boolean(answer) || none;
  const keep = () => ready && save(name, typed, `${label}: ${text}`);
  const wrong = error?.message ?? subject.setting_errors[name] ?? "";
  return html`<div class="setting">
    <${Field} label=${label} value=${text} onInput=${setText} onEnter=${keep} hint=${answer?.words ?? hint}
      wrong=${wrong} holds=${[subject.above[name], subject.from].filter(Boolean).join(", ")} />
    <${Button} label="Save ${label}" disabled=${!ready} onTouch=${keep}>${text && text === saved ? "Saved" : "Save"}<//>
    <${Drop} ...${{ subject, name, label }} />
  </div>`;
}

/** @param {{subject: Subject, picks: any[][], name: string, choices: any}} props */
function Pick({ subject, picks, name, choices }) {
  const { save } = useSetting(subject);
  const [, legend] = picks.find(([one]) => one === name) ?? [];
  const value = subject.settings[name] ?? subject.above[name];
  const wrong = subject.setting_errors[name];
  return html`<div>
    <${Choice} name="${subject.id} ${name}" legend=${legend} choices=${choices} value=${value}
      onPick=${(chosen) => save(name, chosen, `${legend}: ${chosen}`)} />
    ${wrong ? html`<p class="wrong">${wrong}</p>` : null}
    <${Drop} ...${{ subject, name, label: legend }} />
  </div>`;
}

/** Rows with a length, every cell a text or nothing. @param {any[]} rows @param {string[][]} cells */
function tidy(rows, cells) {
  const text = (/** @type {any} */ cell) => String(cell ?? "").trim();
  return rows
    .filter((row) => text(row.length))
    .map((row) => ({
      ...(cells.includes(PROFILE) ? { profile: text(row.profile) } : {}),
      length: text(row.length),
      price: text(row.price) || "0",
      limit: text(row.limit) || null,
    }));
}

/** The boards that can be bought or are on hand. @param {{subject: Subject, name: string, of: string, saved: any[]}} props */
function StockList({ subject, name, of, saved }) {
  const [rows, setRows] = useState(/** @type {any[]} */ ([...saved, NO_STOCK]));
  const { save } = useSetting(subject);
  const put = (/** @type {number} */ place, /** @type {object} */ change) => {
    const changed = rows.map((row, at) => (at === place ? { ...row, ...change } : row));
    setRows(changed.at(-1)?.length ? [...changed, NO_STOCK] : changed);
  };
  const cells = name === "other.stock" ? [PROFILE, ...CELLS] : CELLS;
  const filled = tidy(rows, cells);
  const changed = JSON.stringify(filled) !== JSON.stringify(tidy(saved, cells));
  const wrong = subject.setting_errors[name];
  const id = `boards-${name.replace(/\W/g, "-")}`;
  return html`<section class="stock" aria-labelledby=${id}>
    <h2 id=${id}>Boards of ${of}</h2>
    ${wrong ? html`<p class="wrong">${wrong}</p>` : null}
    ${cells === CELLS ? null : html`<p class="pencil">The profile as it is named under Pieces or Boards.</p>`}
    <p class="pencil">Each length once, as 12 ft or 144. Price in dollars, 0 for a board on hand. How many, or empty for
      as many as wanted.</p>
    <table>
      <thead><tr>${cells.map(([cell, words]) => html`<th scope="col" key=${cell}>${words}</th>`)}</tr></thead>
      <tbody>
        ${rows.map(
          (row, place) => html`<tr key=${place}>
            ${cells.map(
              ([cell, words, mode]) => html`<td key=${cell}>
                <input type="text" aria-label="${words}, board ${place + 1} of ${of}" inputmode=${mode} autocomplete="off"
                  value=${row[cell] ?? ""} onInput=${(event) => put(place, { [cell]: event.currentTarget.value })} />
              </td>`,
            )}
          </tr>`,
        )}
      </tbody>
    </table>
    <${Button} disabled=${!changed} label="Save the boards of ${of}"
      onTouch=${() => save(name, filled, `Boards of ${of}`)}>Save the boards<//>
    <${Drop} ...${{ subject, name, label: `Boards of ${of}` }} />
  </section>`;
}
