// @ts-check
// The attachments on this device: bytes under their SHA-256, kept in pieces, so that one that is still coming goes on
// tomorrow where it was cut off today.
//
// A piece counts when its transaction has completed, and lies where the last one ended. A blob counts when all its pieces
// together are what its name says; what is not is thrown away.

import { isFree, makeRoom } from "../../room.js";

/** @type {IDBTransactionOptions} */
const STRICT = { durability: "strict" };
/** Bytes, at most: the laptop takes no more at once. */
const PIECE = 250_000;
/** The laptop takes no larger one either. */
const LARGEST = 32_000_000;
/** Bytes that attachments leave free on a device: readings must find room for as long as anything does. */
const FOR_READINGS = 20_000_000;
/** The key of what a person is told when there is no more. */
export const FULL = "attachment-full";

/** `have`: how many bytes are here, from its start; `there`: the laptop said last that it has it. @typedef {{ blob: string, size: number, have: number, whole: boolean, there?: boolean }} Held */
/** As it travels. @typedef {{ blob: string, size: number, at: number, digest: string, data: string }} Piece */
/** @typedef {{ blob: string, size: number }} Named */

export class Blobs {
  #with;

  /** @param {(work: (db: any) => Promise<any>) => Promise<any>} withDatabase  runs work on the open database */
  constructor(withDatabase) {
    this.#with = withDatabase;
  }

