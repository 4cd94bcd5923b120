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

/** @param {{house: any, known: any}} props `known` is what the engine says of the house, once awake */
export function Rooms({ house, known }) {
  const [words, setWords] = useState("");
  const counted = new Map((known?.rooms ?? []).map((/** @type {any} */ one) => [one.id, one]));
  const rooms = house.rooms
    .filter((/** @type {any} */ one) => isFound(one.name, words))
    .map((/** @type {any} */ one) => ({ ...one, known: counted.get(one.id) }));
  if (house.rooms.length <= MANY) return html`<${Lines} rooms=${rooms.toSorted(firstLook)} />`;
  return html`<${Find} label="Find a room" hint="its name" value=${words} onInput=${setWords} none=${!rooms.length} />
    <${LongList} rooms=${rooms.toSorted(byName)} all=${Boolean(words.trim())} />`;
}

/** What wants a look comes first. @param {any} one @param {any} other */
const firstLook = (one, other) => Number(Boolean(other.known?.problems)) - Number(Boolean(one.known?.problems));

/**
 * Many rooms, by name: what wants a look, what is to read, and folded what wants nothing.
 * @param {{rooms: any[], all: boolean}} props `all`: nothing is folded
 */
function LongList({ rooms, all }) {
  const standing = (/** @type {any} */ { known, closed }) =>
    known?.problems ? "look" : closed && known && !known.wanted ? "done" : "open";
  const { look = [], open = [], done = [] } = Object.groupBy(rooms, standing);
  return html`<${Jump} names=${rooms.map(({ name }) => name)} />
    ${look.length ? html`<h3>Look at these first</h3><${Lines} rooms=${look} />` : null}
    ${open.length ? html`<h3>To read</h3><${Lines} rooms=${open} />` : null}
    ${done.length ? html`<details class="more" open=${all || rooms.length === done.length}>
      <summary><b>Nothing wanted</b><small>${done.length}</small></summary><${Lines} rooms=${done} /></details>` : null}`;
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
  const wanted = known?.wanted ? `${known.wanted} wanted` : room.closed ? "nothing wanted" : "not walked round yet";
  const words = known ? [`${known.readings} read`, wanted] : [];
  return html`<li>
    <button class="row" onClick=${open} data-initial=${initial(room.name)}>
      <span class="row-words">
        <span>${room.name}</span>
        <small>${words.join(" · ")}</small>
        ${known?.problems ? html`<small class="wrong">${known.problems} to look at</small>` : null}
      </span>
    </button>
  </li>`;
}

const COLUMNS = [
  ["Read", "read"],
  ["Wanted", "wanted"],
  ["To cut", "to_cut"],
  ["Cut", "cut"],
  ["Fitted", "fitted"],
  ["Boards to buy", "boards"],
  ["Planned", "planned"],
  ["Spent", "spent"],
  ["To look at", "doubts"],
];

/** A count, or money. @param {any} room @param {string} key */
const cell = (room, key) => (typeof room[key] === "string" ? `$${room[key]}` : room[key]);

/** The rooms of the house side by side, on a phone one under the other. @param {{house: any}} props */
export function Compared({ house }) {
  const { answer, error, heard, older } = useAnswer({ ask: "compare", house: house.id });
  const wide = useWide();
  const Shown = wide ? AsTable : AsList;
  return html`<${Page} title="Rooms compared" tab="house" kind="house compared" older=${older}>
    ${heard ? null : html`<${Asleep} what="The rooms" />`}
    <${Refusal} error=${error} />
    ${answer ? html`<${Shown} rooms=${answer.rooms.toSorted(byName)} />` : null}
    <p class="onward"><a href=${link("house", "money")}>Money: planned and spent</a></p>
    <div class="low last-row"><${Button} onTouch=${() => go("house")}>Back<//></div>
  <//>`;
}

/** @param {{rooms: any[]}} props */
function AsTable({ rooms }) {
  return html`<table class="to-buy">
    <caption class="heard">The rooms of the house, compared</caption>
    <thead><tr><th scope="col">Room</th>${COLUMNS.map(([name]) => html`<th scope="col" key=${name}>${name}</th>`)}</tr></thead>
    <tbody>${rooms.map(
      (room) => html`<tr key=${room.id}><th scope="row">${room.name}${room.closed ? "" : html`<small>not walked round yet</small>`}</th>
        ${COLUMNS.map(([name, key]) => html`<td class=${key === "doubts" && room.doubts ? "wrong" : null} key=${name}>${cell(room, key)}</td>`)}</tr>`,
    )}</tbody>
  </table>`;
}

/** @param {{rooms: any[]}} props */
function AsList({ rooms }) {
  return html`<ul class="rows">${rooms.map(
    (room) => html`<li class="compared-room" key=${room.id}><h2>${room.name}</h2>
      ${room.closed ? null : html`<p class="pencil">not walked round yet</p>`}
      <dl>${COLUMNS.map(([name, key]) => html`<div key=${name}><dt>${name}</dt><dd class=${key === "doubts" && room.doubts ? "wrong" : null}>${cell(room, key)}</dd></div>`)}</dl></li>`,
  )}</ul>`;
}
