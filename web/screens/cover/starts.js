// @ts-check
// Where hanging begins, and where the ends meet: found by the engine, or chosen by a person.
import { html } from "../../controls/ui.js";
import { Button, Choice } from "../../controls/controls.js";
import { useNotebook } from "../../notebook/notebook.js";
import { setSetting, strikeOut } from "../../notebook/write.js";

const START = "cover.start";
const MEETS = "cover.mismatch";

/** @param {{answer: any, asked: any}} props */
export function Starts({ answer, asked }) {
  const { journal, act } = useNotebook();
  const set = (/** @type {object[]} */ value, /** @type {string} */ words) =>
    act(() => setSetting(journal, answer.id, START, value), words);
  const drop = () => act(() => strikeOut(journal, "setting", { of: answer.id, name: START }, "searched again"), "Start no longer set");
  const chosen = START in answer.settings;
  const keep = answer.seams.stretches.map((/** @type {any} */ one) => one.keep);
  const papered = new Set(answer.seams.drawings.map((/** @type {any} */ one) => one.wall));
  const places = [
    ...(asked?.walls ?? []).filter((one) => papered.has(one.id)),
    ...(asked?.openings ?? []).filter((one) => papered.has(one.wall)),
  ];
  return html`<details class="more"><summary>Where to begin<small class="pencil">${chosen ? "chosen" : ""}</small></summary>
    <div class="settings">
      ${
        chosen
          ? html`<${Button} onTouch=${drop} next="every start is tried">Search for the best start again<//>`
          : html`<${Button} onTouch=${() => set(keep, "This start is kept")} next="whatever is read from now on">Keep the start that was found<//>`
      }
      ${places.map(
        ({ id, name }) => html`<div class="start" key=${id}><p>On the middle of ${name}</p>
          <div class="side-by-side">
            <${Button} label="A strip on the middle of ${name}" onTouch=${() => set([{ of: id, how: "strip" }], `A strip on ${name}`)}>a strip<//>
            <${Button} label="A seam on the middle of ${name}" onTouch=${() => set([{ of: id, how: "seam" }], `A seam on ${name}`)}>a seam<//>
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
      ? act(() => setSetting(journal, answer.id, MEETS, of), "Where the ends meet")
      : act(() => strikeOut(journal, "setting", { of: answer.id, name: MEETS }, "searched again"), "Where the ends meet");
  const choices = [
    ["", "where it shows least"],
    ...(asked?.openings ?? []).map(({ id, name }) => [id, name]),
    ...(asked?.corners ?? []).map((/** @type {string} */ name) => [name, name]),
  ];
  return html`<${Choice} name="meets" legend="Where the ends meet" choices=${choices} value=${answer.settings[MEETS] ?? ""} onPick=${pick} />`;
}
