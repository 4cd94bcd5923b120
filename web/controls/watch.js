// @ts-check
// Watching what changes outside the screens: the journal, the engine, the address.
import { useLayoutEffect, useState } from "./ui.js";

/**
 * What `read` gives, now and after every change. The listening begins before the browser draws, and looks once more when it
 * begins: a change in between would otherwise stay unseen until the next.
 * @template T
 * @param {(listen: () => void) => (() => void)} follow gives the way to stop
 * @param {() => T} read
 * @returns {T}
 */
export function useWatched(follow, read) {
  const [seen, setSeen] = useState(read);
  useLayoutEffect(() => {
    const look = () => setSeen(() => read());
    const stop = follow(look);
    look();
    return stop;
  }, []);
  return seen;
}
