// @ts-check
// One covering: what it wants, its drawing, the list to work by, and what was said of it, to be said otherwise.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Problems, Refusal } from "../../controls/notes.js";
import { go, link, stayHere } from "../../controls/route.js";
import { Cautions } from "../../frame/cautions.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { sayCovering, strikeOut } from "../../notebook/write.js";
import { ARTICLES, COVERS } from "../../settings/labels.js";
import { Settings } from "../../settings/settings.js";
import { say } from "../../words/words.js";
import { WorkList } from "./list.js";
import { CoverPlan } from "./plan.js";
import { Starts } from "./starts.js";
import { Surfaces, Walls } from "./where.js";

/** @param {{id: string, asked: any}} props `asked`: the answer to `coverings`, for the walls and openings to choose of */
export function Covering({ id, asked }) {
  const { room } = useNotebook();
  const { answer, error, heard, older } = useAnswer({ ask: "covering", room: room.id, covering: id });
  const title = answer?.article.name || say("covering");
  return html`<${Page} title=${title} tab="cover" kind="covering" older=${older}>
    ${heard ? null : html`<${Asleep} what=${say("covering.asleep")} />`}
    ${error ? html`<${Refusal} error=${error} /><p class="onward"><a href=${link("cover")}>${say("covering.others")}</a></p>` : null}
    ${answer ? html`<${Answered} answer=${answer} asked=${asked} />` : null}
  <//>`;
}

/** @param {{answer: any, asked: any}} props */
function Answered({ answer, asked }) {
  const { sort } = answer.article;
  return html`
    <div class="to-do">
      <${Wanted} answer=${answer} />
      <${Problems} problems=${answer.problems} />
      ${answer.missing.length ? html`<${Missing} answer=${answer} />` : null}
      <${CoverPlan} answer=${answer} />
      <${WorkList} answer=${answer} />
    </div>
    <div class="to-say">
      <${Said} answer=${answer} asked=${asked} />
      <${Cautions} cautions=${answer.cautions} />
      ${sort ? html`<p class="onward"><a href=${link("supplies")}>${say("covering.buy")}</a></p>` : null}
      <${Instead} answer=${answer} asked=${asked} />
      <${Strike} answer=${answer} />
    </div>`;
}

/** How much of it, and what that comes to. @param {{answer: any}} props */
function Wanted({ answer }) {
  const { amount, cost, seen, where } = answer;
  const price = say(seen ? "covering-cost.seen" : "covering-cost", { amount: cost ?? "", seen });
  return html`<div class="wanted">
    ${amount ? html`<p class="money">${amount}</p>` : null}
    <p>${[where, answer.done].filter(Boolean).join(" · ")}</p>
    ${cost === null ? null : html`<p class="pencil">${price}</p>`}
  </div>`;
}

/** What a plan still wants said. @param {{answer: any}} props */
function Missing({ answer }) {
  return html`<div class="now"><h2>${say("covering-missing")}</h2>
    <ul>${answer.missing.map((/** @type {string} */ words) => html`<li key=${words}>${words}</li>`)}</ul>
    <p class="pencil">${say("covering-missing.hint")}</p></div>`;
}

/** What was said of it: where it goes, what its label says, how it is put up. @param {{answer: any, asked: any}} props */
function Said({ answer, asked }) {
  const { article } = answer;
  const known = ARTICLES[article.sort];
  if (!known) return null;
  const above = { from: "usual" };
  const label = { ...article, above: article.defaults, ...above };
  const covering = { ...answer, above: answer.defaults, ...above };
  const open = answer.missing.length ? "label" : undefined;
  return html`<section class="said" aria-label=${say("covering-said")}>
    ${article.sort === "paper" || article.sort === "paint" ? html`<${Walls} answer=${answer} asked=${asked} />` : null}
    ${article.sort === "paint" ? html`<${Surfaces} answer=${answer} />` : null}
    <${Settings} groups=${[{ key: "label", ...known.label }]} subject=${label} open=${open} />
    <${Settings} groups=${COVERS[article.sort]} subject=${covering} open=${open && COVERS[article.sort][0].tables ? COVERS[article.sort][0].key : undefined} />
    ${answer.seams ? html`<${Starts} answer=${answer} asked=${asked} />` : null}
  </section>`;
}

/** Another in its place. @param {{answer: any, asked: any}} props */
function Instead({ answer, asked }) {
  const { room, journal, act } = useNotebook();
  const others = (asked?.articles ?? []).filter((/** @type {any} */ one) => one.id !== answer.article.id);
  if (!others.length) return null;
  const take = (/** @type {any} */ one) => act(() => sayCovering(journal, room.id, one.id, answer.id), one.name);
  return html`<details class="more"><summary>${say("covering-instead")}</summary>
    ${others.map((/** @type {any} */ one) => html`<${Button} onTouch=${() => take(one)} key=${one.id}>${one.name}<//>`)}
  </details>`;
}

/** @param {{answer: any}} props */
function Strike({ answer }) {
  const { journal, act } = useNotebook();
  const name = answer.article.name || say("covering-struck.it");
  const strike = async () => {
    const stays = stayHere();
    const done = await act(() => strikeOut(journal, "covering", { covering: answer.id }, "not wanted"), say("strike.done", { what: name }));
    if (done !== null && stays()) go("cover");
  };
  return html`<div class="strike"><${Button} kind="plain" onTouch=${strike}>${say("covering-struck.way")}<//></div>`;
}
