// @ts-check
// What there is to read in a room: the engine's rows; while it sleeps those of the last time, or else plain ones that the
// outline allows, so that a person can measure at once. Only the engine says what is wanted: rows that are plain, or older
// than the journal, say what is unread and claim nothing.
import { say } from "../words/words.js";
import { useAnswer, useNotebook } from "./notebook.js";

/** What an opening is called, for any screen that has to name one. */
export const OPENINGS = { __proto__: null, door: say("opening-kind-door"), window: say("opening-kind-window"), cased: say("opening-kind-cased") };

/**
 * @param {string | null} room
 * @returns {{known: boolean, older: boolean, rows: any[], plan: string, problems: any[], cautions: string[],
 *   wanted: number | null}} `known`: what is wanted is the engine's word on the journal as it is
 */
export function useSurvey(room) {
  const { outline } = useNotebook();
  const { answer: last, older } = useAnswer(room ? { ask: "survey", room } : null);
  if (last && !older) return { ...last, known: true, older: false };
  const found = outline.rooms.get(room);
  const { walls = [] } = found ?? {};
  if (last) return { ...last, known: false, older: true, rows: found ? rowsSince(last.rows, found, outline.readings) : [] };
  const rows = walls.flatMap((/** @type {any} */ wall) => plainRows(wall, found, outline.readings));
  return { known: false, older: false, rows, plan: "", problems: [], cautions: [], wanted: null };
}

/** @param {any} wall @param {any} room @param {Map<string, any[]>} readings */
function plainRows(wall, room, readings) {
  const { number } = wall;
  const openings = wall.openings.flatMap(({ id, kind }) => {
    const thing = OPENINGS[/** @type {keyof OPENINGS} */ (kind)] ?? kind;
    return [
      { of: id, what: "at", title: say("plain-at", { wall: number, thing }) },
      { of: id, what: "width", title: say("plain-jambs", { wall: number, thing }) },
      { of: id, what: "left", title: say("plain-left", { wall: number, thing }) },
      { of: id, what: "right", title: say("plain-right", { wall: number, thing }) },
      ...(kind === "window" ? [{ of: id, what: "sash", title: say("plain-sash", { wall: number, thing }) }] : []),
    ];
  });
  const obstacles = wall.obstacles.flatMap(({ id, kind }) => [
    { of: id, what: "at", title: say("plain-at", { wall: number, thing: kind }) },
    { of: id, what: "width", title: say("plain-edges", { wall: number, thing: kind }) },
  ]);
  const figures = [
    ...openings,
    ...obstacles,
    { of: wall.id, what: "length", title: say("plain-wall", { wall: number }) },
    { of: wall.id, what: "corner", title: say(`plain-corner-${wall.turn}`, { wall: number }) },
  ].filter(({ what }) => what !== "corner" || room.closed || wall !== room.walls.at(-1));
  const blank = { wall: wall.id, number, hint: "", why: "", wanted: true };
  return figures.map(({ of, what, title }) => asTyped({ ...blank, key: `${of} ${what}`, of, what, title }, readings));
}

/** A row as the journal alone has it: what was typed, and nothing claimed. @param {any} row @param {Map<string, any[]>} readings */
function asTyped(row, readings) {
  const typed = typedIn(row, readings);
  const texts = typed.filter((one) => !one.struck).map((one) => one.text);
  const unread = texts.length === 0;
  const state = unread ? "unread" : "read";
  return { ...row, wanted: false, unread: unread && row.wanted, state, note: texts.join(" · "), figure: null, readings: typed };
}

/** @param {{of: string, what: string}} row @param {Map<string, any[]>} readings */
function typedIn({ of, what }, readings) {
  const whats = what === "corner" ? ["corner", "sides"] : [what];
  return (readings.get(of) ?? []).filter((one) => whats.includes(one.what));
}

/**
 * The engine's rows of the last time, with what was written since: what was read is not asked for again, what stands in a
 * wall no longer is left out, what is new has its plain rows.
 * @param {any[]} rows @param {any} room @param {Map<string, any[]>} readings
 */
function rowsSince(rows, room, readings) {
  return room.walls.flatMap((/** @type {any} */ wall) => {
    const plain = plainRows(wall, room, readings);
    const here = new Set([wall, ...wall.openings, ...wall.obstacles].map(({ id }) => id));
    const known = rows.filter(({ of }) => here.has(of));
    const of = new Set(known.map((row) => row.of));
    return [...known.map((row) => sinceThen(row, readings)), ...plain.filter((row) => !of.has(row.of))];
  });
}

/** @param {any} row @param {Map<string, any[]>} readings */
function sinceThen(row, readings) {
  const standing = (/** @type {any[]} */ some) => some.map(({ entry, struck }) => `${entry} ${struck}`).join();
  const same = standing(typedIn(row, readings)) === standing(row.readings);
  return same ? { ...row, wanted: false, unread: row.wanted } : asTyped(row, readings);
}


/**
 * The row to read next: the first one wanted, or unread, after this one, round the room, leaving out what cannot be reached for now.
 * @param {any[]} rows @param {string | null} key @param {Set<string>} unreached
 */
export function nextRow(rows, key, unreached) {
  const here = rows.findIndex((row) => row.key === key) + 1;
  const round = [...rows.slice(here), ...rows.slice(0, here)];
  return round.find((row) => (row.wanted || row.unread) && row.key !== key && !unreached.has(row.key)) ?? null;
}
