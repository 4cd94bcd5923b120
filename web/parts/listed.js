// @ts-check
// The cut list while the engine sleeps: which pieces were issued, their letters and figures as they were written then, and
// what was said of them since, so that a board can be marked at once. What has changed since is the engine's to tell.
import { byStamp, strikesIn } from "./outline.js";

/** @typedef {import("./outline.js").Entry} Entry */
/**
 * @typedef {{id: string, letter: string, doubted: boolean, part_name: string, shown: string, state: string, entries: string[],
 *   remember: {cut_to: string, left: null, right: null}}} Issued
 *   `doubted`: two pieces were given this letter, and only the engine says which keeps it
 */

/**
 * @param {Entry[]} entries @param {string} room
 * @returns {Issued[]}
 */
export function issuedIn(entries, room) {
  const readable = entries.filter(({ version }) => version === 1).sort(byStamp);
  const strikes = strikesIn(readable);
  const standing = readable.filter(({ id }) => !strikes.has(id));
  const rows = standing.filter(({ kind, body }) => kind === "issue" && body.room === room).flatMap(rowsOf);
  const pieces = new Map(rows.toReversed().map((row) => [row.piece, row]));
  const letters = [...pieces.values()].map(({ letter }) => letter);
  const said = saidOf(standing);
  return [...pieces.values()].toReversed().map((row) => ({
    id: row.piece,
    letter: row.letter,
    doubted: letters.indexOf(row.letter) !== letters.lastIndexOf(row.letter),
    part_name: row.name,
    shown: row.shown,
    state: said.get(row.piece)?.at(-1)?.body.state ?? "to cut",
    entries: (said.get(row.piece) ?? []).map(({ id }) => id),
    remember: { cut_to: row.cut, left: null, right: null },
  }));
}

/** @param {Entry} entry @returns {any[]} */
function rowsOf({ body }) {
  return Array.isArray(body.pieces) ? body.pieces : [];
}

/** What stands of each piece and was not said anew. @param {Entry[]} standing @returns {Map<string, Entry[]>} */
function saidOf(standing) {
  const states = standing.filter(({ kind }) => kind === "state");
  const past = new Set(states.flatMap(({ supersedes }) => supersedes));
  return Map.groupBy(
    states.filter(({ id }) => !past.has(id)),
    ({ body }) => body.piece,
  );
}
