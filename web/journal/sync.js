// @ts-check
// The exchange with the laptop: send what it lacks, take what we lack, again and again until neither lacks anything.
//
// Every step may be lost or repeated: an entry is sent until it is acknowledged, and arriving twice changes nothing.
// No clock decides anything. Nothing is thrown away here, whatever the laptop says.

import { Listeners } from "../listeners.js";

/** @typedef {import("./store.js").Entry} Entry */
/** @typedef {import("./store.js").Store} Store */

/**
 * "away": nobody answered. "outdated": one side needs a newer version. "refused": the laptop answered and would not.
 * @typedef {"never" | "busy" | "shared" | "away" | "outdated" | "refused"} Phase
 */

const PROTOCOL = 1;
const ENTRIES_AT_MOST = 500;
/** The laptop takes a megabyte; the margin is for what stands around the entries. */
const BYTES_AT_MOST = 900_000;
/** Smaller bodies are not worth packing. */
const PACK_FROM = 2_000;
const ROUNDS_AT_MOST = 2_000;
const PATIENCE = 30_000;
/** After an entry: the next often follows at once and can go with it. */
const SOON = 500;
const FIRST_DELAY = 5_000;
const LAST_DELAY = 5 * 60_000;

/** Why an exchange ended without success; its message is what the screen says. */
class Halt extends Error {
  /** @param {Phase} phase @param {string} words */
  constructor(phase, words) {
    super(words);
    this.phase = phase;
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

/** @param {Response} reply @returns {Promise<string>} */
async function reason(reply) {
  const body = await reply.json().catch(() => null);
  return body?.error?.message ?? `the laptop answered ${reply.status}`;
}

/**
 * One whole exchange. Resolves when neither side lacks anything; throws a Halt otherwise.
 * @param {object} options
 * @param {Store} options.store
 * @param {(fresh: Entry[]) => Promise<void>} options.announce
 * @param {(build: string) => void} options.heard
 */
async function exchange({ store, announce, heard }) {
  let atMost = ENTRIES_AT_MOST;
  let healed = false;
  for (let round = 0; round < ROUNDS_AT_MOST; round += 1) {
    const entries = fitting(await store.waiting(atMost));
    const answer = await post({ protocol: PROTOCOL, device: store.device, ...(await store.place()), entries });
    if (answer.tooMuch) {
      if (entries.length > 1) atMost = Math.floor(entries.length / 2);
      else await setAside(store, entries[0], answer.tooMuch);
      continue;
    }
    if (answer.build) heard(answer.build);
    if (answer.reset) {
      // Another journal, or an older copy of it: it may lack anything, so it is offered everything.
      await store.rewind({ database: answer.database, cursor: 0 });
      continue;
    }
    await announce(await store.applySync(answer));
    if (answer.more || (await store.waiting(1)).length) continue;
    if (healed || !(await heal(store, answer.have))) return;
    healed = true;
  }
  throw new Halt("refused", "the exchange did not come to an end");
}

/**
 * The laptop's answer, or `{tooMuch}` when the request was larger than it takes; a Halt for anything else.
 * @param {object} body
 */
async function post(body) {
  const { body: packed, headers } = await pack(JSON.stringify(body));
  const reply = await send(packed, headers);
  if (reply.ok) return reply.json();
  const why = await reason(reply);
  if (reply.status === 413) return { tooMuch: why };
  throw new Halt(reply.status === 409 ? "outdated" : "refused", why);
}

/** @param {BodyInit} body @param {Record<string, string>} headers @returns {Promise<Response>} */
async function send(body, headers) {
  try {
    const signal = AbortSignal.timeout(PATIENCE);
    return await fetch("/api/sync", { method: "POST", headers, body, redirect: "error", signal });
  } catch {
    throw new Halt("away", "no signal");
  }
}

/**
 * An entry that is too large by itself must not hold up the rest.
 * @param {Store} store
 * @param {Entry | undefined} entry
 * @param {string} message
 */
async function setAside(store, entry, message) {
  if (!entry) throw new Halt("refused", message);
  const { database, cursor } = await store.place();
  const rejected = [{ id: entry.id, key: "too-large", message }];
  await store.applySync({ acked: [], rejected, entries: [], database, cursor });
}

/**
 * Compares counts per device. Where the laptop has fewer it lost rows (an old copy was put back): send that device's
 * again. Where we have fewer we lost some: read from the start.
 * @param {Store} store
 * @param {Record<string, number>} theirs
 * @returns {Promise<boolean>} whether there is something to heal
 */
async function heal(store, theirs) {
  const ours = await store.sharedByDevice();
  const devices = Object.keys(ours).filter((device) => (theirs[device] ?? 0) < ours[device]);
  const behind = Object.keys(theirs).some((device) => (ours[device] ?? 0) < theirs[device]);
  if (!devices.length && !behind) return false;
  await store.rewind({ devices, ...(behind ? { cursor: 0 } : {}) });
  return true;
}

/**
 * Keeps the two journals together: at the start, after each entry, when the network or the page comes back, and again
 * after ever longer pauses while nobody answers.
 */
export class Sync {
  #options;
  /** @type {Listeners<[string]>} */
  #listeners = new Listeners();
  #delay = FIRST_DELAY;
  #timer = 0;
  /** @type {Promise<void> | null} */
  #running = null;

  /** @type {Phase} */
  phase = "never";
  /** What the screen says of it. */
  state = "not shared yet";

  /**
   * @param {object} options
   * @param {import("./journal.js").Journal} options.journal
   * @param {(build: string) => void} options.heard  told the laptop's build at each exchange
   */
  constructor({ journal, heard }) {
    this.#options = { store: journal.store, announce: journal.announce.bind(journal), heard };
    journal.onChange(() => {
      // While nobody answers the pauses decide: a phone that tried at every reading would empty its battery on it.
      if (journal.counts().pending && this.phase !== "away") this.#later(SOON);
    });
    addEventListener("online", () => this.now());
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible") this.now();
    });
    this.#later(0);
  }

  /** Shares now, or waits for the exchange that is under way. @returns {Promise<string>} what the screen says of it */
  async now() {
    this.#running ??= this.#share().finally(() => (this.#running = null));
    await this.#running;
    return this.state;
  }

  /** @param {(state: string) => void} listen @returns {() => void} the way to stop listening */
  onState(listen) {
    return this.#listeners.add(listen);
  }

  /** One exchange, unless another tab is at it already: that is left to it, and looked after later. */
  async #share() {
    clearTimeout(this.#timer);
    await navigator.locks.request("scantling-sync", { ifAvailable: true }, async (lock) => {
      if (!lock) return this.#later(FIRST_DELAY);
      this.#become("busy", "sharing");
      try {
        await exchange(this.#options);
        this.#delay = FIRST_DELAY;
        this.#become("shared", "shared");
      } catch (error) {
        const halt = error instanceof Halt ? error : new Halt("refused", String(error));
        this.#become(halt.phase, halt.message);
        this.#later(this.#delay);
        this.#delay = Math.min(this.#delay * 2, LAST_DELAY);
      }
    });
  }

  /** @param {Phase} phase @param {string} state */
  #become(phase, state) {
    [this.phase, this.state] = [phase, state];
    this.#listeners.tell(state);
  }

  /** @param {number} ms */
  #later(ms) {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.now(), ms);
  }
}
