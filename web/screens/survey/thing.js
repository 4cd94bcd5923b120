// @ts-check
// Something in the way of the base: what it is, and what the base does there.
import { html, useState } from "../../controls/ui.js";
import { Button, Choice, Field } from "../../controls/controls.js";
import { go, link, stayHere } from "../../controls/route.js";
import { RoomInView } from "../../drawings/drawn.js";
import { Page } from "../../frame/page.js";
import { useLengths, useNotebook } from "../../notebook/notebook.js";
import { addObstacle, asWritten, setSetting } from "../../notebook/write.js";
import { say } from "../../words/words.js";

/** What the base usually does: common practice, and a touch changes it. */
const USUAL = { __proto__: null, cabinet: "stops", tub: "stops", hearth: "stops", radiator: "over", register: "notch", pipe: "notch", outlet: "over", "stair skirt": "stops", "medicine cabinet": "over", tile: "stops", wainscot: "over" };
/** What a stretch of the wall is finished with: paper and paint end at it. */
export const LAID = ["tile", "wainscot"];
/** What meets the base at the angle of a stair, and is asked for that. */
export const SKIRT = "stair skirt";
const RISES = ["left", "right"].map((way) => [way, say(`thing-rises-${way}`)]);
const KINDS = Object.keys(USUAL).map((kind) => [kind, say(`thing-kind-${kind.replace(" ", "_")}`)]);
/** What a thing is called that the journal names by itself; any other as a person wrote it. @param {string} kind */
const calledOf = (kind) => KINDS.find(([name]) => name === kind)?.[1] ?? kind;
/** The other way round: who writes the words of a choice means that. @param {string} words */
const kindOf = (words) => KINDS.find(([, called]) => called === words)?.[0] ?? words;
const AT_IT = ["stops", "notch", "over"].map((base) => [base, say(`thing-base-${base}`)]);

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
  const lengths = useLengths();
  // A tub or a pipe has none; a thing in a person's own words may.
  const hasToe = base === "stops" && (kind === "cabinet" || !(kind in USUAL));
  const save = async () => {
    const words = say("thing-put", { thing: calledOf(kind), wall: wall.number });
    const stays = stayHere();
    const saved = await act(async () => {
      const id = await addObstacle(journal, wallId, kind.trim(), base);
      if (kind === SKIRT && rake.trim()) {
        await setSetting(journal, id, "thing.rake", rake.trim());
        await setSetting(journal, id, "thing.rises", rises);
      }
      if (hasToe && toe.trim()) await setSetting(journal, id, "toe.height", asWritten(toe.trim(), lengths));
      if (hasToe && setBack.trim()) await setSetting(journal, id, "toe.depth", asWritten(setBack.trim(), lengths));
      return id;
    }, words);
    if (saved && stays()) go("survey", "walk", wallId);
  };
  if (!wall) {
    return html`<${Page} title=${say("thing")} tab="survey">
      <p class="onward"><a href=${link("survey", "walk")}>${say("walk-back")}</a></p>
    <//>`;
  }
  return html`<${Page} title=${say("thing-title", { wall: wall.number })} aside=${null} kind="form" view=${html`<${RoomInView} wall=${wall} />`}>
    <div class="low now">
      <${Choice} name="kind" legend=${say("thing-kind")} value=${kind} onPick=${name} choices=${KINDS} />
      <${Field} label=${say("thing-kind.other")} value=${calledOf(kind)} onInput=${(/** @type {string} */ words) => setKind(kindOf(words))} />
      ${kind === "tub" ? html`<p class="pencil">${say("thing-once")}</p>` : null}
      ${LAID.includes(kind) ? html`<p class="pencil">${say("thing-laid")}</p>` : null}
      ${
        kind === SKIRT
          ? html`<${Field} label=${say("thing-rake")} value=${rake} onInput=${setRake} hint=${say("thing-rake.hint")} mode="decimal" />
            <${Choice} name="rises" legend=${say("thing-rises")} value=${rises} onPick=${setRises} choices=${RISES} />`
          : null
      }
      ${
        hasToe
          ? html`<${Field} label=${say("thing-toe")} value=${toe} onInput=${setToe} hint=${say("thing-toe.hint")} />
            <${Field} label=${say("thing-toe-back")} value=${setBack} onInput=${setSetBack} hint=${say("thing-toe-back.hint")} />`
          : null
      }
      <${Choice} name="base" legend=${say("thing-base")} value=${base} onPick=${setBase} choices=${AT_IT} />
      <div class="last-row">
        <${Button} onTouch=${() => go("survey", "walk", wallId)}>${say("back")}<//>
        <${Button} kind="main" disabled=${!kind.trim()} onTouch=${save}>${say("save")}<//>
      </div>
    </div>
  <//>`;
}
