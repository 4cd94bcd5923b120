// @ts-check
// What is there to be printed: labels for the pieces, with letter, length and place, on the common label sheets, thirty on
// letter or twenty-one on A4; and each wall from in front, several to a page.
import { html, useState } from "../../controls/ui.js";
import { Button, Choice } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { go } from "../../controls/route.js";
import { Elevation } from "../../drawings/drawn.js";
import { Asleep } from "../../frame/empty.js";
import { ListFiles } from "../../frame/list_files.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { say } from "../../words/words.js";

/** 2 5/8 by 1 in, and 63.5 by 38.1 mm: common practice, no source. */
const ON_ONE = { thirty: 30, "twenty-one": 21 };
const SHEETS = Object.keys(ON_ONE).map((sheet) => [sheet, say(`labels-sheet-${sheet}`)]);

export function Labels() {
  const { room } = useNotebook();
  const { answer, heard, older } = useAnswer({ ask: "piece_rows", room: room.id });
  const [sheet, setSheet] = useState(/** @type {keyof ON_ONE} */ ("thirty"));
  const rows = (answer?.rows ?? []).filter((/** @type {any} */ row) => !row.provisional);
  const sheets = Map.groupBy(rows, (/** @type {any} */ _, /** @type {number} */ place) => Math.floor(place / ON_ONE[sheet]));
  return html`<${Page} title=${say("labels-title", { room: room.name })} tab="pieces" kind="labels-page" older=${older}>
    ${heard ? null : html`<${Asleep} what=${say("labels.asleep")} />`}
    ${heard && !rows.length ? html`<p class="pencil">${say("labels.issue")}</p>` : null}
    <${Choice} name="sheet" legend=${say("labels.sheet")} choices=${SHEETS} value=${sheet} onPick=${setSheet} />
    <p class="pencil on-screen">${say("labels.hint")}</p>
    <div class="labels">${[...sheets].map(([number, some]) => html`<${Sheet} rows=${some} sheet=${sheet} key=${number} />`)}</div>
    ${rows.length ? html`<${ListFiles} of="labels" />` : null}
    <div class="low last-row"><${Button} onTouch=${() => go("pieces")}>${say("back")}<//>
      <${Button} kind="main" disabled=${!rows.length} onTouch=${() => print()}>${say("labels.print")}<//></div>
  <//>`;
}

/** What comes on one sheet of them; at the table it is shown as it will be printed. @param {{rows: any[], sheet: string}} props */
function Sheet({ rows, sheet }) {
  const { room } = useNotebook();
  return html`<ul class=${sheet} role="list">${rows.map((row) => html`<li key=${row.key}>
    <span class="ring">${row.letter}</span>
    <span><${Figure} shown=${row.cut} /><small>${row.part_name}</small><small>${room.name}</small></span>
  </li>`)}</ul>`;
}

export function WallsOnSheets() {
  const { room } = useNotebook();
  const { heard, older } = useAnswer({ ask: "piece_rows", room: room.id });
  return html`<${Page} title=${say("walls-title", { room: room.name })} tab="pieces" kind="walls-page" older=${older}>
    ${heard ? null : html`<${Asleep} what=${say("walls.asleep")} />`}
    <ul class="walls-drawn">${room.walls.map((wall) => html`<li key=${wall.id}><${Elevation} wall=${wall} /></li>`)}</ul>
    <div class="low last-row"><${Button} onTouch=${() => go("pieces")}>${say("back")}<//>
      <${Button} kind="main" disabled=${!room.walls.length} onTouch=${() => print()}>${say("walls.print")}<//></div>
  <//>`;
}
