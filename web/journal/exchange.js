// @ts-check
// One exchange with the laptop: send what it lacks, take what we lack, again and again until both hold the same.
//
// Every step may be lost or repeated: an entry is sent until it is acknowledged, and arriving twice changes nothing.
// No clock and no count decides anything. When nothing is left to send or to read, what the two hold is compared by its
// digests: one of them may have been put back to an older copy. Nothing is thrown away here, whatever the laptop says.

import { digestsOf } from "./digest.js";

/** @typedef {import("./store.js").Entry} Entry */
/** @typedef {import("./store.js").Store} Store */
/** @typedef {import("./store.js").News} News */
/** @typedef {import("./store.js").Weighed} Weighed */

/**
 * "away": nobody answered. "outdated": one side needs a newer version. "refused": the laptop answered and would not.
 * @typedef {"never" | "busy" | "shared" | "away" | "outdated" | "refused"} Phase
 */

/**
 * What a person is to be told: the key of a sentence, with its values where it names some; or the laptop's own words.
 * @typedef {string | { key: string, values: Record<string, string | number> }} Told
 */

/**
 * What one exchange needs: the store, whom to tell what arrived, the laptop's build and how far it has come; and the way
 * to the laptop, where that is not the network.
 * @typedef {object} Way
 * @property {Store} store
 * @property {(news: News) => Promise<void>} announce
 * @property {(build: string) => void} heard
 * @property {(left: { here: number, there: number }) => void} [progress]  entries still to be sent, and to be fetched
 * @property {number} [atMost]  entries in one request, where that is not as many as the laptop takes
 * @property {typeof fetch} [fetch]
 */

const PROTOCOL = 2;
const ENTRIES_AT_MOST = 500;
/** The laptop takes a megabyte; the margin is for what stands around the entries. */
const BYTES_AT_MOST = 900_000;
/** Smaller bodies are not worth packing. */
const PACK_FROM = 2_000;
const ROUNDS_AT_MOST = 2_000;
/** Each finds at least five thousand entries that differ, where so many do. */
const COMPARISONS_AT_MOST = 50;
const PATIENCE = 30_000;

/** Why an exchange ended without success, and what the screen says of it. */
export class Halt extends Error {
  /** @param {Phase} phase @param {Told} told */
  constructor(phase, told) {
    super(typeof told === "string" ? told : told.key);
    this.phase = phase;
    this.told = told;
  }
}

/** What the screen says of an error: of our own its key, of the browser's its name too. @param {unknown} error */
export const toldOf = (error) => String(error).replace(/^Error: /, "");

/**
 * One whole exchange. Resolves when neither side lacks anything; throws a Halt otherwise.
 * @param {Way} way
 */
export async function exchange(way) {
  const { store } = way;
  let { atMost = ENTRIES_AT_MOST } = way;
  let comparisons = 0;
  let asked = ask(way, await store.place(), await store.waiting(atMost), atMost);
  for (let round = 0; round < ROUNDS_AT_MOST; round += 1) {
    const { answer, sent, next } = await asked;
    if (answer.tooMuch) {
      if (sent.length > 1) atMost = Math.floor(sent.length / 2);
      else await setAside(store, sent[0]?.entry, answer.tooMuch);
    } else {
      way.heard(answer.build);
      const goesOn = Boolean(answer.left || next.length);
      if (goesOn) asked = ask(way, answer, next, atMost); // The laptop works on it while this one is written.
      const { pending } = await take(way, answer, sent);
      way.progress?.({ here: pending, there: answer.left });
      if (goesOn) continue;
      if (!pending && (await store.total()) === answer.total) return;
      if (!pending && comparisons === COMPARISONS_AT_MOST) break;
      if (!pending) {
        comparisons += 1;
        await compare(way);
      }
    }
    asked = ask(way, await store.place(), await store.waiting(atMost), atMost);
  }
  throw new Halt("refused", "sync-endless");
}

/**
 * One request, and while it is under way what this device can do besides: the digests of what goes, and what goes next.
 * Nothing is noted: an answer that is never taken was never given.
 * @param {Way} way @param {{ database: string | null, cursor: number }} place @param {Entry[]} waiting @param {number} atMost
 * @returns {Promise<{ answer: any, sent: Weighed[], next: Entry[] }>}
 */
function ask(way, { database, cursor }, waiting, atMost) {
  const entries = fitting(waiting);
  const next = entries.length ? way.store.waiting(atMost, entries) : [];
  const all = Promise.all([post(way, "", { database, cursor, entries }), weigh(entries), next]);
  const under = all.then(([answer, sent, after]) => ({ answer, sent, next: after }));
  under.catch(() => {}); // Where what came before it could not be written, nobody waits for it.
  return under;
}

