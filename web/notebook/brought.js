// @ts-check
// What is brought by file: chosen, dropped on the page or pasted into it, on any screen, or handed over by another program.
// All of it goes the one way into the journal, and what came of it is shown under House.
import { useEffect, useState } from "../controls/ui.js";
import { go } from "../controls/route.js";
import { receive } from "../device/handed.js";
import { say, sayTold } from "../words/words.js";
import { INVENTED } from "./write.js";

const FILES_AT_MOST = 20;

/**
 * What came of one file: what the journal found in it, or why it was not read.
 * @typedef {{ name: string, file: Blob, found?: any, wrong?: string }} Brought
 */

/**
 * `beside`: also one of another notebook, its houses beside those here; `handed`: shared with the page, by whomever.
 * @typedef {{ beside?: boolean, handed?: boolean }} How
 */

/**
 * @param {any} journal
 * @returns {{ brought: Brought[] | null, bring: (files: Blob[], how?: How) => Promise<void> }} null while nothing was
 *   brought; none while it is being read
 */
export function useBrought(journal) {
  const [brought, setBrought] = useState(/** @type {Brought[] | null} */ (null));
  const bring = async (/** @type {Blob[]} */ files, /** @type {How} */ how = {}) => {
    setBrought([]);
    go("house");
    const outcomes = [];
    for (const file of files.slice(0, FILES_AT_MOST)) outcomes.push(await bringOne(journal, file, how));
    setBrought(outcomes);
  };
  const lose = () => {
    setBrought([{ name: say("handed-what"), file: new Blob(), wrong: say("handed-lost") }]);
    go("house");
  };
  useEffect(() => listen(journal, bring), [journal]);
  useEffect(() => receive(bring, lose), [journal]);
  return { brought, bring };
}

/** @param {any} journal @param {Blob} file @param {How} how @returns {Promise<Brought>} */
async function bringOne(journal, file, how) {
  const name = file instanceof File ? file.name : say("pasted");
  try {
    return { name, file, found: await journal.importFile(file, { ...how, apart: INVENTED }) };
  } catch (failure) {
    return { name, file, wrong: sayTold(failure) };
  }
}

/** @param {any} journal @param {(files: Blob[]) => Promise<void>} bring @returns {() => void} the way to stop listening */
function listen(journal, bring) {
  const over = (/** @type {DragEvent} */ event) => {
    // Without this the browser would leave the page and open the file in its place.
    if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
  };
  const take = (/** @type {Event} */ event, /** @type {DataTransfer | null} */ data) => {
    const files = data && carried(data, journal);
    if (!files?.length) return;
    event.preventDefault();
    bring(files);
  };
  const drop = (/** @type {DragEvent} */ event) => take(event, event.dataTransfer);
  const paste = (/** @type {ClipboardEvent} */ event) => take(event, event.clipboardData);
  document.addEventListener("dragover", over);
  document.addEventListener("drop", drop);
  document.addEventListener("paste", paste);
  return () => {
    document.removeEventListener("dragover", over);
    document.removeEventListener("drop", drop);
    document.removeEventListener("paste", paste);
  };
}

/**
 * The files that are carried, or the text where that is a journal; any other text is what somebody typed elsewhere, and
 * belongs into the field that it was meant for.
 * @param {DataTransfer} data @param {any} journal @returns {Blob[]}
 */
function carried(data, journal) {
  if (data.files.length) return [...data.files];
  const text = data.getData("text/plain");
  return journal.isJournal(text) ? [new Blob([text])] : [];
}
