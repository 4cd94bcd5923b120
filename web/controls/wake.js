// @ts-check
// Keeps the screen lit while a person measures. A phone that cannot, or will not, is no worse off: nothing waits for it.
import { useEffect } from "./ui.js";

/** Holds the light for as long as the component that calls this is on the page. */
export function useLight() {
  useEffect(() => {
    /** @type {WakeLockSentinel | null} */
    let light = null;
    let left = false;
    // The system takes the light away whenever the page is hidden, so it is asked for again each time the page is seen.
    const hold = async () => {
      if (document.visibilityState !== "visible" || !navigator.wakeLock) return;
      light = await navigator.wakeLock.request("screen").catch(() => null);
      if (left) light?.release();
    };
    hold();
    document.addEventListener("visibilitychange", hold);
    return () => {
      left = true;
      document.removeEventListener("visibilitychange", hold);
      light?.release();
    };
  }, []);
}
