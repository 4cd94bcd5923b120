// @ts-check
// Supplies: one list of all that the room wants bought, boards, coverings and what is used up, ticked off in the shop.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Problems, Refusal } from "../../controls/notes.js";
import { link } from "../../controls/route.js";
import { useWide } from "../../controls/wide.js";
import { Cautions } from "../../frame/cautions.js";
import { Asleep, NoRoom } from "../../frame/empty.js";
import { ListFiles } from "../../frame/list_files.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { useTicks } from "../../notebook/ticks.js";
import { acceptPlan } from "../../notebook/write.js";
import { inHouse, Settings } from "../../settings/settings.js";
import { SUPPLIES } from "../../settings/supplies.js";
import { say, sayWith } from "../../words/words.js";

const HEADS = { boards: ["boards"], coverings: ["paper", "paint", "film", "sheet"], supplies: ["supplies"] };

export function Supplies() {
  const { room } = useNotebook();
  const { answer, error, heard, older } = useAnswer(room ? { ask: "shopping", room: room.id } : null);
  const wide = useWide();
  if (!room) return html`<${Page} title=${say("screen-supplies")} tab="supplies"><${NoRoom} /><//>`;
  return html`<${Page} title=${say("supplies-title", { room: room.name })} tab="supplies" kind=${wide ? "supplies table" : "supplies"} older=${older}>
    ${heard ? null : html`<${Asleep} what=${say("supplies-asleep")} />`}
    <${Refusal} error=${error} />
    ${answer ? html`<${List} answer=${answer} older=${older} wide=${wide} />` : null}
  <//>`;
}

/** @param {{answer: any, older: boolean, wide: boolean}} props */
function List({ answer, older, wide }) {
  const { room } = useNotebook();
  const { states, put } = useTicks(room.id, "supplies");
  const open = answer.goods.flatMap((good) => good.lines).filter((line) => !states.has(line.key)).length;
  const sum = html`<div class="wanted">
      <p class="money">${say("dollars", { amount: answer.total })}</p>
      <p>${say(answer.unpriced.length ? "supplies-open.unpriced" : "supplies-open", { count: open, names: answer.unpriced.join(", ") })}</p>
    </div>
    <${Problems} problems=${answer.problems} />`;
  const groups = html`${Object.entries(HEADS).map(
    ([head, sorts]) => html`<${Group} ...${{ states, put, older }} title=${say(`supplies-group-${head}`)}
      goods=${answer.goods.filter((one) => sorts.includes(one.sort))} key=${head} />`,
  )}`;
  const rest = html`${answer.missing.length ? html`<${Missing} missing=${answer.missing} />` : null}
    <${CountedBy} />
    ${answer.goods.length ? html`<${ListFiles} of="shopping" />` : null}
    <${Cautions} cautions=${answer.cautions} />
    <p class="onward"><a href=${link("house", "money")}>${say("supplies-receipt")}</a></p>`;
  return wide
    ? html`<div class="list">${groups}</div><div class="beside"><div class="part">${sum}${rest}</div></div>`
    : html`${sum}${groups}${rest}`;
}

/** @param {{missing: string[]}} props */
function Missing({ missing }) {
  return html`<div class="now"><h2>${say("still-missing")}</h2>
    ${missing.map((words) => html`<p key=${words}>${words}</p>`)}
    <p class="onward"><a href=${link("cover")}>${say("supplies-cover")}</a><a href=${link("house", "standard")}>${say("still-missing.prices")}</a></p>
  </div>`;
}

/** @param {{title: string, goods: any[], states: Map<string, string>, put: any, older: boolean}} props */
function Group({ title, goods, states, put, older }) {
  if (!goods.length) return null;
  return html`<section class="group" aria-label=${title}>
    <h2>${title}</h2>
    <ul class="rows">${goods.map((good) => html`<${Good} ...${{ good, states, put, older }} key=${`${good.sort} ${good.name}`} />`)}</ul>
  </section>`;
}

/** @param {{good: any, states: Map<string, string>, put: any, older: boolean}} props */
function Good({ good, states, put, older }) {
  const here = good.here ? say("supplies-here", { what: good.here }) : "";
  return html`<li class="good">
    <details class="more">
      <summary><span class="row-words"><b>${good.name_shown}</b>
        <small>${[good.need, here, good.lines.length ? "" : say("supplies-here.enough")].filter(Boolean).join(" · ")}</small></span></summary>
      <ol class="steps">${good.working.map((words) => html`<li key=${words}>${words}</li>`)}
        ${good.seen ? html`<li>${say("supplies-seen", { date: good.seen })}</li>` : null}</ol>
    </details>
    ${good.lines.map((line) => html`<${Line} ...${{ good, line, put, older }} state=${states.get(line.key) ?? ""} key=${line.key} />`)}
  </li>`;
}

/**
 * A line to tick off in the shop. What is older than the journal is there to be read, and no plan to be settled on.
 * @param {{good: any, line: any, state: string, put: any, older: boolean}} props
 */
function Line({ good, line, state, put, older }) {
  const { journal, act } = useNotebook();
  const said = say("named", { name: good.name_shown, text: line.words });
  // A board that is bought stands in the plan, on every screen: it is no mere line ticked off.
  const bought = () => new Map(line.boards.map((/** @type {number} */ place) => [place, true]));
  const buy = () => act(() => acceptPlan(journal, good.accept, bought()), say("tick-bought.told", { what: said }));
  const tick = () => put(line.key, state ? null : "bought", line.words);
  return html`<div class="row buy-line">
    <span class="row-words"><span>${line.words}</span>
      ${line.each ? html`<small>${say("dollars.each", { amount: line.each })}</small>` : null}
      ${line.changed ? html`<small class="wrong">${line.changed}</small>` : null}</span>
    <b>${line.cost ? say("dollars", { amount: line.cost }) : ""}</b>
    <${Button} pressed=${Boolean(state)} disabled=${older && line.boards.length > 0} label=${say("supplies-line", { what: said })}
      onTouch=${line.boards.length && good.accept ? buy : tick}>${say(state ? `tick-${state}` : "tick-to-buy")}<//>
  </div>`;
}

/** What the amounts go by, for the whole house. */
function CountedBy() {
  const { room } = useNotebook();
  const { answer } = useAnswer({ ask: "notebook" });
  const house = answer?.houses.find((one) => one.id === room.house);
  if (!house) return null;
  const groups = Object.entries(SUPPLIES).map(([key, group]) => ({ key, ...group }));
  const subject = { ...house, above: inHouse({ ...house, settings: {} }), from: "usual" };
  const way = html`<a href=${link("house", "standard", room.id)}>${say("counted-by.way")}</a>`;
  return html`<section class="group counted-by" aria-label=${say("counted-by")}>
    <h2>${say("counted-by")}</h2>
    <p class="pencil">${sayWith("counted-by.hint", { way }, { house: house.name })}</p>
    <${Settings} groups=${groups} subject=${subject} />
  </section>`;
}
