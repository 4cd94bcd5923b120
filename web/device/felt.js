// @ts-check
// A save that can be felt or heard, for who looks at the tape and not at the screen. Off until it is wanted, and a matter
// of this device alone.
import { recall, remember } from "../controls/scrap.js";

const WANTED = "scantling when saved";
/** In ms. */
const SHAKE = 40;
/** In Hz and seconds, and how loud of 1: to be heard in a room where work goes on, and no alarm. */
const SOUND = { pitch: 880, long: 0.12, loud: 0.3 };

/** What this device can do, by how it is chosen; how each is made ready by a press, and done. */
const WAYS = {
  none: { can: () => true, ready: () => {}, make: () => {} },
  vibration: { can: () => "vibrate" in navigator, ready: () => {}, make: () => navigator.vibrate(SHAKE) },
  sound: { can: () => "AudioContext" in globalThis, ready: wake, make: sound },
};

/** @typedef {keyof typeof WAYS} Way */

/** Those that this device can do. */
export const ways = () => /** @type {Way[]} */ (Object.keys(WAYS)).filter((one) => WAYS[one].can());

/** @returns {Way} */
export function wanted() {
  const kept = /** @type {Way} */ (recall(WANTED));
  return Object.hasOwn(WAYS, kept) && WAYS[kept].can() ? kept : "none";
}

/** From now on so; and once to try it. @param {Way} way */
export function want(way) {
  remember(WANTED, way);
  readySaved();
  tellSaved();
}

/** At the press, before anything is saved: a browser lets a page be heard only from within one. */
export function readySaved() {
  attempt(() => WAYS[wanted()].ready());
}

/** When it is on the disk, and not before: it is believed without a look. */
export function tellSaved() {
  attempt(() => WAYS[wanted()].make());
}

/** Whatever a device makes of it, the save stands. @param {() => void} doing */
function attempt(doing) {
  try {
    doing();
  } catch (error) {
    console.warn("it was saved, and not told", error);
  }
}

/** @type {AudioContext | undefined} */
let heard;

function wake() {
  heard ??= new AudioContext();
  if (heard.state !== "running") heard.resume().catch(console.warn);
}

function sound() {
  if (!heard) return;
  const [tone, level] = [heard.createOscillator(), heard.createGain()];
  const end = heard.currentTime + SOUND.long;
  tone.frequency.value = SOUND.pitch;
  level.gain.setValueAtTime(SOUND.loud, heard.currentTime);
  level.gain.linearRampToValueAtTime(0, end); // cut off at once it would click
  tone.connect(level).connect(heard.destination);
  tone.start();
  tone.stop(end);
}
