// @ts-check
// The journal on this device: the only file that touches IndexedDB. An entry goes in once, whole, and never changes.
//
// Knows: entries, which of them the laptop has, and the few facts that go with them (device, sequence, stamp, cursor).
// Refuses: to call anything saved before its transaction has completed with durability "strict". The browsers' default
// may keep it in memory for half a minute, and a battery that dies then takes every reading of that time with it.

import { openDB } from "../vendor/idb/idb.js";
import { laterStamp, nextStamp } from "./clock.js";
import { newDevice, newId } from "./ids.js";

/** @type {IDBTransactionOptions} */
const STRICT = { durability: "strict" };
/** What a phone says of a database that it closed behind the page's back. */
const CLOSED = new Set(["InvalidStateError", "UnknownError"]);

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

/** @typedef {{ id: string, entry: Entry, standing: Standing, why?: string }} Kept */
/** @typedef {{ entries: number, pending: number, refused: number }} Counts */
/** @typedef {{ id: string, key: string, message: string }} Rejection */
/** @typedef {{ database: string | null, cursor: number }} Place */

/** All of one standing, in the order they were written. @param {Standing} which */
function standing(which) {
  return IDBKeyRange.bound([which], [which, []]);
}

/** @param {any} entries @param {string} id @param {Standing} next @param {string} [why] */
async function restand(entries, id, next, why) {
  const kept = await entries.get(id);
  if (!kept || kept.standing === next) return;
  // A refusal is kept until the other side takes it after all; an acknowledgment ends the matter.
  await entries.put(why ? { ...kept, standing: next, why } : { id: kept.id, entry: kept.entry, standing: next });
}

/**
 * Gives this browser a new name, and all that it wrote and has not shared with it, numbered anew.
 * @param {any} facts @param {any} entries @returns {Promise<string>} the name
 */
