// @ts-check
// At the table: whether the window is wide enough for a list and the thing in hand side by side.
import { useWatched } from "./watch.js";

const wide = matchMedia("(min-width: 62.5rem)");

export function isWide() {
  return wide.matches;
}

export function useWide() {
  return useWatched((listen) => {
    wide.addEventListener("change", listen);
    return () => wide.removeEventListener("change", listen);
  }, isWide);
}
