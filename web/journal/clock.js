// @ts-check
// The hybrid clock: stamps that sort as text and never run backwards, whatever the device's clock does.

const DAY = 24 * 60 * 60 * 1000;
const COUNT_AT_MOST = 0xffff;

/** @param {string} stamp */
const millisecondsOf = (stamp) => Number.parseInt(stamp.slice(0, 12), 16);

/** @param {number} ms @param {number} count @param {string} device */
const write = (ms, count, device) =>
  `${ms.toString(16).padStart(12, "0")}-${count.toString(16).padStart(4, "0")}-${device}`;

/**
 * The stamp after `last`: the device's time where that has moved on, else one more on the counter.
 * @param {string | undefined} last
 * @param {number} now
 * @param {string} device
 * @returns {string}
 */
export function nextStamp(last, now, device) {
  const was = last ? millisecondsOf(last) : 0;
  if (now > was) return write(now, 0, device);
  const count = Number.parseInt((last ?? "").slice(13, 17), 16) + 1;
  return count > COUNT_AT_MOST ? write(was + 1, 0, device) : write(was, count, device);
}

/**
 * The later of our last stamp and one that arrived. A stamp more than a day ahead is kept with its entry but does not
 * move our clock: one device with a wrong year must not drag every other after it.
 * @param {string | undefined} last
 * @param {string} seen
 * @param {number} now
 * @returns {string | undefined}
 */
export function laterStamp(last, seen, now) {
  const ahead = millisecondsOf(seen) > now + DAY;
  return !ahead && seen > (last ?? "") ? seen : last;
}
