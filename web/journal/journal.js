// @ts-check
// The journal as the page sees it: the store, a copy in memory, and word of every change, from this tab or another.

import { Listeners } from "../listeners.js";
import { millisecondsOf } from "./clock.js";
import { canShare, housesOf, isJournal, isOfAnother, readFile, shareFile, writeFile, writeLeftOut } from "./file.js";
import { newId } from "./ids.js";
import { Store } from "./store.js";

/** @typedef {import("./store.js").Entry} Entry */
/** @typedef {import("./store.js").Counts} Counts */
/** @typedef {import("./store.js").News} News */

const MEDIA_TYPE = /^[a-z]+\/[a-z0-9.+-]{1,100}$/;

export class Journal {
  /** @type {Map<string, Entry>} */
  #entries = new Map();
  /** @type {Listeners<[Entry[]]>} */
  #listeners = new Listeners();
  /** @type {Listeners<[]>} */
  #replaced = new Listeners();
  #channel;
  /** @type {Counts} */
  #counts = { entries: 0, pending: 0, refused: 0, alone: 0, unfiled: 0 };
  #asked = false;

  /** @param {Store} store @param {string} name */
  constructor(store, name) {
    this.store = store;
    this.#channel = new BroadcastChannel(name);
    this.#channel.onmessage = ({ data }) => this.#learn(data).catch(console.error);
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
    await this.#announceKept([entry]);
    this.#askToBeKept();
    return entry;
  }

  /**
   * Attaches a file to a house, a room, a wall or a thing: its bytes first, for an entry must name nothing that is nowhere.
   * @param {string} of @param {Blob} file @param {string} [name]
   */
  async attach(of, file, name = "") {
    const named = await this.store.blobs.keep(file);
    const type = MEDIA_TYPE.test(file.type) ? file.type : "application/octet-stream";
    return this.append("attachment", { attachment: newId(), of, ...named, type, name });
  }

  /** The attachments that entries name, struck ones too: a strike may be struck. @param {Entry[]} [entries] @returns {import("./disk/blobs.js").Named[]} */
  attached(entries = this.entries()) {
    const bodies = entries.filter(({ kind }) => kind === "attachment").map(({ body }) => /** @type {any} */ (body));
    return bodies.filter(({ blob }) => typeof blob === "string");
  }

  /** How much of an attachment is here, and whether the laptop has it. @param {string} blob */
  heldOf(blob) {
    return this.store.blobs.held(blob);
  }

  /** The bytes of an attachment, as its entry says they are to be read; null where it is not here whole. @param {{ blob: string, type: string }} named */
  async attachment({ blob, type }) {
    const found = await this.store.blobs.open(blob);
    return found && new Blob([found], { type });
  }

  /** When an entry was written, by the clock of its device. @param {string} stamp */
  writtenAt(stamp) {
    return new Date(millisecondsOf(stamp));
  }

