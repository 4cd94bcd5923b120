// @ts-check
// What a plan of boards still needs, and where to give it.
import { html } from "../../controls/ui.js";
import { link } from "../../controls/route.js";
import { say } from "../../words/words.js";
import { Unpriced } from "./unpriced.js";

/** @param {{missing: string[], unpriced?: any[]}} props `unpriced`: profiles to be priced here */
export function Missing({ missing, unpriced = [] }) {
  const asked = new Set(unpriced.map((one) => one.words));
  return html`<div class="now"><h2>${say("still-missing")}</h2>
    ${missing.filter((words) => !asked.has(words)).map((words) => html`<p key=${words}>${words}</p>`)}
    ${unpriced.map((one) => html`<${Unpriced} ...${one} key=${one.profile} />`)}
    <p class="onward">
      <a href=${link("pieces")}>${say("boards-pieces")}</a>
      <a href=${link("house", "standard")}>${say("still-missing.prices")}</a>
    </p>
  </div>`;
}
