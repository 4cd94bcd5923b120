// @ts-check
// Walking the room: from the door, left to right, one wall after another, with what is in each. It works from the outline
// alone, so nobody waits for the engine; a wall is saved when one comes to it, its corner when one goes round it.
import { html } from "../../controls/ui.js";
import { Button, Choice } from "../../controls/controls.js";
import { go, link, stayHere } from "../../controls/route.js";
import { useWide } from "../../controls/wide.js";
import { RoomInView } from "../../drawings/drawn.js";
import { Page } from "../../frame/page.js";
import { useNotebook } from "../../notebook/notebook.js";
import { OPENINGS, useSurvey } from "../../notebook/survey.js";
import { addOpening, addWall, restateRoom, strikeAll, strikeOut, turnWall } from "../../notebook/write.js";
import { Photos } from "../../photos/photos.js";
import { say } from "../../words/words.js";

const TURNS = ["inside", "outside"].map((turn) => [turn, say(`walk-turn-${turn}`)]);
/** Fewer walls than this do not go round a room. */
const FEWEST = 3;

/** @param {{place: string[]}} props the wall in hand, or the last one */
export function Walk({ place: [chosen] }) {
  const { room, engine } = useNotebook();
  const wall = room.walls.find((one) => one.id === chosen) ?? room.walls.at(-1);
  const { plan, older, walls = [] } = useSurvey(room.id);
  const wide = useWide();
  // Two windows in one wall are told apart by the engine; till then both go by their kind.
  const names = new Map(walls.flatMap((one) => one.openings).map(({ id, name }) => [id, name]));
  const view = html`<${RoomInView} wall=${wall} />`;
  return html`<${Page} title=${say("walk", { room: room.name })} tab="survey" kind="walk" older=${older} view=${view}>
    ${(plan || !engine.startsWith("failed")) && wall && !wide ? html`<div class="both-views">${plan ? view : null}</div>` : null}
    ${room.walls.length > 1 ? html`<${SoFar} inHand=${wall} />` : null}
    ${wall ? html`<${WallInHand} wall=${wall} names=${names} key=${wall.id} />` : html`<${FirstWall} />`}
  <//>`;
}

function FirstWall() {
  const { room, journal, act } = useNotebook();
  const start = () => act(() => addWall(journal, room.id, null), say("walk-wall", { wall: 1 }));
  return html`<div class="low now">
    <h2>${say("walk-first")}</h2>
    <p class="pencil">${say("walk-first.how")}</p>
    <${Button} kind="main" onTouch=${start}>${say("walk-first.start")}<//>
  </div>`;
}

/** @param {{inHand: any}} props */
function SoFar({ inHand }) {
  const { room } = useNotebook();
  return html`<details class="more">
    <summary>${say("walk-so-far", { walls: room.walls.length })}</summary>
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
  return html`<li data-wall=${wall.id}>
    <a class="row" href=${link("survey", "walk", wall.id)} aria-current=${inHand ? "step" : null}>
      <span class="wall-number" aria-hidden="true">${wall.number}</span>
      <span class="row-words"><span>${say("survey-wall", { wall: wall.number })}</span><small>${things || say("survey-wall.empty")}</small></span>
      <small>${reached ? say(`walk-turn-${wall.turn}.corner`) : ""}</small>
    </a>
  </li>`;
}

/**
 * What is in it stands in a line above the buttons, and each thing with what can be done to it under them: a list that
 * grows above them would push the one to strike a thing under the finger that put it there.
 * @param {{wall: any, names: Map<string, string>}} props
 */
function WallInHand({ wall, names }) {
  const { room, act, journal } = useNotebook();
  const put = (/** @type {keyof OPENINGS} */ kind) =>
    act(() => addOpening(journal, wall.id, kind), say("thing-put", { thing: OPENINGS[kind], wall: wall.number }));
  const take = () => act(() => strikeOut(journal, "wall", { wall: wall.id }, "struck by hand"), say("walk-strike.done", { wall: wall.number }));
  const things = [...wall.openings, ...wall.obstacles].map((thing) => ({ thing, name: names.get(thing.id) ?? nameOf(thing) }));
  return html`<div class="low now">
    <div class="faced">
      <h2>${say("walk-wall.faced", { wall: wall.number })}</h2>
      <p class="pencil">${things.map(({ name }) => name).join(", ") || say("survey-wall.empty")}</p>
    </div>
    ${room.walls.length === 1 ? html`<p class="pencil">${say("walk-first.how")}</p>` : null}
    <div class="side-by-side">
      <${Button} onTouch=${() => put("door")}>${say("walk-door")}<//>
      <${Button} onTouch=${() => put("window")}>${say("walk-window")}<//>
      <${Button} onTouch=${() => put("cased")}>${say("walk-cased")}<//>
      <${Button} onTouch=${() => go("survey", "thing", wall.id)}>${say("walk-thing")}<//>
    </div>
    <${Button} onTouch=${() => go("survey", "read", wall.id, "length")} next=${say("walk-floor", { wall: wall.number })}>
      ${say("reading-take.now")}<//>
    ${wall === room.walls.at(-1) && !room.closed ? html`<${Onward} wall=${wall} />` : html`<${Behind} wall=${wall} />`}
    <${Things} things=${things} />
    <p class="onward"><a href=${link("survey", "say", wall.id)}>${say("walk-breath")}</a>
      <a href=${link("survey", "battens", wall.id)}>${say("walk-battens")}</a></p>
    <div class="side-by-side">
      <${Button} kind="plain" onTouch=${take}>${say("walk-strike", { wall: wall.number })}<//>
      <${Button} kind="plain" onTouch=${() => go("survey")}>${say("to-readings")}<//>
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
    if ((await act(() => turnAndAdd(turn), say("walk-wall", { wall: wall.number + 1 }))) && stays()) go("survey", "walk");
  };
  const close = async () => {
    const stays = stayHere();
    const closed = await act(() => restateRoom(journal, room, { closed: true }), say("walk-close.done", { room: room.name }));
    if (closed && stays()) go("survey");
  };
  return html`<div class="side-by-side">
      <${Button} kind="main" onTouch=${() => onward("inside")}>${say("walk-turn-inside.next")}<//>
      <${Button} kind="main" onTouch=${() => onward("outside")}>${say("walk-turn-outside.next")}<//>
    </div>
    ${room.walls.length >= FEWEST ? html`<${Button} kind="main" onTouch=${close}>${say("walk-close")}<//>` : null}`;
}

