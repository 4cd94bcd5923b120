// @ts-check
// At the table: whether the window is wide enough for a list and the thing in hand side by side.
import { useWatched } from "./watch.js";

const wide = matchMedia("(min-width: 62.5rem)");
/** While it prints, the window is as wide as the paper: the page would be drawn anew in the middle of a sheet. */
let before = wide.matches;
let printing = false;
addEventListener("beforeprint", () => {
  before = wide.matches;
  printing = true;
});
addEventListener("afterprint", () => {
  printing = false;
});

export function isWide() {
  return printing ? before : wide.matches;
}

export function useWide() {
  return useWatched((listen) => {
    wide.addEventListener("change", listen);
    addEventListener("afterprint", listen);
    return () => {
      wide.removeEventListener("change", listen);
      removeEventListener("afterprint", listen);
    };
  }, isWide);
}
