// @ts-check
// Settings of a house, a room, one opening or an article, each saved as it was written, each to be struck for what is above it to count.
import { html, useState } from "../controls/ui.js";
import { Button, Choice, Field } from "../controls/controls.js";
import { useAnswer, useLengths, useNotebook } from "../notebook/notebook.js";
import { asWritten, setSetting, strikeOut } from "../notebook/write.js";
import { boardsTable, Rows } from "./rows.js";

/**
 * What is set for a subject, and what counts where it sets nothing: `above`, called `from`.
 * `back` are the words for setting it no longer.
 * @typedef {{id: string, settings: any, setting_errors: any, above: any, from: string, back: string}} Subject
 */
/** @typedef {import("./trims.js").Group} Group */

/** What counts in a house: what it sets, over what is usual. @param {any} house as the engine knows it */
export function inHouse({ defaults, settings }) {
  return { ...defaults, ...settings };
}

/** @param {{groups: Group[], subject: Subject, open?: string}} props `open` is the key of the group shown at first */
export function Settings({ groups, subject, open }) {
  return groups.map((group) => html`<${OneGroup} ...${{ group, subject }} opened=${group.key === open} key=${group.key} />`);
}

/** @param {{group: Group, subject: Subject, opened: boolean}} props */
function OneGroup({ group, subject, opened }) {
  const [open, setOpen] = useState(opened);
  const { title, picks = [], rows = [], boards = [], tables = [] } = group;
  const names = [...picks, ...rows, ...boards, ...tables].map(([name]) => name);
  const said = names.filter((name) => name in subject.settings).length;
  const wrong = names.some((name) => subject.setting_errors[name]);
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
          ${[...boards.map(boardsTable), ...tables].map(([name, label, hint, cells]) => {
            const saved = subject.settings[name] ?? [];
            return html`<${Table} ...${{ subject, name, label, hint, cells, saved }} key=${name + JSON.stringify(saved)} />`;
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
  const { journal, act } = useNotebook();
  return {
    save: (/** @type {string} */ name, /** @type {string | object[]} */ value, /** @type {string} */ words) =>
      act(() => setSetting(journal, subject.id, name, value), words),
    drop: (/** @type {string} */ name, /** @type {string} */ words) =>
      act(async () => {
        await strikeOut(journal, "setting", { of: subject.id, name }, "no longer set");
        return true;
      }, words),
  };
}

/** Rows of texts. @param {{subject: Subject, name: string, label: string, hint: string, cells: string[][], saved: any[]}} props */
function Table({ subject, name, label, hint, cells, saved }) {
  const { save } = useSetting(subject);
  return html`<${Rows} ...${{ label, hint, cells, saved }} wrong=${subject.setting_errors[name]}
    onSave=${(/** @type {object[]} */ rows) => save(name, rows, label)}>
    <${Drop} ...${{ subject, name, label }} />
  <//>`;
}

/** As what is above has it again. @param {{subject: Subject, name: string, label: string, then?: () => void}} props */
function Drop({ subject, name, label, then }) {
  const { drop } = useSetting(subject);
  if (!(name in subject.settings)) return null;
  const take = async () => {
    if (await drop(name, `${label}: ${subject.back.toLowerCase()}`)) then?.();
  };
  return html`<${Button} kind="plain" label="${label}: ${subject.back.toLowerCase()}" onTouch=${take}>${subject.back}<//>`;
}

/** @param {{subject: Subject, name: string, label: string, hint: string, plain: boolean}} props `plain`: no length */
function Measure({ subject, name, label, hint, plain }) {
  const saved = subject.settings[name] ?? "";
  const [text, setText] = useState(saved);
  const { save } = useSetting(subject);
  const lengths = useLengths();
  const typed = plain ? text.trim() : asWritten(text.trim(), lengths);
  const none = (typed === "none" || (plain && typed !== "")) && typed !== saved;
  const { answer, error } = useAnswer(typed && typed !== saved && !none ? { ask: "read", text: typed } : null);
  const ready = Boolean(answer) || none;
  const keep = () => ready && save(name, typed, `${label}: ${typed}`);
  const wrong = error?.message ?? subject.setting_errors[name] ?? "";
  return html`<div class="setting">
    <${Field} label=${label} value=${text} onInput=${setText} onEnter=${keep} hint=${answer?.words ?? hint}
      wrong=${wrong} holds=${[subject.above[name], subject.from].filter(Boolean).join(", ")} />
    <${Button} label="Save ${label}" disabled=${!ready} onTouch=${keep}>${text && text === saved ? "Saved" : "Save"}<//>
    <${Drop} ...${{ subject, name, label }} then=${() => setText("")} />
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
