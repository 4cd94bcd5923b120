// @ts-check
// Survey: the plan, the one reading to take next, and every reading taken. A first start makes a house and a room.
import { html, useEffect, useState } from "../parts/ui.js";
import { Button } from "../parts/controls.js";
import { Drawing } from "../parts/drawing.js";
import { Figure } from "../parts/figure.js";
import { useNotebook } from "../parts/notebook.js";
import { Page } from "../parts/page.js";
import { go, link } from "../parts/route.js";
import { nextRow, useSurvey } from "../parts/survey.js";
import { useLight } from "../parts/wake.js";
import { Cautions, Problems } from "../parts/notes.js";
import { Battens } from "./battens.js";
import { Opening } from "./opening.js";
import { Reading } from "./reading.js";
import { Rooms } from "./rooms.js";
import { Row } from "./row.js";
import { Thing } from "./thing.js";
import { Walk } from "./walk.js";

const PLACES = { read: Reading, row: Row, walk: Walk, thing: Thing, opening: Opening, rooms: Rooms, battens: Battens };

/** @param {{place: string[]}} props */
export function Survey({ place: [name, ...rest] }) {
  const { room } = useNotebook();
  useLight();
  if (!room) return html`<${Rooms} />`;
  const Place = PLACES[/** @type {keyof PLACES} */ (name)];
  return Place ? html`<${Place} place=${rest} />` : html`<${RoomInHand} />`;
}

function RoomInHand() {
  const { room, unreached } = useNotebook();
  const [inHand, setInHand] = useState(/** @type {string | undefined} */ (undefined));
  const survey = useSurvey(room.id, inHand);
  const next = nextRow(survey.rows, null, unreached) ?? nextRow(survey.rows, null, new Set());
  // The engine draws the first wanted wall as the one in hand; having left that for later, it is another.
  useEffect(() => setInHand(unreached.size ? next?.wall : undefined), [unreached, next?.wall]);
  const shown = survey.rows.filter((row) => row.wanted || row.readings.length || row.state === "check");
  const others = survey.rows.filter((row) => !shown.includes(row));
  return html`<${Page} title=${room.name} tab="survey" kind="survey">
    <section class="ahead">
      ${survey.plan ? html`<${Drawing} svg=${survey.plan} label="Plan of ${room.name}" kind="plan" />` : null}
      <${Ahead} next=${next} rows=${survey.rows} />
    </section>
    <section class="taken" aria-label="Readings">
      <${Problems} problems=${survey.problems} />
      <${RowLines} rows=${shown} />
      ${others.length ? html`<${Others} rows=${others} />` : null}
      <${Cautions} cautions=${survey.cautions} />
      <p class="onward">
        <a href=${link("survey", "walk")}>Walls, doors and what is in the way</a>
        <a href=${link("house", "standard", room.id)}>What differs in this room</a>
        <a href=${link("survey", "rooms")}>Other rooms, or a new one</a>
      </p>
    </section>
  <//>`;
}

/** Figures that nothing wants, for whoever would like them on the plan. @param {{rows: any[]}} props */
function Others({ rows }) {
  return html`<details class="more">
    <summary>Other readings you may take</summary>
    <${RowLines} rows=${rows} />
  </details>`;
}

/** @param {{rows: any[]}} props */
function RowLines({ rows }) {
  const isFirst = (/** @type {number} */ place) => rows[place].wall !== rows[place - 1]?.wall;
  return html`<ul class="rows">
    ${rows.map((row, place) => html`<${RowLine} row=${row} first=${isFirst(place)} key=${row.key} />`)}
  </ul>`;
}

/** What to do now. @param {{next: any, rows: any[]}} props */
function Ahead({ next, rows }) {
  const { room } = useNotebook();
  const doubtful = rows.find((row) => row.state === "check");
  if (!room.closed) return html`<${WalkOn} next=${next} />`;
  if (next) return html`<${ReadNext} next=${next} />`;
  return doubtful ? html`<${LookAgain} row=${doubtful} />` : html`<${AllRead} />`;
}

/** @param {{next: any}} props */
function WalkOn({ next }) {
  const { room } = useNotebook();
  const begun = room.walls.length > 0;
  return html`<div class="now">
    <h2>${begun ? "Next: walk on to the next wall" : "Next: walk the room"}</h2>
    <p class="pencil">Start at the door and go round from left to right, facing each wall.</p>
    <${Button} kind="main" onTouch=${() => go("survey", "walk")}>${begun ? "Walk on" : "Start at the door"}<//>
    ${next ? html`<${Button} onTouch=${() => read(next)} next=${next.title}>Read it now<//>` : null}
  </div>`;
}

/** @param {{next: any}} props */
function ReadNext({ next }) {
  const { unreached, setUnreached } = useNotebook();
  const skip = () => setUnreached(new Set([...unreached, next.key]));
  return html`<div class="now">
    <h2>Next: ${next.title}</h2>
    <p class="pencil">${unreached.has(next.key) ? "Left for later, still wanted. " : ""}${next.hint}</p>
    <div class="side-by-side">
      <${Button} kind="main" onTouch=${() => read(next)}>Read it<//>
      <${Button} onTouch=${skip}>Can’t reach<//>
    </div>
  </div>`;
}

/** A figure that its readings do not agree on. @param {{row: any}} props */
function LookAgain({ row }) {
  return html`<div class="now">
    <h2 class="wrong">Look again: ${row.title}</h2>
    <p class="wrong">${row.note}</p>
    <div class="side-by-side">
      <${Button} kind="main" onTouch=${() => read(row)}>Read it again<//>
      <${Button} onTouch=${() => go("survey", "row", row.of, row.what)}>See its readings<//>
    </div>
  </div>`;
}

function AllRead() {
  const { engine } = useNotebook();
  // Only the engine knows what the pieces want.
  return html`<div class="now">
    <h2>${engine === "awake" ? "Every wanted reading is here" : "Everything here is read once"}</h2>
    <p class="pencil">A reading can be taken again at any time: touch its line.</p>
    <${Button} kind="main" onTouch=${() => go("pieces")}>See the pieces<//>
  </div>`;
}

/** @param {{of: string, what: string}} row */
function read({ of, what }) {
  go("survey", "read", of, what);
}

/** @param {{row: any, first: boolean}} props `first` of its wall, where the wall's number stands */
function RowLine({ row, first }) {
  const note = row.note || (row.wanted ? "wanted" : "not read");
  return html`<li>
    <a class="row row-${row.state}" href=${link("survey", "row", row.of, row.what)}>
      <span class="wall-number" aria-hidden="true">${first ? row.number : ""}</span>
      <span class="row-words"><span><span class="heard">${row.short ? `wall ${row.number}, ` : ""}</span>${row.short ?? row.title}</span><small>${note}</small></span>
      <${Figure} shown=${row.figure?.shown ?? ""} />
    </a>
  </li>`;
}
