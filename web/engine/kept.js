// @ts-check
// The engine's last answers, kept on this device for the next start: a page of another build does not see them, and the
// journal is kept elsewhere. Whatever is wrong with them, the page starts without; they can always be worked out anew.

const SHELF = "answers-";
const NAME = "/answers";
/** Written when the answers have come to rest, in ms, or when the page is put away. */
const REST = 1500;
/** Storage that does not answer in this time, in ms, keeps nothing for this start. */
const PATIENCE = 1000;

export class Kept {
  #shelf;
  #timer = 0;
  /** @type {(() => any[]) | null} what to write, when it is time */
  #waiting = null;

  /** @param {string} build @param {any[]} known questions and answers as they were saved */
  constructor(build, known) {
    this.#shelf = SHELF + build;
    this.known = known;
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "hidden") this.#write();
    });
  }

  /** Never fails: at worst nothing was kept. @param {string} build */
  static async open(build) {
    try {
      const late = new Promise((_, refuse) => setTimeout(refuse, PATIENCE));
      const found = await Promise.race([caches.open(SHELF + build).then((shelf) => shelf.match(NAME)), late]);
      const known = found ? await found.json() : [];
      return new Kept(build, known.filter(isKnown));
    } catch {
      return new Kept(build, []);
    }
  }

  /** Keeps answers, before long. @param {() => any[]} known gives them when they are written */
  save(known) {
    this.#waiting = known;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#write(), REST);
  }

  async #write() {
    clearTimeout(this.#timer);
    const known = this.#waiting?.();
    this.#waiting = null;
    if (!known) return;
    try {
      const shelf = await caches.open(this.#shelf);
      await shelf.put(NAME, new Response(JSON.stringify(known)));
      for (const name of await caches.keys()) {
        if (name.startsWith(SHELF) && name !== this.#shelf) await caches.delete(name);
      }
    } catch (error) {
      console.warn("the next start will wait for the engine", error); // no room, or no such storage here
    }
  }
}

/** @param {any} one */
function isKnown(one) {
  return Array.isArray(one) && typeof one[0] === "string" && typeof one[1]?.held === "string" && one[1].reply?.answer;
}
