// @ts-check
// Settings of a house, a room, one opening or an article, each saved as it was written, each to be struck for what is above it to count.
import { html, useState } from "../controls/ui.js";
import { Button, Choice, Field } from "../controls/controls.js";
import { useAnswer, useLengths, useNotebook } from "../notebook/notebook.js";
import { asWritten, setSetting, strikeOut, withUnit } from "../notebook/write.js";
import { say } from "../words/words.js";
import { Rows } from "./rows.js";

/**
 * What is set for a subject, and what counts where it sets nothing: `above`, which is what is usual, or what the house
 * or the room has, as `from` says.
 * @typedef {{id: string, settings: any, setting_errors: any, above: any, from: "usual" | "house" | "room"}} Subject
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
  const { title, picks = [], rows = [], tables = [] } = group;
  const names = [...picks, ...rows, ...tables].map(([name]) => name);
  const said = names.filter((name) => name in subject.settings).length;
  const wrong = names.some((name) => subject.setting_errors[name]);
  const stands = said ? say("settings-count", { count: said }) : "";
  return html`<details class="more group" open=${open} onToggle=${(event) => setOpen(event.currentTarget.open)}>
    <summary>${title}<small class=${wrong ? "wrong" : "pencil"}>${wrong ? say("settings-look") : stands}</small></summary>
    ${
      open
        ? html`<div class="settings">
          ${picks.map(([name, label, choices]) => html`<${Pick} ...${{ subject, name, label, choices }} key=${name} />`)}
          ${rows.map(
            ([name, label, hint, plain, unit]) =>
              html`<${Measure} ...${{ subject, name, label, hint: hint(), plain: Boolean(plain), unit }} key=${name} />`,
          )}
          ${tables.map(([name, label, table]) => {
            const saved = subject.settings[name] ?? [];
            return html`<${Table} ...${{ subject, name, label, table, saved }} key=${name + JSON.stringify(saved)} />`;
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

/** Rows of texts. @param {{subject: Subject, name: string, label: string, table: any, saved: any[]}} props */
function Table({ subject, name, label, table, saved }) {
  const { save } = useSetting(subject);
  return html`<${Rows} ...${table} saved=${saved} wrong=${subject.setting_errors[name]}
    onSave=${(/** @type {object[]} */ rows) => save(name, rows, label)}>
    <${Drop} ...${{ subject, name, label }} />
  <//>`;
}

/** As what is above has it again. @param {{subject: Subject, name: string, label: string, then?: () => void}} props */
function Drop({ subject, name, label, then }) {
  const { drop } = useSetting(subject);
  if (!(name in subject.settings)) return null;
  const words = say(`above-${subject.from}.again`, { what: label });
  const take = async () => {
    if (await drop(name, words)) then?.();
  };
  return html`<${Button} kind="plain" label=${words} onTouch=${take}>${say(`above-${subject.from}.back`)}<//>`;
}

/** @param {{subject: Subject, name: string, label: string, hint: string, plain: boolean, unit?: string}} props `plain`: no length */
function Measure({ subject, name, label, hint, plain, unit }) {
  const saved = subject.settings[name] ?? "";
  const [text, setText] = useState(saved);
  const { save } = useSetting(subject);
  const lengths = useLengths();
  const fresh = plain ? withUnit(text.trim(), lengths, unit) : asWritten(text.trim(), lengths);
  const typed = text.trim() === saved ? saved : fresh;
  const none = (typed === "none" || (plain && typed !== "")) && typed !== saved;
  const { answer, error } = useAnswer(typed && typed !== saved && !none ? { ask: "read", text: typed } : null);
  const ready = Boolean(answer) || none;
  const keep = () => ready && save(name, typed, say("settings-said", { what: label, value: typed }));
  const wrong = error?.message ?? subject.setting_errors[name] ?? "";
  const above = subject.above[name];
  const holds = above ? say(`above-${subject.from}.value`, { value: above }) : say(`above-${subject.from}.none`);
  return html`<div class="setting">
    <${Field} label=${label} value=${text} onInput=${setText} onEnter=${keep} hint=${answer?.words ?? hint}
      wrong=${wrong} holds=${holds} />
    <${Button} label=${say("save.what", { what: label })} disabled=${!ready} onTouch=${keep}>
      ${say(text && text === saved ? "saved" : "save")}<//>
    <${Drop} ...${{ subject, name, label }} then=${() => setText("")} />
  </div>`;
}

/** @param {{subject: Subject, name: string, label: string, choices: string[][]}} props */
function Pick({ subject, name, label, choices }) {
  const { save } = useSetting(subject);
  const value = subject.settings[name] ?? subject.above[name];
  const wrong = subject.setting_errors[name];
  const words = Object.fromEntries(choices);
  const take = (/** @type {string} */ chosen) => save(name, chosen, say("settings-said", { what: label, value: words[chosen] }));
  return html`<div>
    <${Choice} name="${subject.id} ${name}" legend=${label} choices=${choices} value=${value} onPick=${take} />
    ${wrong ? html`<p class="wrong">${wrong}</p>` : null}
    <${Drop} ...${{ subject, name, label }} />
  </div>`;
}
