// @ts-check
// Cover: what a room is covered with, papers, paints, film and panels, each on a page of its own.
import { html } from "../../controls/ui.js";
import { Refusal } from "../../controls/notes.js";
import { link } from "../../controls/route.js";
import { Asleep, NoRoom } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { ARTICLES } from "../../settings/labels.js";
import { Covering } from "./covering.js";
import { Fresh } from "./fresh.js";

/** @param {{place: string[]}} props */
export function Cover({ place: [id] }) {
  const { room } = useNotebook();
  const { answer, error, heard, older } = useAnswer(room ? { ask: "coverings", room: room.id } : null);
  if (!room) return html`<${Page} title="Cover" tab="cover"><${NoRoom} /><//>`;
  if (id === "new") return html`<${Fresh} asked=${answer} />`;
  if (id) return html`<${Covering} id=${id} asked=${answer} key=${id} />`;
  return html`<${Page} title=${`Cover: ${room.name}`} tab="cover" kind="cover" older=${older}>
    ${heard ? null : html`<${Asleep} what="The coverings" />`}
    <${Refusal} error=${error} />
    ${answer ? html`<${List} rows=${answer.rows} />` : null}
    <p class="onward"><a href=${link("cover", "new")}>Cover something</a></p>
  <//>`;
}

/** @param {{rows: any[]}} props */
function List({ rows }) {
  if (!rows.length) {
    return html`<div class="now"><h2>Nothing is covered yet</h2>
      <p class="pencil">Wallpaper, paint, film on glass, panels: say which, and where, and it is counted from the survey.</p></div>`;
  }
  return html`<ul class="rows">${rows.map((row) => html`<${Row} row=${row} key=${row.id} />`)}</ul>`;
}

/** @param {{row: any}} props */
function Row({ row }) {
  const sort = ARTICLES[row.sort]?.name ?? "";
  return html`<li><a class="row" href=${link("cover", row.id)}>
    <span class="row-words"><span>${row.name || sort}</span>
      <small>${[sort, row.where].filter(Boolean).join(" · ")}</small>
      ${row.look ? html`<small class="wrong">to look at</small>` : null}</span>
    <span class="row-figure"><b>${row.amount}</b><small>${row.done}</small></span>
  </a></li>`;
}
