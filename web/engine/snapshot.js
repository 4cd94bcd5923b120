// @ts-check
// Keeps the memory of a Python that has opened the desk: the next start takes it back, and imports nothing.
//
// The runtime offers this without promising it, so it is guarded: the memory must be of this build, this runtime, this
// compiled engine and this browser, and whole; one that throws is given up for this build, and so is one that twice
// took the worker with it, which a mark that is taken away only afterwards tells. Whoever cannot restore starts cold.

import { digestOf } from "./memory.js";
import { Damaged, Shelf } from "./shelf.js";

/** Starts that may end while they restore: once is a page that was left, twice is the memory's own fault. */
const MOST_UNFINISHED = 2;
const GIVEN_UP = String(MOST_UNFINISHED);

/** @param {string} build */
const shelf = (build) => new Shelf("snapshot", build, digestOf);

/** Holds how many starts did not end, by build. */
const MARKS = "unfinished-starts";

/** @param {string} runtime */
const address = (runtime) => `/snapshot/${runtime}`;

/** @param {string} build */
const markOf = (build) => `/unfinished/${build}`;

/** @typedef {Pick<import("./shelf.js").Kept, "read" | "sound">} Memory */
/** @typedef {{build: string, runtime: string, engine: string}} Of `engine`: the digest of the compiled engine */

/**
 * What a restored memory gives, or null; `wanted` when one should be made at this start. `restore` is begun before the
 * memory has been read, and must use none of it that is not sound.
 * @template Started
 * @param {Of} of
 * @param {(memory: Memory) => Promise<Started>} restore
 * @returns {Promise<{started: Started | null, wanted: boolean}>}
 */
export async function restoreKept(of, restore) {
  try {
    // One at a time: a mark found here is never of a worker that is still at it.
    return await navigator.locks.request("snapshot", () => restoreMarked(of, restore));
  } catch (error) {
    console.warn("no memory to restore; starting cold", error);
    return { started: null, wanted: false };
  }
}

/**
 * @template Started
 * @param {Of} of
 * @param {(memory: Memory) => Promise<Started>} restore
 */
async function restoreMarked({ build, runtime, engine }, restore) {
  const marks = await caches.open(MARKS);
  const mark = markOf(build);
  const [marked, kept] = await Promise.all([marks.match(mark), shelf(build).find(address(runtime))]);
  const unfinished = Number((await marked?.text()) ?? 0);
  if (unfinished >= MOST_UNFINISHED) return { started: null, wanted: false };
  const known = kept?.headers.get("x-engine") === engine && kept.headers.get("x-agent") === navigator.userAgent;
  if (!kept || !known) return { started: null, wanted: true };
  // No byte of it is used before the mark is written.
  const marking = marks.put(mark, new Response(String(unfinished + 1)));
  const sound = () => Promise.all([kept.sound(), marking]).then(([data]) => data);
  try {
    const started = await restore({ read: kept.read, sound });
    await marks.delete(mark);
    return { started, wanted: false };
  } catch (error) {
    if (error instanceof Damaged) {
      await marking;
      await marks.delete(mark);
      return { started: null, wanted: true };
    }
    await marks.put(mark, new Response(GIVEN_UP));
    await shelf(build).drop();
    throw error;
  }
}

/**
 * @param {Of} of
 * @param {Uint8Array<ArrayBuffer>} data
 */
export async function keepSnapshot({ build, runtime, engine }, data) {
  await caches.delete(MARKS); // of other builds: one of this build that was given up is not made again
  await shelf(build).keep(address(runtime), data, { "x-engine": engine, "x-agent": navigator.userAgent });
}
