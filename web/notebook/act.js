// @ts-check
// Acts: what a person does to the journal. Done, it is said aloud; not done, the page says so in red until the next one.
// Each is written after the one before it, and none is left out: what must first be asked is asked before the act. The
// last can be taken back, by strikes.
import { onSlip } from "../controls/once.js";
import { useEffect, useRef, useState } from "../controls/ui.js";
import { readySaved, tellSaved } from "../device/felt.js";
import { say, sayTold } from "../words/words.js";
import { strikeAll } from "./write.js";

/** @typedef {<T>(doing: () => Promise<T>, words: string) => Promise<T | null>} Act resolves to null when nothing was saved */

/**
 * @param {any} journal
 * @returns {{act: Act, undo: () => Promise<any>, fail: (why: string) => void, spoken: string, told: boolean, trouble: string}}
 *   `fail`: it did not come to an act; `told`: what is spoken is to be seen too
 */
export function useActs(journal) {
  const [{ spoken, told }, setSpoken] = useState({ spoken: "", told: false });
  const speak = (/** @type {string} */ words, told = false) => setSpoken({ spoken: words, told });
  const [trouble, setTrouble] = useState("");
  useEffect(() => onSlip((error) => setTrouble(say("act-slipped", { why: sayTold(error) }))), []);
  const last = useRef(/** @type {Promise<any>} */ (Promise.resolve()));
  /** What each act of this page wrote, the last at the end. @type {{current: {words: string, written: string[]}[]}} */
  const acts = useRef([]);
  const fail = (/** @type {string} */ why) => setTrouble(say("act-failed", { why }));
  const write = async (/** @type {() => Promise<any>} */ doing, /** @type {string} */ words) => {
    const { length } = journal.entries();
    try {
      const done = await doing();
      setTrouble("");
      speak(say("act-saved", { what: words }));
      if (journal.entries().length > length) tellSaved();
      return done;
    } catch (failure) {
      fail(sayTold(failure));
      return null;
    } finally {
      const ours = journal.entries().slice(length).filter((/** @type {any} */ one) => one.device === journal.device);
      if (ours.length) acts.current.push({ words, written: ours.map(({ id }) => id).reverse() });
    }
  };
  const act = (/** @type {() => Promise<any>} */ doing, /** @type {string} */ words) => {
    readySaved();
    last.current = last.current.then(() => write(doing, words));
    return last.current;
  };
  const takeBack = async () => {
    const one = acts.current.pop();
    if (!one) return speak(say("act-none"), true);
    try {
      await strikeAll(journal, one.written, "taken back");
      speak(say("act-taken-back", { what: one.words }), true);
    } catch (failure) {
      fail(sayTold(failure));
    }
  };
  const undo = () => {
    last.current = last.current.then(takeBack);
    return last.current;
  };
  return { act, undo, fail, spoken, told, trouble };
}
