// @ts-check
// What is drawn and pinned on a photo, from the journal alone: lines and places. What a pin's figure is, the engine says.
import { headsOf, readable, strikesIn } from "../notebook/fold.js";

/** @typedef {import("../notebook/fold.js").Entry} Entry */
/** Places are in ten-thousandths of the photo's width and height. @typedef {[number, number]} Point */
/** @typedef {{entry: string, points: Point[]}} Stroke */
/** @typedef {{id: string, of: string, what: string, x: number, y: number, struck: boolean, strikes: string[]}} Pin */

/**
 * @param {Entry[]} entries @param {string} photo
 * @returns {{strokes: Stroke[], takenBack: string | null, pins: Pin[]}} `takenBack`: the strike of the line that was taken
 *   back last, where one is
 */
export function markedOn(entries, photo) {
  const read = readable(entries);
  const strikes = strikesIn(read);
  const here = read.filter(({ body }) => body.attachment === photo);
  const drawn = here.filter(({ kind }) => kind === "stroke");
  const backs = new Set(drawn.map(({ id }) => strikes.get(id)));
  const said = Map.groupBy(
    here.filter(({ kind }) => kind === "pin"),
    ({ body }) => body.pin,
  );
  return {
    strokes: drawn.flatMap(({ id, body }) => (strikes.has(id) ? [] : [{ entry: id, points: body.points }])),
    takenBack: read.findLast(({ id }) => backs.has(id))?.id ?? null,
    pins: [...said].map(([id, statements]) => pinOf(id, statements, strikes)),
  };
}

/** @param {string} id @param {Entry[]} statements @param {Map<string, string>} strikes @returns {Pin} */
function pinOf(id, statements, strikes) {
  const heads = headsOf(statements, strikes);
  const { of, what, x, y } = /** @type {Entry} */ (heads.at(-1) ?? statements.at(-1)).body;
  const by = statements.flatMap((entry) => strikes.get(entry.id) ?? []);
  return { id, of, what, x, y, struck: !heads.length, strikes: by };
}
