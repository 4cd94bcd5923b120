// @ts-check
// The journal as a file: one entry to a line, so that a line damaged on the way costs that line and no other. The laptop
// writes and reads the same; DEVELOPERS.md describes it.

import { isPiece } from "./disk/blobs.js";

/** @typedef {import("./store.js").Entry} Entry */
/** @typedef {import("./disk/blobs.js").Piece} Piece */

/**
 * What a file holds: its entries; its other lines as they came, each with its number; how many entries and blobs its
 * heading says that there are; and the houses that either names.
 * @typedef {{ entries: Entry[], leftOut: { number: number, text: string }[], said: number, saidBlobs: number,
 *   houses: Set<string> }} Found
 */

const FORMAT = "scantling journal";
const LINE_END = 0x0a;
/** By then a file of this format has shown what it is, also where its first lines are damaged. */
const LINES_TO_KNOW_BY = 5;
const CHARACTERS_TO_KNOW_BY = 100_000;
/** In bytes: some sixty times a large notebook; a film that was dropped here by mistake would fill the memory. */
const LARGEST = 500_000_000;

/** What every entry has, and of which type; meaning is the engine's to judge. */
const SHAPE = {
  id: "string",
  device: "string",
  seq: "number",
  stamp: "string",
  version: "number",
  kind: "string",
  body: "object",
};

/** @param {unknown} what @returns {what is Entry} */
function isEntry(what) {
  if (typeof what !== "object" || what === null) return false;
  const given = /** @type {Record<string, unknown>} */ (what);
  const shaped = Object.entries(SHAPE).every(([name, type]) => typeof given[name] === type && given[name] !== null);
  return shaped && Array.isArray(given.supersedes);
}

/** @param {unknown} what @returns {what is { format: string, entries: unknown, blobs: unknown, houses: unknown }} */
const isHeading = (what) => /** @type {any} */ (what)?.format === FORMAT;

/** Whether a text is of this format, by its first lines. @param {string} text */
export function isJournal(text) {
  const lines = text.slice(0, CHARACTERS_TO_KNOW_BY).split("\n").filter((line) => line.trim());
  return lines.slice(0, LINES_TO_KNOW_BY).map(parse).some((what) => isHeading(what) || isEntry(what));
}

/** The houses that entries name, struck or not. @param {Iterable<Entry>} entries @returns {Set<string>} */
export function housesOf(entries) {
  return new Set([...entries].filter(({ kind }) => kind === "house").map(({ body }) => /** @type {any} */ (body).house));
}

/**
 * Whether a file is of another notebook: merged, two families' houses could be told apart again by hand alone.
 * @param {Found} found @param {Set<string>} here
 */
export function isOfAnother({ houses }, here) {
  return houses.size > 0 && here.size > 0 && ![...houses].some((house) => here.has(house));
}

/**
 * The entries, and after them the pieces of attachments, each a part of its own that the browser may put on its disk.
 * @param {Entry[]} entries @param {AsyncIterable<Piece>[]} blobs @param {Set<string>} houses all of the notebook
 */
async function linesOf(entries, blobs, houses) {
  const more = { ...(blobs.length && { blobs: blobs.length }), ...(houses.size && { houses: [...houses].sort() }) };
  const heading = { format: FORMAT, version: 1, entries: entries.length, ...more };
  /** @type {BlobPart[]} */
  const lines = [heading, ...entries].map((one) => `${JSON.stringify(one)}\n`);
  for (const blob of blobs) for await (const piece of blob) lines.push(new Blob([`${JSON.stringify(piece)}\n`]));
  return lines;
}

/** @param {string} what */
const nameOf = (what) => `scantling-${what}${new Date().toISOString().slice(0, 10)}`;

/**
 * Gives the entries to the person as a download. No browser says whether it was saved in the end.
 * @param {Entry[]} entries @param {AsyncIterable<Piece>[]} blobs @param {Set<string>} houses
 * @param {string} [what] a word for the name of the file, with a dash after it
 * @returns {Promise<string>} the name of the file
 */
