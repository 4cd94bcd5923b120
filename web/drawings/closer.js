// @ts-check
// A drawing looked at more closely: by two fingers, by buttons, by + − 0; then moved by a finger, by buttons, by the arrows.
// How close one looks is a matter of this screen alone: nothing is measured here, and nothing moves by itself.
import { html, useLayoutEffect, useRef, useState } from "../controls/ui.js";
import { Button } from "../controls/controls.js";
import { say } from "../words/words.js";
import { Drawing } from "./drawing.js";

/** One touch of a button, and the closest that one can look. */
const STEP = 1.5;
const CLOSEST = 8;
/** So much of what is seen goes past at one touch. */
const SHARE = 0.4;
/** Left or right, up or down. */
const WAYS = { left: [-1, 0], up: [0, -1], down: [0, 1], right: [1, 0] };
/** @typedef {"closer" | "farther" | "whole"} Look */
/** The keys that press each button, as `keys.js` hears them. @type {Record<Look, string>} */
const KEYS = { closer: "+ =", farther: "- −", whole: "0" };

/** @param {TouchList} touches @param {Element} frame */
function pinch([one, other], frame) {
  const { left, top } = frame.getBoundingClientRect();
  return {
    apart: Math.hypot(one.clientX - other.clientX, one.clientY - other.clientY),
    x: (one.clientX + other.clientX) / 2 - left,
    y: (one.clientY + other.clientY) / 2 - top,
  };
}

/** What one looks at: the thing in hand, or else the middle. @param {Element} frame */
function middle(frame) {
  const { left, top } = frame.getBoundingClientRect();
  const hand = frame.querySelector("svg :not(text):is(.hand, [data-found])")?.getBoundingClientRect();
  if (!hand) return { x: frame.clientWidth / 2, y: frame.clientHeight / 2 };
  return { x: (hand.left + hand.right) / 2 - left, y: (hand.top + hand.bottom) / 2 - top };
}

/** @param {{svg: string, label: string, kind: string, hand?: import("./drawing.js").Hand}} props as `Drawing` takes them */
export function Closer({ svg, label, kind, hand }) {
  const frame = useRef(/** @type {any} */ (null));
  const begun = useRef(/** @type {any} */ (null));
  const kept = useRef(/** @type {any} */ (null));
  const [near, setNear] = useState(1);
  const isClose = near > 1;
  // What is under the fingers stays there.
  const look = (/** @type {number} */ to, at = middle(frame.current)) => {
    const { scrollLeft, scrollTop, style } = frame.current;
    const next = Math.min(Math.max(to, 1), CLOSEST);
    if (!isClose) style.height = `${frame.current.getBoundingClientRect().height}px`;
    kept.current = { ...at, across: (scrollLeft + at.x) / near, down: (scrollTop + at.y) / near };
    setNear(next);
  };
  useLayoutEffect(() => {
    const { x, y, across, down } = kept.current ?? {};
    if (isClose) frame.current.scrollTo(across * near - x, down * near - y);
    else frame.current.style.height = "";
  }, [near]);
  const move = (/** @type {number[]} */ [x, y]) =>
    frame.current.scrollBy(x * SHARE * frame.current.clientWidth, y * SHARE * frame.current.clientHeight);
  const begin = (/** @type {TouchEvent} */ { touches }) => {
    begun.current = touches.length === 2 ? { ...pinch(touches, frame.current), near } : null;
  };
  const spread = (/** @type {TouchEvent} */ event) => {
    if (!begun.current || event.touches.length !== 2) return;
    if (event.cancelable) event.preventDefault(); // the page itself would grow
    const now = pinch(event.touches, frame.current);
    look((begun.current.near * now.apart) / begun.current.apart, now);
  };
  const wheel = (/** @type {WheelEvent} */ event) => {
    if (!event.ctrlKey) return; // two fingers on the pad of a laptop arrive as this
    event.preventDefault();
    const { left, top } = frame.current.getBoundingClientRect();
    look(near * STEP ** (-event.deltaY / 100), { x: event.clientX - left, y: event.clientY - top });
  };
  const arrow = (/** @type {KeyboardEvent} */ event) => {
    if (isClose && event.key.startsWith("Arrow")) event.stopPropagation(); // they move the drawing, not the line in hand
  };
  const touch = { closer: () => look(near * STEP), farther: () => look(near / STEP), whole: () => look(1) };
  const button = (/** @type {Look} */ name) =>
    html`<span data-keys=${KEYS[name]}><${Button} kind="plain" label=${say(`closer-look-${name}.what`, { what: label })} onTouch=${touch[name]}
      disabled=${name === "closer" && near >= CLOSEST}>${say(`closer-look-${name}`)}<//></span>`;
  return html`<div class="closer" data-hears>
    <div class="frame" ref=${frame} style=${{ "--near": near }} role=${isClose ? "group" : null} aria-label=${isClose ? say("closer", { what: label }) : null}
      tabindex=${isClose ? 0 : null} onKeyDown=${arrow} onTouchStart=${begin} onTouchMove=${spread} onTouchEnd=${begin} onWheel=${wheel}>
      <${Drawing} ...${{ svg, label, kind, hand }} />
    </div>
    <div class="looks">${button("closer")}${isClose ? html`${button("farther")}${button("whole")}` : null}</div>
    ${
      isClose
        ? html`<div class="looks">${Object.entries(WAYS).map(
            ([way, by]) => html`<${Button} kind="plain" label=${say(`closer-way-${way}.what`, { what: label })} onTouch=${() => move(by)} key=${way}>${say(`closer-way-${way}`)}<//>`,
          )}</div>`
        : null
    }
  </div>`;
}
