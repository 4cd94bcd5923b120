// @ts-check
// On hand: rolls, sheets and cans, boards left over, and what else lies there; fed by plans once they are cut.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { Refusal } from "../../controls/notes.js";
import { go, link } from "../../controls/route.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer } from "../../notebook/notebook.js";
import { say } from "../../words/words.js";
import { Lots } from "./money.js";

/** @param {{house: any}} props */
export function Stock({ house }) {
  const { answer, error, heard, older } = useAnswer({ ask: "stock", house: house.id });
  return html`<${Page} title=${say("stock")} tab="house" kind="house" older=${older} of=${house.id}>
    ${heard ? null : html`<${Asleep} what=${say("stock-things")} />`}
    <${Refusal} error=${error} />
    ${answer ? html`<${Shelf} shelf=${answer.shelf} /><${Boards} boards=${answer.boards} />
      <${Lots} lots=${answer.lots} title=${say("stock-came")} /><${Articles} articles=${answer.articles} />` : null}
    <p class="onward"><a href=${link("house", "shelf")}>${say("stock-put")}</a></p>
    <div class="low last-row"><${Button} onTouch=${() => go("house")}>${say("back")}<//></div>
  <//>`;
}

/** @param {{shelf: any[]}} props */
function Shelf({ shelf }) {
  const words = (/** @type {any} */ one) =>
    ["used", "wanted", "over"].filter((of) => one[of]).map((of) => say(`stock-count-${of}`, { count: one[of] })).join(" · ");
  return html`<section class="group" aria-label=${say("stock-shelf")}><h2>${say("stock-shelf")}</h2>
    ${shelf.length ? null : html`<p class="pencil">${say("stock-shelf.none")}</p>`}
    <ul class="rows">${shelf.map(
      (one) => html`<li class="row" key=${one.article}><span class="row-words"><span>${one.name}</span><small>${words(one)}</small></span>
        <b>${one.came || say("stock-none")}</b></li>`,
    )}</ul></section>`;
}

/** What the house knows to cover with, each to be named anew or struck. @param {{articles: any[]}} props */
function Articles({ articles }) {
  if (!articles.length) return null;
  return html`<section class="group" aria-label=${say("stock-articles")}><h2>${say("stock-articles")}</h2>
    <ul class="rows">${articles.map(
      (one) => html`<li key=${one.id}><a class="row" href=${link("house", "article", one.id)}><span>${one.name}</span></a></li>`,
    )}</ul></section>`;
}

/** @param {{boards: any[]}} props */
function Boards({ boards }) {
  return html`<section class="group" aria-label=${say("stock-boards")}><h2>${say("stock-boards")}</h2>
    ${boards.length ? null : html`<p class="pencil">${say("stock-boards.none")}</p>`}
    <ul class="rows">${boards.map(
      (one, place) => html`<li class="row" key=${place}><span class="row-words"><span>${one.profile_shown}</span><small>${one.room}</small></span>
        <${Figure} shown=${one.length.shown} /></li>`,
    )}</ul></section>`;
}
