// @ts-check
// Rooms: the one in hand, the others, a new one.
import { html, useState } from "../../controls/ui.js";
import { Button, byName, Field, Find, initial, isFound, Jump, MANY } from "../../controls/controls.js";
import { go, stayHere } from "../../controls/route.js";
import { RoomInView } from "../../drawings/drawn.js";
import { Page } from "../../frame/page.js";
import { useNotebook } from "../../notebook/notebook.js";
import { addRoom, restateRoom, strikeOut } from "../../notebook/write.js";
import { say } from "../../words/words.js";
import { NewHouse, Struck } from "./first.js";

export function Rooms() {
  const { outline, room } = useNotebook();
  return html`<${Page} title=${say("rooms")} tab="survey" kind="form" view=${room ? html`<${RoomInView} />` : null}>
    ${outline.houses.map((house) => html`<${RoomsOf} house=${house} key=${house.id} />`)}
    <details class="more">
      <summary>${say("rooms-house")}</summary>
      <div class="now"><${NewHouse} /></div>
    </details>
    <${Struck} struck=${outline.struck.filter((one) => one.kind === "house")} />
  <//>`;
}

/** @param {{house: any}} props */
function RoomsOf({ house }) {
  const { room, outline } = useNotebook();
  const { struck } = outline;
  const [words, setWords] = useState("");
  const isLong = house.rooms.length > MANY;
  const found = house.rooms.filter((/** @type {any} */ one) => isFound(one.name, words));
  const rooms = isLong ? found.toSorted(byName) : found;
  return html`<section>
    <h2>${house.name}</h2>
    ${isLong ? html`<${Find} label=${say("rooms-find")} hint=${say("rooms-find.hint")} value=${words} onInput=${setWords} none=${!rooms.length} />
      <${Jump} names=${rooms.map((/** @type {any} */ one) => one.name)} />` : null}
    <ul class="rows">${rooms.map((one) => html`<${RoomLine} room=${one} key=${one.id} />`)}</ul>
    ${room?.house === house.id ? html`<${Rename} room=${room} key=${room.id} />` : null}
    <${Struck} struck=${struck.filter((one) => one.house === house.id)} />
    <${NewRoom} house=${house} />
  </section>`;
}

/** @param {{room: any}} props */
function RoomLine({ room }) {
  const { room: inHand, takeRoom } = useNotebook();
  const open = () => {
    takeRoom(room.id);
    go("survey");
  };
  const chosen = room.id === inHand?.id;
  return html`<li class="row" data-initial=${initial(room.name)}>
    <span class="row-words">
      <span>${room.name}</span>
      <small>${say(room.closed ? "rooms-line" : "rooms-line.open", { walls: room.walls.length })}</small>
    </span>
    <${Button} pressed=${chosen} label=${say("rooms-open.what", { room: room.name })} onTouch=${open}>
      ${say(chosen ? "rooms-open.in-hand" : "rooms-open")}<//>
  </li>`;
}

/** @param {{room: any}} props */
function Rename({ room }) {
  const { journal, act } = useNotebook();
  const [name, setName] = useState(room.name);
  const save = () => act(() => restateRoom(journal, room, { name: name.trim() }), name);
  const take = () => act(() => strikeOut(journal, "room", { room: room.id }, "struck by hand"), say("strike.done", { what: room.name }));
  return html`<details class="more">
    <summary>${say("rooms-rename", { room: room.name })}</summary>
    <${Field} label=${say("rooms-rename.name")} value=${name} onInput=${setName} onEnter=${save} />
    <${Button} disabled=${!name.trim() || name === room.name} onTouch=${save}>${say("save-name")}<//>
    <${Button} kind="plain" onTouch=${take}>${say("strike.what", { what: room.name })}<//>
  </details>`;
}

/** @param {{house: any}} props */
function NewRoom({ house }) {
  const { journal, act, takeRoom } = useNotebook();
  const [name, setName] = useState("");
  const save = async () => {
    const stays = stayHere();
    const room = name.trim() && (await act(() => addRoom(journal, house.id, name.trim()), name));
    if (!room || !stays()) return;
    takeRoom(room);
    go("survey", "walk");
  };
  return html`<div class="low now">
    <${Field} label=${say("rooms-new", { house: house.name })} holds=${say("rooms-new.name")} value=${name} onInput=${setName} onEnter=${save} />
    <${Button} kind="main" disabled=${!name.trim()} onTouch=${save}>${say("rooms-new.make")}<//>
  </div>`;
}
