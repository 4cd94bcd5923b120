// @ts-check
// The journal on this device: what is asked of its database, and what is written. An entry goes in once, whole, and never changes.
//
// Knows: entries, which of them the laptop has, which are in a file, and the few facts that go with them (device, sequence, stamp, cursor, and
// the sums of what the laptop has). Refuses: to call anything saved before its transaction has completed with durability
// "strict". The browsers' default may keep it in memory for half a minute, and a battery that dies then takes every
// reading of that time with it.

import { Blobs } from "./disk/blobs.js";
import { Database, listenFor } from "./disk/database.js";
import { digestsOf, layInto, totalOf } from "./digest.js";
import { newId } from "./ids.js";
import { EntryShelf } from "./shelf.js";

/** @type {IDBTransactionOptions} */
const STRICT = { durability: "strict" };
/**
 * For marks alone, which the laptop gives anew: an entry whose mark went with the battery waits again, is sent again, and
 * the laptop knows it. Strict, each few hundred marks would wait for the disk. Whatever brings an entry is strict.
 * @type {IDBTransactionOptions}
 */
const RELAXED = { durability: "relaxed" };

/**
 * @typedef {object} Entry
 * @property {string} id
 * @property {string} device
 * @property {number} seq
 * @property {string} stamp
 * @property {number} version
 * @property {string} kind
 * @property {object} body
 * @property {string[]} supersedes
 */

/**
 * Where an entry stands with the laptop. "refused" entries are kept and shown, and never sent again by themselves: one
 * entry that the other side will not have must not hold up the rest.
 * @typedef {"waiting" | "shared" | "refused"} Standing
 */

/** `digest` is there while the entry is shared. @typedef {{ id: string, entry: Entry, standing: Standing, digest?: string, why?: Told, file?: Filed }} Kept */
/** "out": this device put it into a file. "in": a file brought it, and none of this device has it yet. @typedef {"out" | "in"} Filed */
/** Other words under an id than those that stand here; `of` a file, or else what the laptop's took the place of. @typedef {{ text: string, entry: Entry, why: Told, of?: "file" }} Aside */
/** `alone`: neither on the laptop nor in any file; `unfiled`: in no file of this device. @typedef {{ entries: number, pending: number, refused: number, alone: number, unfiled: number }} Counts */
/** @typedef {{ id: string, key: string, message: string }} Rejection */
/** @typedef {{ database: string | null, cursor: number }} Place */
/** @typedef {import("./digest.js").Sums} Sums */
/** @typedef {import("./exchange.js").Told} Told */
/** `entry` and its digest. @typedef {{ entry: Entry, digest: string }} Weighed */
/** Entries that are new here, and those that stand here now in the place of others. @typedef {{ fresh: Entry[], replaced: Entry[] }} News */

/** All that an index has under one word; of a standing, in the order they were written. @param {Standing | Filed} which */
function standing(which) {
  return IDBKeyRange.bound([which], [which, []]);
}

/** @type {Standing} */
const SHARED = "shared";
/** @type {Standing[]} */
const UNSHARED = ["waiting", "refused"];

/** @param {any} index @param {Standing} which @returns {Promise<Entry | null>} */
async function firstUnfiled(index, which) {
  let cursor = await index.openCursor(standing(which));
  while (cursor?.value.file) cursor = await cursor.continue();
  return cursor?.value.entry ?? null;
}

/** @param {IDBTransaction} transaction */
function abort(transaction) {
  try {
    transaction.abort();
  } catch {
    // It has ended already, which is what was wanted.
  }
}

export class Store {
  #database;
  #now;
  /** @type {Promise<Counts> | null} */
  #counting = null;

  /** This browser on this device. */
  device = "";
  /** The bytes of attachments. */
  blobs;

