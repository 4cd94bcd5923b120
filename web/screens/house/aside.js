// @ts-check
// The cautions that this house has heard and put aside, each to be told again.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { useAnswer } from "../../notebook/notebook.js";
import { useTicks } from "../../notebook/ticks.js";
import { say } from "../../words/words.js";

/** @param {{house: any}} props */
export function Aside({ house }) {
  const { answer } = useAnswer({ ask: "cautions", house: house.id });
  const { states, put } = useTicks(house.id, "cautions");
  const aside = (answer?.aside ?? []).filter((one) => states.has(one.word));
  if (!aside.length) return null;
  return html`<details class="more"><summary>${say("aside")}<small class="pencil">${aside.length}</small></summary>
    <ul class="rows">${aside.map(
      (one) => html`<li class="row" key=${one.word}><span class="row-words"><small>${one.words}</small></span>
        <${Button} kind="plain" label=${say("aside-again.what", { word: one.word })} onTouch=${() => put(one.word, null, one.word)}>
          ${say("aside-again")}<//></li>`,
    )}</ul>
  </details>`;
}
