// @ts-check
// Survey: the plan, the one reading to take next, and every reading taken. A first start makes a house and a room.
import { html, useState } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Problems } from "../../controls/notes.js";
import { go, link } from "../../controls/route.js";
import { useWide } from "../../controls/wide.js";
import { useLight } from "../../controls/wake.js";
import { isYear, parseYear, Year } from "../../controls/year.js";
import { Closer } from "../../drawings/closer.js";
import { Drawing } from "../../drawings/drawing.js";
import { Cautions } from "../../frame/cautions.js";
import { Page } from "../../frame/page.js";
import { later } from "../../later.js";
import { useNotebook } from "../../notebook/notebook.js";
import { nextRow, useSurvey } from "../../notebook/survey.js";
import { useTicks } from "../../notebook/ticks.js";
import { restateHouse } from "../../notebook/write.js";
import { say } from "../../words/words.js";
import { FirstStart } from "./first.js";
import { Readings } from "./list.js";

/** What the question for the year is known by once it is put aside. */
const YEAR = "year";
/** No prototype: an address may name anything. */
const PLACES = {
  __proto__: null,
  read: later(async () => (await import("./reading.js")).Reading),
  row: later(async () => (await import("./row.js")).Row),
  walk: later(async () => (await import("./walk.js")).Walk),
  thing: later(async () => (await import("./thing.js")).Thing),
  opening: later(async () => (await import("./opening.js")).Opening),
  rooms: later(async () => (await import("./rooms.js")).Rooms),
  battens: later(async () => (await import("./battens.js")).Battens),
  say: later(async () => (await import("./say.js")).Say),
};
const History = later(async () => (await import("./row.js")).History);

/** @param {{place: string[]}} props */
export function Survey({ place: [name, ...rest] }) {
  const { room, outline } = useNotebook();
  const wide = useWide();
  useLight();
  if (!outline.houses.length) return html`<${FirstStart} />`;
  if (!room) return html`<${PLACES.rooms} />`;
  const Place = PLACES[/** @type {keyof PLACES} */ (name)];
  if (wide && name === "row") return html`<${RoomInHand} beside=${rest.join(" ")} />`;
  return Place ? html`<${Place} place=${rest} />` : html`<${RoomInHand} />`;
}

/** @param {{beside?: string}} props the row that is shown beside the list */
function RoomInHand({ beside }) {
  const { room, unreached } = useNotebook();
  const survey = useSurvey(room.id);
  const next = nextRow(survey.rows, null, unreached) ?? nextRow(survey.rows, null, new Set());
  const row = survey.rows.find(({ key }) => key === beside);
  return html`<${Page} title=${room.name} tab="survey" kind="survey" older=${survey.older}>
    <section class="ahead">
      <${Plan} survey=${survey} wall=${(row ?? next)?.wall} />
      ${row ? html`<h2>${row.title}</h2><${History} row=${row} />` : html`<${Ahead} next=${next} survey=${survey} />`}
    </section>
    <section class="taken" aria-label=${say("readings")}>
      <${Problems} problems=${survey.problems} />
      <${Readings} rows=${survey.rows} chosen=${beside} />
      <${Cautions} cautions=${survey.cautions} />
      ${survey.cautions.length ? html`<${AskYear} key=${room.house} />` : null}
      <p class="onward">
        <a href=${link("survey", "walk")}>${say("survey-walls")}</a>
        <a href=${link("house", "standard", room.id)}>${say("survey-differs")}</a>
        <a href=${link("survey", "rooms")}>${say("survey-rooms")}</a>
      </p>
    </section>
  <//>`;
}

/**
 * Its place is kept until the engine has said what it looks like.
 * @param {{survey: {plan: string, known: boolean}, wall?: string}} props `wall` in hand
 */
function Plan({ survey, wall }) {
  const { room, engine } = useNotebook();
  if (survey.plan) return html`<${Closer} svg=${survey.plan} label=${say("survey-plan", { room: room.name })} kind="plan" hand=${{ wall }} />`;
  const isComing = !survey.known && !engine.startsWith("failed") && room.walls.length > 0;
  return isComing ? html`<${Drawing} kind="plan" />` : null;
}

