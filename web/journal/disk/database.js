// @ts-check
// The database of this device: what lies in it, how an older one is brought up to date, and that it is open when it is
// wanted. Knows nothing of entries.

import { openDB, unwrap } from "../../vendor/idb/idb.js";
import { makeRoom } from "../../room.js";

/** 1: entries and facts. 2: digests, and what was set aside. 3: what is in a file. 4: attachments. */
const VERSION = 4;
/** What a phone says of a database that it closed behind the page's back. */
const CLOSED = new Set(["InvalidStateError", "UnknownError"]);
const FULL = "QuotaExceededError";
/** What a person is told where another tab, of a later version of the page, has the database now. */
const NEWER = "database-newer";

export class Database {
  #name;
  /** @type {Promise<any> | null} the database, opened or being opened; null when the browser has closed it */
  #open = null;

  /** @param {string} name */
  constructor(name) {
    this.#name = name;
  }

  /**
   * Runs `work` on an open database. Phones close the database behind the page's back (it was in the background, the
   * storage process was ended), or have no room left but for what may give way: the same work is tried once more on a
   * fresh one, and a second failure is the person's to see. `work` must bear being done twice: the first may have completed just before its database went away.
   * @param {(db: any) => Promise<any>} work
   * @returns {Promise<any>}
   */
  async with(work) {
    try {
      return await work(await this.#opened());
    } catch (error) {
      const { name } = /** @type {DOMException} */ (error);
      if (!CLOSED.has(name) && !(name === FULL && (await makeRoom()))) throw error;
      this.#letGo();
      return work(await this.#opened());
    }
  }

  /** The one open database: two that ask at the same time must not open two, or one would stay open unseen for ever. */
  #opened() {
    if (!this.#open) {
      const opening = this.#opening();
      opening.catch(() => {
        if (this.#open === opening) this.#open = null;
      });
      this.#open = opening;
    }
    return this.#open;
  }

  #letGo() {
    this.#open?.then((db) => db.close()).catch(() => {});
    this.#open = null;
  }

  #opening() {
    return openDB(this.#name, VERSION, {
      upgrade,
      // Another tab still has an older version open: it closes itself on "versionchange", so waiting is right.
      blocked: () => console.warn("journal: waiting for another tab to let go"),
      blocking: (/** @type {number} */ _was, /** @type {number} */ _wanted, /** @type {any} */ event) => {
        event.target.close();
        this.#open = null;
      },
      terminated: () => {
        this.#open = null;
      },
    }).catch((/** @type {DOMException} */ error) => {
      throw error.name === "VersionError" ? new Error(NEWER) : error;
    });
  }
}

/**
 * Puts things without a promise for each: with ten thousand, those take as long as a third of the writing. Of one that
 * fails the transaction is aborted and says so; who only waits for that loses nothing.
 * @param {any} store of a transaction @returns {(value: any) => void}
 */
export function quietly(store) {
  const bare = unwrap(store);
  return (value) => void bare.put(value);
}

/**
 * What made a request of a transaction fail: the transaction itself, asked too early, knows no more than that it was
 * aborted, and a full disk would look like any mistake.
 * @param {any} transaction @returns {() => DOMException | null}
 */
export function listenFor(transaction) {
  /** @type {DOMException | null} */
  let failure = null;
  unwrap(transaction).addEventListener("error", (/** @type {any} */ { target }) => (failure ??= target.error));
  return () => failure;
}

/** @param {any} db @param {number} from @param {any} _to @param {any} transaction */
function upgrade(db, from, _to, transaction) {
  if (from < 1) {
    db.createObjectStore("entries", { keyPath: "id" }).createIndex("standing", ["standing", "entry.seq"]);
    db.createObjectStore("facts");
  }
  if (from < 2) {
    transaction.objectStore("entries").createIndex("digest", "digest");
    db.createObjectStore("aside", { keyPath: "text" });
  }
  // An index has only what has all of its keys: an entry that is in no file, as all of before, is not in this one.
  if (from < 3) transaction.objectStore("entries").createIndex("file", ["file", "standing"]);
  if (from < 4) {
    db.createObjectStore("blobs", { keyPath: "blob" });
    db.createObjectStore("pieces", { keyPath: ["blob", "at"] });
  }
}
