// @ts-check
// What another program hands to the page: shared with it, which the service worker has kept (sw.js), or opened with it.
import { say } from "../words/words.js";

/** As sw.js calls it. */
const HANDED = "handed";
/** As the service worker, or the laptop, says that nothing of a share was kept. */
const LOST = "?unshared";

/** @typedef {(files: Blob[], how?: { handed: boolean }) => Promise<void>} Bring */

/**
 * Hears what is opened with the page from now on, and takes what was shared with it before.
 * @param {Bring} bring @param {() => void} lose  told where what was shared was not kept
 */
export function receive(bring, lose) {
  const opened = /** @type {any} */ (globalThis).launchQueue;
  opened?.setConsumer(async (/** @type {{ files?: any[] }} */ { files = [] }) => {
    if (files.length) await bring(await Promise.all(files.map((one) => one.getFile())));
  });
  if (location.search === LOST) {
    history.replaceState(history.state, "", location.pathname + location.hash); // not told once more when loaded again
    lose();
  } else take(bring).catch(console.warn); // a browser that keeps no page has nothing shared with it either
}

/** Dropped only once it is in the journal: a page may be ended before. @param {Bring} bring */
async function take(bring) {
  if (!(await globalThis.caches?.has(HANDED))) return;
  // Two windows that open at once would else both bring it, and the second say that it was here already.
  await navigator.locks.request(HANDED, async () => {
    const shelf = await caches.open(HANDED);
    const kept = await shelf.keys();
    const files = await Promise.all(kept.map((one) => fileOf(one.url, shelf)));
    if (files.length) await bring(files, { handed: true });
    for (const one of kept) await shelf.delete(one);
  });
}

/** @param {string} address @param {Cache} shelf */
async function fileOf(address, shelf) {
  const name = decodeURIComponent(new URL(address).pathname.split("/").at(-1) ?? "");
  const bytes = await (await shelf.match(address))?.blob();
  return new File(bytes ? [bytes] : [], name || say("handed-text"));
}
