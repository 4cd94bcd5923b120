// @ts-check
// Drawings: the one way that markup from the engine reaches the page. It is read as XML, looked through, and only then
// adopted; a drawing that carries anything but shapes and text is not shown at all.
import { html, useLayoutEffect, useRef } from "../controls/ui.js";

const SVG = "http://www.w3.org/2000/svg";
const SHAPES = new Set([
  "svg",
  "g",
  "line",
  "path",
  "rect",
  "circle",
  "ellipse",
  "polygon",
  "polyline",
  "text",
  "tspan",
  "title",
  "desc",
  "defs",
  "marker",
]);

/**
 * The drawing as an element of this document, or null when it is not a plain drawing.
 * @param {string} text SVG as the engine wrote it
 * @returns {SVGSVGElement | null}
 */
export function parseDrawing(text) {
  const read = new DOMParser().parseFromString(text, "image/svg+xml");
  const root = read.documentElement;
  const parts = [root, ...root.querySelectorAll("*")];
  return root.localName === "svg" && parts.every(isPlain) ? /** @type {any} */ (document.adoptNode(root)) : null;
}

/** @param {Element} part */
function isPlain(part) {
  return part.namespaceURI === SVG && SHAPES.has(part.localName) && part.getAttributeNames().every(isQuiet);
}

/** Scripts hide in handlers, links and styles: a drawing has none of them. @param {string} name */
function isQuiet(name) {
  return !/^on|href$|^style$|^src$/i.test(name);
}

/** @typedef {{wall?: string, letter?: string}} Hand a wall by its id, a piece by its letter */

/** @param {Element} root @param {Hand} hand */
function mark(root, { wall, letter }) {
  for (const one of root.querySelectorAll("[data-wall], [data-letters]")) {
    const letters = one.getAttribute("data-letters")?.split(" ") ?? [];
    one.classList.toggle("hand", letters.some((each) => each === letter) || one.getAttribute("data-wall") === wall);
  }
}

/**
 * A drawing of the engine's; `label` is what a screen reader says in its place, and without one it is passed over.
 * @param {{svg?: string, label?: string, kind?: string, hand?: Hand}} props `svg` is still to come where it is not given;
 *   `hand`: what is marked as the thing in hand, instead of what the engine marks
 */
export function Drawing({ svg, label, kind = "", hand }) {
  const frame = useRef(/** @type {HTMLElement | null} */ (null));
  useLayoutEffect(() => {
    const drawn = svg ? parseDrawing(svg) : null;
    drawn?.setAttribute("focusable", "false");
    frame.current?.replaceChildren(...(drawn ? [drawn] : []));
  }, [svg]);
  useLayoutEffect(() => {
    if (hand && frame.current) mark(frame.current, hand);
  }, [svg, hand?.wall, hand?.letter]);
  return label
    ? html`<div class="drawing ${kind}" role="img" aria-label=${label} ref=${frame}></div>`
    : html`<div class="drawing ${kind}" aria-hidden="true" ref=${frame}></div>`;
}
