// @ts-check
// Where one is: the part of the address after the #, so that Back on the phone goes back and a reload stays put.
import { useEffect, useState } from "./ui.js";

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

function here() {
  return location.hash.replace(/^#\/?/, "").split("/").map(decodeURIComponent);
}

/** The parts of the present place; the first is the name of a screen. */
export function useRoute() {
  const [route, setRoute] = useState(here);
  useEffect(() => {
    const moved = () => setRoute(here());
    addEventListener("hashchange", moved);
    return () => removeEventListener("hashchange", moved);
  }, []);
  return route;
}
