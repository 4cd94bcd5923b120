// @ts-check
// The page's only door to Python: a question goes out, its answer comes back, and one word says how the engine is.

import { Listeners } from "../listeners.js";

/** Entries told in one question: large enough to be quick, small enough that a slow phone answers between two. */
const BATCH = 1000;
/** How long, in ms, a start or a question may stay silent. */
const PATIENCE = 60_000;

/** Sent first: entries, for every answer must know them; then what a person is typing. The rest waits its turn. */
const RANKS = { __proto__: null, take: 0, read: 1, corner: 1, behind: 1, sum: 1 };
const LAST = 2;

/** @typedef {{id: number, text: string, rank: number, resolve: (reply: any) => void, reject: (error: Error) => void}} Asked */

/** A promise with its two ends in hand. */
function promised() {
  /** @type {() => void} */
  let resolve = () => {};
  /** @type {(error: Error) => void} */
  let reject = () => {};
  const promise = new Promise((yes, no) => {
    [resolve, reject] = [() => yes(undefined), no];
  });
  promise.catch(() => {}); // Nobody need be waiting when it fails; the state says so.
  return { promise, resolve, reject };
}

/** The engine as the page has it: nobody who asks waits for ever, or is answered before the journal was read. */
export class Engine {
  #options;
  /** Not sent yet: a question that the worker has cannot be taken back. @type {Asked[]} */
  #queue = [];
  /** The one question that the worker has. @type {Asked | null} */
  #inHand = null;
  /** @type {Listeners<[string]>} */
  #listeners = new Listeners();
  /** @type {Worker | null} */
  #worker = null;
  /** Settled when the journal has been read, or when there will be no engine. */
  #awake = promised();
  #booted = false;
  #last = 0;
  #alarm = 0;

  /** "waking", "awake", or "failed: " and why: a key, or in the runtime's own words. */
  state = "waking";
  /** How it began when it last woke: "restored", "compiled", or from "source". */
  began = "";

  /**
   * @param {object} options
   * @param {string} options.build
   * @param {string} options.runtime
   * @param {() => Promise<object[]>} options.entries  the whole journal, asked for at every start
   * @param {number} [options.patience]
   */
  constructor({ build, runtime, entries, patience = PATIENCE }) {
    this.#options = { build, runtime, entries, patience };
    this.#start();
  }

  /**
   * Resolves to the engine's reply, `{answer}` or `{error}`; rejects only when there is no engine to ask. A question
   * asked while it wakes waits until it has read the journal; one that is no longer wanted is not put to it at all.
   * @param {object} question
   * @param {AbortSignal} [signal]
   * @returns {Promise<any>}
   */
  async ask(question, signal) {
    await this.#awake.promise;
    return this.#send(question, signal);
  }

  /** New entries of the journal, in any order, any number of times. @param {object[]} entries */
  tell(entries) {
    // Before it has booted there is no need: it will be fed the whole journal, these entries included.
    if (this.#booted) this.#take(entries).catch(console.warn);
  }

  /** A new worker, whatever became of the old one. */
  restart() {
    if (this.#worker) this.#fail("engine-started-again");
    this.#start();
  }

  /** For good: whoever waits is told, and its memory is free again. */
  end() {
    this.#fail("engine-ended");
  }

  /** Resolves once the engine loads no more files: it is awake, or has failed. @returns {Promise<void>} */
  settled() {
    if (this.state !== "waking") return Promise.resolve();
    return new Promise((resolve) => {
      const stop = this.onState((state) => {
        if (state === "waking") return;
        stop();
        resolve();
      });
    });
  }

  /** @param {(state: string) => void} listen @returns {() => void} the way to stop listening */
  onState(listen) {
    return this.#listeners.add(listen);
  }

  #start() {
    const { build, runtime } = this.#options;
    this.#awake = promised();
    const worker = new Worker(new URL("./worker.js", import.meta.url), { type: "module", name: "engine" });
    this.#worker = worker;
    worker.onmessage = ({ data }) => this.#receive(worker, data);
    worker.onerror = (event) => worker === this.#worker && this.#fail(event.message || "engine-not-loaded");
    worker.onmessageerror = () => worker === this.#worker && this.#fail("engine-not-loaded");
    this.#watch();
    worker.postMessage({ boot: { build, runtime } });
    this.#become("waking");
  }

  /** Where the worker asks for another in its place: whoever waits goes on waiting, and is asked again. */
  #startAgain() {
    this.#worker?.terminate();
    this.#booted = false;
    if (this.#inHand) this.#queue.push(this.#inHand);
    this.#inHand = null;
    const { resolve, reject } = this.#awake;
    this.#start();
    this.#awake.promise.then(resolve, reject); // for those who wait since before
  }

  /** @param {string} state */
  #become(state) {
    this.state = state;
    this.#listeners.tell(state);
  }

