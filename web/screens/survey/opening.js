// @ts-check
// One door, window or cased opening: what it is to have otherwise than its room.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { go, link } from "../../controls/route.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { useSurvey } from "../../notebook/survey.js";
import { Photos } from "../../photos/photos.js";
import { inHouse, Settings } from "../../settings/settings.js";
import { OF_OPENING } from "../../settings/trims.js";

/** @param {{place: string[]}} props */
export function Opening({ place: [id] }) {
  const { room } = useNotebook();
  const { answer, older } = useAnswer({ ask: "notebook" });
  const wall = room.walls.find((one) => one.openings.some((opening) => opening.id === id));
  if (!wall) {
    return html`<${Page} title="An opening" tab="survey">
      <p class="onward"><a href=${link("survey", "walk")}>Back to the walk</a></p>
    <//>`;
  }
  const opening = wall.openings.find((one) => one.id === id);
  const known = older ? null : answer?.houses.find((one) => one.id === room.house);
  return html`<${OfOpening} wall=${wall} opening=${opening} known=${known} />`;
}

/** What one opening has otherwise than its room. @param {{wall: any, opening: any, known: any}} props */
function OfOpening({ wall, opening, known }) {
  const { room } = useNotebook();
  const { walls = [] } = useSurvey(room.id);
  const found = walls.flatMap((one) => one.openings).find((one) => one.id === opening.id);
  const inRoom = known?.rooms.find((one) => one.id === room.id);
  const groups = OF_OPENING.filter(({ ofWindows }) => opening.kind === "window" || !ofWindows);
  const above = inRoom && { ...inHouse(known), ...inRoom.settings };
  const subject = found && above && { ...found, above, from: "in the room", back: "As in the room" };
  return html`<${Page} title=${`The ${found?.name ?? "opening"}, wall ${wall.number}`} aside=" " tab="survey" kind="form standard">
    <p class="pencil">Set here only what this one is to have otherwise than the others in ${room.name}.</p>
    ${
      subject
        ? html`<${Settings} groups=${groups} subject=${subject} open=${opening.kind === "window" ? "window" : "casing"} />`
        : html`<${Asleep} what="What it differs in" />`
    }
    <${Photos} of=${opening.id} from=${["survey", "opening", opening.id]} />
    <div class="low last-row"><${Button} onTouch=${() => go("survey", "walk", wall.id)}>Back<//></div>
  <//>`;
}
