// @ts-check
// A Python's memory as it lies on the phone: without its empty pages, a third of it, which would be read, checked and
// copied at every start for nothing.
//
// First the runtime's own heading, then which pages follow, then those.
import { BASIS, step } from "../hash.js";

/** Bytes that the heading fills, whatever it says: a runtime is made ready for it before it has been read. */
export const HEAD = 4096;
/** Bytes that are left out together or not at all. */
const PAGE = 65536;
/** Where in the runtime's heading, in words, it says how far the memory behind it begins. */
const OFFSET = 1;

/** @typedef {[from: number, to: number]} Run  pages that follow one another */

/** @param {Uint8Array} memory @param {number} at */
function isEmpty(memory, at) {
  const words = new Uint32Array(memory.buffer, memory.byteOffset + at, Math.min(PAGE, memory.length - at) >> 2);
  return words.every((word) => word === 0);
}

/** @param {Uint8Array} memory @returns {Run[]} */
function filledRuns(memory) {
  /** @type {Run[]} */
  const runs = [];
  for (let page = 0; page * PAGE < memory.length; page += 1) {
    const last = runs.at(-1);
    if (isEmpty(memory, page * PAGE)) continue;
    if (last?.[1] === page) last[1] = page + 1;
    else runs.push([page, page + 1]);
  }
  return runs;
}

/**
 * @param {Uint8Array} snapshot as the runtime gives it
 * @returns {Uint8Array<ArrayBuffer>}
 */
export function packMemory(snapshot) {
  const begin = new Uint32Array(snapshot.buffer, snapshot.byteOffset, HEAD >> 2)[OFFSET];
  const memory = snapshot.subarray(begin);
  if (begin > HEAD || memory.length % PAGE) throw new Error(`a memory of another form: ${begin}, ${memory.length}`);
  const runs = filledRuns(memory);
  const table = new Uint32Array([memory.length, runs.length, ...runs.flat()]);
  const pages = runs.reduce((sum, [from, to]) => sum + to - from, 0);
  const packed = new Uint8Array(HEAD + table.byteLength + pages * PAGE);
  packed.set(snapshot.subarray(0, begin));
  // Behind the heading nothing is left for the runtime to take back: `unpackMemory` does that.
  new Uint32Array(packed.buffer)[OFFSET] = HEAD;
  packed.set(new Uint8Array(table.buffer), HEAD);
  let at = HEAD + table.byteLength;
  for (const [from, to] of runs) {
    packed.set(memory.subarray(from * PAGE, to * PAGE), at);
    at += (to - from) * PAGE;
  }
  return packed;
}

/**
 * What whole words of it are told by: any single one that changed, and nearly any more. A digest that no one could forge
 * would first copy all of it, which takes longer than to read it; whoever can write here can write its digest too.
 * @param {Uint8Array} packed of whole words, as `packMemory` gives it
 */
export function digestOf(packed) {
  const words = new Uint32Array(packed.buffer, packed.byteOffset, packed.length >> 2);
  let hash = BASIS ^ packed.length;
  for (let at = 0; at < words.length; at += 1) hash = step(hash, words[at]);
  return String(hash);
}

/**
 * Throws where the two do not fit one another.
 * @param {Uint8Array} packed
 * @param {Uint8Array} head of HEAD bytes, for the heading
 * @param {Uint8Array} heap of the runtime, which has its own beginnings in it
 */
export function unpackMemory(packed, head, heap) {
  const [length, count] = new Uint32Array(packed.buffer, packed.byteOffset + HEAD, 2);
  if (length !== heap.length) throw new Error(`a memory of ${length} bytes for a runtime of ${heap.length}`);
  const runs = new Uint32Array(packed.buffer, packed.byteOffset + HEAD + 8, 2 * count);
  let at = HEAD + 8 + runs.byteLength;
  let done = 0;
  for (let n = 0; n < runs.length; n += 2) {
    const [from, to] = [runs[n] * PAGE, runs[n + 1] * PAGE];
    heap.fill(0, done, from);
    heap.set(packed.subarray(at, at + to - from), from);
    at += to - from;
    done = to;
  }
  if (at !== packed.length) throw new Error(`a memory of ${packed.length} bytes, of which ${at} are known`);
  heap.fill(0, done);
  head.set(packed.subarray(0, HEAD));
}
