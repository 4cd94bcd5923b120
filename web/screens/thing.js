// @ts-check
// Something in the way of the base: what it is, and what the base does there.
import { html, useState } from "../parts/ui.js";
import { Button, Choice, Field } from "../parts/controls.js";
import { useNotebook } from "../parts/notebook.js";
import { Page } from "../parts/page.js";
import { go, link } from "../parts/route.js";
import { addObstacle } from "../parts/write.js";

/** What the base usually does: common practice, and a touch changes it. */
const USUAL = { cabinet: "stops", tub: "stops", hearth: "stops", radiator: "over", register: "notch", pipe: "notch", outlet: "over" };

const KINDS = Object.keys(USUAL).map((kind) => [kind, kind]);
const AT_IT = [
  ["stops", "stops at it"],
  ["notch", "is notched round it"],
  ["over", "runs past it"],
];

/** @param {{place: string[]}} props */
export function Thing({ place: [wallId] }) {
  const { room, journal, act } = useNotebook();
  const wall = room.walls.find((one) => one.id === wallId);
  const [kind, setKind] = useState("cabinet");
  const [base, setBase] = useState("stops");
  const name = (/** @type {string} */ said) => {
    setKind(said);
    setBase(USUAL[/** @type {keyof USUAL} */ (said)] ?? base);
  };
  const save = async () => {
    const words = `${kind} in wall ${wall.number}`;
    const saved = await act(() => addObstacle(journal, wallId, kind.trim(), base), words);
    if (saved) go("survey", "walk", wallId);
  };
  if (!wall) {
    return html`<${Page} title="In the way" tab="survey">
      <p class="onward"><a href=${link("survey", "walk")}>Back to the walk</a></p>
    <//>`;
  }
  return html`<${Page} title=${`In the way, wall ${wall.number}`} aside=" " kind="form">
    <div class="low now">
      <${Choice} name="kind" legend="What is it?" value=${kind} onPick=${name} choices=${KINDS} />
      <${Field} label="or in your own words" value=${kind} onInput=${setKind} />
      <${Choice} name="base" legend="The base" value=${base} onPick=${setBase} choices=${AT_IT} />
      <div class="last-row">
        <${Button} onTouch=${() => go("survey", "walk", wallId)}>Back<//>
        <${Button} kind="main" disabled=${!kind.trim()} onTouch=${save}>Save<//>
      </div>
    </div>
  <//>`;
}
