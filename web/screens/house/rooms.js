// @ts-check
// The rooms of a house, what wants a look first; many of them by name, searched, jumped through, with what is done folded away.
import { html, useState } from "../../controls/ui.js";
import { byName, Find, initial, isFound, Jump, MANY } from "../../controls/controls.js";
import { go } from "../../controls/route.js";
import { useNotebook } from "../../notebook/notebook.js";

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
