// @ts-check
// A 32-bit FNV-1a hash, step by step: enough to notice that something has changed, and nothing against somebody who
// wants it not to be noticed.

/** Where it begins. */
export const BASIS = 0x811c9dc5;
/** What each step multiplies with. Both are the numbers of its authors, from memory. */
const PRIME = 0x01000193;

/** The hash after one more part: a byte, a letter or a whole word. @param {number} hash @param {number} part */
export const step = (hash, part) => Math.imul(hash ^ part, PRIME);
