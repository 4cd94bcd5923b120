// @ts-check
// A longer look at a question, by an engine of its own: the page's engine goes on answering, and stopping is at once.
import { useEffect, useRef, useState } from "../controls/ui.js";
import { say } from "../words/words.js";
import { ask } from "./answers.js";
import { useNotebook } from "./notebook.js";

/** Seconds' worth of search at most; the same number of steps on every device, so a slow phone takes longer. */
const LONGER = 12;

/**
 * @param {object | null} question
 * @returns {{looking: boolean, found: any, trouble: string, start: () => void, stop: () => void}}
 *   `found` until the notebook changes; `trouble`: why a look came to nothing
 */
export function useLongerLook(question) {
  const { services, entries } = useNotebook();
  const aside = useRef(/** @type {any} */ (null));
  const [looking, setLooking] = useState(false);
  const [found, setFound] = useState(/** @type {any} */ (null));
  const [trouble, setTrouble] = useState("");
  const stop = () => {
    aside.current?.end();
    aside.current = null;
    setLooking(false);
  };
  useEffect(() => {
    setFound(null);
    return () => {
      if (aside.current) setTrouble(say("longer-cut-off"));
      stop();
    };
  }, [entries, question && JSON.stringify(question)]);
  const look = async (/** @type {any} */ engine) => {
    const { answer, error } = await ask(engine, { ...question, time_limit: LONGER });
    if (aside.current !== engine) return;
    setFound(answer);
    setTrouble(error ? say("longer-nothing", { why: error.message }) : "");
    stop();
  };
  // Begun and let go on: whoever touched it does not wait for the end, and can stop it.
  const start = () => {
    aside.current = services.anotherEngine();
    setLooking(true);
    setTrouble("");
    look(aside.current);
  };
  return { looking, found, trouble, start, stop };
}
