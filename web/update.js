// @ts-check
// The page on this device and its next version: registers the service worker, says how far it has come and when a new
// version has been fetched, and changes to it when the person says so.

import { Listeners } from "./listeners.js";
import { say } from "./words/words.js";

/** A page that stays open for days looks for a new version this often, in ms. */
const LOOK_AGAIN = 60 * 60_000;

export class Update {
  /** @type {Listeners<[]>} */
  #listeners = new Listeners();
  /** @type {ServiceWorkerRegistration | null} */
  #registration = null;
  /** Whether the person said here that the new version is to be used. */
  #asked = false;

  /** Whether a new version is here, whole, and waiting. */
  available = false;
  /** Resolves when nothing is being loaded. @type {() => Promise<void>} */
  quiet = async () => {};
  /** Whether this device has the whole page, and opens it without the laptop. */
  kept = false;
  /** How many of its files this device has, while they are being fetched. @type {{ kept: number, of: number } | null} */
  progress = null;
  /** Why this device has not the whole page: "untrusted", "unable", "full", or what went wrong, in its own words. */
  trouble = "";

  constructor() {
    if (!isSecureContext) this.trouble = "untrusted";
    else if (!navigator.serviceWorker) this.trouble = "unable";
    this.standing = { kept: this.kept, progress: this.progress, trouble: this.trouble };
    if (this.trouble) return;
    this.#hear();
    this.#tryToRegister();
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
    this.#asked = true;
    await this.quiet();
    this.#registration?.waiting?.postMessage("take over");
  }

  /** Looks for a new version now; no network is no news. What could not be fetched before is tried again. */
  async check() {
    if (this.kept) await this.#registration?.update().catch(() => {});
    else if (this.trouble) await this.#tryToRegister();
  }

  /**
   * @param {() => void} listen  told when `available`, `kept`, `progress` or `trouble` changes
   * @returns {() => void} the way to stop listening
   */
  onAvailable(listen) {
    return this.#listeners.add(listen);
  }

  async #tryToRegister() {
    try {
      await this.#register();
    } catch (error) {
      console.warn("this page will not open without the laptop", error);
      this.#become({ progress: null, trouble: String(error) });
    }
  }

  /** What a worker says of the page that it is fetching. */
  #hear() {
    navigator.serviceWorker.addEventListener("message", ({ data }) => {
      if (data?.build !== document.documentElement.dataset.build) return; // of the next version, not of this one
      if (data.failed) this.#become({ progress: null, trouble: data.failed === "QuotaExceededError" ? "full" : data.failed });
      else this.#become({ progress: { kept: data.kept, of: data.of }, trouble: "" });
    });
    navigator.serviceWorker.startMessages();
  }

  /** @param {Partial<Pick<Update, "kept" | "available" | "progress" | "trouble">>} news */
  #become(news) {
    Object.assign(this, news);
    const { kept, progress, trouble } = this;
    this.standing = { kept, progress, trouble };
    this.#listeners.tell();
  }

  async #register() {
    const registration = await navigator.serviceWorker.register(`${document.documentElement.dataset.base}/sw.js`, { updateViaCache: "none" });
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
    this.#become({ kept, available, ...(kept ? { progress: null, trouble: "" } : {}) });
  }

  /** The site's data was cleared under an open page, which goes on: loading it again would need the laptop. */
  #lost() {
    this.#registration = null;
    this.#become({ kept: false, available: false, progress: null, trouble: say("update-cleared") });
    this.check();
  }

  #changeWithTheWorker() {
    let controlled = Boolean(navigator.serviceWorker.controller);
    navigator.serviceWorker.addEventListener("controllerchange", () => {
      if (!navigator.serviceWorker.controller) return this.#lost();
      // The first worker of all takes charge too, and then there is nothing to change to. Otherwise every tab changes,
      // not only the one that asked: the old version's files are gone, and its page would fail at the next it needs.
      // But not in the middle of a reading: one that is being typed in another tab is finished first, or left.
      if (controlled && (this.#asked || !halfWritten())) location.reload();
      else if (controlled) addEventListener("hashchange", () => location.reload(), { once: true });
      controlled = true;
      this.#look();
    });
  }
}

/** Whether there is text on the page that loading it again would lose. */
function halfWritten() {
  return [...document.querySelectorAll("input[type=text], textarea")].some((/** @type {any} */ field) => field.value !== "");
}
