// @ts-check
// Those who want to hear of something, and the telling of it.

/**
 * @template {any[]} Told
 */
export class Listeners {
  /** @type {Set<(...told: Told) => void>} */
  #all = new Set();

  /**
   * @param {(...told: Told) => void} listen
   * @returns {() => void} the way to stop listening
   */
  add(listen) {
    this.#all.add(listen);
    return () => this.#all.delete(listen);
  }

  /** @param {Told} told */
  tell(...told) {
    for (const listen of this.#all) listen(...told);
  }
}
