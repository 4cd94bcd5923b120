// @ts-check
// Cover: what a room is covered with, papers, paints, film and panels, each on a page of its own, or beside their list.
import { html } from "../../controls/ui.js";
import { Refusal } from "../../controls/notes.js";
import { link } from "../../controls/route.js";
import { useWide } from "../../controls/wide.js";
import { Asleep, NoRoom } from "../../frame/empty.js";
import { ListFiles } from "../../frame/list_files.js";
import { Beside, Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { ARTICLES } from "../../settings/labels.js";
import { say } from "../../words/words.js";
import { Covering } from "./covering.js";
import { Fresh } from "./fresh.js";

/** @param {{place: string[]}} props */
export function Cover({ place: [id] }) {
  const { room } = useNotebook();
  const { answer, error, heard, older } = useAnswer(room ? { ask: "coverings", room: room.id } : null);
  const wide = useWide();
  if (!room) return html`<${Page} title=${say("screen-cover")} tab="cover"><${NoRoom} /><//>`;
  // With room beside the list, one of its lines is always open: what wants a look, or the first.
  const first = wide && answer?.rows.length ? (answer.rows.find((row) => row.look) ?? answer.rows[0]).id : null;
  const chosen = id ?? first;
  const one = chosen && (chosen === "new" ? html`<${Fresh} asked=${answer} />` : html`<${Covering} id=${chosen} asked=${answer} key=${chosen} />`);
  if (id && !wide) return one;
  const list = html`${heard ? null : html`<${Asleep} what=${say("cover-asleep")} />`}
    <${Refusal} error=${error} />
    ${answer ? html`<${List} rows=${answer.rows} chosen=${wide ? chosen : null} />` : null}
    ${answer?.rows.length ? html`<${ListFiles} of="strips" />` : null}
    <p class="onward"><a href=${link("cover", "new")}>${say("cover-new")}</a></p>`;
  return html`<${Page} title=${say("cover-title", { room: room.name })} tab="cover" kind=${wide ? "cover table" : "cover"} older=${older}>
    ${wide ? html`<div class="list">${list}</div><div class="beside"><${Beside.Provider} value=${true}>${one}<//></div>` : list}
  <//>`;
}

/** @param {{rows: any[], chosen: string | null}} props `chosen`: the one that stands beside the list */
function List({ rows, chosen }) {
  if (!rows.length) {
    return html`<div class="now"><h2>${say("cover-none")}</h2>
      <p class="pencil">${say("cover-none.hint")}</p></div>`;
  }
  return html`<ul class="rows">${rows.map((row) => html`<${Row} row=${row} chosen=${row.id === chosen} key=${row.id} />`)}</ul>`;
}

/** @param {{row: any, chosen: boolean}} props */
function Row({ row, chosen }) {
  const sort = ARTICLES[row.sort]?.name ?? "";
  return html`<li><a class="row" href=${link("cover", row.id)} aria-current=${chosen ? "true" : null}>
    <span class="row-words"><span>${row.name || sort}</span>
      <small>${[sort, row.where].filter(Boolean).join(" · ")}</small>
      ${row.look ? html`<small class="wrong">${say("cover-look")}</small>` : null}</span>
    <span class="row-figure"><b>${row.amount}</b><small>${row.done}</small></span>
  </a></li>`;
}
