// @ts-check
// The standard of a house, so that its rooms match; and what a room, or one opening, differs in from it on purpose.
import { html } from "../parts/ui.js";
import { Button } from "../parts/controls.js";
import { Asleep } from "../parts/empty.js";
import { useNotebook } from "../parts/notebook.js";
import { Page } from "../parts/page.js";
import { go } from "../parts/route.js";
import { Settings } from "../parts/settings.js";
import { useSurvey } from "../parts/survey.js";
import { OF_OPENING, OF_ROOM } from "../parts/trims.js";

/** @param {{house: any, known: any, room?: string}} props `known` is what the engine says of the house, once awake */
export function Standard({ house, known, room }) {
  if (room) return html`<${OfRoom} house=${house} known=${known} id=${room} />`;
  const subject = known && { ...known, above: known.defaults, from: "until you set it", back: "No longer set" };
  return html`<${Page} title=${`The standard of ${house.name}`} tab="house" kind="form standard">
    ${subject ? html`<${Settings} groups=${OF_ROOM} subject=${subject} open="Base" />` : html`<${Asleep} what="The standard" />`}
    <div class="low last-row"><${Button} onTouch=${() => go("house")}>Back<//></div>
  <//>`;
}

/** What counts in a house: what it sets, over what is usual. @param {any} house as the engine knows it */
function inHouse({ defaults, settings }) {
  return { ...defaults, ...settings };
}

/** @param {{house: any, known: any, id: string}} props */
function OfRoom({ house, known, id }) {
  const { outline } = useNotebook();
  const room = known?.rooms.find((one) => one.id === id);
  const name = outline.rooms.get(id)?.name ?? "the room";
  const subject = room && { ...room, above: inHouse(known), from: "in the house", back: "As in the house" };
  return html`<${Page} title=${`What differs in ${name}`} tab="house" kind="form standard">
    <p class="pencil">The standard of ${house.name} counts in every room. Set here only what this room is to have otherwise.</p>
    ${subject ? html`<${Settings} groups=${OF_ROOM} subject=${subject} />` : html`<${Asleep} what="The standard" />`}
    <div class="low last-row"><${Button} onTouch=${() => history.back()}>Back<//></div>
  <//>`;
}

/** What one opening has otherwise than its room. @param {{wall: any, opening: any, known: any}} props */
export function OfOpening({ wall, opening, known }) {
  const { room } = useNotebook();
  const { walls = [] } = useSurvey(room.id);
  const found = walls.flatMap((one) => one.openings).find((one) => one.id === opening.id);
  const inRoom = known?.rooms.find((one) => one.id === room.id);
  const groups = OF_OPENING.filter(({ title }) => opening.kind === "window" || !/indow/.test(title));
  const above = inRoom && { ...inHouse(known), ...inRoom.settings };
  const subject = found && above && { ...found, above, from: "in the room", back: "As in the room" };
  return html`<${Page} title=${`The ${found?.name ?? "opening"}, wall ${wall.number}`} aside=" " tab="survey" kind="form standard">
    <p class="pencil">Set here only what this one is to have otherwise than the others in ${room.name}.</p>
    ${
      subject
        ? html`<${Settings} groups=${groups} subject=${subject} open=${opening.kind === "window" ? "Windows" : "Casing"} />`
        : html`<${Asleep} what="What it differs in" />`
    }
    <div class="low last-row"><${Button} onTouch=${() => go("survey", "walk", wall.id)}>Back<//></div>
  <//>`;
}
