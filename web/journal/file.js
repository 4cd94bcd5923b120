// @ts-check
// The journal as a file: one entry to a line, so that a line damaged on the way costs that line and no other.

/** @typedef {import("./store.js").Entry} Entry */

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

/**
 * Gives the entries to the person as a download.
 * @param {Entry[]} entries
 * @returns {string} the name of the file
 */
export function writeFile(entries) {
  const lines = entries.map((entry) => `${JSON.stringify(entry)}\n`);
  const link = document.createElement("a");
  link.download = `scantling-${new Date().toISOString().slice(0, 10)}.ndjson`;
  link.href = URL.createObjectURL(new Blob(lines, { type: "application/x-ndjson" }));
  link.click();
  // Not at once: the browser reads it after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return link.download;
}

/**
 * The entries of a file. Refuses the file whole when a line is not an entry: half an import would look like all of it.
 * @param {Blob} file
 * @returns {Promise<Entry[]>}
 */
export async function readFile(file) {
  const lines = (await file.text()).split("\n");
  const entries = [];
  for (const [index, line] of lines.entries()) {
    if (!line.trim()) continue;
    const entry = parse(line);
    if (!isEntry(entry)) {
      throw new Error(`Line ${index + 1} of this file is not an entry of a journal. Nothing was added.`);
    }
    entries.push(entry);
  }
  return entries;
}

/** @param {string} line @returns {unknown} */
function parse(line) {
  try {
    return JSON.parse(line);
  } catch {
    return null;
  }
}
