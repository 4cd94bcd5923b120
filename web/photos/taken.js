// @ts-check
// Photos, from the journal alone: those that stand and those that are struck, oldest first, and in words what each is of.
import { headsOf, readable, strikesIn } from "../notebook/fold.js";
import { OPENINGS } from "../notebook/survey.js";
import { say } from "../words/words.js";

/** @typedef {import("../notebook/fold.js").Entry} Entry */
/**
 * `strikes`: to strike for a struck one to stand again; `stamp`: of the entry that first named it.
 * @typedef {{id: string, of: string, blob: string, size: number, type: string, name: string, stamp: string, struck: boolean, strikes: string[]}} Photo
 */

/** Every attachment that is a picture. @param {Entry[]} entries @returns {Photo[]} */
export function photosIn(entries) {
  const read = readable(entries);
  const strikes = strikesIn(read);
  const said = Map.groupBy(
    read.filter(({ kind }) => kind === "attachment"),
    ({ body }) => body.attachment,
  );
  return [...said]
    .map(([id, statements]) => {
      const heads = headsOf(statements, strikes);
      const { of, blob, size, type, name } = /** @type {Entry} */ (heads.at(-1) ?? statements.at(-1)).body;
      const by = statements.flatMap((entry) => strikes.get(entry.id) ?? []);
      return { id, of, blob, size, type, name, stamp: statements[0].stamp, struck: !heads.length, strikes: by };
    })
    .filter(({ type }) => type.startsWith("image/"));
}

/**
 * What a photo is of. A wall is called by the number that it has now.
 * @param {string} of @param {{rooms: Map<string, import("../notebook/outline.js").Room>}} outline @param {Entry[]} entries
 */
export function subjectOf(of, { rooms }, entries) {
  for (const wall of [...rooms.values()].flatMap(({ walls }) => walls)) {
    if (wall.id === of) return say("photo-of-wall", { wall: wall.number });
    const thing = [...wall.openings, ...wall.obstacles].find(({ id }) => id === of);
    const kind = OPENINGS[/** @type {keyof OPENINGS} */ (thing?.kind)] ?? thing?.kind;
    if (thing) return say("photo-of-thing", { thing: kind, wall: wall.number });
  }
  const issued = readable(entries).flatMap(({ kind, body }) => (kind === "issue" ? body.pieces : []));
  const piece = issued.find((row) => row?.piece === of);
  return piece ? say("photo-of-piece", { letter: piece.letter }) : say("photo-of-gone");
}
