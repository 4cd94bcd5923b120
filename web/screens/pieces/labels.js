// @ts-check
// Labels for the pieces: letter, length and place on the common label sheets, thirty on letter or twenty-one on A4.
import { html, useState } from "../../controls/ui.js";
import { Button, Choice } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { go } from "../../controls/route.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";

/** 2 5/8 by 1 in, and 63.5 by 38.1 mm: common practice, no source. */
const SHEETS = [["thirty", "Letter, 30 labels"], ["twenty-one", "A4, 21 labels"]];

export function Labels() {
  const { room } = useNotebook();
  const { answer, heard } = useAnswer({ ask: "piece_rows", room: room.id });
  const [sheet, setSheet] = useState("thirty");
  const rows = (answer?.rows ?? []).filter((/** @type {any} */ row) => !row.provisional);
  return html`<${Page} title="Labels: ${room.name}" tab="pieces" kind="labels-page">
    ${heard ? null : html`<${Asleep} what="The labels" />`}
    ${heard && !rows.length ? html`<p class="pencil">Issue the list first: a label is for a letter that stays.</p>` : null}
    <${Choice} name="sheet" legend="Sheet" choices=${SHEETS} value=${sheet} onPick=${setSheet} />
    <p class="pencil on-screen">Print at full size, on one plain sheet first: hold it against the labels.</p>
    <ul class="labels ${sheet}">${rows.map((/** @type {any} */ row) => html`<li key=${row.key}>
      <span class="ring">${row.letter}</span>
      <span><${Figure} shown=${row.cut} /><small>${row.part_name}</small><small>${room.name}</small></span>
    </li>`)}</ul>
    <div class="low last-row"><${Button} onTouch=${() => go("pieces")}>Back<//>
      <${Button} kind="main" disabled=${!rows.length} onTouch=${() => print()}>Print the labels<//></div>
  <//>`;
}
