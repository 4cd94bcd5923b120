// @ts-check
// Money: planned against spent, for the house and room by room; receipts; and what the next rooms may cost.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Problems, Refusal } from "../../controls/notes.js";
import { go, link } from "../../controls/route.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { setSetting, strikeOut } from "../../notebook/write.js";
import { Rows } from "../../settings/rows.js";
import { say } from "../../words/words.js";

/** @param {{house: any, known: any}} props */
export function Money({ house, known }) {
  const { answer, error, heard, older } = useAnswer({ ask: "spent", house: house.id });
  return html`<${Page} title="Money" tab="house" kind="house money-page" older=${older}>
    ${heard ? null : html`<${Asleep} what="The figures" />`}
    <${Refusal} error=${error} />
    ${answer ? html`<${Spent} answer=${answer} />` : null}
    ${answer ? html`<${NextRooms} house=${house} known=${known} />` : null}
    <div class="low last-row"><${Button} onTouch=${() => go("house")}>Back<//></div>
  <//>`;
}

/** @param {{answer: any}} props */
function Spent({ answer }) {
  return html`
    <section aria-label="In the house">
      <p class="money">$${answer.expected}</p>
      <p>in the end, by what is planned now</p>
      <${Sums} caption="Room by room" rows=${answer.rooms} />
      <p class="pencil">${answer.working[0]}.</p>
      <${Problems} problems=${answer.problems} />
      ${answer.unpriced.length ? html`<p class="pencil">Planned, and without a price yet: ${answer.unpriced.join(", ")}.</p>` : null}
      <p class="onward"><a href=${link("house", "receipt")}>Enter a receipt</a></p>
      <details class="more"><summary>Thing by thing</summary><${Sums} caption="Thing by thing" rows=${answer.lines} /></details>
      <${Lots} lots=${answer.lots.filter((lot) => lot.price !== null || lot.wrong)} title="Receipts" />
    </section>`;
}

/** @param {{caption: string, rows: any[]}} props */
function Sums({ caption, rows }) {
  return html`<table class="to-buy sums-of">
    <caption class="heard">${caption}</caption>
    <thead><tr><th scope="col">${caption}</th><td>planned</td><td>spent</td></tr></thead>
    <tbody>${rows.map(
      (row) => html`<tr key=${row.id ?? row.name}><th scope="row">${row.name}
        ${row.over && row.over !== "0.00" ? html`<small>${row.over.startsWith("-") ? `$${row.over.slice(1)} less` : `$${row.over} over`}</small>` : null}
        ${row.seen ? html`<small>price seen ${row.seen}</small>` : null}</th>
        <td>$${row.planned}</td><td>$${row.spent}</td></tr>`,
    )}</tbody>
  </table>`;
}

/** What was bought or is on hand, each to be said again or struck. @param {{lots: any[], title: string}} props */
export function Lots({ lots, title }) {
  const { journal, act } = useNotebook();
  if (!lots.length) return null;
  const strike = (/** @type {any} */ lot) => act(() => strikeOut(journal, "lot", { lot: lot.id }, "entered by mistake, or gone"), `${lot.name} struck`);
  return html`<section class="group" aria-label=${title}><h2>${title}</h2><ul class="rows">
    ${lots.map(
      (lot) => html`<li class="row" key=${lot.id}>
        <span class="row-words"><a href=${link("house", "lot", lot.id)}>${lot.count} × ${lot.name}${lot.called === lot.name ? "" : `, ${lot.called}`}</a>
          <small>${[lot.where, lot.date, lot.note].filter(Boolean).join(" · ")}</small>
          ${lot.wrong ? html`<small class="wrong">${lot.wrong}</small>` : null}</span>
        <b>${lot.price ? `$${lot.price}` : ""}</b>
        <${Button} kind="plain" label="Strike ${lot.count} ${lot.name}" onTouch=${() => strike(lot)}>Strike<//>
      </li>`,
    )}
  </ul></section>`;
}

const CELLS = [
  ["name", say("cell-room"), "text", "", "must"],
  ["perimeter", say("cell-perimeter"), "text", ""],
  ["openings", say("cell-openings"), "numeric", "0"],
  ["height", say("cell-height"), "text"],
];

/** What the same standard may cost in the rooms to come. @param {{house: any, known: any}} props */
function NextRooms({ house, known }) {
  const { journal, act } = useNotebook();
  const { answer, error } = useAnswer({ ask: "next_rooms", house: house.id });
  const saved = known?.settings["next.rooms"] ?? [];
  const save = (/** @type {object[]} */ rows) => act(() => setSetting(journal, house.id, "next.rooms", rows), "The rooms to come");
  return html`<section aria-labelledby="next-rooms">
    <h2 id="next-rooms">The next rooms</h2>
    ${answer?.rooms.length ? html`<p><b>$${answer.low} to ${answer.high}</b> for all of them</p>` : null}
    ${answer ? html`<p class="pencil">${answer.said}</p>` : null}
    <${Refusal} error=${error} />
    <${Problems} problems=${answer?.problems ?? []} />
    <ul class="rows">${(answer?.rooms ?? []).map(
      (one) => html`<li class="row" key=${one.name}><span class="row-words"><span>${one.name}</span><small>${one.working}</small></span>
        <b>$${one.low} to ${one.high}</b></li>`,
    )}</ul>
    ${known ? html`<${Rows} words="next-rooms" cells=${CELLS} saved=${saved} onSave=${save} key=${JSON.stringify(saved)} />` : null}
  </section>`;
}
