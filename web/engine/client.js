// @ts-check
// The page's only door to Python: a question goes out, its answer comes back, and one word says how the engine is.

import { Listeners } from "../listeners.js";

/** Entries told in one question: large enough to be quick, small enough that a slow phone answers between two. */
const BATCH = 1000;
/** How long, in ms, a start or a question may stay silent. */
const PATIENCE = 60_000;

/** What each failure is called on the screen. */
const SENTENCES = {
  "no-answer": "it did not answer in time",
  "other-build": "it belongs to another version; load the page again",
  "not-loaded": "it could not be loaded",
  "started-again": "it was started again",
  ended: "it was ended",
};

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
  /** @type {Map<number, { resolve: (reply: any) => void, reject: (error: Error) => void }>} */
  #waiting = new Map();
  /** @type {Listeners<[string]>} */
  #listeners = new Listeners();
  /** @type {Worker | null} */
  #worker = null;
  /** Settled when the journal has been read, or when there will be no engine. */
  #awake = promised();
  #booted = false;
  #last = 0;
  #alarm = 0;

  /** "waking", "awake", or "failed: " and why. */
  state = "waking";

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
   * asked while it wakes waits until it has read the journal.
   * @param {object} question
   * @returns {Promise<any>}
   */
  async ask(question) {
    await this.#awake.promise;
    return this.#send(JSON.stringify(question));
  }

  /** New entries of the journal, in any order, any number of times. @param {object[]} entries */
  tell(entries) {
    // Before it has booted there is no need: it will be fed the whole journal, these entries included.
    if (this.#booted) this.#take(entries).catch(console.warn);
  }

  /** A new worker, whatever became of the old one. */
  restart() {
    if (this.#worker) this.#fail(SENTENCES["started-again"]);
    this.#start();
  }

  /** For good: whoever waits is told, and its memory is free again. */
  end() {
    this.#fail(SENTENCES.ended);
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
    worker.onerror = (event) => worker === this.#worker && this.#fail(event.message || SENTENCES["not-loaded"]);
    worker.onmessageerror = () => worker === this.#worker && this.#fail(SENTENCES["not-loaded"]);
    this.#watch();
    worker.postMessage({ boot: { build, runtime } });
    this.#become("waking");
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
    const error = new Error(`The engine failed: ${why}.`);
    for (const one of this.#waiting.values()) one.reject(error);
    this.#waiting.clear();
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
    const owed = this.#waiting.size > 0 || !this.#booted;
    if (owed) this.#alarm = setTimeout(() => this.#fail(SENTENCES["no-answer"]), this.#options.patience);
  }

  /** @param {string} text @returns {Promise<any>} */
  #send(text) {
    return new Promise((resolve, reject) => {
      this.#last += 1;
      this.#waiting.set(this.#last, { resolve, reject });
      if (this.#waiting.size === 1) this.#watch();
      this.#worker?.postMessage({ id: this.#last, ask: text });
    });
  }

  /** @param {object[]} entries */
  #take(entries) {
    const sent = [];
    for (let from = 0; from < entries.length; from += BATCH) {
      sent.push(this.#send(JSON.stringify({ ask: "take", entries: entries.slice(from, from + BATCH) })));
    }
    return Promise.all(sent);
  }

  /**
   * @param {Worker} from
   * @param {{ awake?: string, asleep?: string, id?: any, answer?: any, error?: string }} message
   */
  #receive(from, { awake, asleep, id, answer, error }) {
    if (from !== this.#worker) return; // A worker given up may still speak; its ids mean nothing to the new one.
    if (asleep) return this.#fail(asleep);
    if (awake) return awake === this.#options.build ? void this.#feed(from) : this.#fail(SENTENCES["other-build"]);
    const one = this.#waiting.get(id);
    this.#waiting.delete(id);
    this.#watch();
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
  }
}
