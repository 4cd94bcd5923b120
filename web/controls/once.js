// @ts-check
// One press, one deed: a finger that bounces on "Next wall" must not make two walls. A deed that throws is told of, for the
// finger that asked for it is the only one who knows.
import { useRef } from "./ui.js";

const SLIP = "scantling slip";

/** Told why a deed came to nothing. @param {(error: unknown) => void} listen @returns {() => void} the way to stop listening */
export function onSlip(listen) {
  const hear = (/** @type {any} */ { detail }) => listen(detail);
  addEventListener(SLIP, hear);
  return () => removeEventListener(SLIP, hear);
}

/**
 * The same deed, which is not begun again while it is being done; whatever else is touched meanwhile is.
 * @param {(() => any) | undefined} doing
 * @returns {() => any}
 */
export function useOnce(doing) {
  const busy = useRef(false);
  return async () => {
    if (busy.current || !doing) return;
    busy.current = true;
    try {
      await doing();
    } catch (error) {
      dispatchEvent(new CustomEvent(SLIP, { detail: error }));
      throw error; // to the browser's own log
    } finally {
      busy.current = false;
    }
  };
}