  /**
   * Keeps what a person attached. Resolves when it is on the disk.
   * @param {Blob} file @returns {Promise<Named>} what an entry says of it
   */
  async keep(file) {
    if (!file.size || file.size > LARGEST) throw new Error("attachment-size");
    if (!(await this.hasRoom(file.size))) throw new Error(FULL);
    const bytes = new Uint8Array(await file.arrayBuffer());
    const [blob, size] = [await digestOf(bytes), bytes.length];
    const keeping = this.#change(async (blobs, pieces) => {
      if ((await blobs.get(blob))?.whole) return;
      await pieces.delete(allOf(blob));
      for (let at = 0; at < size; at += PIECE) pieces.put({ blob, at, bytes: bytes.slice(at, at + PIECE) });
      await blobs.put({ blob, size, have: size, whole: true });
    });
    await keeping.catch((failure) => {
      throw failure?.name === "QuotaExceededError" ? new Error(FULL) : failure;
    });
    return { blob, size };
  }

  /**
   * Whether so many bytes more leave readings their room; what the engine keeps for speed alone gives way first.
   * @param {number} size @returns {Promise<boolean>}
   */
  async hasRoom(size) {
    if (await isFree(size + FOR_READINGS)) return true;
    return (await makeRoom()) && isFree(size + FOR_READINGS);
  }

  /** What is here of one; nothing where none of it is. @param {string} blob @returns {Promise<Held | undefined>} */
  held(blob) {
    return this.#with((db) => db.get("blobs", blob));
  }

  /** Notes which the laptop has, as it said. @param {string[]} named @param {Set<string>} lacking those of them that it has not */
  async note(named, lacking = new Set()) {
    const held = new Map((await this.list()).map((one) => [one.blob, one]));
    const changed = named.filter((blob) => held.has(blob) && Boolean(held.get(blob)?.there) === lacking.has(blob));
    if (!changed.length) return;
    await this.#change(async (blobs) => {
      for (const blob of changed) await blobs.put({ ...(await blobs.get(blob)), there: !lacking.has(blob) });
    });
  }

  /** Every blob of which something is here. @returns {Promise<Held[]>} */
  list() {
    return this.#with((db) => db.getAll("blobs"));
  }

  /** The bytes of a blob, or null where it is not here whole. @param {string} blob @returns {Promise<Blob | null>} */
  async open(blob) {
    const [held, pieces] = await this.#with((db) => Promise.all([db.get("blobs", blob), db.getAll("pieces", allOf(blob))]));
    return held?.whole ? new Blob(pieces.map((/** @type {any} */ piece) => piece.bytes)) : null;
  }

  /** From a byte on, as far as the piece goes in which that lies. @param {Held} held @param {number} from @returns {Promise<Piece>} */
  async read({ blob, size }, from) {
    const piece = await this.#with(async (db) => {
      const range = IDBKeyRange.bound([blob], [blob, from]);
      return (await db.transaction("pieces").store.openCursor(range, "prev"))?.value;
    });
    const bytes = piece?.bytes.subarray(from - piece.at);
    if (!bytes?.length) throw new Error("attachment-not-whole");
    return { blob, size, at: from, digest: await digestOf(bytes), data: encode(bytes) };
  }

  /** All of a blob. @param {Held} held @returns {AsyncGenerator<Piece>} */
  async *pieces(held) {
    for (let at = 0; at < held.size; ) {
      const piece = await this.read(held, at);
      yield piece;
      at += decode(piece.data).length;
    }
  }

  /**
   * Takes a piece from the laptop or out of a file. One that is here already changes nothing.
   * @param {any} given
   * @returns {Promise<{ have: number, whole: boolean } | null>} null where it is damaged, or does not go on from what is here
   */
  async take(given) {
    const bytes = isPiece(given) ? decode(given.data) : null;
    if (!bytes?.length || given.at + bytes.length > given.size || (await digestOf(bytes)) !== given.digest) return null;
    const { blob, size, at } = given;
    const held = await this.#change(async (blobs, pieces) => {
      const before = (await blobs.get(blob)) ?? { blob, size, have: 0, whole: false };
      const end = at + bytes.length;
      if (before.whole || end <= before.have) return before;
      if (at > before.have || size !== before.size) return null;
      await pieces.put({ blob, at: before.have, bytes: bytes.slice(before.have - at) });
      const after = { ...before, have: end };
      await blobs.put(after);
      return after;
    });
    if (!held) return null;
    if (held.whole || held.have < held.size) return held;
    return (await this.prove(blob)) ? { have: held.size, whole: true } : null;
  }

  /** Holds the bytes that are here against their name; what is not what it says goes. @param {string} blob */
  async prove(blob) {
    const pieces = await this.#with((db) => db.getAll("pieces", allOf(blob)));
    const bytes = await new Blob(pieces.map((/** @type {any} */ piece) => piece.bytes)).arrayBuffer();
    const whole = (await digestOf(new Uint8Array(bytes))) === blob;
    await this.#change(async (blobs, kept) => {
      const held = await blobs.get(blob);
      if (whole && held) return blobs.put({ ...held, whole });
      await kept.delete(allOf(blob));
      return blobs.delete(blob);
    });
    return whole;
  }

  /** @param {(blobs: any, pieces: any) => Promise<any>} work @returns {Promise<any>} */
  #change(work) {
    return this.#with(async (db) => {
      const transaction = db.transaction(["blobs", "pieces"], "readwrite", STRICT);
      const result = work(transaction.objectStore("blobs"), transaction.objectStore("pieces"));
      await Promise.all([result, transaction.done]);
      return result;
    });
  }
}

/** @param {string} blob */
const allOf = (blob) => IDBKeyRange.bound([blob], [blob, []]);

/** Whether a line of a file is a piece; every other is to be an entry, or a heading. @param {any} what @returns {what is Piece} */
export function isPiece(what) {
  const { blob, size, at, digest, data } = what ?? {};
  const numbered = Number.isInteger(size) && size > 0 && size <= LARGEST && Number.isInteger(at) && at >= 0;
  return numbered && [blob, digest].every((name) => /^[0-9a-f]{64}$/.test(name)) && typeof data === "string";
}

/** @param {Uint8Array<ArrayBuffer>} bytes @returns {Promise<string>} */
async function digestOf(bytes) {
  const digest = await crypto.subtle.digest("SHA-256", bytes);
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** @param {Uint8Array} bytes */
function encode(bytes) {
  return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
}

/** @param {string} data @returns {Uint8Array<ArrayBuffer>} none where it is not base64 */
function decode(data) {
  try {
    return Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
  } catch {
    return new Uint8Array();
  }
}
