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
import { LENGTH } from "../../settings/said.js";
import { say, sayWith } from "../../words/words.js";

/** @param {{house: any, known: any}} props */
export function Money({ house, known }) {
  const { answer, error, heard, older } = useAnswer({ ask: "spent", house: house.id });
  return html`<${Page} title=${say("money")} tab="house" kind="house money-page" older=${older} of=${house.id}>
    ${heard ? null : html`<${Asleep} what=${say("money-figures")} />`}
    <${Refusal} error=${error} />
    ${answer ? html`<${Spent} answer=${answer} />` : null}
    ${answer ? html`<${NextRooms} house=${house} known=${known} />` : null}
    <div class="low last-row"><${Button} onTouch=${() => go("house")}>${say("back")}<//></div>
  <//>`;
}

/** @param {{answer: any}} props */
function Spent({ answer }) {
  return html`
    <section aria-label=${say("money-house")}>
      <p class="money">${say("dollars", { amount: answer.expected })}</p>
      <p>${say("money-house.told")}</p>
      <${Sums} caption=${say("money-rooms")} rows=${answer.rooms} />
      <p class="pencil">${answer.working[0]}.</p>
      <${Problems} problems=${answer.problems} />
      ${answer.unpriced.length ? html`<p class="pencil">${say("money-unpriced", { things: answer.unpriced.join(", ") })}</p>` : null}
      <p class="onward"><a href=${link("house", "receipt")}>${say("money-receipt")}</a></p>
      <details class="more"><summary>${say("money-things")}</summary><${Sums} caption=${say("money-things")} rows=${answer.lines} /></details>
      <${Lots} lots=${answer.lots.filter((lot) => lot.price !== null || lot.wrong)} title=${say("money-receipts")} />
    </section>`;
}

/** @param {{caption: string, rows: any[]}} props */
function Sums({ caption, rows }) {
  return html`<table class="to-buy sums-of">
    <caption class="heard">${caption}</caption>
    <thead><tr><th scope="col">${caption}</th><td>${say("money-planned")}</td><td>${say("money-spent")}</td></tr></thead>
    <tbody>${rows.map(
      (row) => html`<tr key=${row.id ?? row.name}><th scope="row">${row.name_shown ?? row.name}
        ${row.over && row.over !== "0.00" ? html`<small>${sayOver(row.over)}</small>` : null}
        ${row.seen ? html`<small>${say("money-seen", { date: row.seen })}</small>` : null}</th>
        <td>${say("dollars", { amount: row.planned })}</td><td>${say("dollars", { amount: row.spent })}</td></tr>`,
    )}</tbody>
  </table>`;
}

/** What was spent beyond what was planned, or short of it. @param {string} over */
const sayOver = (over) => (over.startsWith("-") ? say("money-less", { amount: over.slice(1) }) : say("money-over", { amount: over }));

/** @param {{count: number, name: string, name_shown: string, called: string}} lot */
const sayLotOf = ({ count, name, name_shown, called }) =>
  say(called === name ? "lot" : "lot.called", { count, name: name_shown, called });

/** What was bought or is on hand, each to be said again or struck. @param {{lots: any[], title: string}} props */
export function Lots({ lots, title }) {
  const { journal, act } = useNotebook();
  if (!lots.length) return null;
  const strike = (/** @type {any} */ lot) => act(() => strikeOut(journal, "lot", { lot: lot.id }, "entered by mistake, or gone"), say("strike.done", { what: lot.name_shown }));
  return html`<section class="group" aria-label=${title}><h2>${title}</h2><ul class="rows">
    ${lots.map(
      (lot) => html`<li class="row" key=${lot.id}>
        <span class="row-words"><a href=${link("house", "lot", lot.id)}>${sayLotOf(lot)}</a>
          <small>${[lot.where, lot.date, lot.note].filter(Boolean).join(" · ")}</small>
          ${lot.wrong ? html`<small class="wrong">${lot.wrong}</small>` : null}</span>
        <b>${lot.price ? say("dollars", { amount: lot.price }) : ""}</b>
        <${Button} kind="plain" label=${say("lot-strike", { count: lot.count, name: lot.name_shown })} onTouch=${() => strike(lot)}>${say("strike")}<//>
      </li>`,
    )}
  </ul></section>`;
}

const TABLE = {
  words: "next-rooms",
  cells: [
    ["name", say("cell-room"), "text", "", "must"],
    ["perimeter", say("cell-perimeter"), "text", "", "", LENGTH],
    ["openings", say("cell-openings"), "numeric", "0"],
    ["height", say("cell-height"), "text", "", "", LENGTH],
  ],
};

/** What the same standard may cost in the rooms to come. @param {{house: any, known: any}} props */
function NextRooms({ house, known }) {
  const { journal, act } = useNotebook();
  const { answer, error } = useAnswer({ ask: "next_rooms", house: house.id });
  const saved = known?.settings["next.rooms"] ?? [];
  const save = (/** @type {object[]} */ rows) => act(() => setSetting(journal, house.id, "next.rooms", rows), say("next-rooms-done"));
  return html`<section aria-labelledby="next-rooms">
    <h2 id="next-rooms">${say("next-rooms-title")}</h2>
    ${answer?.rooms.length ? html`<p>${sayWith("next-rooms-all", { cost: html`<b>${say("next-rooms-cost", { low: answer.low, high: answer.high })}</b>` })}</p>` : null}
    ${answer ? html`<p class="pencil">${answer.said}</p>` : null}
    <${Refusal} error=${error} />
    <${Problems} problems=${answer?.problems ?? []} />
    <ul class="rows">${(answer?.rooms ?? []).map(
      (one) => html`<li class="row" key=${one.name}><span class="row-words"><span>${one.name}</span><small>${one.working}</small></span>
        <b>${say("next-rooms-cost", { low: one.low, high: one.high })}</b></li>`,
    )}</ul>
    ${known ? html`<${Rows} ...${TABLE} saved=${saved} onSave=${save} key=${JSON.stringify(saved)} />` : null}
  </section>`;
}
