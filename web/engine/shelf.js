// @ts-check
// What the engine keeps on the phone for its next start, in a cache named for its kind and build. Damaged memory or
// bytecode can run and answer wrongly, which is why nothing here is ever used on its name alone.

/** @typedef {{data: Uint8Array<ArrayBuffer>, digest: string, headers: Headers}} Kept */

/**
 * @param {BufferSource} data
 * @returns {Promise<string>}
 */
async function digestOf(data) {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", data));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

export class Shelf {
  #kind;
  #name;

  /** @param {string} kind @param {string} build */
  constructor(kind, build) {
    this.#kind = kind;
    this.#name = `${kind}-${build}`;
  }

  /**
   * What was kept under an address, whole as it was kept, or null.
   * @param {string} address
   * @returns {Promise<Kept | null>}
   */
  async find(address) {
    const found = await caches.match(address, { cacheName: this.#name });
    if (!found) return null;
    const data = new Uint8Array(await found.arrayBuffer());
    const digest = await digestOf(data);
    if (digest === found.headers.get("x-digest")) return { data, digest, headers: found.headers };
    await this.drop();
    return null;
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
    const digest = await digestOf(data);
    const headers = { ...more, "x-digest": digest, "content-type": "application/octet-stream" };
    await (await caches.open(this.#name)).put(address, new Response(data, { headers }));
    return digest;
  }

  async drop() {
    await caches.delete(this.#name);
  }
}
