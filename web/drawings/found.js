// @ts-check
// Finding a piece everywhere: what the pointer is over or the keyboard is at is marked in the list, on the plan, the wall
// from in front and the board alike. A piece touched on a drawing opens.
import { useEffect } from "../controls/ui.js";
import { go } from "../controls/route.js";

/** @param {Event} event @returns {string[]} the letters of what it happened to */
function lettersAt(event) {
  const target = /** @type {Element} */ (event.target);
  return target.closest?.("[data-letters]")?.getAttribute("data-letters")?.split(" ") ?? [];
}

/** @param {Event} event */
function find(event) {
  const letters = lettersAt(event);
  for (const one of document.querySelectorAll("[data-letters]")) {
    const here = one.getAttribute("data-letters")?.split(" ") ?? [];
    one.toggleAttribute("data-found", letters.some((letter) => here.includes(letter)));
  }
}

/** @param {Event} event */
function open(event) {
  const [letter] = lettersAt(event);
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
