// @ts-check
// Whether something has been on this device alone for so long that its person should hear of it.
import { useEffect, useState } from "../controls/ui.js";

/** In ms: a week, in which one is near the laptop once. */
const LONG = 7 * 24 * 60 * 60 * 1000;

/**
 * Looked at when the page opens, when it is seen again, and when the first such entry comes or the last one goes: not at
 * every reading, for it reads the journal.
 * @param {any} journal
 * @param {boolean} isSomethingAlone
 * @returns {boolean}
 */
export function useOverdue(journal, isSomethingAlone) {
  const [overdue, setOverdue] = useState(false);
  useEffect(() => {
    let over = false;
    const look = async () => {
      const since = isSomethingAlone ? await journal.aloneSince().catch(() => null) : null;
      if (!over) setOverdue(since !== null && Date.now() - since > LONG);
    };
    const lookWhenSeen = () => document.visibilityState === "visible" && look();
    look();
    document.addEventListener("visibilitychange", lookWhenSeen);
    return () => {
      over = true;
      document.removeEventListener("visibilitychange", lookWhenSeen);
    };
  }, [journal, isSomethingAlone]);
  return overdue;
}
