// @ts-check
// The list to work by, strip by strip, pane by pane, coat by coat, each ticked off as it is cut and as it goes up.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { useTicks } from "../../notebook/ticks.js";

/** What comes after each state, and the word on the button: paper, film and panels are cut first. */
const NEXT = { "": "cut", cut: "hung" };
const TITLES = { paper: "Strips to cut by", film: "Panes to cut", sheet: "Panels to cut", paint: "Coats" };

/** @param {{answer: any}} props */
export function WorkList({ answer }) {
  const { states, put } = useTicks(answer.id, "strips");
  const { sort } = answer.article;
  if (!answer.list.length) return null;
  return html`<section class="group" aria-label=${TITLES[sort]}>
    <h2>${TITLES[sort]} <small>${answer.done}</small></h2>
    <ol class="rows work-list">
      ${answer.list.map((line) => html`<${Line} line=${line} state=${states.get(line.key) ?? ""} put=${put} paint=${sort === "paint"} key=${line.key} />`)}
    </ol>
  </section>`;
}

/** @param {{line: any, state: string, put: (key: string, state: string | null, said: string) => void, paint: boolean}} props */
function Line({ line, state, put, paint }) {
  const next = paint ? (state ? null : "done") : (NEXT[/** @type {keyof NEXT} */ (state)] ?? null);
  return html`<li class="row">
    <span class="row-words"><span>${line.said}</span><small>${line.where}</small>
      ${state ? html`<small>${state}</small>` : null}
      ${line.changed ? html`<small class="wrong">${line.changed}</small>` : null}</span>
    ${next ? html`<${Button} label="${line.said}: ${next}" onTouch=${() => put(line.key, next, line.said)}>${next}<//>` : null}
    ${state ? html`<${Button} kind="plain" label="${line.said}: not yet" onTouch=${() => put(line.key, null, line.said)}>not yet<//>` : null}
  </li>`;
}
