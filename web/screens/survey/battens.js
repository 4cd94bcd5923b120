// @ts-check
// Battens of one wall: what they are to be, and the marks that follow, each from the left end of its stretch.
import { html, useState } from "../../controls/ui.js";
import { Button, Choice, Field } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { Problems } from "../../controls/notes.js";
import { go } from "../../controls/route.js";
import { Elevation } from "../../drawings/drawn.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { setSetting } from "../../notebook/write.js";

/** Name in the journal, words on the screen, what it is for. */
const MEASURES = [
  ["width", "Width of a batten", "across its face"],
  ["thickness", "Thickness", "3/4, until you set it"],
  ["height", "Height", "the length each is cut to"],
  ["most_gap", "Widest gap", "the fewest battens that keep to it; empty when you write a count"],
  ["count", "Count", "so many, for a wall in one stretch; empty when you write a gap"],
  ["avoid", "Keep clear of", "outlet, switch: what stands on the wall by these names"],
];
const ENDS = [
  ["item", "a batten at both"],
  ["gap", "a gap at both"],
  ["one", "a batten at one"],
];

/** @param {{place: string[]}} props */
export function Battens({ place: [wallId] }) {
  const { room } = useNotebook();
  const wall = room.walls.find((one) => one.id === wallId);
  const { answer } = useAnswer({ ask: "battens", room: room.id });
  return html`<${Page} title=${`Battens, wall ${wall?.number ?? ""}`} tab="survey" kind="form standard">
    ${answer && wall ? html`<${Settings} wall=${wall} answer=${answer} />` : html`<${Asleep} what="Battens" />`}
    <div class="low last-row"><${Button} onTouch=${() => go("survey", "walk", wallId)}>Back<//></div>
  <//>`;
}

/** @param {{wall: any, answer: any}} props */
function Settings({ wall, answer }) {
  const known = answer.walls.find((one) => one.wall === wall.id) ?? { settings: {} };
  const rows = answer.rows.filter((row) => row.wall === wall.id);
  const problems = answer.problems.filter((one) => one.wall === wall.id);
  const { journal, act } = useNotebook();
  const save = (/** @type {string} */ name, /** @type {string} */ value, /** @type {string} */ words) =>
    act(() => setSetting(journal, wall.id, `battens.${name}`, value), words);
  return html`
    ${MEASURES.map(
      ([name, label, hint]) => html`<${One} ...${{ name, label, hint, save }} saved=${known.settings[name] ?? ""} key=${name} />`,
    )}
    <${Choice} name="ends" legend="At the ends" choices=${ENDS} value=${known.settings.ends ?? "item"}
      onPick=${(value) => save("ends", value, "Ends")} />
    <${Problems} problems=${problems} />
    ${rows.length ? html`<${Elevation} wall=${wall} />` : null}
    ${rows.map((row) => html`<${Row} row=${row} key=${row.place} />`)}`;
}

/** @param {{name: string, label: string, hint: string, saved: string, save: any}} props */
function One({ name, label, hint, saved, save }) {
  const [text, setText] = useState(saved);
  const keep = () => text.trim() !== saved && save(name, text.trim(), label);
  return html`<div class="setting">
    <${Field} label=${label} value=${text} onInput=${setText} onEnter=${keep} hint=${hint} />
    <${Button} label="Save ${label}" disabled=${text.trim() === saved} onTouch=${keep}>${saved && text === saved ? "Saved" : "Save"}<//>
  </div>`;
}

/** The marks of one stretch of wall. @param {{row: any}} props */
function Row({ row }) {
  const clash = (/** @type {number} */ item) => row.clashes.filter((one) => one.item === item);
  return html`<section>
    <h2>${row.count} battens${row.place ? `, ${row.place}` : ""}</h2>
    <p>Gap <${Figure} shown=${row.gap.shown} /></p>
    ${row.clashes.length && row.clear.length ? html`<p class="wrong">${row.clear.join(" or ")} battens would clear everything.</p>` : null}
    <ol class="rows">
      ${row.marks.map(
        ({ mark, from_corner: corner, item }) => html`<li class="row" key=${item}>
          <span class="wall-number">${item}</span>
          <span class="row-words"><small>from the left corner ${corner.shown}</small>
            ${clash(item).map((one) => html`<small class="wrong" key=${one.thing}>lies ${one.over.shown} over the ${one.thing}</small>`)}
          </span>
          <${Figure} shown=${mark.shown} />
        </li>`,
      )}
    </ol>
    <p class="pencil">Left edge of each, every mark from the left end of the stretch: never step off the gap.</p>
  </section>`;
}
