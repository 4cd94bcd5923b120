// @ts-check
// What every screen can see: the services, the entries and their outline, the room in hand; and how to put a question.
import { createContext, useContext, useEffect, useState } from "./ui.js";

export const Notebook = createContext(/** @type {any} */ (null));

/** The notebook that the page was mounted with: services, entries, outline, engine state, room in hand, say(). */
export function useNotebook() {
  return useContext(Notebook);
}

/** @typedef {{answer: any, error: {key: string, message: string, where?: any} | null}} Reply */

/** @type {Reply} */
const SILENCE = { answer: null, error: null };
/** Replies to remember: enough for every screen of a room, little enough for an old phone. */
const MOST_REMEMBERED = 40;

/**
 * The engine's answer to a question, asked again whenever the notebook changes or the engine wakes. While a new answer is
 * on its way to the same question the last one stands, on the next screen too; an answer to another question never does.
 * @param {object | null} question null asks nothing
 * @returns {Reply & {heard: boolean}} `heard` when there is an answer, or a refusal, to this very question
 */
export function useAnswer(question) {
  const { services, entries, engine, replies } = useNotebook();
  const [, setHeard] = useState(/** @type {Reply | null} */ (null));
  const asking = question && JSON.stringify(question);
  useEffect(() => {
    if (!asking || engine !== "awake") return undefined;
    let wanted = true;
    ask(services.engine, JSON.parse(asking)).then((reply) => {
      remember(replies, asking, reply);
      if (wanted) setHeard(reply);
    });
    return () => {
      wanted = false;
    };
  }, [asking, entries, engine]);
  const reply = asking && replies.get(asking);
  return reply ? { ...reply, heard: true } : { ...SILENCE, heard: false };
}

/** @param {Map<string, Reply>} replies @param {string} asking @param {Reply} reply */
function remember(replies, asking, reply) {
  replies.delete(asking);
  replies.set(asking, reply);
  if (replies.size > MOST_REMEMBERED) replies.delete(/** @type {string} */ (replies.keys().next().value));
}

/**
 * One question, one reply, never a throw: a worker that died is an error like any other.
 * @param {{ask: (question: object) => Promise<any>}} engine
 * @param {object} question
 */
export async function ask(engine, question) {
  try {
    const { answer = null, error = null } = await engine.ask(question);
    return { answer, error };
  } catch (failure) {
    return {
      answer: null,
      error: { key: "engine-failed", message: String(/** @type {any} */ (failure)?.message ?? failure) },
    };
  }
}
