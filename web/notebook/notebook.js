// @ts-check
// What every screen can see: the services, the entries and their outline, the room in hand; and how to put a question.
import { createContext, useContext, useEffect, useState } from "../controls/ui.js";

export const Notebook = createContext(/** @type {any} */ (null));

/** The notebook that the page was mounted with: services, entries, outline, engine state, room in hand, say(). */
export function useNotebook() {
  return useContext(Notebook);
}

export const MILLIMETERS = "millimeters";

/** What lengths are shown in where the room in hand is: inches, feet and inches, or millimeters. @returns {string} */
export function useLengths() {
  const { outline, room } = useNotebook();
  return lengthsOf(outline, room);
}

/** @param {any} outline @param {any} room @returns {string} */
export function lengthsOf(outline, room) {
  const houses = outline?.houses ?? [];
  return (houses.find((/** @type {any} */ one) => one.id === room?.house) ?? houses[0])?.lengths ?? "inches";
}

/** @typedef {import("./answers.js").Reply} Reply */

/** @type {Reply} */
const SILENCE = { answer: null, error: null };

/**
 * The engine's answer to a question, asked whenever the notebook has changed since or the engine wakes. While a new answer
 * is on its way to the same question the last one stands, on the next screen and at the next start too; an answer to
 * another question never does.
 * @param {Record<string, any> | null} question null asks nothing
 * @returns {Reply & {heard: boolean, older: boolean}} `heard` when there is an answer, or a refusal, to this very
 *   question; `older` when more was written since, and no engine is awake to tell what follows
 */
export function useAnswer(question) {
  const { answers, engine } = useNotebook();
  const [, hear] = useState({});
  const lengths = useLengths();
  // Of a house or a room the engine knows how it shows its lengths; a question of neither is told. What there is at all
  // shows none: were it told, the screen that changes the setting would lose its answer, and fold up under the finger.
  const knows = !question || "room" in question || "house" in question || question.ask === "notebook";
  const told = knows || lengths === "inches" ? question : { ...question, shown_in: lengths };
  const asking = told && JSON.stringify(told);
  const awake = engine === "awake";
  const found = asking ? answers.find(asking) : null;
  useEffect(() => {
    if (!asking) return;
    const stop = answers.want(asking, awake, () => hear({}));
    if (answers.find(asking)?.reply !== found?.reply) hear({}); // it came since this was drawn
    return stop;
  }, [asking, answers.held, awake]);
  if (!found) return { ...SILENCE, heard: false, older: false };
  return { ...found.reply, heard: true, older: !found.current && !awake };
}
