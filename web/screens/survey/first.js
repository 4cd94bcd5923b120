// @ts-check
// A first start: the house and its first room, or an invented one to look around in; and what was struck of houses.
import { html, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { go, stayHere } from "../../controls/route.js";
import { isYear, parseYear, Year } from "../../controls/year.js";
import { addInvented } from "../../frame/invented.js";
import { Page } from "../../frame/page.js";
import { useNotebook } from "../../notebook/notebook.js";
import { addHouse, addRoom, addWall, strikeAll } from "../../notebook/write.js";
import { say } from "../../words/words.js";

/** A name is all it takes; what else there is to say is asked where it is needed. */
export function FirstStart() {
  const { outline, journal, act, takeRoom } = useNotebook();
  const look = async () => {
    const stays = stayHere();
    const room = await act(() => addInvented(journal), say("first-invented.done"));
    if (!room || !stays()) return;
    takeRoom(room);
    go("survey");
  };
  return html`<${Page} title=${say("first")} tab="survey" kind="form">
    <div class="low now">
      <p>${say("first.told")}</p>
      <${NewHouse} folded />
      <${Button} onTouch=${look}>${say("first-invented")}<//>
    </div>
    <${Struck} struck=${outline.struck.filter((one) => one.kind === "house")} />
  <//>`;
}

/** @param {{folded?: boolean}} props `folded`: what the house is called is asked of who wants to say it */
export function NewHouse({ folded = false }) {
  const { journal, act, takeRoom } = useNotebook();
  const [name, setName] = useState("");
  const [built, setBuilt] = useState("");
  const [roomName, setRoomName] = useState("");
  const ready = (folded || name.trim()) && roomName.trim() && isYear(built);
  const make = async () => {
    const house = await addHouse(journal, name.trim() || say("first-house.unnamed"), parseYear(built));
    const room = await addRoom(journal, house, roomName.trim());
    await addWall(journal, room, null);
    return room;
  };
  const save = async () => {
    if (!ready) return;
    const stays = stayHere();
    const room = await act(make, roomName);
    if (!room || !stays()) return;
    takeRoom(room);
    go("survey", "walk");
  };
  const ofHouse = html`<${Field} label=${say("house-name")} value=${name} onInput=${setName} hint=${say("first-house.hint")} />
    <${Year} built=${built} onBuilt=${setBuilt} />`;
  return html`
    ${folded ? null : ofHouse}
    <${Field} label=${say("first-room")} value=${roomName} onInput=${setRoomName} onEnter=${save} hint=${folded ? say("first-room.hint") : ""} />
    ${folded ? html`<details class="more"><summary>${say("first-house")}</summary>${ofHouse}</details>` : null}
    <${Button} kind="main" disabled=${!ready} onTouch=${save}>${say("survey-start")}<//>`;
}

/** What was struck, to be had back with all that was read in it. @param {{struck: any[]}} props */
export function Struck({ struck }) {
  const { journal, act } = useNotebook();
  if (!struck.length) return null;
  const restore = (one) => act(() => strikeAll(journal, one.strikes, "restored by hand"), say("restore.done", { what: one.name }));
  return html`<details class="more">
    <summary>${say("survey-struck")}</summary>
    <ul class="rows">${struck.map(
      (one) => html`<li class="row" key=${one.id}>
        <span class="row-words"><s>${one.name}</s></span>
        <${Button} label=${say("restore.what", { what: one.name })} onTouch=${() => restore(one)}>${say("restore")}<//>
      </li>`,
    )}</ul>
  </details>`;
}
