// @ts-check
// On hand: rolls, sheets and cans, boards left over, and what else lies there; fed by plans once they are cut.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { Refusal } from "../../controls/notes.js";
import { go, link } from "../../controls/route.js";
import { Asleep, Onward } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer } from "../../notebook/notebook.js";
import { Lots } from "./money.js";

/** @param {{house: any}} props */
export function Stock({ house }) {
  const { answer, error, heard, older } = useAnswer({ ask: "stock", house: house.id });
  return html`<${Page} title="On hand" tab="house" kind="house" older=${older}>
    ${heard ? null : html`<${Asleep} what="The things on hand" />`}
    <${Refusal} error=${error} />
    ${answer ? html`<${Shelf} shelf=${answer.shelf} /><${Boards} boards=${answer.boards} />
      <${Lots} lots=${answer.lots} title="Everything that came" /><${Articles} articles=${answer.articles} />` : null}
    <${Onward} heard=${heard}><a href=${link("house", "shelf")}>Put something on the shelf</a><//>
    <div class="low last-row"><${Button} onTouch=${() => go("house")}>Back<//></div>
  <//>`;
}

/** @param {{shelf: any[]}} props */
function Shelf({ shelf }) {
  const words = (/** @type {any} */ one) =>
    [one.used && `${one.used} up`, one.wanted && `${one.wanted} wanted`, one.over && `${one.over} over`].filter(Boolean).join(" · ");
  return html`<section class="group" aria-label="To cover with"><h2>To cover with</h2>
    ${shelf.length ? null : html`<p class="pencil">No paper, paint, film or sheet yet.</p>`}
    <ul class="rows">${shelf.map(
      (one) => html`<li class="row" key=${one.article}><span class="row-words"><span>${one.name}</span><small>${words(one)}</small></span>
        <b>${one.came || "none here"}</b></li>`,
    )}</ul></section>`;
}

/** What the house knows to cover with, each to be named anew or struck. @param {{articles: any[]}} props */
function Articles({ articles }) {
  if (!articles.length) return null;
  return html`<section class="group" aria-label="By their labels"><h2>By their labels</h2>
    <ul class="rows">${articles.map(
      (one) => html`<li key=${one.id}><a class="row" href=${link("house", "article", one.id)}><span>${one.name}</span></a></li>`,
    )}</ul></section>`;
}

/** @param {{boards: any[]}} props */
function Boards({ boards }) {
  return html`<section class="group" aria-label="Boards left over"><h2>Boards left over</h2>
    ${boards.length ? null : html`<p class="pencil">A board is left over once all is cut that was planned from it, if what remains can be held at the saw.</p>`}
    <ul class="rows">${boards.map(
      (one, place) => html`<li class="row" key=${place}><span class="row-words"><span>${one.profile}</span><small>${one.room}</small></span>
        <${Figure} shown=${one.length.shown} /></li>`,
    )}</ul></section>`;
}
