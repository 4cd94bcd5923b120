// @ts-check
// A longer look at a question, by an engine of its own: the page's engine goes on answering, and stopping is at once.
import { useEffect, useRef, useState } from "./ui.js";
import { ask, useNotebook } from "./notebook.js";

/** Seconds' worth of search at most; the same number of steps on every device, so a slow phone takes longer. */
const LONGER = 12;

/**
 * @param {object | null} question
 * @returns {{looking: boolean, found: any, start: () => void, stop: () => void}} `found` until the notebook changes
 */
export function useLongerLook(question) {
  const { services, entries } = useNotebook();
  const aside = useRef(/** @type {any} */ (null));
  const [looking, setLooking] = useState(false);
  const [found, setFound] = useState(/** @type {any} */ (null));
  const stop = () => {
    aside.current?.end();
    aside.current = null;
    setLooking(false);
  };
  useEffect(() => {
    setFound(null);
    return stop;
  }, [entries, question && JSON.stringify(question)]);
  const start = async () => {
    const engine = services.anotherEngine();
    aside.current = engine;
    setLooking(true);
    const { answer } = await ask(engine, { ...question, time_limit: LONGER });
    if (aside.current !== engine) return;
    setFound(answer);
    stop();
  };
  return { looking, found, start, stop };
}
