// @ts-check
// The journal within one transaction: every change of an entry's standing, with the sums that must change in step.
//
// Knows what becomes of an entry: written here, brought by a file, acknowledged, refused, or found to stand otherwise on
// the laptop. Awaits nothing but the database: a transaction that waits for anything else is over.

import { laterStamp, nextStamp } from "./clock.js";
import { canonicalText, layInto, saysTheSame } from "./digest.js";
import { quietly } from "./disk/database.js";
import { newDevice } from "./ids.js";

/** @typedef {import("./store.js").Entry} Entry */
/** @typedef {import("./store.js").Kept} Kept */
/** @typedef {import("./store.js").News} News */
/** @typedef {import("./store.js").Standing} Standing */
/** @typedef {import("./store.js").Weighed} Weighed */
/** @typedef {import("./digest.js").Sums} Sums */

const OTHER_WORDS = "aside-laptop";
const OTHER_IN_FILE = "aside-file";

/** How an entry is to stand from now on. @typedef {{ kept: Kept, next: Standing, digest?: string, why?: string, entry?: Entry }} Turn */

/** Among so many that lie between them, some are worth fetching together. */
const SPARSE = 2;

/** The entries of a transaction, with the sums of what is shared, which change in step with them. */
export class EntryShelf {
  #asked;
  #put;

  /** @param {any} transaction @param {number} now */
  constructor(transaction, now) {
    this.now = now;
    this.facts = transaction.objectStore("facts");
    this.entries = transaction.objectStore("entries");
    this.aside = transaction.objectStore("aside");
    this.#put = quietly(this.entries);
    /** What the laptop has; null until it is asked for. @type {Sums | undefined | null} */
    this.sums = null;
    /** @type {Promise<Sums | undefined> | null} */
    this.#asked = null;
    /** This browser's name; changed when it meets itself. */
    this.device = "";
  }

  /** A database that is new gets a name for this browser: also one that was cleared under an open page. */
  async begin() {
    this.device = await this.facts.get("device");
    if (!this.device) {
      this.device = newDevice();
      this.sums = {};
      await this.facts.put(this.device, "device");
    }
    return this;
  }

