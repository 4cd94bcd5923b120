// @ts-check
// Brings attachments to the laptop and home from it, piece by piece, after the entries and never in their way.
//
// No list of what was sent is kept: the laptop is asked what it lacks, and from which byte each goes on. One that it will
// not have holds up no other.

import { FULL } from "./disk/blobs.js";
import { Halt } from "./exchange.js";

/** @typedef {import("./disk/blobs.js").Blobs} Blobs */
/** @typedef {import("./disk/blobs.js").Held} Held */
/** @typedef {import("./disk/blobs.js").Named} Named */
/** @typedef {import("./exchange.js").Told} Told */

/**
 * @typedef {object} Way
 * @property {Blobs} blobs
 * @property {typeof fetch} fetch  the way to the laptop
 * @property {() => Promise<any>} turn  resolves when nothing that goes first is under way
 * @property {(left: { here: number, there: number }) => void} progress  attachments still to be sent, and to be fetched
 */

const NAMED_AT_MOST = 500;
const PATIENCE = 30_000;

/**
 * One round over all of them. Throws a Halt when nobody answers.
 * @param {Way} way @param {Named[]} named  what the entries name
 * @returns {Promise<Told>} why some could not go over; nothing where all did
 */
export async function carry(way, named) {
  for (const held of await way.blobs.list()) if (!held.whole && held.have === held.size) await way.blobs.prove(held.blob);
  const here = new Map((await way.blobs.list()).map((held) => [held.blob, held]));
  const wanted = [...new Map(named.map((one) => [one.blob, one])).values()].filter(({ blob }) => !here.get(blob)?.whole);
  const why = await sendAll(way, [...here.values()].filter((held) => held.whole), wanted.length);
  return (await fetchAll(way, wanted, here)) || why;
}

/** @param {Way} way @param {Held[]} whole @param {number} there */
async function sendAll(way, whole, there) {
  let why = "";
  for (let from = 0; from < whole.length; from += NAMED_AT_MOST) {
    const some = new Map(whole.slice(from, from + NAMED_AT_MOST).map((held) => [held.blob, held]));
    const { lacking, refused } = await ask(way, "/api/blobs/lacking", { blobs: [...some.keys()] });
    if (refused) return refused;
    await way.blobs.note([...some.keys()], new Set(lacking.map((/** @type {Named} */ { blob }) => blob)));
    for (const [place, { blob, offset }] of lacking.entries()) {
      way.progress({ here: lacking.length - place, there });
      why = (await sendOne(way, /** @type {Held} */ (some.get(blob)), offset)) || why;
    }
  }
  return why;
}

/** @param {Way} way @param {Held} held @param {number} offset @returns {Promise<Told>} why not, or nothing */
async function sendOne(way, held, offset) {
  for (let at = offset; ; ) {
    await way.turn();
    const answer = await ask(way, "/api/blobs", await way.blobs.read(held, at));
    if (answer.refused) return answer.refused;
    if (answer.offset === null) {
      await way.blobs.note([held.blob]);
      return "";
    }
    if (!(answer.offset > at)) return "attachment-stopped";
    at = answer.offset;
  }
}

/** @param {Way} way @param {Named[]} wanted @param {Map<string, Held>} here */
async function fetchAll(way, wanted, here) {
  let why = "";
  for (const [place, { blob, size }] of wanted.entries()) {
    if (!(await way.blobs.hasRoom(size))) {
      why ||= FULL;
      break;
    }
    way.progress({ here: 0, there: wanted.length - place });
    why = (await fetchOne(way, blob, here.get(blob)?.have ?? 0)) || why;
  }
  way.progress({ here: 0, there: 0 });
  return why;
}

/** One that the laptop has not either is another device's to bring. @param {Way} way @param {string} blob @param {number} have */
async function fetchOne(way, blob, have) {
  for (let at = have; ; ) {
    await way.turn();
    const piece = await ask(way, `/api/blobs/${blob}?at=${at}`);
    if (piece.refused) return piece.status === 404 ? "" : piece.refused;
    const taken = await way.blobs.take(piece);
    if (!taken || !(taken.have > at)) return "attachment-damaged";
    if (taken.whole) {
      await way.blobs.note([blob]);
      return "";
    }
    at = taken.have;
  }
}

/**
 * What the laptop answers, or `{refused}` and why.
 * @param {Way} way @param {string} path @param {object} [said] @returns {Promise<any>}
 */
async function ask({ fetch }, path, said) {
  const headers = { "Content-Type": "application/json" };
  const post = said && { method: "POST", headers, body: JSON.stringify(said) };
  try {
    const reply = await fetch(path, { ...post, redirect: "error", signal: AbortSignal.timeout(PATIENCE) });
    const answer = await reply.json();
    if (reply.ok) return answer;
    const { status } = reply;
    return { status, refused: answer?.error?.message ?? { key: "laptop-answered", values: { status: String(status) } } };
  } catch {
    throw new Halt("away", "sync-no-signal");
  }
}
