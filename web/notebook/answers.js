// @ts-check
// Answers: what the engine said, and of which journal. One that still holds is not asked for again; one that is no
// longer wanted is called off; and what a cold start needs is kept on the device.

import { BASIS, step } from "../hash.js";
import { say, sayTold } from "../words/words.js";

/** @typedef {{answer: any, error: {key: string, message: string, where?: any} | null}} Reply */
/** @typedef {{held: string, reply: Reply}} Known `held`: what the journal held when it was asked */
/** @typedef {{held: string, hearing: Set<() => void>, off: AbortController}} Flight a question on its way */

/** Answers to remember: enough for every screen of a room, little enough for an old phone. */
const MOST_REMEMBERED = 40;
/** What is worth keeping for the next start, most recent first and so many letters in all. */
const WORTH_KEEPING = new Set(["notebook", "survey", "piece_rows", "pieces", "plan", "saw", "fit", "boards_for_room"]);
const MOST_KEPT = 600_000;

export class Answers {
  #engine;
  #kept;
  /** Least recently heard first. @type {Map<string, Known>} */
  #known;
  /** @type {Map<string, Flight>} */
  #flights = new Map();
  /** How many on the page show the answer to a question. @type {Map<string, number>} */
  #shown = new Map();
  #count = 0;
  #sum = 0;

  /** @param {{engine: any, journal: any, kept: {known: [string, Known][], save: (known: () => [string, Known][]) => void}}} services */
  constructor({ engine, journal, kept }) {
    this.#engine = engine;
    this.#kept = kept;
    this.#known = new Map(kept.known);
    this.#learn(journal.entries());
    journal.onChange((/** @type {{id: string}[]} */ fresh) => this.#learn(fresh));
  }

  /** What the journal holds, as one word: the same entries give the same word, in whatever order they came. */
  get held() {
    return `${this.#count}-${this.#sum.toString(16)}`;
  }

  /**
   * The last answer to a question; `current` when nothing was written since.
   * @param {string} asking the question as JSON
   * @returns {{reply: Reply, current: boolean} | null}
   */
  find(asking) {
    const known = this.#known.get(asking);
    return known ? { reply: known.reply, current: known.held === this.held } : null;
  }

  /**
   * Shows the answer to a question from now on, and asks it where that is needed and can be.
   * @param {string} asking @param {boolean} awake @param {() => void} hear told when there is an answer
   * @returns {() => void} the way to say that it is no longer wanted
   */
  want(asking, awake, hear) {
    this.#shown.set(asking, (this.#shown.get(asking) ?? 0) + 1);
    const flight = awake && !this.find(asking)?.current ? this.#ask(asking) : null;
    flight?.hearing.add(hear);
    return () => {
      const left = (this.#shown.get(asking) ?? 1) - 1;
      if (left) this.#shown.set(asking, left);
      else this.#shown.delete(asking);
      flight?.hearing.delete(hear);
      if (flight && !flight.hearing.size) flight.off.abort();
    };
  }

  /** @param {string} asking @returns {Flight} */
  #ask(asking) {
    const under = this.#flights.get(asking);
    if (under?.held === this.held && !under.off.signal.aborted) return under;
    const flight = { held: this.held, hearing: new Set(), off: new AbortController() };
    this.#flights.set(asking, flight);
    ask(this.#engine, JSON.parse(asking), flight.off.signal).then((reply) => this.#hear(asking, flight, reply));
    return flight;
  }

  /** @param {string} asking @param {Flight} flight @param {Reply} reply */
  #hear(asking, flight, reply) {
    if (this.#flights.get(asking) === flight) this.#flights.delete(asking);
    // An engine that failed has said nothing of the house: the last answer stands until there is another.
    if (reply.error?.key === FAILED) return;
    this.#known.delete(asking);
    this.#known.set(asking, { held: flight.held, reply });
    this.#forget();
    if (WORTH_KEEPING.has(JSON.parse(asking).ask)) this.#kept.save(() => this.#worthKeeping());
    for (const hear of flight.hearing) hear();
  }

  /** Lets go of the oldest, but of none that is on the page: a screen must not lose its words while a person types. */
  #forget() {
    for (const asking of [...this.#known.keys()]) {
      if (this.#known.size <= MOST_REMEMBERED) return;
      if (!this.#shown.has(asking)) this.#known.delete(asking);
    }
  }

  #worthKeeping() {
    let letters = 0;
    return [...this.#known].reverse().filter(([asking, { reply }]) => {
      if (!reply.answer || !WORTH_KEEPING.has(JSON.parse(asking).ask)) return false;
      letters += JSON.stringify(reply).length;
      return letters <= MOST_KEPT;
    });
  }

  /** @param {{id: string}[]} fresh */
  #learn(fresh) {
    for (const { id } of fresh) this.#sum = (this.#sum ^ hash(id)) >>> 0;
    this.#count += fresh.length;
  }
}

const FAILED = "engine-failed";

/** 32 bits of a text, none of them a sign. @param {string} text */
function hash(text) {
  let sum = BASIS;
  for (let at = 0; at < text.length; at += 1) sum = step(sum, text.charCodeAt(at));
  return sum >>> 0;
}

/**
 * One question, one reply, never a throw: a worker that died is an error like any other.
 * @param {{ask: (question: object, signal?: AbortSignal) => Promise<any>}} engine
 * @param {object} question
 * @param {AbortSignal} [signal] aborted when the answer is no longer wanted
 * @returns {Promise<Reply>}
 */
export async function ask(engine, question, signal) {
  try {
    const { answer = null, error = null } = await engine.ask(question, signal);
    return { answer, error };
  } catch (failure) {
    return { answer: null, error: { key: FAILED, message: say("engine-failed", { why: sayTold(failure) }) } };
  }
}
