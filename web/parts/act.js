// @ts-check
// Acts: what a person does to the journal. Done, it is said aloud; not done, the page says so in red until the next one.
import { useRef, useState } from "./ui.js";

/** @typedef {<T>(doing: () => Promise<T>, words: string) => Promise<T | null>} Act resolves to null when nothing was saved */

/** @returns {{act: Act, spoken: string, trouble: string}} */
export function useActs() {
  const [spoken, say] = useState("");
  const [trouble, setTrouble] = useState("");
  const busy = useRef(false);
  const act = async (/** @type {() => Promise<any>} */ doing, /** @type {string} */ words) => {
    // A finger that bounces on "Next wall" must not make two walls.
    if (busy.current) return null;
    busy.current = true;
    try {
      const done = await doing();
      setTrouble("");
      say(`${words}, saved here.`);
      return done;
    } catch (failure) {
      setTrouble(`Not saved. ${/** @type {any} */ (failure)?.message ?? failure}`);
      return null;
    } finally {
      busy.current = false;
    }
  };
  return { act, spoken, trouble };
}