  async #readSums() {
    if (this.sums !== null) return;
    this.#asked ??= this.facts.get("sums"); // Once: two that asked would each add to sums of their own.
    const found = await this.#asked;
    this.sums ??= found;
  }

  /** Without sums (an older version kept none) they are counted when the laptop's are to be compared. @param {string} digest */
  #lay(digest) {
    if (this.sums) layInto(this.sums, digest);
  }

  /**
   * What is here of these entries, by id. Those that lie together, as a device's own do, in one request: asked for one
   * after the other they take ten times as long.
   * @param {string[]} ids @returns {Promise<Map<string, Kept>>}
   */
  async held(ids) {
    const wanted = new Set(ids);
    const [first, ...rest] = [...wanted].sort();
    if (!first) return new Map();
    const atMost = SPARSE * wanted.size;
    const near = await this.entries.getAll(IDBKeyRange.bound(first, rest.at(-1) ?? first), atMost);
    const held = new Map(near.filter((kept) => wanted.has(kept.id)).map((kept) => [kept.id, kept]));
    if (near.length < atMost) return held;
    const beyond = [...wanted].filter((id) => !held.has(id));
    for (const kept of await Promise.all(beyond.map((id) => this.entries.get(id)))) if (kept) held.set(kept.id, kept);
    return held;
  }

  /**
   * Puts an entry back with another standing.
   * @param {Kept} kept @param {Standing} next @param {{ digest?: string, why?: import("./exchange.js").Told, entry?: Entry }} [more]
   */
  put(kept, next, more = {}) {
    return this.turn([{ kept, next, ...more }]);
  }

  /**
   * The same for many. Between two of them nothing is waited for, and no request is heard of by itself: an exchange
   * turns five hundred at a time.
   * @param {Turn[]} turns
   */
  async turn(turns) {
    if (turns.some(({ kept, next }) => kept.standing === "shared" || next === "shared")) await this.#readSums();
    for (const { kept, next, digest, why, entry = kept.entry } of turns) {
      const { id, standing, digest: was, file } = kept;
      if (standing === "shared" && was) this.#lay(was);
      if (next === "shared" && digest) this.#lay(digest);
      this.#put({ id, entry, standing: next, ...(digest && { digest }), ...(why && { why }), ...(file && { file }) });
    }
  }

  /** Notes in which file an entry is, if any. @param {string} id @param {import("./store.js").Filed | undefined} file */
  async file(id, file) {
    const kept = await this.entries.get(id);
    if (!kept || kept.file === file) return;
    const { file: _, ...rest } = kept;
    await this.entries.put({ ...rest, ...(file && { file }) });
  }

  async end() {
    if (this.sums) await this.facts.put(this.sums, "sums");
  }

  /** Writes one entry in this browser's hand. @param {Omit<Entry, "device" | "seq" | "stamp">} said @returns {Promise<Entry>} */
  async write({ id, version, kind, body, supersedes }) {
    const { facts, entries, device } = this;
    const kept = await entries.get(id);
    if (kept) return kept.entry;
    const seq = ((await facts.get("seq")) ?? 0) + 1;
    const stamp = nextStamp(await facts.get("stamp"), this.now, device);
    const entry = { id, device, seq, stamp, version, kind, body, supersedes };
    await Promise.all([
      entries.add({ id, entry, standing: "waiting" }),
      facts.put(seq, "seq"),
      facts.put(stamp, "stamp"),
    ]);
    return entry;
  }

  /**
   * Puts entries of a file beside our own, to be sent. One whose id is here already changes nothing; where it says
   * something else, that is set aside, for nothing that a person wrote may be lost on the way.
   * @param {Entry[]} given
   */
  async admit(given) {
    const fresh = [];
    const puts = [];
    const held = await this.held(given.map(({ id }) => id));
    let other = 0;
    for (const entry of given) {
      const kept = held.get(entry.id);
      if (kept && !saysTheSame(kept.entry, entry)) {
        puts.push(this.aside.put({ text: canonicalText(entry), entry, why: OTHER_IN_FILE, of: "file" }));
        other += 1;
      } else if (!kept?.file) {
        const filed = /** @type {Kept} */ ({ standing: "waiting", ...kept, id: entry.id, entry: kept?.entry ?? entry, file: "in" });
        puts.push(this.entries.put(filed));
        held.set(entry.id, filed);
        if (!kept) fresh.push(entry);
      }
    }
    await Promise.all(puts);
    await this.#meet(fresh);
    return { fresh, other };
  }

  /**
   * Puts down what the laptop has. Under an id of ours its words stand, and ours are set aside where they say otherwise:
   * one of the two must, and every device asks the laptop.
   * @param {Weighed[]} arrived @param {Map<string, string>} why @returns {Promise<News>}
   */
  async settle(arrived, why) {
    /** @type {News} */
    const news = { fresh: [], replaced: [] };
    const puts = [];
    /** @type {Turn[]} */
    const turns = [];
    const once = new Map(arrived.map((one) => [one.entry.id, one]));
    const held = await this.held([...once.keys()]);
    for (const { entry, digest } of once.values()) {
      const kept = held.get(entry.id);
      if (kept?.standing === "shared" && kept.digest === digest) continue;
      if (kept && !saysTheSame(kept.entry, entry)) {
        const set = { text: canonicalText(kept.entry), entry: kept.entry, why: why.get(entry.id) ?? OTHER_WORDS };
        puts.push(this.aside.put(set));
      }
      const differs = kept && canonicalText(kept.entry) !== canonicalText(entry);
      if (!kept) news.fresh.push(entry);
      else if (differs) news.replaced.push(entry);
      if (differs) delete kept.file; // These words are in no file yet.
      turns.push({ kept: kept ?? { id: entry.id, entry, standing: "waiting" }, next: "shared", digest, entry });
    }
    await Promise.all([...puts, this.turn(turns)]);
    await this.#meet(news.fresh);
    return news;
  }

  /**
   * Learns from entries that are new here. One under our own name means that there are two of us: this browser was put
   * back to an older copy, or copied. It goes on under a new name; what it wrote keeps the old one.
   * @param {Entry[]} fresh
   */
  async #meet(fresh) {
    if (!fresh.length) return;
    let stamp = await this.facts.get("stamp");
    for (const entry of fresh) stamp = laterStamp(stamp, entry.stamp, this.now);
    await this.facts.put(stamp, "stamp");
    if (!fresh.some((entry) => entry.device === this.device)) return;
    this.device = newDevice();
    await Promise.all([this.facts.put(this.device, "device"), this.facts.put(0, "seq")]);
  }

  /**
   * A laptop of another version may take what the last one refused.
   * @param {string} build @param {any} refused all of that standing
   */
  async hear(build, refused) {
    if ((await this.facts.get("build")) === build) return;
    await this.facts.put(build, "build");
    for (const kept of await this.entries.index("standing").getAll(refused)) {
      await this.put(kept, "waiting");
    }
  }
}