  /**
   * @param {string} name
   * @param {() => number} now
   */
  constructor(name, now) {
    this.#database = new Database(name);
    this.#now = now;
    this.blobs = new Blobs((work) => this.#database.with(work));
  }

  /**
   * Opens the journal. Rejects when the browser will not give it: the page must then say that it cannot save.
   * @param {object} [options]
   * @param {string} [options.name]
   * @param {() => number} [options.now]
   */
  static async open({ name = "scantling", now = Date.now } = {}) {
    const store = new Store(name, now);
    await store.#change(async () => {});
    return store;
  }

  /**
   * Writes one entry down: its place in this device's sequence, its stamp and itself in one transaction. Resolves when
   * that has completed, and only then is it saved.
   * @param {string} kind
   * @param {object} body
   * @param {string[]} [supersedes]
   * @param {string} [id]
   * @returns {Promise<Entry>}
   */
  append(kind, body, supersedes = [], id = newId(this.#now())) {
    return this.#change((shelf) => shelf.write({ id, version: 1, kind, body, supersedes }));
  }

  /**
   * Entries from a file: those already here stay as they are, new ones wait to be sent.
   * @param {Entry[]} given
   * @returns {Promise<{ fresh: Entry[], other: number }>} those that were new here, and how many have other words here
   */
  add(given) {
    return this.#change((shelf) => shelf.admit(given));
  }

  /** @returns {Promise<Kept[]>} */
  all() {
    return this.#database.with((db) => db.getAll("entries"));
  }

  /**
   * Counted once for all who ask in one breath, for every entry is counted. No later: something may have been written.
   * @returns {Promise<Counts>}
   */
  counts() {
    if (this.#counting) return this.#counting;
    this.#counting = this.#count();
    queueMicrotask(() => (this.#counting = null));
    return this.#counting;
  }

  /** @returns {Promise<Counts>} */
  #count() {
    return this.#database.with(async (db) => {
      const transaction = db.transaction(["entries", "aside"]);
      const index = transaction.objectStore("entries").index("standing");
      const files = transaction.objectStore("entries").index("file");
      const [entries, pending, refused, aside, filed, ...carried] = await Promise.all([
        index.objectStore.count(),
        index.count(standing("waiting")),
        index.count(standing("refused")),
        transaction.objectStore("aside").count(),
        files.count(standing("out")),
        ...UNSHARED.flatMap((which) => [files.count(["out", which]), files.count(["in", which])]),
      ]);
      const alone = carried.reduce((left, count) => left - count, pending + refused);
      return { entries, pending, refused: refused + aside, alone, unfiled: entries - filed };
    });
  }

  /** The first written of the entries that are on this device alone. @returns {Promise<Entry | null>} */
  firstAlone() {
    return this.#database.with(async (db) => {
      const index = db.transaction("entries").objectStore("entries").index("standing");
      const found = await Promise.all(UNSHARED.map((which) => firstUnfiled(index, which)));
      const times = found.filter((one) => one !== null).sort((one, other) => (one.stamp < other.stamp ? -1 : 1));
      return times[0] ?? null;
    });
  }

