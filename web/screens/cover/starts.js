// @ts-check
// Where hanging begins, and where the ends meet: found by the engine, or chosen by a person.
import { html } from "../../controls/ui.js";
import { Button, Choice } from "../../controls/controls.js";
import { useNotebook } from "../../notebook/notebook.js";
import { setSetting, strikeOut } from "../../notebook/write.js";
import { say } from "../../words/words.js";

const START = "cover.start";
const MEETS = "cover.mismatch";

/** @param {{answer: any, asked: any}} props */
export function Starts({ answer, asked }) {
  const { journal, act } = useNotebook();
  const set = (/** @type {object[]} */ value, /** @type {string} */ words) =>
    act(() => setSetting(journal, answer.id, START, value), words);
  const drop = () => act(() => strikeOut(journal, "setting", { of: answer.id, name: START }, "searched again"), say("starts.dropped"));
  const chosen = START in answer.settings;
  const keep = answer.seams.stretches.map((/** @type {any} */ one) => one.keep);
  const papered = new Set(answer.seams.drawings.map((/** @type {any} */ one) => one.wall));
  const places = [
    ...(asked?.walls ?? []).filter((one) => papered.has(one.id)),
    ...(asked?.openings ?? []).filter((one) => papered.has(one.wall)),
  ];
  return html`<details class="more"><summary>${say("starts")}<small class="pencil">${chosen ? say("starts.chosen") : ""}</small></summary>
    <div class="settings">
      ${
        chosen
          ? html`<${Button} onTouch=${drop} next=${say("starts-search.next")}>${say("starts-search")}<//>`
          : html`<${Button} onTouch=${() => set(keep, say("starts-keep.done"))} next=${say("starts-keep.next")}>${say("starts-keep")}<//>`
      }
      ${places.map(
        ({ id, name }) => html`<div class="start" key=${id}><p>${say("starts-at", { name })}</p>
          <div class="side-by-side">
            ${["strip", "seam"].map(
              (how) => html`<${Button} label=${say(`starts-how-${how}.what`, { name })} key=${how}
                onTouch=${() => set([{ of: id, how }], say(`starts-how-${how}.done`, { name }))}>${say(`starts-how-${how}`)}<//>`,
            )}
          </div></div>`,
      )}
      <${Meets} answer=${answer} asked=${asked} />
    </div>
  </details>`;
}

/** Where the pattern may not match, of paper that goes all round. @param {{answer: any, asked: any}} props */
function Meets({ answer, asked }) {
  const { journal, act } = useNotebook();
  const meets = answer.seams.stretches.find((/** @type {any} */ one) => one.mismatch);
  if (!meets) return null;
  const pick = (/** @type {string} */ of) =>
    of
      ? act(() => setSetting(journal, answer.id, MEETS, of), say("starts-meet"))
      : act(() => strikeOut(journal, "setting", { of: answer.id, name: MEETS }, "searched again"), say("starts-meet"));
  const choices = [
    ["", say("starts-meet.least")],
    ...(asked?.openings ?? []).map(({ id, name }) => [id, name]),
    ...(asked?.corners ?? []).map((/** @type {string} */ name) => [name, name]),
  ];
  return html`<${Choice} name="meets" legend=${say("starts-meet")} choices=${choices} value=${answer.settings[MEETS] ?? ""} onPick=${pick} />`;
}
