// @ts-check
// A paper, paint, film or sheet of the house: what it is called, what its label says, and how it is struck.
import { html, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { go, stayHere } from "../../controls/route.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { sayArticle, strikeOut } from "../../notebook/write.js";
import { ARTICLES } from "../../settings/labels.js";
import { Settings } from "../../settings/settings.js";
import { say } from "../../words/words.js";

/** @param {{house: any, room?: string}} props `room` is the article's id: the place's last word */
export function Article({ house, room: id }) {
  const { answer, older } = useAnswer({ ask: "stock", house: house.id });
  const article = answer?.articles.find((/** @type {any} */ one) => one.id === id);
  return html`<${Page} title=${article?.name ?? say("article")} tab="house" kind="form" older=${older}>
    ${article ? html`<${Known} house=${house} article=${article} key=${id} />` : null}
    ${answer && !article ? html`<p>${say("house-gone")}</p>` : null}
    ${answer ? null : html`<${Asleep} one what=${say("article-label")} />`}
    <div class="low last-row"><${Button} onTouch=${() => go("house", "stock")}>${say("back")}<//></div>
  <//>`;
}

/** @param {{house: any, article: any}} props */
function Known({ house, article }) {
  const { journal, act } = useNotebook();
  const [name, setName] = useState(article.name);
  const { sort } = article;
  const known = ARTICLES[sort];
  const rename = () => act(() => sayArticle(journal, house.id, { id: article.id, sort, name: name.trim() }), name.trim());
  const strike = async () => {
    const stays = stayHere();
    const done = await act(() => strikeOut(journal, "article", { article: article.id }, "not wanted"), say("strike.done", { what: article.name }));
    if (done !== null && stays()) go("house", "stock");
  };
  const label = { ...article, above: article.defaults, from: "usual" };
  return html`
    <${Field} label=${say("article-name")} value=${name} onInput=${setName} hint=${say("article-name.hint")} />
    <${Button} disabled=${!name.trim() || name.trim() === article.name} onTouch=${rename}>${say("save")}<//>
    ${known ? html`<${Settings} groups=${[{ key: "label", ...known.label }]} subject=${label} open="label" />` : null}
    <div class="strike"><p class="pencil">${say("article-strike.told")}</p>
      <${Button} kind="plain" onTouch=${strike}>${say("article-strike")}<//></div>`;
}
