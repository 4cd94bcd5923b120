// @ts-check
// An invented room to look around in: a house of its own, known by its id on every device, struck with one touch.
import {
  addHouse, addOpening, addReading, addRoom, addWall, INVENTED, restateRoom, setSetting, strikeOut,
} from "../notebook/write.js";
import { say } from "../words/words.js";

/** @typedef {import("../journal/journal.js").Journal} Journal */

const WALLS = ["132 1/4", "109 1/8", "132 1/4", "109 1/16"];
const CORNERS = ["90", "89.5", "90", "90.5"];
const DOOR = { at: "30 1/4", width: "30 1/8", left: "80 1/4", right: "80 3/16", head_left: "90", head_right: "90" };
const WINDOW = { at: "42", width: "36 1/8", left: "48", right: "48 1/16", sash: "3 3/4" };
const PRICED = [["8 ft", "9.40"], ["12 ft", "14.60"], ["16 ft", "20.10"]];

/** Writes the room, and gives its id. @param {Journal} journal */
export async function addInvented(journal) {
  await addHouse(journal, say("invented-house"), 1936, INVENTED);
  const name = say("invented-room");
  const room = await addRoom(journal, INVENTED, name);
  const walls = [];
  for (const [at, length] of WALLS.entries()) {
    const { body } = await addWall(journal, room, walls.at(-1) ?? null);
    walls.push(body.wall);
    await addReading(journal, body.wall, "length", length);
    await addReading(journal, body.wall, "corner", CORNERS[at]);
  }
  await addOpeningRead(journal, walls[0], "door", DOOR);
  await addOpeningRead(journal, walls[2], "window", WINDOW);
  await restateRoom(journal, { id: room, house: INVENTED, name }, { closed: true });
  const rows = PRICED.map(([length, price]) => ({ length, price, limit: null }));
  for (const stock of ["base.stock", "casing.stock"]) await setSetting(journal, INVENTED, stock, rows);
  return room;
}

/** @param {Journal} journal @param {string} wall @param {string} kind @param {Record<string, string>} read */
async function addOpeningRead(journal, wall, kind, read) {
  const { body } = await addOpening(journal, wall, kind);
  for (const [what, text] of Object.entries(read)) await addReading(journal, body.opening, what, text);
}

/** @param {Journal} journal */
export function strikeInvented(journal) {
  return strikeOut(journal, "house", { house: INVENTED }, "looked around in");
}
