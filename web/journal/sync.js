// @ts-check
// Keeps the phone's journal and the laptop's together: when to share, and what the screen says of it.

import { Listeners } from "../listeners.js";
import { carry } from "./carry.js";
import { exchange, Halt, toldOf } from "./exchange.js";
import { askLaptop, hasLaptop, wayToLaptop } from "./laptop.js";

/** @typedef {import("./exchange.js").Phase} Phase */
/** @typedef {import("./exchange.js").Told} Told */

/** After an entry: the next often follows at once and can go with it. */
const SOON = 500;
const FIRST_DELAY = 5_000;
const LAST_DELAY = 5 * 60_000;

/** Background Sync; elsewhere the page shares when the person comes back to it. */
const canWait = "SyncManager" in globalThis;
const WORKER = new URL("../background/worker.js", import.meta.url);
/** No page and no worker lies in it: in a wider one this build's own worker would lose the page's cache. */
const SCOPE = new URL("../background/here/", import.meta.url);

/**
 * Keeps the two journals together: at the start, after each entry, when the network or the page comes back, and again
 * after ever longer pauses while nobody answers.
 */
export class Sync {
  #options;
  /** @type {Listeners<[Told]>} */
  #listeners = new Listeners();
  #delay = FIRST_DELAY;
  #timer = 0;
  /** @type {Promise<void> | null} */
  #running = null;
  /** The exchange after that one, where it is wanted. @type {Promise<void> | null} */
  #next = null;

  /** @type {Phase} */
  phase = "never";
  /** What the screen says of it. @type {Told} */
  state = "sync-never";
  /** While it is busy: how many entries are still to be sent, and to be fetched. */
  left = { here: 0, there: 0 };

  #journal;
  #prepared = false;
  /** @type {Promise<void> | null} */
  #carrying = null;
  /** What the screen says of attachments; nothing while none is on its way. @type {Told} */
  carried = "";

  /**
   * @param {object} options
   * @param {import("./journal.js").Journal} options.journal
   * @param {(build: string) => void} options.heard  told the laptop's build at each exchange
   */
  constructor({ journal, heard }) {
    this.#journal = journal;
    const progress = this.#progress.bind(this);
    this.#options = { store: journal.store, announce: journal.announce.bind(journal), heard, progress, fetch: askLaptop };
    journal.onChange(() => {
      // While nobody answers the pauses decide: a phone that tried at every reading would empty its battery on it.
      if (journal.counts().pending && this.phase !== "away") this.#later(SOON);
    });
    addEventListener("online", () => this.now());
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible") this.now();
    });
    this.#later(0);
  }

  /**
   * Shares now, or after the exchange that is under way: that one may have asked already for what has come since.
   * @returns {Promise<Told>} what the screen says of it
   */
  async now() {
    if (this.#running) this.#next ??= this.#running.then(() => this.#begin());
    await (this.#next ?? this.#begin());
    return this.state;
  }

  #begin() {
    this.#next = null;
    this.#running ??= this.#share().finally(() => (this.#running = null));
    return this.#running;
  }

  /** @param {(state: Told) => void} listen @returns {() => void} the way to stop listening */
  onState(listen) {
    return this.#listeners.add(listen);
  }

  /** One exchange, unless another tab is at it already: that is left to it, and looked after later. */
  async #share() {
    clearTimeout(this.#timer);
    if (!hasLaptop) return this.#become("away", "sync-by-file");
    await navigator.locks.request("scantling-sync", { ifAvailable: true }, async (lock) => {
      if (!lock) return this.#later(FIRST_DELAY);
      this.#progress({ here: 0, there: 0 });
      try {
        await exchange(this.#options);
        this.#delay = FIRST_DELAY;
        this.#become("shared", "sync-shared");
        this.#prepare().catch(console.warn);
        this.#carrying ??= this.#carry().finally(() => (this.#carrying = null)); // Not waited for: an entry goes before it.
      } catch (error) {
        const halt = error instanceof Halt ? error : new Halt("refused", toldOf(error));
        this.#become(halt.phase, halt.told);
        if (halt.phase === "away" && this.#journal.counts().pending) this.#askForLater().catch(() => {});
        this.#later(this.#delay);
        this.#delay = Math.min(this.#delay * 2, LAST_DELAY);
      }
    });
  }

  /** While the laptop answers: the worker that goes on when no page is open, and what it needs to know of the way. */
  async #prepare() {
    if (!canWait || !navigator.serviceWorker) return;
    await this.#journal.store.keepWay(wayToLaptop());
    if (this.#prepared) return;
    this.#prepared = true;
    await navigator.serviceWorker.register(WORKER, { type: "module", scope: SCOPE.pathname });
    for (const other of await navigator.serviceWorker.getRegistrations()) {
      if (/\/background\/here\/$/.test(other.scope) && other.scope !== SCOPE.href) await other.unregister();
    }
  }

  /** Has the browser start that worker when the signal is back. Refused where a person forbade it. */
  async #askForLater() {
    const found = await navigator.serviceWorker?.getRegistration(SCOPE);
    await /** @type {any} */ (found)?.sync?.register("scantling");
  }

  /** Attachments go when the entries have gone; the next exchange of entries interrupts them between two pieces. */
  async #carry() {
    const { blobs } = this.#journal.store;
    const named = this.#journal.attached();
    try {
      if (!named.length && !(await blobs.list()).length) return;
      await navigator.locks.request("scantling-carrying", { ifAvailable: true }, async (lock) => {
        if (!lock) return;
        const turn = async () => this.#running;
        this.#tellCarried(await carry({ blobs, fetch: askLaptop, turn, progress: this.#tellLeft.bind(this) }, named));
      });
    } catch (error) {
      this.#tellCarried(error instanceof Halt ? "" : toldOf(error));
    }
  }

  /** @param {{ here: number, there: number }} left */
  #tellLeft(left) {
    this.#tellCarried(left.here || left.there ? { key: "sync-attachments", values: left } : "");
  }

  /** @param {Told} told */
  #tellCarried(told) {
    if (told === this.carried) return;
    this.carried = told;
    this.#listeners.tell(this.state);
  }

  /** Resolves when no attachment is on its way any more. */
  async settled() {
    await this.#carrying;
  }

  /** @param {{ here: number, there: number }} left */
  #progress(left) {
    this.left = left;
    this.#become("busy", { key: "sync-busy", values: left });
  }

  /** @param {Phase} phase @param {Told} state */
  #become(phase, state) {
    [this.phase, this.state] = [phase, state];
    this.#listeners.tell(state);
  }

  /** @param {number} ms */
  #later(ms) {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.now(), ms);
  }
}
