// @ts-check
// The cut list while the engine sleeps: which pieces were issued, their letters and figures as they were written then, and
// what was said of them since, so that a board can be marked at once. What has changed since is the engine's to tell.
import { say } from "../words/words.js";
import { headsOf, readable, strikesIn } from "./fold.js";

/** @typedef {import("./fold.js").Entry} Entry */
/**
 * @typedef {{id: string, letter: string, doubted: boolean, part_name: string, shown: string, state: string,
 *   remember: {cut_to: string, left: null, right: null}}} Issued
 *   `doubted`: two pieces were given this letter, and only the engine says which keeps it
 */

/**
 * @param {Entry[]} entries @param {string} room
 * @returns {Issued[]}
 */
export function issuedIn(entries, room) {
  const read = readable(entries);
  const strikes = strikesIn(read);
  const issues = read.filter(({ id, kind, body }) => kind === "issue" && body.room === room && !strikes.has(id));
  const rows = issues.flatMap(({ body }) => body.pieces);
  const pieces = new Map(rows.toReversed().map((row) => [row.piece, row]));
  const letters = [...pieces.values()].map(({ letter }) => letter);
  const states = statesIn(entries);
  return [...pieces.values()].toReversed().map((row) => ({
    id: row.piece,
    letter: row.letter,
    doubted: letters.indexOf(row.letter) !== letters.lastIndexOf(row.letter),
    part_name: row.name,
    shown: row.shown,
    state: states.get(row.piece) ?? "to cut",
    remember: { cut_to: row.cut, left: null, right: null },
  }));
}

/** A piece's state as people read it. @param {string} state as the journal has it */
export const stateWords = (state) => say(`piece-state-${state.replace(" ", "-")}`);

/** What was last said of each piece. @param {Entry[]} entries @returns {Map<string, string>} */
export function statesIn(entries) {
  const read = readable(entries);
  const strikes = strikesIn(read);
  const said = Map.groupBy(
    read.filter(({ kind }) => kind === "state"),
    ({ body }) => body.piece,
  );
  const last = [...said].map(([piece, statements]) => [piece, headsOf(statements, strikes).at(-1)?.body.state]);
  return new Map(/** @type {any} */ (last.filter(([, state]) => state)));
}
