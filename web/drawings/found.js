// @ts-check
// Finding a piece everywhere: what the pointer is over or the keyboard is at is marked in the list, on the plan, the wall
// from in front and the board alike; at the table so is a wall. A piece touched on a drawing opens.
import { useEffect } from "../controls/ui.js";
import { go } from "../controls/route.js";
import { isWide } from "../controls/wide.js";

const PIECES = "[data-letters]";
const ALL = "[data-letters], [data-wall]";

/** @param {Element | null | undefined} one @returns {string[]} its pieces' letters, or its wall */
function namesOf(one) {
  return (one?.getAttribute("data-letters") ?? one?.getAttribute("data-wall") ?? "").split(" ").filter(Boolean);
}

/** Where the pointer was last. */
let last = "";

/**
 * Whether only the page moved, under a pointer that rests: what the keyboard came to stays found.
 * @param {Event | PointerEvent} event
 */
function isAtRest(event) {
  if (!(event instanceof PointerEvent) || event.pointerType !== "mouse") return false;
  const was = last;
  last = `${event.screenX} ${event.screenY}`;
  return last === was;
}

/** @param {Event} event */
function find(event) {
  if (isAtRest(event)) return;
  const what = isWide() ? ALL : PIECES;
  const names = namesOf(/** @type {Element} */ (event.target).closest?.(what));
  for (const one of document.querySelectorAll(what)) {
    one.toggleAttribute("data-found", namesOf(one).some((name) => names.includes(name)));
  }
}

/** @param {Event} event */
function open(event) {
  const [letter] = namesOf(/** @type {Element} */ (event.target).closest?.(PIECES));
  if (letter && event.target instanceof SVGElement) go("pieces", letter);
}

export function useFinding() {
  useEffect(() => {
    const heard = { pointerover: find, focusin: find, click: open };
    for (const [name, hear] of Object.entries(heard)) document.addEventListener(name, hear);
    return () => {
      for (const [name, hear] of Object.entries(heard)) document.removeEventListener(name, hear);
    };
  }, []);
}
