// @ts-check
// The rooms of a house, what wants a look first; many of them by name, searched, jumped through, with what is done folded away.
import { html, useState } from "../../controls/ui.js";
import { Button, byName, Find, initial, isFound, Jump, MANY } from "../../controls/controls.js";
import { Refusal } from "../../controls/notes.js";
import { go, link } from "../../controls/route.js";
import { useWide } from "../../controls/wide.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { say } from "../../words/words.js";

/** @param {{house: any, known: any}} props `known` is what the engine says of the house, once awake */
export function RoomsOfHouse({ house, known }) {
  const [words, setWords] = useState("");
  const counted = new Map((known?.rooms ?? []).map((/** @type {any} */ one) => [one.id, one]));
  const rooms = house.rooms
    .filter((/** @type {any} */ one) => isFound(one.name, words))
    .map((/** @type {any} */ one) => ({ ...one, known: counted.get(one.id) }));
  if (house.rooms.length <= MANY) return html`<${Lines} rooms=${rooms.toSorted(firstLook)} />`;
  return html`<${Find} label=${say("rooms-find")} hint=${say("rooms-find.hint")} value=${words} onInput=${setWords} none=${!rooms.length} />
    <${LongList} rooms=${rooms.toSorted(byName)} all=${Boolean(words.trim())} />`;
}

/** What wants a look comes first. @param {any} one @param {any} other */
const firstLook = (one, other) => Number(Boolean(other.known?.problems)) - Number(Boolean(one.known?.problems));

/**
 * Many rooms, by name: what wants a look, what is to read, and folded what wants nothing.
 * @param {{rooms: any[], all: boolean}} props `all`: nothing is folded
 */
function LongList({ rooms, all }) {
  const standing = (/** @type {any} */ { known, closed }) => {
    if (known?.problems) return "look";
    return closed && known && !known.wanted ? "done" : "open";
  };
  const { look = [], open = [], done = [] } = Object.groupBy(rooms, standing);
  return html`<${Jump} names=${rooms.map(({ name }) => name)} />
    ${look.length ? html`<h3>${say("look-first")}</h3><${Lines} rooms=${look} />` : null}
    ${open.length ? html`<h3>${say("to-read")}</h3><${Lines} rooms=${open} />` : null}
    ${done.length ? html`<details class="more" open=${all || rooms.length === done.length}>
      <summary><b>${say("house-room-wanted.none")}</b><small>${done.length}</small></summary><${Lines} rooms=${done} /></details>` : null}`;
}

/** @param {{rooms: any[]}} props */
function Lines({ rooms }) {
  return html`<ul class="rows">${rooms.map((room) => html`<${Line} room=${room} known=${room.known} key=${room.id} />`)}</ul>`;
}

/** @param {{room: any, known: any}} props `known` is what the engine counts in it, once awake */
function Line({ room, known }) {
  const { takeRoom } = useNotebook();
  const open = () => {
    takeRoom(room.id);
    go("survey");
  };
  return html`<li>
    <button class="row" onClick=${open} data-initial=${initial(room.name)}>
      <span class="row-words">
        <span>${room.name}</span>
        <small>${known ? stands(room, known) : ""}</small>
        ${known?.problems ? html`<small class="wrong">${say("house-room-look", { count: known.problems })}</small>` : null}
      </span>
    </button>
  </li>`;
}

/** How many figures are read in a room, and how many are wanted. @param {any} room @param {{readings: number, wanted: number}} known */
function stands(room, { readings, wanted }) {
  if (wanted) return say("house-room-wanted", { readings, wanted });
  return say(room.closed ? "house-room-read" : "house-room-read.open", { readings });
}

/** As the engine names them. */
const COLUMNS = ["read", "wanted", "to_cut", "cut", "fitted", "boards", "planned", "spent", "doubts"];

/** A count, or money. @param {any} room @param {string} key */
const cell = (room, key) => (typeof room[key] === "string" ? say("dollars", { amount: room[key] }) : room[key]);

/** The rooms of the house side by side, on a phone one under the other. @param {{house: any}} props */
export function Compared({ house }) {
  const { answer, error, heard, older } = useAnswer({ ask: "compare", house: house.id });
  const wide = useWide();
  const Shown = wide ? AsTable : AsList;
  return html`<${Page} title=${say("compared")} tab="house" kind="house compared" older=${older} of=${house.id}>
    ${heard ? null : html`<${Asleep} what=${say("compared-rooms")} />`}
    <${Refusal} error=${error} />
    ${answer ? html`<${Shown} rooms=${answer.rooms.toSorted(byName)} />` : null}
    <p class="onward"><a href=${link("house", "money")}>${say("compared-money")}</a></p>
    <div class="low last-row"><${Button} onTouch=${() => go("house")}>${say("back")}<//></div>
  <//>`;
}

/** @param {{rooms: any[]}} props */
function AsTable({ rooms }) {
  return html`<table class="to-buy">
    <caption class="heard">${say("compared-table")}</caption>
    <thead><tr><th scope="col">${say("compared-room")}</th>
      ${COLUMNS.map((key) => html`<th scope="col" key=${key}>${say(`compared-column-${key}`)}</th>`)}</tr></thead>
    <tbody>${rooms.map(
      (room) => html`<tr key=${room.id}><th scope="row">${room.name}${room.closed ? "" : html`<small>${say("compared-open")}</small>`}</th>
        ${COLUMNS.map((key) => html`<td class=${key === "doubts" && room.doubts ? "wrong" : null} key=${key}>${cell(room, key)}</td>`)}</tr>`,
    )}</tbody>
  </table>`;
}

/** @param {{rooms: any[]}} props */
function AsList({ rooms }) {
  return html`<ul class="rows">${rooms.map(
    (room) => html`<li class="compared-room" key=${room.id}><h2>${room.name}</h2>
      ${room.closed ? null : html`<p class="pencil">${say("compared-open")}</p>`}
      <dl>${COLUMNS.map((key) => html`<div key=${key}><dt>${say(`compared-column-${key}`)}</dt>
        <dd class=${key === "doubts" && room.doubts ? "wrong" : null}>${cell(room, key)}</dd></div>`)}</dl></li>`,
  )}</ul>`;
}