/** The year, asked where what hangs on it is told, until it is said or nobody knows. */
function AskYear() {
  const { room, outline, journal, act } = useNotebook();
  const { states, put } = useTicks(room.house, "cautions");
  const [built, setBuilt] = useState("");
  const house = outline.houses.find(({ id }) => id === room.house);
  if (!house || house.built !== null || states.has(YEAR)) return null;
  const done = say("survey-year.done", { house: house.name, year: built });
  const save = () => act(() => restateHouse(journal, house, house.name, parseYear(built)), done);
  return html`<div class="now"><${Year} built=${built} onBuilt=${setBuilt} />
    <div class="side-by-side">
      <${Button} disabled=${!built.trim() || !isYear(built)} onTouch=${save}>${say("survey-year")}<//>
      <${Button} onTouch=${() => put(YEAR, "dismissed", say("survey-year.asked"))}>${say("survey-year.unknown")}<//>
    </div></div>`;
}

/** What to do now. @param {{next: any, survey: any}} props */
function Ahead({ next, survey: { rows, known } }) {
  const { room } = useNotebook();
  const doubtful = rows.find((row) => row.state === "check");
  if (!room.closed) return html`<${WalkOn} next=${next} />`;
  if (next) return html`<${ReadNext} next=${next} known=${known} />`;
  return doubtful ? html`<${LookAgain} row=${doubtful} />` : html`<${AllRead} known=${known} />`;
}

/** @param {{next: any}} props */
function WalkOn({ next }) {
  const { room } = useNotebook();
  const begun = room.walls.length > 0;
  return html`<div class="now">
    <h2>${say(begun ? "survey-walk.on" : "survey-walk")}</h2>
    <p class="pencil">${say("survey-walk.how")}</p>
    <${Button} kind="main" onTouch=${() => go("survey", "walk")}>${say(begun ? "survey-start.on" : "survey-start")}<//>
    ${next ? html`<${Button} onTouch=${() => read(next)} next=${next.title}>${say("reading-take.now")}<//>` : null}
  </div>`;
}

/** The one that is wanted next, or while only the journal speaks one that is not read. @param {{next: any, known: boolean}} props */
function ReadNext({ next, known }) {
  const { unreached, setUnreached } = useNotebook();
  const skip = () => setUnreached(new Set([...unreached, next.key]));
  return html`<div class="now">
    <h2>${say(known ? "survey-next" : "survey-next.unread", { title: next.title })}</h2>
    ${known ? null : html`<p class="pencil">${say("survey-next.asleep")}</p>`}
    <p class="pencil">${known && unreached.has(next.key) ? say("survey-next.later", { hint: next.hint }) : next.hint}</p>
    <div class="side-by-side">
      <${Button} kind="main" onTouch=${() => read(next)}>${say("reading-take")}<//>
      <${Button} onTouch=${skip}>${say("survey-next.unreached")}<//>
    </div>
    <p class="onward"><a href=${link("survey", "say", next.wall)}>${say("survey-breath", { wall: next.number })}</a></p>
  </div>`;
}

/** A figure that its readings do not agree on. @param {{row: any}} props */
function LookAgain({ row }) {
  return html`<div class="now">
    <h2 class="wrong">${say("survey-look", { title: row.title })}</h2>
    <p class="wrong">${row.note}</p>
    <div class="side-by-side">
      <${Button} kind="main" onTouch=${() => read(row)}>${say("reading-again")}<//>
      <${Button} onTouch=${() => go("survey", "row", row.of, row.what)}>${say("survey-look.readings")}<//>
    </div>
  </div>`;
}

/** Only the engine knows what the pieces want. @param {{known: boolean}} props */
function AllRead({ known }) {
  return html`<div class="now">
    <h2>${say(known ? "survey-done" : "survey-done.once")}</h2>
    <p class="pencil">${say("survey-done.told")}</p>
    <${Button} kind="main" onTouch=${() => go("pieces")}>${say("survey-done.pieces")}<//>
  </div>`;
}

/** @param {{of: string, what: string}} row */
function read({ of, what }) {
  go("survey", "read", of, what);
}
