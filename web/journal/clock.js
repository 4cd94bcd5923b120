// @ts-check
// The hybrid clock: stamps that sort as text and go on from the last, whatever a sound clock does; `clock.py` keeps the
// same rules, and a test asks both the same.
//
// A clock is known to be wrong when it says a time before there was any notebook, or a century after: then the stamps seen
// are the better clock, and are followed. Else a stamp more than a day ahead comes from a clock that ran away: it stays with its entry
// and moves nobody, not even the device that gave it, or all that is written there would sort after it for ever.

const DAY = 24 * 60 * 60 * 1000;
/** 2026: no notebook is older. */
export const FIRST = 1_767_225_600_000;
/** 2126: what a device without a clock believes at most. */
const HORIZON = FIRST + 36_525 * DAY;
const COUNT_AT_MOST = 0xffff;
const STAMP = /^[0-9a-f]{12}-[0-9a-f]{4}-[0-9a-f]{16}$/;

/** When a stamp says that it was, in ms. @param {string} stamp */
export const millisecondsOf = (stamp) => Number.parseInt(stamp.slice(0, 12), 16);

/** @param {number} ms @param {number} count @param {string} device */
const write = (ms, count, device) =>
  `${ms.toString(16).padStart(12, "0")}-${count.toString(16).padStart(4, "0")}-${device}`;

/** @param {number} now */
const isWrong = (now) => !(now >= FIRST && now <= HORIZON);

/** Whether a stamp is one, and of a time to go by. @param {string | undefined} stamp @param {number} now */
function isSound(stamp, now) {
  return stamp !== undefined && STAMP.test(stamp) && millisecondsOf(stamp) <= (isWrong(now) ? HORIZON : now + DAY);
}

/**
 * The stamp after `last`: the device's time where that has moved on, else one more on the counter.
 * @param {string | undefined} last
 * @param {number} now
 * @param {string} device
 * @returns {string}
 */
export function nextStamp(last, now, device) {
  const time = isWrong(now) ? FIRST : Math.trunc(now);
  if (!isSound(last, now)) return write(time, 0, device);
  const was = millisecondsOf(/** @type {string} */ (last));
  if (time > was) return write(time, 0, device);
  const count = Number.parseInt((last ?? "").slice(13, 17), 16) + 1;
  return count > COUNT_AT_MOST ? write(was + 1, 0, device) : write(was, count, device);
}

/**
 * The later of our last stamp and one that arrived, where that is of a time to go by.
 * @param {string | undefined} last
 * @param {string} seen
 * @param {number} now
 * @returns {string | undefined}
 */
export function laterStamp(last, seen, now) {
  if (!isSound(seen, now)) return last;
  return !isSound(last, now) || seen > /** @type {string} */ (last) ? seen : last;
}
