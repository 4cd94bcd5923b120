// @ts-check
// The list to work by, strip by strip, pane by pane, coat by coat, each ticked off as it is cut and as it goes up.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { useTicks } from "../../notebook/ticks.js";
import { say } from "../../words/words.js";

/** What comes after each state: paper, film and panels are cut first. */
const NEXT = { "": "cut", cut: "hung" };

/** @param {{answer: any}} props */
export function WorkList({ answer }) {
  const { states, put } = useTicks(answer.id, "strips");
  const { sort } = answer.article;
  if (!answer.list.length) return null;
  const title = say(`cover-list-${sort}`);
  return html`<section class="group" aria-label=${title}>
    <h2>${title} <small>${answer.done}</small></h2>
    <ol class="rows work-list">
      ${answer.list.map((line) => html`<${Line} line=${line} state=${states.get(line.key) ?? ""} put=${put} paint=${sort === "paint"} key=${line.key} />`)}
    </ol>
  </section>`;
}

/** @param {{line: any, state: string, put: (key: string, state: string | null, said: string) => void, paint: boolean}} props */
function Line({ line, state, put, paint }) {
  const what = line.said;
  const turn = (/** @type {string | null} */ to) => put(line.key, to, what);
  const after = NEXT[/** @type {keyof NEXT} */ (state)] ?? null;
  const painted = state ? null : "done";
  const next = paint ? painted : after;
  return html`<li class="row">
    <span class="row-words"><span>${what}</span><small>${line.where}</small>
      ${state ? html`<small>${say(`tick-${state}`)}</small>` : null}
      ${line.changed ? html`<small class="wrong">${line.changed}</small>` : null}</span>
    ${next ? html`<${Button} label=${say(`tick-${next}.told`, { what })} onTouch=${() => turn(next)}>${say(`tick-${next}`)}<//>` : null}
    ${state ? html`<${Button} kind="plain" label=${say("tick-not-yet.told", { what })} onTouch=${() => turn(null)}>${say("tick-not-yet")}<//>` : null}
  </li>`;
}
