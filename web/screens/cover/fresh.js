// @ts-check
// A new covering: something that the house has already, or a paper, paint, film or sheet that is named here.
import { html, useState } from "../../controls/ui.js";
import { Button, Choice, Field } from "../../controls/controls.js";
import { go, goInstead, stayHere } from "../../controls/route.js";
import { Page } from "../../frame/page.js";
import { useNotebook } from "../../notebook/notebook.js";
import { sayArticle, sayCovering } from "../../notebook/write.js";
import { ARTICLES } from "../../settings/labels.js";
import { say } from "../../words/words.js";

const SORTS = Object.entries(ARTICLES).map(([sort, { name }]) => [sort, name]);

/** @param {{asked: any}} props the answer to `coverings`, once it is there */
export function Fresh({ asked }) {
  const { room, journal, act } = useNotebook();
  const [sort, setSort] = useState("paper");
  const [name, setName] = useState("");
  const known = (asked?.articles ?? []).filter((one) => one.sort === sort);
  const begin = async (/** @type {() => Promise<string>} */ article, /** @type {string} */ words) => {
    const stays = stayHere();
    const made = await act(async () => sayCovering(journal, room.id, await article()), words);
    if (made && stays()) goInstead("cover", made);
  };
  const ready = name.trim().length > 0 && name.trim().length <= 80;
  const make = () => begin(() => sayArticle(journal, room.house, { sort, name: name.trim() }), name.trim());
  return html`<${Page} title=${say("cover-new")} tab="cover" kind="form">
    <${Choice} name="sort" legend=${say("cover-new.sort")} choices=${SORTS} value=${sort} onPick=${setSort} />
    ${known.map((one) => html`<${Button} onTouch=${() => begin(async () => one.id, one.name)} key=${one.id}>${one.name}<//>`)}
    <${Field} label=${say(known.length ? "cover-new.other" : "cover-new.name")} value=${name} onInput=${setName}
      hint=${say("cover-new.hint")} onEnter=${ready ? make : undefined} />
    <div class="low">
      <div class="last-row">
        <${Button} onTouch=${() => go("cover")}>${say("back")}<//>
        <${Button} kind="main" disabled=${!ready} onTouch=${make}>${say("cover-new.go")}<//>
      </div>
    </div>
  <//>`;
}
