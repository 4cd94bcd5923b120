// @ts-check
// The inch itself: seventeen marks as on a tape. Touching a mark picks its label from a fixed table, by where the finger
// is and not by any measuring; the keyboard steps through the same table.
import { html } from "../controls/ui.js";
import { say } from "../words/words.js";

const MARKS = [
  ["", "inch"],
  ["1/16", "sixteenth"],
  ["1/8", "eighth"],
  ["3/16", "sixteenth"],
  ["1/4", "quarter"],
  ["5/16", "sixteenth"],
  ["3/8", "eighth"],
  ["7/16", "sixteenth"],
  ["1/2", "half"],
  ["9/16", "sixteenth"],
  ["5/8", "eighth"],
  ["11/16", "sixteenth"],
  ["3/4", "quarter"],
  ["13/16", "sixteenth"],
  ["7/8", "eighth"],
  ["15/16", "sixteenth"],
];
const NAMES = MARKS.map(([label]) => label);
const PRINTED = ["1/4", "1/2", "3/4"];
const STEPS = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };

/**
 * @param {{mark: string, chosen: boolean, whole: string, next: string, onMark: (label: string) => void}} props
 *   `chosen` is false until something was touched; `whole` and `next` are the inch's two ends as printed on the tape
 */
export function Inch({ mark, chosen, whole, next, onMark }) {
  const pick = (/** @type {PointerEvent} */ event) => {
    const touched = document.elementFromPoint(event.clientX, event.clientY)?.closest("[data-mark]");
    const label = touched?.getAttribute("data-mark");
    if (label != null && label !== mark) onMark(label);
    if (label === "" && !chosen) onMark("");
  };
  const begin = (/** @type {PointerEvent} */ event) => {
    /** @type {HTMLElement} */ (event.currentTarget).setPointerCapture(event.pointerId);
    pick(event);
  };
  const drag = (/** @type {PointerEvent} */ event) => event.buttons && pick(event);
  const step = (/** @type {KeyboardEvent} */ event) => {
    const by = STEPS[/** @type {keyof STEPS} */ (event.key)];
    const label =
      event.key === "Home" ? "" : event.key === "End" ? NAMES.at(-1) : by && NAMES[NAMES.indexOf(mark) + by];
    if (label == null || label === 0) return;
    event.preventDefault();
    onMark(/** @type {string} */ (label));
  };
  return html`<div
    class="inch" role="slider" tabindex="0" aria-label=${say("pad-inch")} aria-orientation="horizontal"
    aria-valuemin="0" aria-valuemax="15" aria-valuenow=${NAMES.indexOf(mark)} aria-valuetext=${mark || say("pad-inch.whole")}
    onPointerDown=${begin} onPointerMove=${drag} onKeyDown=${step}>
    <div class="marks">
      ${MARKS.map(
        ([label, height]) => html`<span
        class="mark mark-${height} ${label === mark && chosen ? "touched" : ""}" data-mark=${label} key=${label}></span>`,
      )}
      <span class="mark mark-inch"></span>
    </div>
    <span class="printed printed-whole">${whole}</span>
    ${PRINTED.map((label) => html`<span class="printed printed-${label.replace("/", "-")}">${label}</span>`)}
    <span class="printed printed-next">${next}</span>
  </div>`;
}
