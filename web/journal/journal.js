// @ts-check
// The journal as the page sees it: the store, a copy in memory, and word of every change, from this tab or another.

import { Listeners } from "../listeners.js";
import { readFile, writeFile } from "./file.js";
import { newId } from "./ids.js";
import { Store } from "./store.js";

/** @typedef {import("./store.js").Entry} Entry */
/** @typedef {import("./store.js").Counts} Counts */

export class Journal {
  /** @type {Map<string, Entry>} */
  #entries = new Map();
  /** @type {Listeners<[Entry[]]>} */
  #listeners = new Listeners();
  #channel;
  /** @type {Counts} */
  #counts = { entries: 0, pending: 0, refused: 0 };
  #asked = false;

  /** @param {Store} store @param {string} name */
  constructor(store, name) {
    this.store = store;
    this.#channel = new BroadcastChannel(name);
    this.#channel.onmessage = ({ data }) => this.#learn(data);
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible") this.#catchUp().catch(console.error);
    });
  }

  /** Opens the journal and reads it; rejects when the browser will not give it. */
  static async open() {
    const journal = new Journal(await Store.open(), "scantling-journal");
    await journal.#catchUp();
    return journal;
  }

  /** This browser on this device. */
  get device() {
    return this.store.device;
  }

  /** A name for a new thing. */
  newId() {
    return newId();
  }

  /**
   * Saves one entry. Resolves when it is on the disk, whatever the engine and the laptop are doing.
   * @param {string} kind
   * @param {object} body
   * @param {string[]} [supersedes]
   * @returns {Promise<Entry>}
   */
  async append(kind, body, supersedes) {
    const entry = await this.store.append(kind, body, supersedes);
    await this.announce([entry]);
    this.#askToBeKept();
    return entry;
  }

  /** Every entry here, oldest arrival first. @returns {Entry[]} */
  entries() {
    return [...this.#entries.values()];
  }

  /** `pending` are saved here and not yet on the laptop. */
  counts() {
    return this.#counts;
  }

  /** Entries that the laptop would not have, each with its reason. */
  refused() {
    return this.store.refused();
  }

  /**
   * @param {(fresh: Entry[]) => void} listen  told the entries that are new here; none when only their standing changed
   * @returns {() => void} the way to stop listening
   */
  onChange(listen) {
    return this.#listeners.add(listen);
  }

  /**
   * The whole journal as a file, handed to the person; works with the laptop gone.
   * @returns {Promise<string>} its name
   */
  async exportFile() {
    // From the disk: an entry of a copied phone may have been numbered anew since this tab read it.
    return writeFile((await this.store.all()).map((one) => one.entry));
  }

  /**
   * Adds the entries of a file; repeats change nothing.
   * @param {Blob} file
   * @returns {Promise<{ added: number, known: number }>}
   */
  async importFile(file) {
    const given = await readFile(file);
    const fresh = await this.store.add(given);
    await this.announce(fresh);
    return { added: fresh.length, known: given.length - fresh.length };
  }

  /** Tells this tab what has changed in the store, and the others. @param {Entry[]} fresh */
  async announce(fresh) {
    this.#channel.postMessage(fresh);
    await this.#learn(fresh);
  }

  /** @param {Entry[]} arrived */
  async #learn(arrived) {
    const fresh = arrived.filter((entry) => !this.#entries.has(entry.id));
    for (const entry of fresh) this.#entries.set(entry.id, entry);
    this.#counts = await this.store.counts();
    this.#listeners.tell(fresh);
  }

  /** Reads what this tab may have missed: a page that was frozen hears no messages. */
  async #catchUp() {
    if ((await this.store.counts()).entries === this.#entries.size) return;
    const kept = await this.store.all();
    await this.#learn(kept.map((one) => one.entry));
  }

  /** Asked once, at the first thing worth keeping: browsers weigh the request by what the person has done so far. */
  #askToBeKept() {
    if (!this.#asked) navigator.storage?.persist?.().catch(() => {});
    this.#asked = true;
  }
}
