// @ts-check
// Where one is: the part of the address after the #, so that Back on the phone goes back and a reload stays put.
import { useWatched } from "./watch.js";

/** @param {...string} parts */
export function link(...parts) {
  return `#/${parts.map(encodeURIComponent).join("/")}`;
}

/** @param {...string} parts */
export function go(...parts) {
  location.hash = link(...parts);
}

/** The place without a trace in the history: Back does not return to a page that has done its work. @param {...string} parts */
export function goInstead(...parts) {
  location.replace(link(...parts));
}

/**
 * Whether one is still where one was when this was called: who went elsewhere while something was saved must not be
 * pulled back. @returns {() => boolean}
 */
export function stayHere() {
  const place = location.hash;
  return () => location.hash === place;
}

function here() {
  try {
    return location.hash.replace(/^#\/?/, "").split("/").map(decodeURIComponent);
  } catch {
    return [""]; // an address cut short on its way: it names no place, and the first screen is shown
  }
}

/** The parts of the present place; the first is the name of a screen. */
export function useRoute() {
  return useWatched(onMove, here);
}

/** @param {() => void} listen */
function onMove(listen) {
  addEventListener("hashchange", listen);
  return () => removeEventListener("hashchange", listen);
}