  /** It is on the disk: whatever fails from here on, nobody may be told that it was not saved. @param {Entry[]} fresh */
  async #announceKept(fresh) {
    try {
      await this.announce({ fresh, replaced: [] });
    } catch (error) {
      console.error(error);
    }
  }

  /** Every entry here, oldest arrival first. @returns {Entry[]} */
  entries() {
    return [...this.#entries.values()];
  }

  /** `pending` are saved here and not yet on the laptop; `alone` are in no file besides. */
  counts() {
    return this.#counts;
  }

  /** Entries that the laptop would not have, each with its reason; those with a `text` stand there in other words. */
  refused() {
    return this.store.refused();
  }

  /** Has what the laptop refused sent once more. */
  async sendAgain() {
    await this.store.sendAgain();
    await this.#announceKept([]);
  }

  /** Writes what stands otherwise on the laptop as an entry of its own. @param {string} text */
  async writeAnew(text) {
    const entry = await this.store.writeAnew(text);
    await this.#announceKept(entry ? [entry] : []);
    return entry;
  }

  /**
   * @param {(fresh: Entry[]) => void} listen  told the entries that are new here; none when only their standing changed
   * @returns {() => void} the way to stop listening
   */
  onChange(listen) {
    return this.#listeners.add(listen);
  }

  /**
   * Told when entries that were here stand otherwise now: who has read them must read all anew.
   * @param {() => void} listen @returns {() => void} the way to stop listening
   */
  onReplaced(listen) {
    return this.#replaced.add(listen);
  }

  /**
   * The journal as a file, handed to the person or to another app; works with the laptop gone.
   * @param {{ onlyNew?: boolean, share?: boolean }} [how] `onlyNew`: what is in no file of this device yet
   * @returns {Promise<{ name: string, ids: string[] }>} its name, and the entries that count as in a file from now on
   */
  async exportFile({ onlyNew = false, share = false } = {}) {
    // From the disk: another tab may have written since this one was told.
    const kept = (await this.store.all()).filter((one) => !(onlyNew && one.file === "out"));
    const entries = kept.map((one) => one.entry);
    const what = onlyNew ? "new-" : "";
    const { blobs } = this.store;
    const wanted = new Set(this.attached(entries).map(({ blob }) => blob));
    const held = (await blobs.list()).filter(({ blob, whole }) => whole && (!onlyNew || wanted.has(blob)));
    const pieces = held.map((one) => blobs.pieces(one));
    const name = await (share ? shareFile : writeFile)(entries, pieces, housesOf(this.#entries.values()), what);
    const ids = entries.map(({ id }) => id);
    await this.#file(ids, true);
    return { name, ids };
  }

  /** A file that did not come to be: its entries are in none. @param {string[]} ids */
  async unfile(ids) {
    await this.#file(ids, false);
  }

  /** @param {string[]} ids @param {boolean} isFiled */
  async #file(ids, isFiled) {
    await this.store.file(ids, isFiled);
    await this.#announceKept([]);
  }

  /** Whether this browser hands files to other apps. */
  canShare() {
    return canShare();
  }

  /** Whether a text is a journal's file. @param {string} text */
  isJournal(text) {
    return isJournal(text);
  }

  /** When the first of the entries was written that are on this device alone, in ms; null when there are none. */
  async aloneSince() {
    const first = await this.store.firstAlone();
    return first && millisecondsOf(first.stamp);
  }

  /**
   * Adds what is sound of a file; repeats change nothing.
   * @param {Blob} file
   * @param {{ beside?: boolean, apart?: string, handed?: boolean }} [how] `beside`: also one of another notebook; `apart`:
   *   a house that makes no notebook anybody's; `handed`: nobody knows who sent it, so it must name a house that is here
   * @returns {Promise<{ another: true } | { unknown: true } | { added: number, known: number, other: number,
   *   leftOut: { number: number, text: string }[], short: boolean, attached: number }>}
   *   `another`: it is of another notebook, and nothing was added, nor where it is `unknown`; `other`: entries whose name stands here for other words;
   *   those of the file are set aside
   */
  async importFile(file, { beside = false, apart = "", handed = false } = {}) {
    const whole = new Set();
    const here = housesOf(this.#entries.values());
    here.delete(apart);
    /** @typedef {import("./file.js").Found} Found */
    const isOther = (/** @type {Found} */ found) => !beside && isOfAnother(found, here);
    const isUnknown = (/** @type {Found} */ { houses }) => handed && ![...houses].some((one) => here.has(one));
    const takePiece = async (
      /** @type {import("./disk/blobs.js").Piece} */ piece,
      /** @type {import("./file.js").Found} */ found,
    ) => {
      if (isOther(found) || isUnknown(found)) return true;
      const taken = await this.store.blobs.take(piece);
      if (taken?.whole) whole.add(piece.blob);
      return Boolean(taken);
    };
    const found = await readFile(file, takePiece);
    if (isOther(found)) return { another: true };
    if (isUnknown(found) && found.entries.length) return { unknown: true };
    const { entries, leftOut, said, saidBlobs } = found;
    const { fresh, other } = await this.store.add(entries);
    await this.#announceKept(fresh);
    const short = entries.length + leftOut.length < said || whole.size < saidBlobs;
    const known = entries.length - fresh.length - other;
    return { added: fresh.length, known, other, leftOut, short, attached: whole.size };
  }

  /** The lines that a file had besides, handed to the person. @param {{ number: number, text: string }[]} leftOut */
  saveLeftOut(leftOut) {
    return writeLeftOut(leftOut);
  }

  /** Tells this tab what has changed in the store, and the others. @param {News} news */
  async announce(news) {
    this.#channel.postMessage(news);
    await this.#learn(news);
  }

  /** @param {News} news */
  async #learn({ fresh: arrived, replaced }) {
    const fresh = arrived.filter((entry) => !this.#entries.has(entry.id));
    for (const entry of [...fresh, ...replaced]) this.#entries.set(entry.id, entry);
    this.#counts = await this.store.counts();
    if (replaced.length) this.#replaced.tell();
    this.#listeners.tell(fresh);
  }

  /** Reads what this tab may have missed: a page that was frozen hears no messages. */
  async #catchUp() {
    if ((await this.store.counts()).entries === this.#entries.size) return;
    const kept = await this.store.all();
    await this.#learn({ fresh: kept.map((one) => one.entry), replaced: [] });
  }

  /** Whether the browser has promised not to clear this site's data when room runs short. @returns {Promise<boolean>} */
  async isPromised() {
    return (await navigator.storage?.persisted?.().catch(() => false)) ?? false;
  }

  /** Asked once, at the first thing worth keeping: browsers weigh the request by what the person has done so far. */
  #askToBeKept() {
    if (!this.#asked) navigator.storage?.persist?.().catch(() => {});
    this.#asked = true;
  }
}
