// @ts-check
// Walking the room: from the door, left to right, one wall after another, with what is in each. It works from the outline
// alone, so nobody waits for the engine; a wall is saved when one comes to it, its corner when one goes round it.
import { html } from "../../controls/ui.js";
import { Button, Choice } from "../../controls/controls.js";
import { go, link, stayHere } from "../../controls/route.js";
import { Drawing } from "../../drawings/drawing.js";
import { Page } from "../../frame/page.js";
import { useNotebook } from "../../notebook/notebook.js";
import { OPENINGS, useSurvey } from "../../notebook/survey.js";
import { addOpening, addWall, restateRoom, strikeAll, strikeOut, turnWall } from "../../notebook/write.js";
import { Photos } from "../../photos/photos.js";

const BASE = { stops: "stops at it", notch: "is notched round it", over: "runs past it" };
/** @type {[string, string][]} */
const TURNS = [
  ["inside", "inside"],
  ["outside", "outside"],
];
const FIRST = "Stand at the door and face the wall that it is in. It is wall 1; the next one is to its right.";
/** Fewer walls than this do not go round a room. */
const FEWEST = 3;

/** @param {{place: string[]}} props the wall in hand, or the last one */
export function Walk({ place: [chosen] }) {
  const { room } = useNotebook();
  const wall = room.walls.find((one) => one.id === chosen) ?? room.walls.at(-1);
  const { plan, walls = [] } = useSurvey(room.id, wall?.id);
  // Two windows in one wall are told apart by the engine; till then both go by their kind.
  const names = new Map(walls.flatMap((one) => one.openings).map(({ id, name }) => [id, name]));
  return html`<${Page} title=${`Walk: ${room.name}`} tab="survey" kind="walk">
    ${plan && wall ? html`<${Drawing} svg=${plan} label="Plan of ${room.name}" kind="plan" />` : null}
    ${room.walls.length > 1 ? html`<${SoFar} inHand=${wall} />` : null}
    ${wall ? html`<${WallInHand} wall=${wall} names=${names} key=${wall.id} />` : html`<${FirstWall} />`}
  <//>`;
}

function FirstWall() {
  const { room, journal, act } = useNotebook();
  const start = () => act(() => addWall(journal, room.id, null), "Wall 1");
  return html`<div class="low now">
    <h2>Stand at the door</h2>
    <p class="pencil">${FIRST}</p>
    <${Button} kind="main" onTouch=${start}>Start with wall 1<//>
  </div>`;
}

/** @param {{inHand: any}} props */
function SoFar({ inHand }) {
  const { room } = useNotebook();
  return html`<details class="more">
    <summary>${room.walls.length} walls so far</summary>
    <ol class="rows">
      ${room.walls.map((one) => html`<${WallLine} wall=${one} inHand=${one === inHand} key=${one.id} />`)}
    </ol>
  </details>`;
}

/** @param {{wall: any, inHand: boolean}} props */
function WallLine({ wall, inHand }) {
  const { room } = useNotebook();
  const reached = room.closed || wall !== room.walls.at(-1);
  const things = [...wall.openings, ...wall.obstacles].map(nameOf).join(", ");
  return html`<li>
    <a class="row" href=${link("survey", "walk", wall.id)} aria-current=${inHand ? "step" : null}>
      <span class="wall-number" aria-hidden="true">${wall.number}</span>
      <span class="row-words"><span>wall ${wall.number}</span><small>${things || "nothing in it"}</small></span>
      <small>${reached ? `${wall.turn} corner` : ""}</small>
    </a>
  </li>`;
}

/** @param {{wall: any, names: Map<string, string>}} props */
function WallInHand({ wall, names }) {
  const { room, act, journal } = useNotebook();
  const put = (/** @type {keyof OPENINGS} */ kind) =>
    act(() => addOpening(journal, wall.id, kind), `${OPENINGS[kind]} in wall ${wall.number}`);
  const take = () => act(() => strikeOut(journal, "wall", { wall: wall.id }, "struck by hand"), `wall ${wall.number} struck`);
  return html`<div class="low now">
    <h2>You face wall ${wall.number}</h2>
    ${room.walls.length === 1 ? html`<p class="pencil">${FIRST}</p>` : null}
    <${Things} wall=${wall} names=${names} />
    <div class="side-by-side">
      <${Button} onTouch=${() => put("door")}>Door in this wall<//>
      <${Button} onTouch=${() => put("window")}>Window in this wall<//>
      <${Button} onTouch=${() => put("cased")}>Opening without a door<//>
      <${Button} onTouch=${() => go("survey", "thing", wall.id)}>Cabinet, tub or other thing in the way<//>
    </div>
    <${Button} onTouch=${() => go("survey", "read", wall.id, "length")} next="wall ${wall.number}, along the floor">Read it now<//>
    ${wall === room.walls.at(-1) && !room.closed ? html`<${Onward} wall=${wall} />` : html`<${Behind} wall=${wall} />`}
    <p class="onward"><a href=${link("survey", "say", wall.id)}>Say all of it in one breath</a>
      <a href=${link("survey", "battens", wall.id)}>Battens on this wall</a></p>
    <div class="side-by-side">
      <${Button} kind="plain" onTouch=${take}>Strike wall ${wall.number}<//>
      <${Button} kind="plain" onTouch=${() => go("survey")}>To the readings<//>
    </div>
    <${Photos} of=${wall.id} from=${["survey", "walk", wall.id]} />
    <${Struck} />
  </div>`;
}

