// @ts-check
/// <reference lib="webworker" />
// Keeps the whole page on the device and serves it from there. One cache for one build: a page never gets half of two.
//
// The server fills in the build and the list of files. Nothing under /api is touched, and only /, the manifest, the files
// of the list and what another program shares are answered from here.

const self_ = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));

const BUILD = "%BUILD%";
/** Address and digest of every file of this build. @type {[string, string][]} */
// @ts-ignore: the server puts the list in place of this text
const FILES = "%FILES%";

/** After so many files the pages are told how far it has come: they draw it anew each time. */
const TOLD_EACH = 10;
const SHELF = "page-";
const CACHE = SHELF + BUILD;
/** Where a share is sent to, as the manifest says. */
const SHARE = "%BASE%/share";
/** What was shared, until a page has read it: device/handed.js takes it from here. */
const HANDED = "handed";

/** The digest that the server wrote on a response. @param {Response} response */
const digestOf = (response) => response.headers.get("etag")?.replace(/^W\//, "").replaceAll('"', "");

/**
 * The responses of earlier builds by their digest. A file that did not change is copied from there: an update must not
 * ask a phone for fourteen megabytes again.
 * @returns {Promise<Map<string | undefined, { shelf: Cache, request: Request }>>}
 */
async function earlier() {
  const found = new Map();
  for (const name of await caches.keys()) {
    if (!name.startsWith(SHELF) || name === CACHE) continue;
    const shelf = await caches.open(name);
    for (const request of await shelf.keys()) {
      const response = await shelf.match(request);
      if (response) found.set(digestOf(response), { shelf, request });
    }
  }
  return found;
}

/**
 * A response for another address than it came from. As it is it would go on naming the old one, and a module's imports
 * are found from that name: the new page would reach back into the old.
 * @param {Response} response
 */
function renamed(response) {
  const headers = new Headers(response.headers);
  headers.delete("content-encoding"); // The body is already unpacked.
  return new Response(response.body, { headers });
}

/**
 * The same bytes from an earlier build, or nothing.
 * @param {Awaited<ReturnType<typeof earlier>>} old
 * @param {string} path
 * @param {string} integrity
 */
async function copied(old, path, integrity) {
  const same = old.get(integrity);
  const response = same && (await same.shelf.match(same.request));
  if (!response) return undefined;
  return new URL(same.request.url).pathname === path ? response : renamed(response);
}

/** A file from the server, which must be the very bytes of the list. @param {string} path @param {string} integrity */
async function fetched(path, integrity) {
  // "no-cache": the browser's own cache may hold the same address with other bytes.
  const response = await fetch(path, { integrity, cache: "no-cache" });
  // A redirect kept here would break every later start without a network.
  if (!response.ok || response.redirected) throw new Error(`${path}: ${response.status}`);
  return response;
}

/** Tells every page of ours, those that another worker or none is in charge of too. @param {object} news */
async function tell(news) {
  for (const page of await self_.clients.matchAll({ includeUncontrolled: true })) page.postMessage(news);
}

/** File by file, so that an install cut short goes on from where it was. */
async function install() {
  const shelf = await caches.open(CACHE);
  const kept = new Set((await shelf.keys()).map((request) => new URL(request.url).pathname));
  const old = await earlier();
  for (const [place, [path, integrity]] of FILES.entries()) {
    if (place % TOLD_EACH === 0) await tell({ build: BUILD, kept: place, of: FILES.length });
    if (kept.has(path)) continue;
    await shelf.put(path, (await copied(old, path, integrity)) ?? (await fetched(path, integrity)));
  }
}

/** An install that fails says why: the page may know what to do about it. */
async function installOrTell() {
  try {
    await install();
  } catch (error) {
    await tell({ build: BUILD, failed: error instanceof DOMException ? error.name : String(error) });
    throw error;
  }
}

async function activate() {
  for (const name of await caches.keys()) {
    if (name.startsWith(SHELF) && name !== CACHE) await caches.delete(name);
  }
  await self_.clients.claim();
}

const PATHS = new Set(FILES.map(([path]) => path));

/** @param {FetchEvent} event */
async function answer(event) {
  const shelf = await caches.open(CACHE);
  return (await shelf.match(new URL(event.request.url).pathname)) ?? fetch(event.request);
}

/**
 * Whether a page of another site sent it. It can hide that, as "null", which is what the system's own share says too: so
 * the page lets in only what names a house of its own.
 * @param {Request} request
 */
const isForeign = (request) => ![null, "null", location.origin].includes(request.headers.get("origin"));

/**
 * Keeps what is shared, and shows the page, which brings it: no page may be open yet, and the laptop may be off.
 * @param {Request} request
 */
async function takeIn(request) {
  if (isForeign(request)) return Response.redirect("%BASE%/", 303);
  const shelf = await caches.open(HANDED);
  /** @type {string[]} */
  const kept = [];
  try {
    for (const file of filesOf(await request.formData())) {
      kept.push(`${SHARE}/${crypto.randomUUID()}/${encodeURIComponent(file.name)}`);
      await shelf.put(/** @type {string} */ (kept.at(-1)), new Response(file));
    }
    return Response.redirect("%BASE%/", 303);
  } catch (error) {
    console.warn("what was shared was not kept", error);
    for (const one of kept) await shelf.delete(one); // half of a share would look like all of it
    return Response.redirect("%BASE%/?unshared", 303);
  }
}

/** The files of a share; a text without one counts as a file with no name. @param {FormData} form @returns {File[]} */
function filesOf(form) {
  const files = form.getAll("files").filter((one) => one instanceof File && (one.name || one.size));
  return /** @type {File[]} */ (files.length ? files : [new File([form.get("text") ?? ""], "")]);
}

self_.addEventListener("install", (event) => event.waitUntil(installOrTell()));
self_.addEventListener("activate", (event) => event.waitUntil(activate()));
self_.addEventListener("message", (event) => {
  // Only on the person's word: a new version under an open page would mix the two.
  if (event.data === "take over") self_.skipWaiting();
});
self_.addEventListener("fetch", (event) => {
  const { origin, pathname } = new URL(event.request.url);
  if (event.request.method === "POST" && origin === location.origin && pathname === SHARE) {
    return event.respondWith(takeIn(event.request));
  }
  if (event.request.method !== "GET" || origin !== location.origin || !PATHS.has(pathname)) return;
  event.respondWith(answer(event));
});
