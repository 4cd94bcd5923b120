// @ts-check
// Where a finger, a pen or a mouse is on a photo, and the line that it draws. A line is kept short of what an entry may
// hold: of one with too many points every other is left out.

/** @typedef {import("./marked.js").Point} Point */

/** So many parts a side of a photo has. */
export const WHOLE = 10_000;
const POINTS_AT_MOST = 200;
/** Nearer than this the next point says nothing new: three thousandths of the photo. */
const STEP = 30;

/** @param {{clientX: number, clientY: number}} event @param {Element} sheet @returns {Point} */
export function placeOf({ clientX, clientY }, sheet) {
  const { left, top, width, height } = sheet.getBoundingClientRect();
  return [within(((clientX - left) / width) * WHOLE), within(((clientY - top) / height) * WHOLE)];
}

/** @param {number} part */
export function within(part) {
  return Math.min(WHOLE, Math.max(0, Math.round(part))) || 0;
}

/** The line with one more point, where that is far enough from the last. @param {Point[]} line @param {Point} next @returns {Point[]} */
export function drawnTo(line, next) {
  const [x, y] = line[line.length - 1];
  if (Math.hypot(next[0] - x, next[1] - y) < STEP) return line;
  const longer = [...line, next];
  return longer.length > POINTS_AT_MOST ? longer.filter((_, at) => at % 2 === 0 || at === longer.length - 1) : longer;
}
