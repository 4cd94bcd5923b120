// @ts-check
// The inch itself: seventeen marks as on a tape. Touching a mark picks its name, by where the finger is and not by any
// measuring; the keyboard steps through the same row. Held still, it shows the thirty-seconds of the half inch about the
// finger, and goes on doing so while one of them is chosen.
import { html, useRef, useState } from "../controls/ui.js";
import { say } from "../words/words.js";
import { FINE, heightOf, isFine, isPrinted, MARKS, marksFrom, nearTo } from "./marks.js";

const STEPS = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };
/** In ms; as long as a phone takes to call a touch a long one. */
const HELD = 500;

/**
 * @param {{mark: string, chosen: boolean, whole: string, next: string, onMark: (label: string) => void}} props
 *   `chosen` is false until something was touched; `whole` and `next` are the inch's two ends as printed on the tape
 */
export function Inch({ mark, chosen, whole, next, onMark }) {
  const { from, look, stay, leave } = useCloser(mark);
  const marks = marksFrom(from);
  const timer = useRef(0);
  const pick = (/** @type {PointerEvent} */ event) => {
    const touched = document.elementFromPoint(event.clientX, event.clientY)?.closest("[data-mark]");
    const label = touched?.getAttribute("data-mark") ?? null;
    if (label !== null && label !== mark) {
      clearTimeout(timer.current); // it slides, and is not held
      onMark(label);
    }
    if (label === "" && !chosen) onMark("");
    return label;
  };
  const begin = (/** @type {PointerEvent} */ event) => {
    /** @type {HTMLElement} */ (event.currentTarget).setPointerCapture(event.pointerId);
    const label = pick(event);
    if (from !== null) stay(from);
    else if (label !== null) timer.current = setTimeout(() => look(label), HELD);
  };
  const drag = (/** @type {PointerEvent} */ event) => event.buttons && pick(event);
  const end = () => {
    clearTimeout(timer.current);
    leave();
  };
  const step = (/** @type {KeyboardEvent} */ event) => {
    const label = stepped(mark, event);
    if (label == null) return;
    event.preventDefault();
    onMark(label);
  };
  return html`<div
    class="inch ${from === null ? "" : "near"}" role="slider" tabindex="0" aria-label=${say(from === null ? "pad-inch" : "pad-inch.near")}
    aria-orientation="horizontal" aria-valuemin="0" aria-valuemax="31" aria-valuenow=${FINE.indexOf(mark)} aria-valuetext=${mark || say("pad-inch.whole")}
    onPointerDown=${begin} onPointerMove=${drag} onPointerUp=${end} onPointerCancel=${end} onKeyDown=${step}
    onContextMenu=${(/** @type {Event} */ event) => event.preventDefault()}>
    <div class="marks">
      ${marks.map(
        (label) => html`<span class="mark mark-${heightOf(label)} ${label === mark && chosen ? "touched" : ""}" data-mark=${label} key=${label}></span>`,
      )}
    </div>
    ${marks.map((label, place) => {
      const words = wordsAt(label, { whole, next, isNear: from !== null });
      return words ? html`<span class=${classOf(label, place, marks.length)} style=${columns(place, marks.length)} key=${label}>${words}</span>` : null;
    })}
  </div>`;
}

/**
 * From where the inch is looked at closely, null where it is whole; and the ways to begin, to keep what is drawn under a
 * finger, and to end.
 * @param {string} mark
 */
function useCloser(mark) {
  const [closer, setCloser] = useState({ at: 0, pressed: false });
  const isSeen = marksFrom(closer.at).includes(mark) && isFine(mark);
  const where = isFine(mark) ? nearTo(mark) : null;
  const from = closer.pressed || isSeen ? closer.at : where;
  return {
    from,
    look: (/** @type {string} */ label) => setCloser({ at: nearTo(label), pressed: true }),
    stay: (/** @type {number} */ at) => setCloser({ at, pressed: true }),
    leave: () => setCloser(({ at }) => ({ at, pressed: false })),
  };
}

/** The mark that a key leads to; with Shift by thirty-seconds. @param {string} mark @param {KeyboardEvent} event */
function stepped(mark, { key, shiftKey }) {
  const row = shiftKey || isFine(mark) ? FINE : MARKS;
  if (key === "Home") return "";
  if (key === "End") return (shiftKey ? FINE : MARKS).at(-1);
  const by = STEPS[/** @type {keyof STEPS} */ (key)];
  return by && row[row.indexOf(mark) + by];
}

/** What is printed at a mark; null is the next whole inch. @param {string | null} label @param {{whole: any, next: any, isNear: boolean}} at */
function wordsAt(label, { whole, next, isNear }) {
  if (label === "") return whole;
  return label === null ? next : isPrinted(label, isNear) && label;
}

/** @param {string | null} label @param {number} place @param {number} count */
function classOf(label, place, count) {
  const classes = {
    "printed-whole": label === "",
    "printed-next": label === null,
    "printed-first": place === 0,
    "printed-last": place === count - 1,
  };
  return ["printed", ...Object.entries(classes).flatMap(([name, is]) => (is ? [name] : []))].join(" ");
}

/** Three columns about a mark; at either end those that there are. @param {number} place @param {number} count */
function columns(place, count) {
  const first = Math.min(Math.max(place, 1), count - 2);
  return { gridColumn: `${first} / ${first + 3}` };
}