  /**
   * Notes that entries are in a file of this device, or that they are in none after all.
   * @param {string[]} ids @param {boolean} isFiled @returns {Promise<void>}
   */
  file(ids, isFiled) {
    return this.#change(async (shelf) => {
      await Promise.all(ids.map((id) => shelf.file(id, isFiled ? "out" : undefined)));
    });
  }

  /**
   * The next entries to send, in the order they were written.
   * @param {number} atMost @param {Entry[]} [sent] those that are on their way, in that order: what follows them
   * @returns {Promise<Entry[]>}
   */
  async waiting(atMost, sent = []) {
    const last = sent.at(-1);
    const range = last ? IDBKeyRange.bound(["waiting", last.seq], ["waiting", []]) : standing("waiting");
    const again = new Set(sent.filter(({ seq }) => seq === last?.seq).map(({ id }) => id));
    const found = await this.#database.with((db) => db.getAllFromIndex("entries", "standing", range, atMost + again.size));
    return found.map((/** @type {Kept} */ one) => one.entry).filter((/** @type {Entry} */ { id }) => !again.has(id));
  }

  /** Entries that the laptop would not have, each with its reason; those with a `text` stand there in other words. */
  async refused() {
    return [...(await this.#of("refused")), ...(await this.#database.with((db) => db.getAll("aside")))];
  }

  /** Has the refused entries sent once more. @returns {Promise<void>} */
  sendAgain() {
    return this.#change(async (shelf) => {
      for (const kept of await shelf.entries.index("standing").getAll(standing("refused"))) {
        await shelf.put(kept, "waiting");
      }
    });
  }

  /**
   * Writes what was set aside as an entry of its own.
   * @param {string} text
   * @returns {Promise<Entry | null>} null when nothing was set aside by that text
   */
  writeAnew(text) {
    return this.#change(async (shelf) => {
      const found = await shelf.aside.get(text);
      if (!found) return null;
      await shelf.aside.delete(text);
      return shelf.write({ ...found.entry, id: newId(this.#now()) });
    });
  }

  /** Keeps how the laptop is reached, for who has no page to ask. @param {{ origin: string, token: string }} way @returns {Promise<void>} */
  async keepWay(way) {
    const { origin, token } = await this.way();
    if (origin !== way.origin || token !== way.token) await this.#change((shelf) => shelf.facts.put(way, "way"));
  }

  /** @returns {Promise<{ origin: string, token: string }>} */
  async way() {
    return (await this.#database.with((db) => db.get("facts", "way"))) ?? { origin: "", token: "" };
  }

  /** Where reading the laptop's journal has come to. @returns {Promise<Place>} */
  place() {
    return this.#database.with(async (db) => ({
      database: (await db.get("facts", "database")) ?? null,
      cursor: (await db.get("facts", "cursor")) ?? 0,
    }));
  }

  /**
   * What one exchange brought, all of it or none: a cursor that moved without its entries would skip them for ever.
   * @param {Place & { acked: string[], rejected: Rejection[], build: string }} reply
   * @param {Weighed[]} sent @param {Weighed[]} arrived @param {Weighed[]} instead what stands there under ids of ours
   * @returns {Promise<News>}
   */
  applySync({ acked, rejected, database, cursor, build }, sent, arrived, instead) {
    const durability = arrived.length || instead.length ? STRICT : RELAXED;
    return this.#change(async (shelf) => {
      const why = new Map(rejected.map(({ id, message }) => [id, message]));
      const digests = new Map(sent.map(({ entry, digest }) => [entry.id, digest]));
      await shelf.hear(build, standing("refused"));
      const known = await shelf.settle(instead, why);
      const held = [...(await shelf.held(acked)).values()].filter((kept) => kept.standing !== "shared");
      const acknowledged = held.map((kept) => ({ kept, next: SHARED, digest: digests.get(kept.id) }));
      await shelf.turn(acknowledged.filter(({ digest }) => digest));
      for (const [id, message] of why) {
        const kept = await shelf.entries.get(id);
        if (kept?.standing === "waiting") await shelf.put(kept, "refused", { why: message });
      }
      const { fresh, replaced } = await shelf.settle(arrived, why);
      await Promise.all([shelf.facts.put(database, "database"), shelf.facts.put(cursor, "cursor")]);
      return { fresh: [...known.fresh, ...fresh], replaced: [...known.replaced, ...replaced] };
    }, durability);
  }

  /** Keeps an entry from being sent by itself again. @param {string} id @param {Told} why @returns {Promise<void>} */
  refuse(id, why) {
    return this.#change(async (shelf) => {
      const kept = await shelf.entries.get(id);
      if (kept?.standing === "waiting") await shelf.put(kept, "refused", { why });
    });
  }

  /** Entries that the laptop has and this device had lost. @param {Weighed[]} arrived @returns {Promise<News>} */
  bringHome(arrived) {
    return this.#change((shelf) => shelf.settle(arrived, new Map()));
  }

  /** Has entries sent that the laptop has lost. @param {string[]} digests @returns {Promise<void>} */
  resend(digests) {
    return this.#change(async (shelf) => {
      for (const digest of digests) {
        for (const kept of await shelf.entries.index("digest").getAll(digest)) await shelf.put(kept, "waiting");
      }
    });
  }

  /** What the laptop has, by our account: the sums of its digests. @returns {Promise<Sums>} */
  async sums() {
    const sums = await this.#database.with((db) => db.get("facts", "sums"));
    return sums ?? this.recount();
  }

  /** What all of that comes to. */
  async total() {
    return totalOf(await this.sums());
  }

  /** The digests of shared entries that begin in one way. @param {string} place @returns {Promise<string[]>} */
  async digestsIn(place) {
    const range = IDBKeyRange.bound(place, `${place}g`);
    const found = await this.#database.with((db) => db.getAllFromIndex("entries", "digest", range));
    return found.map((/** @type {Kept} */ one) => /** @type {string} */ (one.digest));
  }

  /** Makes the sums anew from the entries themselves. @returns {Promise<Sums>} */
  async recount() {
    const shared = await this.#of("shared");
    const digests = await digestsOf(shared.map((kept) => kept.entry));
    return this.#change(async (shelf) => {
      shelf.sums = {};
      for (const { id, entry } of shared) {
        const kept = await shelf.entries.get(id);
        const digest = digests.get(entry);
        if (kept?.standing !== "shared" || !digest) continue;
        if (kept.digest !== digest) await shelf.entries.put({ ...kept, digest });
        layInto(shelf.sums, digest);
      }
      return shelf.sums;
    });
  }

  /** @param {Standing} which @param {number} [atMost] @returns {Promise<Kept[]>} */
  #of(which, atMost) {
    return this.#database.with((db) => db.getAllFromIndex("entries", "standing", standing(which), atMost));
  }

  /**
   * One change, whole or not at all.
   * @param {(shelf: EntryShelf) => Promise<any>} work @param {IDBTransactionOptions} [durability]
   * @returns {Promise<any>}
   */
  #change(work, durability = STRICT) {
    return this.#database.with(async (db) => {
      const transaction = db.transaction(["facts", "entries", "aside"], "readwrite", durability);
      const failure = listenFor(transaction);
      const completed = transaction.done;
      completed.catch(() => {}); // `work` rejects first when a request fails; both must not be reported.
      try {
        const shelf = await new EntryShelf(transaction, this.#now()).begin();
        const result = await work(shelf);
        await shelf.end();
        await completed;
        this.device = shelf.device;
        return result;
      } catch (error) {
        // Without this the browser would commit the half that was asked for before the mistake.
        abort(transaction);
        throw failure() ?? error;
      }
    });
  }
}