/** A wall that was passed: its corner can be told right, and a wall be put after it. @param {{wall: any}} props */
function Behind({ wall }) {
  const { room, act, journal } = useNotebook();
  const last = wall === room.walls.at(-1);
  const reopen = () => act(() => restateRoom(journal, room, { closed: false }), say("walk-reopen.done", { room: room.name }));
  const forgotten = () => act(() => addWall(journal, room.id, wall.id), say("walk-forgotten.done", { wall: wall.number }));
  return html`<${Choice} name="turn" legend=${say("walk-turn")} value=${wall.turn} choices=${TURNS}
      onPick=${(turn) => act(() => turnWall(journal, room.id, wall, turn), say(`walk-turn-${turn}.corner`))} />
    ${
      last
        ? html`<${Button} onTouch=${reopen}>${say("walk-reopen")}<//>`
        : html`<${Button} onTouch=${forgotten}>${say("walk-forgotten")}<//>`
    }`;
}

/** What is in the wall, each with the way to take it out. @param {{things: {thing: any, name: string}[]}} props */
function Things({ things }) {
  if (!things.length) return null;
  return html`<ul class="rows">
    ${things.map(({ thing, name }) => html`<${ThingLine} thing=${thing} name=${name} key=${thing.id} />`)}
  </ul>`;
}

/** @param {{thing: any, name: string}} props */
function ThingLine({ thing, name }) {
  const { journal, act } = useNotebook();
  const kind = thing.base ? "obstacle" : "opening";
  const take = () => act(() => strikeOut(journal, kind, { [kind]: thing.id }, "struck by hand"), say("strike.done", { what: name }));
  return html`<li class="row">
    <span class="row-words">
      <span>${name}</span>
      ${thing.base ? html`<small>${say(`thing-base-${thing.base}.said`)}</small>` : null}
    </span>
    <${Button} label=${say("walk-differs.what", { thing: name })} onTouch=${() => go("survey", "opening", thing.id)}>
      ${say("walk-differs")}<//>
    <${Button} label=${say("walk-take", { thing: name })} onTouch=${take}>${say("strike")}<//>
  </li>`;
}

/** What was struck in this room, to be had back. */
function Struck() {
  const { room, outline } = useNotebook();
  const struck = outline.struck.filter((one) => one.room === room.id);
  if (!struck.length) return null;
  return html`<details class="more">
    <summary>${say("survey-struck")}</summary>
    <ul class="rows">${struck.map((one) => html`<${StruckLine} struck=${one} key=${one.id} />`)}</ul>
  </details>`;
}

/** @param {{struck: import("../../notebook/outline.js").Struck}} props */
function StruckLine({ struck }) {
  const { journal, act } = useNotebook();
  const restore = () => act(() => strikeAll(journal, struck.strikes, "restored by hand"), say("restore.done", { what: struck.name }));
  return html`<li class="row">
    <span class="row-words"><s>${struck.name}</s></span>
    <${Button} label=${say("walk-restore", { thing: struck.name })} onTouch=${restore}>${say("restore")}<//>
  </li>`;
}

/** @param {{kind: string}} thing */
function nameOf({ kind }) {
  return OPENINGS[/** @type {keyof OPENINGS} */ (kind)] ?? kind;
}
