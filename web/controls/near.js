// @ts-check
// Tells when something comes near the window, so that what is long to make is made for what is looked at.
import { useLayoutEffect, useRef, useState } from "./ui.js";

/** How far outside the window is near: about a thumb's throw of scrolling. */
const MARGIN = "400px";

/**
 * A ref for the element to watch, and whether it has ever been near. On paper everything is looked at.
 * @returns {[{current: HTMLElement | null}, boolean]}
 */
export function useNear() {
  const watched = useRef(/** @type {HTMLElement | null} */ (null));
  const [near, setNear] = useState(false);
  useLayoutEffect(() => {
    if (near || !watched.current) return undefined;
    const come = () => setNear(true);
    const watcher = new IntersectionObserver((seen) => seen.some((one) => one.isIntersecting) && come(), {
      rootMargin: MARGIN,
    });
    watcher.observe(watched.current);
    addEventListener("beforeprint", come);
    return () => {
      watcher.disconnect();
      removeEventListener("beforeprint", come);
    };
  }, [near]);
  return [watched, near];
}
