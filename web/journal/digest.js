// @ts-check
// What stands for an entry where two journals are compared: the digest of its one spelling, which the laptop writes too
// (`store/canonical.py`). Sums of digests, one laid over the other bit by bit, stand for many.

/** @typedef {import("./store.js").Entry} Entry */

const DIGITS = 32;
/** The digits by which journals are compared in parts. */
export const PLACES = 2;
export const NOTHING = "0".repeat(DIGITS);
/** Every byte as two digits: a digest has sixteen, and a journal ten thousand digests. */
const HEX = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, "0"));
const encoder = new TextEncoder();
const BEYOND_ORDER = /[\ud800-\uffff]/;
/** From here down Python writes an exponent, of two digits at least. */
const SMALL = 1e-4;

/**
 * The one spelling of JSON: keys in the order of their code points, no spaces, numbers as Python writes them.
 * @param {any} value
 * @returns {string}
 */
export function canonicalText(value) {
  if (typeof value === "number") return numberText(value);
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? "null";
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(",")}]`;
  // JSON leaves out what is undefined, the browser's own storage keeps it.
  const keys = Object.keys(value).filter((key) => value[key] !== undefined);
  keys.sort(keys.some((key) => BEYOND_ORDER.test(key)) ? byCodePoint : undefined);
  return `{${keys.map((key) => `${JSON.stringify(key)}:${canonicalText(value[key])}`).join(",")}}`;
}

/** @param {number} number */
function numberText(number) {
  if (number === 0 || Math.abs(number) >= SMALL) return JSON.stringify(number);
  return number.toExponential().replace(/e-(\d)$/, "e-0$1");
}

/** JavaScript's own order is by halves of characters: the two halves of one sort before others. @param {string} one @param {string} other */
function byCodePoint(one, other) {
  const [those, others] = [Array.from(one), Array.from(other)];
  const at = those.findIndex((letter, place) => letter !== others[place]);
  if (at === -1) return those.length - others.length;
  return at < others.length ? /** @type {number} */ (those[at].codePointAt(0)) - /** @type {number} */ (others[at].codePointAt(0)) : 1;
}

/** Whether two entries say the same, by whatever number. @param {Entry} one @param {Entry} other */
export function saysTheSame(one, other) {
  const plain = (/** @type {Entry} */ entry) => canonicalText({ ...entry, device: undefined, seq: undefined });
  return plain(one) === plain(other);
}

/** @param {Entry} entry @returns {Promise<string>} */
async function digestOf(entry) {
  const digest = await crypto.subtle.digest("SHA-256", encoder.encode(canonicalText(entry)));
  let text = "";
  for (const byte of new Uint8Array(digest, 0, DIGITS / 2)) text += HEX[byte];
  return text;
}

/**
 * The digests of entries. Before a transaction is begun: one that waits for anything else is over.
 * @param {Entry[]} entries
 * @returns {Promise<Map<Entry, string>>}
 */
export async function digestsOf(entries) {
  return new Map(await Promise.all(entries.map(async (entry) => /** @type {const} */ ([entry, await digestOf(entry)]))));
}

/** Puts a digest into a sum, or takes it out again: the two are one act. @param {string} sum @param {string} digest */
export function lay(sum, digest) {
  return (BigInt(`0x${sum}`) ^ BigInt(`0x${digest}`)).toString(16).padStart(DIGITS, "0");
}

/**
 * The sums of digests by their first digits.
 * @typedef {Record<string, string>} Sums
 */

/** @param {Sums} sums @param {string} digest */
export function layInto(sums, digest) {
  const place = digest.slice(0, PLACES);
  const sum = lay(sums[place] ?? NOTHING, digest);
  if (sum === NOTHING) delete sums[place];
  else sums[place] = sum;
}

/** @param {Sums} sums @returns {string} */
export function totalOf(sums) {
  return Object.values(sums).reduce(lay, NOTHING);
}
