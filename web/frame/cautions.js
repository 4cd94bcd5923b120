// @ts-check
// Cautions, each said once where it matters, after what the person came for. A house that has heard one puts it aside; it
// is kept in a list under House. A caution is known by the words before its colon.
import { html } from "../controls/ui.js";
import { Button } from "../controls/controls.js";
import { useNotebook } from "../notebook/notebook.js";
import { useTicks } from "../notebook/ticks.js";
import { say } from "../words/words.js";

/** What a caution is known by. @param {string} words */
export function wordOf(words) {
  return words.split(":", 1)[0];
}

/** @param {{cautions: string[]}} props */
export function Cautions({ cautions }) {
  const { outline, room } = useNotebook();
  const house = room?.house ?? outline.houses[0]?.id ?? "";
  const { states, put } = useTicks(house, "cautions");
  // The last of a list says who has the last word: it stands with the others, and never alone.
  const some = (cautions ?? []).slice(0, -1).filter((words) => !states.has(wordOf(words)));
  if (!some.length) return null;
  const told = [...some, ...cautions.slice(-1)];
  const aside = async () => {
    for (const words of some) await put(wordOf(words), "dismissed", wordOf(words));
  };
  return html`<div class="heed">
    <ul class="cautions" aria-label=${say("cautions")}>${told.map((words) => html`<li key=${words}>${words}</li>`)}</ul>
    <${Button} kind="plain" onTouch=${aside}>${say("cautions.heard", { count: some.length })}<//>
  </div>`;
}
