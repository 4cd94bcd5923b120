// @ts-check
// What the engine keeps on the phone for its next start, in a cache named for its kind and build. Damaged memory or
// bytecode can run and answer wrongly, which is why nothing here is ever used on its name alone.

/**
 * What was found, before its bytes are read: `digest` is what was noted of them; `read` gives them, and `sound` gives
 * them if they are what they were.
 * @typedef {{digest: string, headers: Headers, read: Read, sound: Read}} Kept
 * @typedef {() => Promise<Uint8Array<ArrayBuffer>>} Read
 */

/** What was kept is not what was to be kept: none of its maker's fault, and it can be made anew. */
export class Damaged extends Error {}

/**
 * @param {Uint8Array<ArrayBuffer>} data
 * @returns {Promise<string>}
 */
async function digestOf(data) {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", data));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** @param {Read} read @returns {Read} */
function once(read) {
  /** @type {ReturnType<Read> | null} */
  let reading = null;
  return () => (reading ??= read());
}

export class Shelf {
  #kind;
  #name;
  #digestOf;

  /**
   * @param {string} kind
   * @param {string} build
   * @param {(data: Uint8Array<ArrayBuffer>) => string | Promise<string>} [digest] what its bytes are told by
   */
  constructor(kind, build, digest = digestOf) {
    this.#kind = kind;
    this.#name = `${kind}-${build}`;
    this.#digestOf = digest;
  }

  /**
   * What was kept under an address, or null. To read it takes so long that much else can be done meanwhile.
   * @param {string} address
   * @returns {Promise<Kept | null>}
   */
  async find(address) {
    const found = await caches.match(address, { cacheName: this.#name });
    if (!found) return null;
    const digest = found.headers.get("x-digest") ?? "";
    const read = once(async () => new Uint8Array(await found.arrayBuffer()));
    return { digest, headers: found.headers, read, sound: once(() => this.#sound(read, digest)) };
  }

  /** @param {Read} read @param {string} digest */
  async #sound(read, digest) {
    const data = await read();
    if ((await this.#digestOf(data)) === digest) return data;
    await this.drop();
    throw new Damaged(`${this.#name} is damaged`);
  }

  /**
   * Keeps it, and throws away what other builds kept of this kind.
   * @param {string} address
   * @param {Uint8Array<ArrayBuffer>} data
   * @param {Record<string, string>} [more] headers to know it by
   * @returns {Promise<string>} its digest
   */
  async keep(address, data, more = {}) {
    for (const name of await caches.keys()) {
      if (name.startsWith(`${this.#kind}-`) && name !== this.#name) await caches.delete(name);
    }
    const digest = await this.#digestOf(data);
    const headers = { ...more, "x-digest": digest, "content-type": "application/octet-stream" };
    await (await caches.open(this.#name)).put(address, new Response(data, { headers }));
    return digest;
  }

  async drop() {
    await caches.delete(this.#name);
  }
}