async function rename(facts, entries) {
  const [was, device] = [await facts.get("device"), newDevice()];
  let seq = 0;
  for (const kept of await entries.index("standing").getAll(standing("waiting"))) {
    if (kept.entry.device !== was) continue;
    seq += 1;
    await entries.put({ ...kept, entry: { ...kept.entry, device, seq } });
  }
  await Promise.all([facts.put(device, "device"), facts.put(seq, "seq")]);
  return device;
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
  #name;
  #now;
  /** @type {any} the open database, or null when the browser has closed it */
  #database = null;

  /** This browser on this device. */
  device = "";

  /**
   * @param {string} name
   * @param {() => number} now
   */
  constructor(name, now) {
    this.#name = name;
    this.#now = now;
  }

  /**
   * Opens the journal. Rejects when the browser will not give it: the page must then say that it cannot save.
   * @param {object} [options]
   * @param {string} [options.name]
   * @param {() => number} [options.now]
   */
  static async open({ name = "scantling", now = Date.now } = {}) {
    const store = new Store(name, now);
    store.device = await store.#change(async (facts) => {
      const known = await facts.get("device");
      if (known) return known;
      const made = newDevice();
      await facts.put(made, "device");
      return made;
    });
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
    return this.#change(async (facts, entries) => {
      const kept = await entries.get(id);
      if (kept) return kept.entry;
      // Asked for each time: another tab may have given this browser a new name since.
      const device = await facts.get("device");
      const seq = ((await facts.get("seq")) ?? 0) + 1;
      const stamp = nextStamp(await facts.get("stamp"), this.#now(), device);
      const entry = { id, device, seq, stamp, version: 1, kind, body, supersedes };
      await Promise.all([
        entries.add({ id, entry, standing: "waiting" }),
        facts.put(seq, "seq"),
        facts.put(stamp, "stamp"),
      ]);
      return entry;
    });
  }

  /**
   * Entries from a file: those already here stay as they are, new ones wait to be sent.
   * @param {Entry[]} given
   * @returns {Promise<Entry[]>} the entries that were new here
   */
  add(given) {
    return this.#change((facts, entries) => this.#admit(facts, entries, given, "waiting"));
  }

  /** @returns {Promise<Kept[]>} */
  all() {
    return this.#with((db) => db.getAll("entries"));
  }

  /** @returns {Promise<Counts>} */
  counts() {
    return this.#with(async (db) => {
      const index = db.transaction("entries").store.index("standing");
      const [entries, pending, refused] = await Promise.all([
        index.objectStore.count(),
        index.count(standing("waiting")),
        index.count(standing("refused")),
      ]);
      return { entries, pending, refused };
    });
  }

  /** The next entries to send, in the order they were written. @param {number} atMost @returns {Promise<Entry[]>} */
  async waiting(atMost) {
    const found = await this.#of("waiting", atMost);
    return found.map((one) => one.entry);
  }

  /** Entries that the laptop would not have, each with its reason. */
  refused() {
    return this.#of("refused");
  }

  /** How many entries of each device are here and known to the laptop. @returns {Promise<Record<string, number>>} */
  async sharedByDevice() {
    /** @type {Record<string, number>} */
    const counts = {};
    for (const { entry } of await this.#of("shared")) counts[entry.device] = (counts[entry.device] ?? 0) + 1;
    return counts;
  }

  /** Where reading the laptop's journal has come to. @returns {Promise<Place>} */
  place() {
    return this.#with(async (db) => ({
      database: (await db.get("facts", "database")) ?? null,
      cursor: (await db.get("facts", "cursor")) ?? 0,
    }));
  }

  /**
   * What one exchange brought, all of it or none: a cursor that moved without its entries would skip them for ever. When
   * the laptop has other entries under our numbers, this browser is a copy of one that wrote them (a phone restored from a
   * backup): it goes on under a new name, and what the laptop lacks of it waits to be sent under that.
   * @param {Place & { acked: string[], rejected: Rejection[], entries: Entry[] }} reply
   * @returns {Promise<Entry[]>} the entries that were new here
   */
  async applySync({ acked, rejected, entries: arrived, database, cursor }) {
    const { fresh, device } = await this.#change(async (facts, entries) => {
      for (const id of acked) await restand(entries, id, "shared");
      let device = await facts.get("device");
      for (const { id, key, message } of rejected) {
        const ours = (await entries.get(id))?.entry.device === device;
        if (ours && key === "seq-taken") device = await rename(facts, entries);
        else await restand(entries, id, "refused", message);
      }
      const fresh = await this.#admit(facts, entries, arrived, "shared");
      for (const { id } of arrived) await restand(entries, id, "shared");
      await Promise.all([facts.put(database, "database"), facts.put(cursor, "cursor")]);
      return { fresh, device };
    });
    this.device = device;
    return fresh;
  }

  /**
   * Has entries sent again, those of the named devices or all; and the laptop's journal read from `cursor` on.
   * @param {{ devices?: string[], database?: string, cursor?: number }} what
   * @returns {Promise<void>}
   */
  rewind({ devices, database, cursor }) {
    return this.#change(async (facts, entries) => {
      for (const kept of await entries.index("standing").getAll(standing("shared"))) {
        if (!devices || devices.includes(kept.entry.device)) await entries.put({ ...kept, standing: "waiting" });
      }
      if (database !== undefined) await facts.put(database, "database");
      if (cursor !== undefined) await facts.put(cursor, "cursor");
    });
  }

  /** @param {Standing} which @param {number} [atMost] @returns {Promise<Kept[]>} */
  #of(which, atMost) {
    return this.#with((db) => db.getAllFromIndex("entries", "standing", standing(which), atMost));
  }

  /**
   * Puts entries from elsewhere beside our own; one whose id is here already changes nothing.
   * @param {any} facts @param {any} entries @param {Entry[]} given @param {Standing} standing
   */
  async #admit(facts, entries, given, standing) {
    const fresh = [];
    const device = await facts.get("device");
    let stamp = await facts.get("stamp");
    let seq = (await facts.get("seq")) ?? 0;
    for (const entry of given) {
      if (await entries.get(entry.id)) continue;
      await entries.put({ id: entry.id, entry, standing });
      fresh.push(entry);
      stamp = laterStamp(stamp, entry.stamp, this.#now());
      // Entries of ours that this browser had lost: the sequence goes on after them, or two would share a number.
      if (entry.device === device) seq = Math.max(seq, entry.seq);
    }
    await Promise.all([facts.put(stamp, "stamp"), facts.put(seq, "seq")]);
    return fresh;
  }

  /**
   * One change, whole or not at all.
   * @param {(facts: any, entries: any) => Promise<any>} work
   * @returns {Promise<any>}
   */
  #change(work) {
    return this.#with(async (db) => {
      const transaction = db.transaction(["facts", "entries"], "readwrite", STRICT);
      const completed = transaction.done;
      completed.catch(() => {}); // `work` rejects first when a request fails; both must not be reported.
      try {
        const result = await work(transaction.objectStore("facts"), transaction.objectStore("entries"));
        await completed;
        return result;
      } catch (error) {
        // Without this the browser would commit the half that was asked for before the mistake.
        abort(transaction);
        throw error;
      }
    });
  }

  /**
   * Runs `work` on an open database. Phones close the database behind the page's back (it was in the background, the
   * storage process was ended): the same work is tried once more on a fresh one, and a second failure is the person's
   * to see. `work` must bear being done twice: the first may have completed just before its database went away.
   * @param {(db: any) => Promise<any>} work
   * @returns {Promise<any>}
   */
  async #with(work) {
    try {
      this.#database ??= await this.#openDatabase();
      return await work(this.#database);
    } catch (error) {
      if (!CLOSED.has(/** @type {DOMException} */ (error).name)) throw error;
      this.#database?.close();
      this.#database = await this.#openDatabase();
      return work(this.#database);
    }
  }

  #openDatabase() {
    return openDB(this.#name, 1, {
      upgrade(/** @type {any} */ db) {
        const entries = db.createObjectStore("entries", { keyPath: "id" });
        entries.createIndex("standing", ["standing", "entry.seq"]);
        db.createObjectStore("facts");
      },
      // Another tab still has an older version open: it closes itself on "versionchange", so waiting is right.
      blocked: () => console.warn("journal: waiting for another tab to let go"),
      blocking: (/** @type {number} */ _was, /** @type {number} */ _wanted, /** @type {any} */ event) => {
        event.target.close();
        this.#database = null;
      },
      terminated: () => {
        this.#database = null;
      },
    });
  }
}
