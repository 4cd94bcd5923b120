// @ts-check
// The readings of the room in hand, to bring one into the sum that is begun: whole, a hair and all.
import { html } from "../../controls/ui.js";
import { go, link } from "../../controls/route.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { say } from "../../words/words.js";
import { ReadingsToBring } from "./line.js";
import { bring } from "./writing.js";

export function Bring() {
  const { room, engine } = useNotebook();
  const { answer } = useAnswer(room ? { ask: "figures", room: room.id } : null);
  const read = (answer?.figures ?? []).filter((/** @type {any} */ one) => one.text);
  const asleep = engine === "waking" ? "sums-waking" : "bring-asleep";
  const pick = (/** @type {any} */ { text }) => {
    bring(text);
    go("sums");
  };
  return html`<${Page} title=${say("sum-bring")} aside=${room?.name ?? " "} tab="sums" kind="form">
    ${answer && !read.length ? html`<p class="pencil">${say("bring-none")}</p>` : null}
    ${answer ? null : html`<p class="pencil awaited" role="status">${say(asleep)}</p>`}
    <${ReadingsToBring} figures=${read} label=${say("bring-list")} onPick=${pick} />
    <p class="onward low"><a href=${link("sums")}>${say("bring-back")}</a></p>
  <//>`;
}
