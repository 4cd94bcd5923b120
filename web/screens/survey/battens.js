// @ts-check
// Battens of one wall: what they are to be, and the marks that follow, each from the left end of its stretch.
import { html, useState } from "../../controls/ui.js";
import { Button, Choice, Field } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { Problems } from "../../controls/notes.js";
import { go } from "../../controls/route.js";
import { useWide } from "../../controls/wide.js";
import { Elevation, RoomInView } from "../../drawings/drawn.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useLengths, useNotebook } from "../../notebook/notebook.js";
import { asWritten, setSetting } from "../../notebook/write.js";
import { anyOf, say, sayWith } from "../../words/words.js";

/** Names in the journal. */
const MEASURES = ["width", "thickness", "height", "most_gap", "count", "avoid"];
const NO_LENGTHS = new Set(["count", "avoid"]);
const ENDS = ["item", "gap", "one"].map((end) => [end, say(`battens-ends.${end}`)]);

/** @param {{place: string[]}} props */
export function Battens({ place: [wallId] }) {
  const { room } = useNotebook();
  const wall = room.walls.find((one) => one.id === wallId);
  const { answer } = useAnswer({ ask: "battens", room: room.id });
  return html`<${Page} title=${say("battens-title", { wall: wall?.number ?? "" })} tab="survey" kind="form standard"
    view=${html`<${RoomInView} wall=${wall} />`}>
    ${answer && wall ? html`<${Settings} wall=${wall} answer=${answer} />` : html`<${Asleep} what=${say("battens")} />`}
    <div class="low last-row"><${Button} onTouch=${() => go("survey", "walk", wallId)}>${say("back")}<//></div>
  <//>`;
}

/** @param {{wall: any, answer: any}} props */
function Settings({ wall, answer }) {
  const known = answer.walls.find((one) => one.wall === wall.id) ?? { settings: {} };
  const rows = answer.rows.filter((row) => row.wall === wall.id);
  const problems = answer.problems.filter((one) => one.wall === wall.id);
  const { journal, act } = useNotebook();
  const wide = useWide();
  const save = (/** @type {string} */ name, /** @type {string} */ value, /** @type {string} */ words) =>
    act(() => setSetting(journal, wall.id, `battens.${name}`, value), words);
  return html`
    ${MEASURES.map((name) => html`<${One} ...${{ name, save, usual: answer.thickness }} saved=${known.settings[name] ?? ""} key=${name} />`)}
    <${Choice} name="ends" legend=${say("battens-ends")} choices=${ENDS} value=${known.settings.ends ?? "item"}
      onPick=${(value) => save("ends", value, say("battens-ends.done"))} />
    <${Problems} problems=${problems} />
    ${rows.length && !wide ? html`<${Elevation} wall=${wall} />` : null}
    ${rows.map((row) => html`<${Row} row=${row} key=${row.place} />`)}`;
}

/** @param {{name: string, saved: string, save: any, usual: string}} props `usual`: how thick a batten is until that is said */
function One({ name, saved, save, usual }) {
  const [text, setText] = useState(saved);
  const lengths = useLengths();
  const label = say(`battens-setting-${name}`);
  const keep = () => text.trim() !== saved && save(name, NO_LENGTHS.has(name) ? text.trim() : asWritten(text.trim(), lengths), label);
  return html`<div class="setting">
    <${Field} label=${label} value=${text} onInput=${setText} onEnter=${keep} hint=${say(`battens-setting-${name}.hint`, { usual })} />
    <${Button} label=${say("save.what", { what: label })} disabled=${text.trim() === saved} onTouch=${keep}>
      ${say(saved && text === saved ? "saved" : "save")}<//>
  </div>`;
}

/** The marks of one stretch of wall. @param {{row: any}} props */
function Row({ row }) {
  const clash = (/** @type {number} */ item) => row.clashes.filter((one) => one.item === item);
  return html`<section>
    <h2>${say(row.place ? "battens-row.placed" : "battens-row", { count: row.count, place: row.place ?? "" })}</h2>
    <p>${sayWith("battens-row.gap", { gap: html`<${Figure} shown=${row.gap.shown} />` })}</p>
    ${row.clashes.length && row.clear.length ? html`<p class="wrong">${say("battens-row.clear", { counts: anyOf(row.clear) })}</p>` : null}
    <ol class="rows">
      ${row.marks.map(
        ({ mark, from_corner: corner, item }) => html`<li class="row" key=${item}>
          <span class="wall-number">${item}</span>
          <span class="row-words"><small>${say("battens-mark", { length: corner.shown })}</small>
            ${clash(item).map((one) => html`<small class="wrong" key=${one.thing}>${say("battens-mark.over", { length: one.over.shown, thing: one.thing })}</small>`)}
          </span>
          <${Figure} shown=${mark.shown} />
        </li>`,
      )}
    </ol>
    <p class="pencil">${say("battens-row.told")}</p>
  </section>`;
}
