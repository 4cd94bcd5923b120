// @ts-check
// One door, window or cased opening, or one thing in the way: what it is to have otherwise than its room.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { go, link } from "../../controls/route.js";
import { RoomInView } from "../../drawings/drawn.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { useSurvey } from "../../notebook/survey.js";
import { Photos } from "../../photos/photos.js";
import { inHouse, Settings } from "../../settings/settings.js";
import { OF_OPENING, OF_THING } from "../../settings/trims.js";
import { say } from "../../words/words.js";
import { LAID, SKIRT } from "./thing.js";

/** @param {{place: string[]}} props */
export function Opening({ place: [id] }) {
  const { room } = useNotebook();
  const { answer, older } = useAnswer({ ask: "notebook" });
  const wall = room.walls.find((one) => thingsOf(one).some((thing) => thing.id === id));
  if (!wall) {
    return html`<${Page} title=${say("opening")} tab="survey">
      <p class="onward"><a href=${link("survey", "walk")}>${say("walk-back")}</a></p>
    <//>`;
  }
  const thing = thingsOf(wall).find((one) => one.id === id);
  const known = older ? null : answer?.houses.find((one) => one.id === room.house);
  return html`<${OfThing} wall=${wall} thing=${thing} known=${known} />`;
}

/** All that stands in a wall, or before it. @param {{openings: any[], obstacles: any[]}} wall @returns {any[]} */
function thingsOf(wall) {
  return [...wall.openings, ...wall.obstacles];
}

/** What may differ at a thing, and which of it is shown at first. @param {any} thing @returns {[import("../../settings/trims.js").Group[], string]} */
function groupsOf(thing) {
  if (!thing.base) {
    const isWindow = thing.kind === "window";
    return [OF_OPENING.filter(({ ofWindows }) => isWindow || !ofWindows), isWindow ? "window" : "casing"];
  }
  const others = LAID.includes(thing.kind) ? "behind" : "toe";
  const open = thing.kind === SKIRT ? "stairs" : others;
  return [OF_THING.filter(({ key }) => key === open || !["stairs", "toe"].includes(key)), open];
}

/** What one thing has otherwise than its room. @param {{wall: any, thing: any, known: any}} props */
function OfThing({ wall, thing, known }) {
  const { room } = useNotebook();
  const { walls = [] } = useSurvey(room.id);
  const found = walls.flatMap(thingsOf).find((one) => one.id === thing.id);
  const inRoom = known?.rooms.find((one) => one.id === room.id);
  const [groups, open] = groupsOf(thing);
  const above = inRoom && { ...inHouse(known), ...inRoom.settings };
  const subject = found && above && { ...found, above, from: "room" };
  const title = say("opening-title", { thing: found?.name ?? thing.kind, wall: wall.number });
  return html`<${Page} title=${title} aside=${null} tab="survey" kind="form standard"
    view=${html`<${RoomInView} wall=${wall} />`}>
    <p class="pencil">${say("opening-told", { room: room.name })}</p>
    ${
      subject
        ? html`<${Settings} groups=${groups} subject=${subject} open=${open} />
            <${Photos} of=${thing.id} from=${["survey", "opening", thing.id]} />`
        : html`<${Asleep} one what=${say("opening-settings")} />`
    }
    <div class="low last-row"><${Button} onTouch=${() => go("survey", "walk", wall.id)}>${say("back")}<//></div>
  <//>`;
}
