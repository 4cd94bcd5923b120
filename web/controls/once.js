// @ts-check
// One press, one deed: a finger that bounces on "Next wall" must not make two walls.
import { useRef } from "./ui.js";

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
    } finally {
      busy.current = false;
    }
  };
}