  /**
   * Everyone who waits is told, and everyone who asks from now on: the worker that would answer is gone.
   * @param {string} why
   */
  #fail(why) {
    clearTimeout(this.#alarm);
    this.#worker?.terminate();
    this.#worker = null;
    this.#booted = false;
    const error = new Error(why);
    for (const one of [this.#inHand, ...this.#queue]) one?.reject(error);
    this.#inHand = null;
    this.#queue = [];
    this.#awake.reject(error);
    this.#awake = promised();
    this.#awake.reject(error);
    this.#become(`failed: ${why}`);
  }

  /**
   * Sets the clock anew at every sign of life while something is owed. The runtime can hang without an error (a wrong
   * type of file, a stricter policy): only a clock notices.
   */
  #watch() {
    clearTimeout(this.#alarm);
    const owed = this.#inHand !== null || !this.#booted;
    if (owed) this.#alarm = setTimeout(() => this.#fail("engine-no-answer"), this.#options.patience);
  }

  /** @param {any} question @param {AbortSignal} [signal] @returns {Promise<any>} */
  #send(question, signal) {
    return new Promise((resolve, reject) => {
      if (signal?.aborted) return reject(signal.reason);
      this.#last += 1;
      const rank = RANKS[/** @type {keyof RANKS} */ (question.ask)] ?? LAST;
      const asked = { id: this.#last, text: JSON.stringify(question), rank, resolve, reject };
      this.#queue.push(asked);
      signal?.addEventListener("abort", () => this.#drop(asked, signal.reason), { once: true });
      this.#sendNext();
    });
  }

  /** The most urgent, and of those the first that was asked; one at a time, so that the others can still be dropped. */
  #sendNext() {
    if (!this.#booted || this.#inHand || !this.#queue.length) return;
    const next = this.#queue.reduce((first, one) => (one.rank < first.rank ? one : first));
    this.#queue.splice(this.#queue.indexOf(next), 1);
    this.#inHand = next;
    this.#watch();
    this.#worker?.postMessage({ id: next.id, ask: next.text });
  }

  /** @param {Asked} asked @param {Error} why */
  #drop(asked, why) {
    const place = this.#queue.indexOf(asked);
    if (place < 0) return; // the worker has it, or it was answered
    this.#queue.splice(place, 1);
    asked.reject(why);
  }

  /** @param {object[]} entries */
  #take(entries) {
    const sent = [];
    for (let from = 0; from < entries.length; from += BATCH) {
      sent.push(this.#send({ ask: "take", entries: entries.slice(from, from + BATCH) }));
    }
    return Promise.all(sent);
  }

  /**
   * @param {Worker} from
   * @param {{ awake?: string, from?: string, asleep?: string, again?: string, id?: any, answer?: any, error?: string }} message
   */
  #receive(from, { awake, from: began = "", asleep, again, id, answer, error }) {
    if (from !== this.#worker) return; // A worker given up may still speak; its ids mean nothing to the new one.
    if (again) return this.#startAgain();
    if (asleep) return this.#fail(asleep);
    this.began = began || this.began;
    if (awake) return awake === this.#options.build ? void this.#feed(from) : this.#fail("engine-other-build");
    const one = this.#inHand;
    if (one?.id !== id) return;
    this.#inHand = null;
    this.#watch();
    this.#sendNext();
    if (error) one?.reject(new Error(error));
    else one?.resolve(JSON.parse(answer));
  }

  /**
   * The journal goes in before any question: an empty notebook would answer as if nothing had been measured.
   * @param {Worker} to
   */
  async #feed(to) {
    this.#booted = true;
    this.#watch();
    try {
      await this.#take(await this.#options.entries());
    } catch (error) {
      if (to === this.#worker) this.#fail(String(error));
      return;
    }
    if (to !== this.#worker) return;
    this.#awake.resolve();
    this.#become("awake");
    this.#sendNext(); // what was asked of a worker before this one, and of a journal with no entries to tell
  }
}
