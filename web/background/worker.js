// @ts-check
/// <reference lib="webworker" />
// Shares the journal with the laptop while no page is open: the browser starts this when the signal is back, where it can
// (Background Sync). It is in charge of no page and answers no request; the worker at the root does that.

import { carry } from "../journal/carry.js";
import { exchange } from "../journal/exchange.js";
import { Store } from "../journal/store.js";

const self_ = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));

/** One whole exchange by the page's own code, and then attachments. Rejected, it is tried again by the browser. */
async function share() {
  const store = await Store.open();
  const { origin, token } = await store.way();
  /** @type {typeof fetch} */
  const ask = (path, init = {}) => {
    const headers = new Headers(init.headers);
    if (token) headers.set("Authorization", `Bearer ${token}`);
    return fetch(origin + path, { ...init, headers });
  };
  await navigator.locks.request("scantling-sync", { ifAvailable: true }, async (lock) => {
    if (!lock) return; // An open page is at it.
    const pages = new BroadcastChannel("scantling-journal");
    const announce = async (/** @type {object} */ news) => pages.postMessage(news);
    try {
      await exchange({ store, announce, heard: () => {}, fetch: ask });
    } finally {
      pages.close();
    }
  });
  const bodies = (await store.all()).filter(({ entry }) => entry.kind === "attachment").map(({ entry }) => /** @type {any} */ (entry.body));
  const named = bodies.filter(({ blob }) => typeof blob === "string");
  await carry({ blobs: store.blobs, fetch: ask, turn: async () => {}, progress: () => {} }, named);
}

self_.addEventListener("sync", (event) => /** @type {any} */ (event).waitUntil(share()));
