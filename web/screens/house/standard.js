// @ts-check
// The standard of a house, so that its rooms match; and what a room differs in from it on purpose.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { go, link } from "../../controls/route.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useNotebook } from "../../notebook/notebook.js";
import { inHouse, Settings } from "../../settings/settings.js";
import { OF_HOUSE, OF_ROOM, SETTING_NAMES } from "../../settings/trims.js";
import { say } from "../../words/words.js";

/** @param {{house: any, known: any, room?: string}} props `known` is what the engine says of the house, once awake */
export function Standard({ house, known, room }) {
  if (room) return html`<${OfRoom} house=${house} known=${known} id=${room} />`;
  const subject = known && { ...known, above: known.defaults, from: "usual" };
  return html`<${Page} title=${say("standard-title", { house: house.name })} tab="house" kind="form standard">
    ${subject ? html`<${Settings} groups=${OF_HOUSE} subject=${subject} open="base" />` : html`<${Asleep} what=${say("standard-settings")} />`}
    ${known ? html`<${Exceptions} rooms=${known.rooms} />` : null}
    <div class="low last-row"><${Button} onTouch=${() => go("house")}>${say("back")}<//></div>
  <//>`;
}

/** What rooms have otherwise on purpose, each to be looked at where it is set. @param {{rooms: any[]}} props */
function Exceptions({ rooms }) {
  const different = rooms.filter(({ settings }) => Object.keys(settings).length);
  if (!different.length) return null;
  return html`<section class="group" aria-label=${say("standard-exceptions")}><h2>${say("standard-exceptions")}</h2>
    <ul class="rows">${different.map(
      (room) => html`<li key=${room.id}><a class="row" href=${link("house", "standard", room.id)}>
        <span class="row-words"><span>${room.name}</span>
          ${Object.entries(room.settings).map(([name, value]) => html`<small key=${name}>${exception(name, value)}</small>`)}</span></a></li>`,
    )}</ul></section>`;
}

/** What one setting is; of a list, how long it is. @param {string} setting @param {any} value */
function exception(setting, value) {
  const name = SETTING_NAMES.get(setting) ?? setting;
  if (typeof value === "string") return say("standard-exception", { name, value });
  return say("standard-exception.list", { name, count: value.length });
}

/** @param {{house: any, known: any, id: string}} props */
function OfRoom({ house, known, id }) {
  const { outline } = useNotebook();
  const room = known?.rooms.find((one) => one.id === id);
  const name = outline.rooms.get(id)?.name ?? say("room-unnamed");
  const subject = room && { ...room, above: inHouse(known), from: "house" };
  return html`<${Page} title=${say("standard-room", { room: name })} tab="house" kind="form standard">
    <p class="pencil">${say("standard-room.told", { house: house.name })}</p>
    ${subject ? html`<${Settings} groups=${OF_ROOM} subject=${subject} />` : html`<${Asleep} one what=${say("standard")} />`}
    <div class="low last-row"><${Button} onTouch=${() => history.back()}>${say("back")}<//></div>
  <//>`;
}
