// @ts-check
// Rooms: the one in hand, the others, a new one; and at a first start the house itself.
import { html, useState } from "../parts/ui.js";
import { Button, Field } from "../parts/controls.js";
import { useNotebook } from "../parts/notebook.js";
import { Page } from "../parts/page.js";
import { go } from "../parts/route.js";
import { isYear, parseYear, Year } from "../parts/year.js";
import { addHouse, addRoom, restateRoom, strikeAll } from "../parts/write.js";

export function Rooms() {
  const { outline } = useNotebook();
  if (!outline.houses.length) return html`<${FirstStart} struck=${outline.struck.filter((one) => one.kind === "house")} />`;
  return html`<${Page} title="Rooms" tab="survey" kind="form">
    ${outline.houses.map((house) => html`<${RoomsOf} house=${house} key=${house.id} />`)}
    <details class="more">
      <summary>Another house</summary>
      <div class="now"><${NewHouse} /></div>
    </details>
    <${Struck} struck=${outline.struck.filter((one) => one.kind === "house")} />
  <//>`;
}

/** @param {{house: any}} props */
function RoomsOf({ house }) {
  const { room, outline } = useNotebook();
  const { struck } = outline;
  return html`<section>
    <h2>${house.name}</h2>
    <ul class="rows">${house.rooms.map((one) => html`<${RoomLine} room=${one} key=${one.id} />`)}</ul>
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
  const walls = room.walls.length === 1 ? "1 wall" : `${room.walls.length} walls`;
  return html`<li class="row">
    <span class="row-words">
      <span>${room.name}</span>
      <small>${room.closed ? walls : `${walls}, not walked round yet`}</small>
    </span>
    <${Button} pressed=${chosen} label="${room.name}: open" onTouch=${open}>${chosen ? "In hand" : "Open"}<//>
  </li>`;
}

/** @param {{room: any}} props */
function Rename({ room }) {
  const { journal, act } = useNotebook();
  const [name, setName] = useState(room.name);
  const save = () => act(() => restateRoom(journal, room, { name: name.trim() }), name);
  const take = () => act(() => strikeAll(journal, room.all, "struck by hand"), `${room.name} struck`);
  return html`<details class="more">
    <summary>Another name for ${room.name}, or strike it</summary>
    <${Field} label="Its name" value=${name} onInput=${setName} onEnter=${save} />
    <${Button} disabled=${!name.trim() || name === room.name} onTouch=${save}>Save the name<//>
    <${Button} kind="plain" onTouch=${take}>Strike ${room.name}<//>
  </details>`;
}

/** What was struck, to be had back with all that was read in it. @param {{struck: any[]}} props */
function Struck({ struck }) {
  const { journal, act } = useNotebook();
  if (!struck.length) return null;
  const restore = (one) => act(() => strikeAll(journal, one.strikes, "restored by hand"), `${one.name} restored`);
  return html`<details class="more">
    <summary>Struck</summary>
    <ul class="rows">${struck.map(
      (one) => html`<li class="row" key=${one.id}>
        <span class="row-words"><s>${one.name}</s></span>
        <${Button} label="Restore ${one.name}" onTouch=${() => restore(one)}>Restore<//>
      </li>`,
    )}</ul>
  </details>`;
}

/** @param {{house: any}} props */
function NewRoom({ house }) {
  const { journal, act, takeRoom } = useNotebook();
  const [name, setName] = useState("");
  const save = async () => {
    const room = name.trim() && (await act(() => addRoom(journal, house.id, name.trim()), name));
    if (!room) return;
    takeRoom(room);
    go("survey", "walk");
  };
  return html`<div class="low now">
    <${Field} label="A new room in ${house.name}" holds="its name" value=${name} onInput=${setName} onEnter=${save} />
    <${Button} kind="main" disabled=${!name.trim()} onTouch=${save}>Make the room<//>
  </div>`;
}

/** @param {{struck: any[]}} props */
function FirstStart({ struck }) {
  return html`<${Page} title="A new notebook" tab="survey" kind="form">
    <div class="low now">
      <p>Everything you write stays on this device and works without a signal.</p>
      <${NewHouse} />
    </div>
    <${Struck} struck=${struck} />
  <//>`;
}

function NewHouse() {
  const { journal, act, takeRoom } = useNotebook();
  const [name, setName] = useState("");
  const [built, setBuilt] = useState("");
  const [roomName, setRoomName] = useState("");
  const ready = name.trim() && roomName.trim() && isYear(built);
  const save = async () => {
    if (!ready) return;
    const house = await act(() => addHouse(journal, name.trim(), parseYear(built)), name);
    const room = house && (await act(() => addRoom(journal, house, roomName.trim()), `${name}, ${roomName}`));
    if (!room) return;
    takeRoom(room);
    go("survey", "walk");
  };
  return html`
    <${Field} label="Name of the house" value=${name} onInput=${setName} hint="Any name you will know it by." />
    <${Year} built=${built} onBuilt=${setBuilt} />
    <${Field} label="The first room" value=${roomName} onInput=${setRoomName} onEnter=${save} />
    <${Button} kind="main" disabled=${!ready} onTouch=${save}>Start at the door<//>`;
}