/** @param {Way} way @param {any} answer @param {Weighed[]} sent @returns {Promise<import("./store.js").Counts>} how all stands then */
async function take({ store, announce }, answer, sent) {
  const [arrived, instead] = await Promise.all([answer.entries, answer.instead].map(weigh));
  const news = await store.applySync(answer, sent, arrived, instead);
  const [counts] = await Promise.all([store.counts(), announce(news)]);
  return counts;
}

/** @param {Entry[]} entries @returns {Promise<Weighed[]>} */
async function weigh(entries) {
  return [...(await digestsOf(entries))].map(([entry, digest]) => ({ entry, digest }));
}

/**
 * Finds out which entries one of the two lacks: brings home what the laptop has, and marks what it lacks to be sent. Where
 * none is found, it was our account of what we hold that was wrong, or the laptop has gone on meanwhile.
 * @param {Way} way
 */
async function compare(way) {
  const { store } = way;
  const { differ } = await post(way, "/compare", { sums: await store.sums() });
  const lacking = [];
  const surplus = [];
  for (const [place, theirs] of Object.entries(differ)) {
    const ours = new Set(await store.digestsIn(place));
    lacking.push(...theirs.filter((/** @type {string} */ digest) => !ours.delete(digest)));
    surplus.push(...ours);
  }
  if (!lacking.length && !surplus.length) await store.recount();
  await bringHome(way, lacking);
  await store.resend(surplus);
}

/** @param {Way} way @param {string[]} digests */
async function bringHome(way, digests) {
  for (let waiting = digests; waiting.length; ) {
    const { entries } = await post(way, "/fetch", { digests: waiting.slice(0, ENTRIES_AT_MOST) });
    const arrived = await weigh(entries);
    await way.announce(await way.store.bringHome(arrived));
    const here = new Set(arrived.map(({ digest }) => digest));
    const left = waiting.filter((digest) => !here.has(digest));
    if (left.length === waiting.length) break; // The laptop has lost them since it named them.
    waiting = left;
    way.progress?.({ here: 0, there: waiting.length });
  }
}

/**
 * The laptop's answer, or `{tooMuch}` when the request was larger than it takes; a Halt for anything else.
 * @param {Way} way @param {string} path @param {object} said
 */
async function post(way, path, said) {
  const { body, headers } = await pack(JSON.stringify({ protocol: PROTOCOL, device: way.store.device, ...said }));
  const reply = await send(way, path, body, headers);
  if (reply.ok) return read(reply);
  const why = await reason(reply);
  if (reply.status === 413) return { tooMuch: why };
  throw new Halt(reply.status === 409 ? "outdated" : "refused", why);
}

/** An answer that was cut off on the way is none. @param {Response} reply */
async function read(reply) {
  try {
    return await reply.json();
  } catch {
    throw new Halt("away", "sync-no-signal");
  }
}

/** @param {Way} way @param {string} path @param {BodyInit} body @param {Record<string, string>} headers */
async function send({ fetch = globalThis.fetch.bind(globalThis) }, path, body, headers) {
  try {
    const signal = AbortSignal.timeout(PATIENCE);
    return await fetch(`/api/sync${path}`, { method: "POST", headers, body, redirect: "error", signal });
  } catch {
    throw new Halt("away", "sync-no-signal");
  }
}

/** @param {string} text @returns {Promise<{ body: BodyInit, headers: Record<string, string> }>} */
async function pack(text) {
  const headers = { "Content-Type": "application/json" };
  if (text.length < PACK_FROM || !("CompressionStream" in globalThis)) return { body: text, headers };
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream("gzip"));
  return { body: await new Response(stream).arrayBuffer(), headers: { ...headers, "Content-Encoding": "gzip" } };
}

/** As many of the entries as fit in one request, but always one. @param {Entry[]} entries @returns {Entry[]} */
function fitting(entries) {
  const encoder = new TextEncoder();
  let bytes = 0;
  let count = 0;
  for (const entry of entries) {
    bytes += encoder.encode(JSON.stringify(entry)).length + 1;
    if (count && bytes > BYTES_AT_MOST) break;
    count += 1;
  }
  return entries.slice(0, count);
}

/** @param {Response} reply @returns {Promise<Told>} */
async function reason(reply) {
  const body = await reply.json().catch(() => null);
  return body?.error?.message ?? { key: "laptop-answered", values: { status: String(reply.status) } };
}

/**
 * An entry that is too large by itself must not hold up the rest.
 * @param {Store} store
 * @param {Entry | undefined} entry
 * @param {Told} message
 */
async function setAside(store, entry, message) {
  if (!entry) throw new Halt("refused", message);
  await store.refuse(entry.id, message);
}
