// @ts-check
// Writing into the journal: each act of a person as one entry, named by what it says. Every function resolves once the
// entry is safe on this device, and rejects when it is not.

import { inForce, standing } from "./fold.js";

/** The house of the invented room, on every device. */
export const INVENTED = "00000000-0000-7000-8000-1d5c9e000001";

/** @typedef {import("../journal/journal.js").Journal} Journal */

/**
 * Says something anew: it takes the place of what is in force at this moment, whatever a screen was drawn from.
 * @param {Journal} journal @param {string} kind @param {Record<string, any>} about what names it @param {object} facts
 */
function restate(journal, kind, about, facts) {
  return journal.append(kind, { ...about, ...facts }, inForce(/** @type {any} */ (journal.entries()), kind, about));
}

/** @param {Journal} journal @param {string} name @param {number | null} built @param {string} [house] its id, where it has one */
export async function addHouse(journal, name, built, house = journal.newId()) {
  await journal.append("house", { house, name, built }, []);
  return house;
}

/** @param {Journal} journal @param {{id: string}} house @param {string} name @param {number | null} built */
export function restateHouse(journal, house, name, built) {
  return restate(journal, "house", { house: house.id }, { name, built });
}

/** @param {Journal} journal @param {string} house @param {string} name */
export async function addRoom(journal, house, name) {
  const room = journal.newId();
  await journal.append("room", { room, house, name, closed: false }, []);
  return room;
}

/** @param {Journal} journal @param {any} room @param {{name?: string, closed?: boolean}} change */
export function restateRoom(journal, room, change) {
  const { name, closed } = { ...room, ...change };
  return restate(journal, "room", { room: room.id }, { house: room.house, name, closed });
}

/** @param {Journal} journal @param {string} room @param {string | null} after */
export function addWall(journal, room, after) {
  return journal.append("wall", { wall: journal.newId(), room, after, turn: "inside" }, []);
}

/** @param {Journal} journal @param {string} room @param {any} wall @param {string} turn */
export function turnWall(journal, room, wall, turn) {
  return restate(journal, "wall", { wall: wall.id }, { room, after: wall.after, turn });
}

/** @param {Journal} journal @param {string} wall @param {string} kind */
export function addOpening(journal, wall, kind) {
  return journal.append("opening", { opening: journal.newId(), wall, kind }, []);
}

/** @param {Journal} journal @param {string} wall @param {string} kind @param {string} base */
export async function addObstacle(journal, wall, kind, base) {
  const obstacle = journal.newId();
  await journal.append("obstacle", { obstacle, wall, kind, base }, []);
  return obstacle;
}

/**
 * A free piece, new, or said again in the place of what it was.
 * @param {Journal} journal @param {string} room @param {{id?: string}} known
 * @param {{name: string, profile: string, text: string, count: string}} said
 */
export function sayFree(journal, room, known, said) {
  return restate(journal, "free", { free: known.id ?? journal.newId() }, { room, ...said });
}

