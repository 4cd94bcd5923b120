// @ts-check
// The photo itself, as it is looked at, drawn on, or touched where a pin goes.
import { html, useRef, useState } from "../../controls/ui.js";
import { useNotebook } from "../../notebook/notebook.js";
import { addStroke } from "../../notebook/write.js";
import { Over } from "../../photos/over.js";
import { Picture } from "../../photos/picture.js";
import { drawnTo, placeOf, within } from "../../photos/touched.js";
import { say } from "../../words/words.js";

/** @typedef {import("../../photos/marked.js").Point} Point */

/** How far a key moves the spot: a hundredth of the photo. */
const BY_KEY = 100;
/** @type {Record<string, Point>} */
const KEYS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

/**
 * @param {{photo: any, words: string, picture: any, marked: {strokes: any[]}, pins: any[], mode: "" | "draw" | "pin",
 *   spot: Point | null, lit: string | null, onSpot: (spot: Point) => void}} props
 */
export function PhotoSheet({ photo, words, picture, marked, pins, mode, spot, lit, onSpot }) {
  const { wet, pen } = usePen(photo, words);
  const touch = { draw: pen, pin: finger(onSpot) }[mode] ?? {};
  const lines = [...marked.strokes.map(({ points }) => points), ...wet.map(({ points }) => points)];
  return html`<figure class="large">
    <div class="photo-sheet">
      <${Picture} photo=${photo} words=${words} picture=${picture} />
      ${picture.url ? html`<${Over} lines=${lines} pins=${pins} spot=${mode === "pin" ? spot : null} lit=${lit} />` : null}
      ${picture.url && mode ? html`<${Touched} mode=${mode} spot=${spot} touch=${touch} onSpot=${onSpot} />` : null}
    </div>
  </figure>`;
}

/** What takes the finger; a spot is also moved by the arrow keys. @param {any} props */
function Touched({ mode, spot, touch, onSpot }) {
  if (mode === "draw") return html`<div class="over-touched" ...${touch}></div>`;
  const move = (/** @type {KeyboardEvent} */ event) => {
    const by = KEYS[event.key];
    if (!by || !spot) return;
    event.preventDefault();
    onSpot([within(spot[0] + by[0] * BY_KEY), within(spot[1] + by[1] * BY_KEY)]);
  };
  return html`<div class="over-touched" role="application" tabindex="0" aria-label=${say("pin.spot")}
    onKeyDown=${move} ...${touch}></div>`;
}

/** @param {(spot: Point) => void} onSpot */
function finger(onSpot) {
  const put = (/** @type {any} */ event) => onSpot(placeOf(event, event.currentTarget));
  return {
    onPointerDown: (/** @type {any} */ event) => {
      event.currentTarget.setPointerCapture(event.pointerId);
      put(event);
    },
    onPointerMove: (/** @type {any} */ event) => event.buttons && put(event),
  };
}

/**
 * A line follows the finger, and is kept when it is lifted; until it is safe it stands wet on the photo.
 * @param {any} photo @param {string} words
 */
function usePen(photo, words) {
  const { journal, act } = useNotebook();
  const [wet, setWet] = useState(/** @type {{points: Point[]}[]} */ ([]));
  const line = useRef(/** @type {{by: number, points: Point[]} | null} */ (null));
  const show = (/** @type {any} */ one, /** @type {any} */ other) => setWet((all) => [...all.filter((each) => each !== one), ...(other ? [other] : [])]);
  const lift = async (/** @type {any} */ event) => {
    const done = line.current;
    if (!done || done.by !== event.pointerId) return;
    line.current = null;
    const kept = event.type === "pointerup" && done.points.length > 1;
    if (kept) await act(() => addStroke(journal, photo.id, done.points), say("photo-draw.line", { photo: words }));
    show(done, null);
  };
  const pen = {
    onPointerDown: (/** @type {any} */ event) => {
      if (line.current || event.button) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      line.current = { by: event.pointerId, points: [placeOf(event, event.currentTarget)] };
      show(null, line.current);
    },
    onPointerMove: (/** @type {any} */ event) => {
      const before = line.current;
      if (before?.by !== event.pointerId) return;
      const points = drawnTo(/** @type {any} */ (before).points, placeOf(event, event.currentTarget));
      line.current = { by: event.pointerId, points };
      show(before, line.current);
    },
    onPointerUp: lift,
    onPointerCancel: lift,
  };
  return { wet, pen };
}
