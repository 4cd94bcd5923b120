// @ts-check
// Something in the way of the base: what it is, and what the base does there.
import { html, useState } from "../../controls/ui.js";
import { Button, Choice, Field } from "../../controls/controls.js";
import { go, link, stayHere } from "../../controls/route.js";
import { Page } from "../../frame/page.js";
import { useNotebook } from "../../notebook/notebook.js";
import { addObstacle, setSetting } from "../../notebook/write.js";

/** What the base usually does: common practice, and a touch changes it. */
const USUAL = { __proto__: null, cabinet: "stops", tub: "stops", hearth: "stops", radiator: "over", register: "notch", pipe: "notch", outlet: "over", "stair skirt": "stops" };
/** What meets the base at the angle of a stair, and is asked for that. */
export const SKIRT = "stair skirt";
const RISES = [
  ["left", "to the left"],
  ["right", "to the right"],
];

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
  const [rake, setRake] = useState("");
  const [rises, setRises] = useState("right");
  const [toe, setToe] = useState("");
  const [setBack, setSetBack] = useState("");
  const name = (/** @type {string} */ said) => {
    setKind(said);
    setBase(USUAL[/** @type {keyof USUAL} */ (said)] ?? base);
  };
  const hasToe = kind !== SKIRT && base === "stops";
  const save = async () => {
    const words = `${kind} in wall ${wall.number}`;
    const stays = stayHere();
    const saved = await act(async () => {
      const id = await addObstacle(journal, wallId, kind.trim(), base);
      if (kind === SKIRT && rake.trim()) {
        await setSetting(journal, id, "thing.rake", rake.trim());
        await setSetting(journal, id, "thing.rises", rises);
      }
      if (hasToe && toe.trim()) await setSetting(journal, id, "toe.height", toe.trim());
      if (hasToe && setBack.trim()) await setSetting(journal, id, "toe.depth", setBack.trim());
      return id;
    }, words);
    if (saved && stays()) go("survey", "walk", wallId);
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
      ${
        kind === SKIRT
          ? html`<${Field} label="Rake" value=${rake} onInput=${setRake} hint="degrees from level, such as 37; empty for a square end" mode="decimal" />
            <${Choice} name="rises" legend="The stairs rise" value=${rises} onPick=${setRises} choices=${RISES} />`
          : null
      }
      ${
        hasToe
          ? html`<${Field} label="Toe kick, height" value=${toe} onInput=${setToe} hint="from the floor; empty as the room's, none if there is none" />
            <${Field} label="Toe kick, how far back" value=${setBack} onInput=${setSetBack} hint="from its face; empty as the room's" />`
          : null
      }
      <${Choice} name="base" legend="The base" value=${base} onPick=${setBase} choices=${AT_IT} />
      <div class="last-row">
        <${Button} onTouch=${() => go("survey", "walk", wallId)}>Back<//>
        <${Button} kind="main" disabled=${!kind.trim()} onTouch=${save}>Save<//>
      </div>
    </div>
  <//>`;
}
