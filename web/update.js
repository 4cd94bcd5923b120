// @ts-check
// The page on this device and its next version: registers the service worker, says when a new version has been fetched,
// and changes to it when the person says so.

import { Listeners } from "./listeners.js";

/** A page that stays open for days looks for a new version this often, in ms. */
const LOOK_AGAIN = 60 * 60_000;

export class Update {
  /** @type {Listeners<[]>} */
  #listeners = new Listeners();
  /** @type {ServiceWorkerRegistration | null} */
  #registration = null;

  /** Whether a new version is here, whole, and waiting. */
  available = false;
  /** Resolves when nothing is being loaded. @type {() => Promise<void>} */
  quiet = async () => {};
  /** Whether this device has the whole page, and opens it without the laptop. */
  kept = false;

  constructor() {
    if (!("serviceWorker" in navigator)) return;
    this.#register().catch((error) => console.warn("this page will not open without the laptop", error));
    this.#changeWithTheWorker();
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible") this.check();
    });
    setInterval(() => this.check(), LOOK_AGAIN);
  }

  /**
   * Changes to the new version; the page loads again by itself. Asked while files are still being read through the old
   * worker, the browser may put the change off by five minutes: so it is asked when `quiet` says that none are.
   */
  async apply() {
    await this.quiet();
    this.#registration?.waiting?.postMessage("take over");
  }

  /** Looks for a new version now; no network is no news. */
  async check() {
    await this.#registration?.update().catch(() => {});
  }

  /**
   * @param {() => void} listen  told when `available` or `kept` changes
   * @returns {() => void} the way to stop listening
   */
  onAvailable(listen) {
    return this.#listeners.add(listen);
  }

  async #register() {
    const registration = await navigator.serviceWorker.register("/sw.js", { updateViaCache: "none" });
    this.#registration = registration;
    const follow = () => registration.installing?.addEventListener("statechange", () => this.#look());
    registration.addEventListener("updatefound", follow);
    follow();
    this.#look();
  }

  #look() {
    const kept = Boolean(this.#registration?.active);
    const available = kept && Boolean(this.#registration?.waiting);
    if (kept === this.kept && available === this.available) return;
    [this.kept, this.available] = [kept, available];
    this.#listeners.tell();
  }

  #changeWithTheWorker() {
    let controlled = Boolean(navigator.serviceWorker.controller);
    navigator.serviceWorker.addEventListener("controllerchange", () => {
      // The first worker of all takes charge too, and then there is nothing to change to. Otherwise every tab changes,
      // not only the one that asked: the old version's files are gone, and its page would fail at the next it needs.
      if (controlled) location.reload();
      controlled = true;
      this.#look();
    });
  }
}