/** From the last wall of an open room: round its corner, or back at the first. @param {{wall: any}} props */
function Onward({ wall }) {
  const { room, act, journal } = useNotebook();
  const turnAndAdd = async (/** @type {string} */ turn) => {
    if (turn !== wall.turn) await turnWall(journal, room.id, wall, turn);
    return addWall(journal, room.id, wall.id);
  };
  const onward = async (/** @type {string} */ turn) => {
    const stays = stayHere();
    if ((await act(() => turnAndAdd(turn), `Wall ${wall.number + 1}`)) && stays()) go("survey", "walk");
  };
  const close = async () => {
    const stays = stayHere();
    const closed = await act(() => restateRoom(journal, room, { closed: true }), `${room.name} is walked round`);
    if (closed && stays()) go("survey");
  };
  return html`<div class="side-by-side">
      <${Button} kind="main" onTouch=${() => onward("inside")}>Next wall: inside corner<//>
      <${Button} kind="main" onTouch=${() => onward("outside")}>Next wall: outside corner<//>
    </div>
    ${room.walls.length >= FEWEST ? html`<${Button} kind="main" onTouch=${close}>Back at the first wall<//>` : null}`;
}

/** A wall that was passed: its corner can be told right, and a wall be put after it. @param {{wall: any}} props */
function Behind({ wall }) {
  const { room, act, journal } = useNotebook();
  const last = wall === room.walls.at(-1);
  const reopen = () => act(() => restateRoom(journal, room, { closed: false }), `${room.name} is open again`);
  const forgotten = () => act(() => addWall(journal, room.id, wall.id), `Another wall after wall ${wall.number}`);
  return html`<${Choice} name="turn" legend="Corner at its right end" value=${wall.turn} choices=${TURNS}
      onPick=${(turn) => act(() => turnWall(journal, room.id, wall, turn), `${turn} corner`)} />
    ${
      last
        ? html`<${Button} onTouch=${reopen}>There is another wall before the first<//>`
        : html`<${Button} onTouch=${forgotten}>A wall was forgotten after this one<//>`
    }`;
}

/** What is in the wall, each with the way to take it out. @param {{wall: any, names: Map<string, string>}} props */
function Things({ wall, names }) {
  const things = [...wall.openings, ...wall.obstacles];
  if (!things.length) return null;
  return html`<ul class="rows">
    ${things.map((thing) => html`<${ThingLine} thing=${thing} name=${names.get(thing.id) ?? nameOf(thing)} key=${thing.id} />`)}
  </ul>`;
}

/** @param {{thing: any, name: string}} props */
function ThingLine({ thing, name }) {
  const { journal, act } = useNotebook();
  const kind = thing.base ? "obstacle" : "opening";
  const take = () => act(() => strikeOut(journal, kind, { [kind]: thing.id }, "struck by hand"), `${name} struck`);
  return html`<li class="row">
    <span class="row-words">
      <span>${name}</span>
      ${thing.base ? html`<small>base ${BASE[/** @type {keyof BASE} */ (thing.base)]}</small>` : null}
    </span>
    <${Button} label="What differs at the ${name}" onTouch=${() => go("survey", "opening", thing.id)}>Differs<//>
    <${Button} label="Strike the ${name}" onTouch=${take}>Strike<//>
  </li>`;
}

/** What was struck in this room, to be had back. */
function Struck() {
  const { room, outline } = useNotebook();
  const struck = outline.struck.filter((one) => one.room === room.id);
  if (!struck.length) return null;
  return html`<details class="more">
    <summary>Struck</summary>
    <ul class="rows">${struck.map((one) => html`<${StruckLine} struck=${one} key=${one.id} />`)}</ul>
  </details>`;
}

/** @param {{struck: import("../../notebook/outline.js").Struck}} props */
function StruckLine({ struck }) {
  const { journal, act } = useNotebook();
  const restore = () => act(() => strikeAll(journal, struck.strikes, "restored by hand"), `${struck.name} restored`);
  return html`<li class="row">
    <span class="row-words"><s>${struck.name}</s></span>
    <${Button} label="Restore the ${struck.name}" onTouch=${restore}>Restore<//>
  </li>`;
}

/** @param {{kind: string}} thing */
function nameOf({ kind }) {
  return OPENINGS[/** @type {keyof OPENINGS} */ (kind)] ?? kind;
}