/** What a person writes where it is not in millimeters; "foot" is not there, for a wall that leans is off "at the foot". */
const OTHERWISE = /["'″′/¼½¾⅛⅜⅝⅞]|\b(?:mm|cm|m|in|ins|inch|inches|ft|feet|yd|yards?)\b/i;

/**
 * What was typed, with the unit that a house of millimeters leaves out: without one the engine takes it for inches, on
 * every device and for ever. What has a unit, or a fraction, stays as it is.
 * @param {string} text @param {string} lengths what lengths are shown in
 */
export function asWritten(text, lengths) {
  if (lengths !== "millimeters" || text.trim() === "0" || OTHERWISE.test(text)) return text;
  return text.replace(/\d+(?:\.\d*)?/g, "$& mm");
}

/**
 * The same of what is no length: a bare number with the unit that a house of millimeters leaves out, such as m2.
 * @param {string} text @param {string} lengths @param {string} [unit]
 */
export function withUnit(text, lengths, unit) {
  return unit && lengths === "millimeters" && /^\d+(?:\.\d+)?$/.test(text) ? `${text} ${unit}` : text;
}

/** @param {Journal} journal @param {string} of @param {string} what @param {string} text exactly as it was typed */
export function addReading(journal, of, what, text) {
  return journal.append("reading", { of, what, text }, []);
}

/** @param {Journal} journal @param {string} of @param {string} name @param {string | object[]} value */
export function setSetting(journal, of, name, value) {
  return restate(journal, "setting", { of, name }, { value });
}

/**
 * Hands out a list: each body as the engine gave it, one entry each.
 * @param {Journal} journal @param {object[]} bodies
 */
export async function issueList(journal, bodies) {
  for (const body of bodies) await journal.append("issue", body, []);
}

/**
 * What a person says of a piece. A cut remembers what it was to be, as the engine wrote that down.
 * @param {Journal} journal @param {{id: string, remember: object}} piece @param {string} state
 * @param {string | null} [asCut] what the board was read as, exactly as typed
 */
export function markPiece(journal, piece, state, asCut = null) {
  const remember = state === "cut" ? piece.remember : { cut_to: null, left: null, right: null };
  return restate(journal, "state", { piece: piece.id }, { state, ...remember, as_cut: asCut });
}

/**
 * What scraps showed in a corner, in place of what was said of it before; struck where nothing is said any more.
 * @param {Journal} journal @param {{of: string, what: string}} corner @param {string} text
 */
export function noteTestCut(journal, { of, what }, text) {
  return text ? restate(journal, "test_cut", { of, what }, { text }) : strikeOut(journal, "test_cut", { of, what }, "struck by hand");
}

/**
 * What follows of a hair, or of a spoiled piece, as the engine gave it to write.
 * @param {Journal} journal @param {{kind: string, body: any}[]} entries
 */
export async function writeTold(journal, entries) {
  let written;
  for (const { kind, body } of entries) {
    const { piece, ...facts } = body;
    written = kind === "state" ? await restate(journal, kind, { piece }, facts) : await journal.append(kind, body, []);
  }
  return written;
}

/** Strikes one entry; striking a strike restores what it struck. @param {Journal} journal @param {string} entry @param {string} why */
export function strike(journal, entry, why) {
  return journal.append("strike", { entry, why }, []);
}

/**
 * Settles on a plan of boards; those that have no name yet are given one, to be known by for ever.
 * @param {Journal} journal @param {{kind: string, body: any, supersedes: string[]}} accept as the engine gave it
 * @param {Map<number, boolean>} [bought] by the board's place, where that changes
 */
export function acceptPlan(journal, accept, bought = new Map()) {
  const boards = accept.body.boards.map((/** @type {any} */ one, /** @type {number} */ place) => ({
    ...one,
    board: one.board ?? journal.newId(),
    bought: bought.get(place) ?? one.bought,
  }));
  return journal.append(accept.kind, { ...accept.body, boards }, accept.supersedes);
}

/**
 * A thing is gone when every statement about it is struck: striking the last alone would bring back the one before.
 * @param {Journal} journal @param {string} kind @param {Record<string, any>} about what names it @param {string} why
 */
export function strikeOut(journal, kind, about, why) {
  return strikeAll(journal, standing(/** @type {any} */ (journal.entries()), kind, about), why);
}

/** @param {Journal} journal @param {string[]} entries @param {string} why */
export async function strikeAll(journal, entries, why) {
  for (const entry of entries) await strike(journal, entry, why);
}

/**
 * An article of the house, new or called anew; gives back its id.
 * @param {Journal} journal @param {string} house @param {{id?: string, sort: string, name: string}} said
 */
export async function sayArticle(journal, house, { id, sort, name }) {
  const article = id ?? journal.newId();
  await restate(journal, "article", { article }, { house, sort, name });
  return article;
}

/** A covering of a room, new or with another article; gives back its id. @param {Journal} journal @param {string} room @param {string} article @param {string} [id] */
export async function sayCovering(journal, room, article, id) {
  const covering = id ?? journal.newId();
  await restate(journal, "covering", { covering }, { room, article });
  return covering;
}

/**
 * So many of a thing, bought or on hand, new or said again.
 * @param {Journal} journal @param {{id?: string, of: string, article: string | null, name: string, count: string, price: string,
 *   date: string, note: string}} said
 */
export function sayLot(journal, { id, ...facts }) {
  return restate(journal, "lot", { lot: id ?? journal.newId() }, facts);
}

/**
 * What a photo or another file shows, said anew.
 * @param {Journal} journal @param {string} attachment
 * @param {{of: string, blob: string, size: number, type: string, name: string}} facts
 */
export function sayAttachment(journal, attachment, facts) {
  return restate(journal, "attachment", { attachment }, facts);
}

/** A line on a photo. @param {Journal} journal @param {string} attachment @param {[number, number][]} points */
export function addStroke(journal, attachment, points) {
  return journal.append("stroke", { attachment, points }, []);
}

/**
 * A figure pinned on a photo, or its pin put elsewhere.
 * @param {Journal} journal @param {string} attachment @param {{id?: string, of: string, what: string, x: number, y: number}} said
 */
export function sayPin(journal, attachment, { id, ...facts }) {
  return restate(journal, "pin", { pin: id ?? journal.newId() }, { attachment, ...facts });
}

/**
 * A sum on the tape, new, or with another note.
 * @param {Journal} journal @param {{id?: string, of: string | null, text: string, note: string}} said
 */
export function saySum(journal, { id, ...facts }) {
  return restate(journal, "sum", { sum: id ?? journal.newId() }, facts);
}

/**
 * Ticks a line of a list off; `remember` is what it said.
 * @param {Journal} journal @param {{of: string, list: string, key: string}} line @param {string} state @param {string} remember
 */
export function tick(journal, { of, list, key }, state, remember) {
  return restate(journal, "tick", { of, list, key }, { state, remember });
}

/** Takes a tick back, and every one before it. @param {Journal} journal @param {{of: string, list: string, key: string}} line */
export function untick(journal, { of, list, key }) {
  return strikeOut(journal, "tick", { of, list, key }, "not yet");
}