export async function writeFile(entries, blobs, houses, what = "") {
  return download(`${nameOf(what)}.ndjson`, await linesOf(entries, blobs, houses));
}

/**
 * Hands the entries to another app, as text: browsers share no file of a kind that they do not know.
 * @param {Entry[]} entries @param {AsyncIterable<Piece>[]} blobs @param {Set<string>} houses @param {string} [what]
 */
export async function shareFile(entries, blobs, houses, what = "") {
  const file = new File(await linesOf(entries, blobs, houses), `${nameOf(what)}.txt`, { type: "text/plain" });
  await navigator.share({ files: [file] });
  return file.name;
}

/** Whether this browser hands files to other apps. */
export function canShare() {
  const file = new File([""], "scantling.txt", { type: "text/plain" });
  return Boolean(navigator.canShare?.({ files: [file] }));
}

/**
 * Gives the person the lines that could not be read: what is damaged today may be mended by hand tomorrow.
 * @param {Found["leftOut"]} leftOut
 * @returns {string} the name of the file
 */
export function writeLeftOut(leftOut) {
  return download("scantling-left-out.ndjson", leftOut.map(({ text }) => `${text}\n`));
}

/** @param {string} name @param {BlobPart[]} lines */
function download(name, lines) {
  const link = document.createElement("a");
  link.download = name;
  link.href = URL.createObjectURL(new Blob(lines, { type: "application/x-ndjson" }));
  link.click();
  // Not at once: the browser reads it after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return name;
}

/**
 * @param {Blob} file
 * @param {(piece: Piece, found: Found) => Promise<boolean>} takePiece  takes a piece of an attachment; whether it could
 * @returns {Promise<Found>}
 */
export async function readFile(file, takePiece) {
  if (file.size > LARGEST) throw new Error("file-too-large");
  /** @type {Found} */
  const found = { entries: [], leftOut: [], said: 0, saidBlobs: 0, houses: new Set() };
  for (const [index, { text, whole }] of textLines(new Uint8Array(await file.arrayBuffer())).entries()) {
    if (!text.trim()) continue;
    const what = whole ? parse(text) : null;
    if (isEntry(what)) {
      found.entries.push(what);
      for (const house of housesOf([what])) found.houses.add(house);
    } else if (isHeading(what)) {
      found.said += Number(what.entries) || 0;
      found.saidBlobs += Number(what.blobs) || 0;
      if (Array.isArray(what.houses)) for (const house of what.houses) found.houses.add(house);
    } else if (isPiece(what) && (await takePiece(what, found))) continue;
    else found.leftOut.push({ number: index + 1, text });
  }
  return found;
}

/**
 * The lines of a file in UTF-8 or UTF-16. One with a byte that is no text is not whole: the sign that a browser puts in
 * its place would else pass for what was written.
 * @param {Uint8Array<ArrayBuffer>} bytes
 */
function textLines(bytes) {
  const coding = codingOf(bytes);
  if (coding !== "utf-8") {
    const lines = new TextDecoder(coding).decode(bytes).split("\n");
    return lines.map((text) => ({ text, whole: !text.includes("\ufffd") }));
  }
  const lines = [];
  for (let start = 0; start <= bytes.length; ) {
    const at = bytes.indexOf(LINE_END, start);
    const end = at < 0 ? bytes.length : at;
    lines.push(textLine(bytes.subarray(start, end)));
    start = end + 1;
  }
  return lines;
}

/** @param {Uint8Array<ArrayBuffer>} bytes */
function textLine(bytes) {
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes), whole: true };
  } catch {
    return { text: new TextDecoder().decode(bytes), whole: false };
  }
}

/** By the byte-order mark, or by where the zeros are. @param {Uint8Array} bytes */
function codingOf([first, second, third, fourth]) {
  if ((first === 0xff && second === 0xfe) || (first && second === 0 && third && fourth === 0)) return "utf-16le";
  if ((first === 0xfe && second === 0xff) || (first === 0 && second && third === 0 && fourth)) return "utf-16be";
  return "utf-8";
}

/** @param {string} line @returns {unknown} */
function parse(line) {
  try {
    return JSON.parse(line);
  } catch {
    return null;
  }
}
