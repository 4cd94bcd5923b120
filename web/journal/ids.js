// @ts-check
// Names for new things, from the platform's secure randomness: nothing made here can be guessed or made twice.

/** @param {Uint8Array} some @returns {string} */
const hex = (some) => Array.from(some, (byte) => byte.toString(16).padStart(2, "0")).join("");

/** The last millisecond that 48 bits can say. */
const LATEST = 2 ** 48 - 1;

/**
 * A UUIDv7 (RFC 9562, section 5.7): 48 bits of milliseconds, then version, variant and 74 random bits.
 * @param {number} [now]
 * @returns {string}
 */
export function newId(now = Date.now()) {
  const random = hex(crypto.getRandomValues(new Uint8Array(10)));
  // A clock before 1970 would put a minus into the id, and one beyond the year 10889 a thirteenth digit.
  const time = Math.min(Math.max(Math.trunc(now), 0), LATEST).toString(16).padStart(12, "0");
  const variant = "89ab"[crypto.getRandomValues(new Uint8Array(1))[0] % 4];
  const parts = [time.slice(0, 8), time.slice(8), `7${random.slice(0, 3)}`, `${variant}${random.slice(3, 6)}`];
  return [...parts, random.slice(6, 18)].join("-");
}

/**
 * Sixteen hex digits for this browser on this device.
 * @returns {string}
 */
export function newDevice() {
  return hex(crypto.getRandomValues(new Uint8Array(8)));
}
