// @ts-check
// Runs the engine: boots Python, then answers questions one at a time. It knows nothing of the page and keeps nothing.

import { compileEngine, dropEngine, keptEngine, keepEngine } from "./compiled.js";
import { askedAgain, bringFiles } from "./files.js";
import { BUILD, doorOf, fetchPython, FORGET, loadAhead, openDesk, PAUSE } from "./python.js";
import { readLibraries, readSource, restorePython, startPython } from "./python.js";
import { Damaged } from "./shelf.js";
import { restoreKept } from "./snapshot.js";

/** @typedef {{ build: string, runtime: string }} Boot */

/** How long the page is left alone before a second Python makes what the next start restores, in ms. */
const REST = 5000;

/** @type {((text: string) => string | Promise<string>) | null} */
let answer = null;

/**
 * Boots with the memory or the compiled engine that this phone kept earlier, or from source on any doubt; then has made
 * what the next start will want. A page of another build is not answered: its questions may differ.
 * @param {Boot} boot
 * @returns {Promise<"restored" | "compiled" | "source">}
 */
async function start({ runtime }) {
  fetchPython(runtime).catch(() => {}); // waited for below, and told there if it fails
  const kept = await keptEngine(BUILD, runtime);
  const of = { build: BUILD, runtime, engine: kept?.digest ?? "" };
  const restored = kept && (await restoreKept(of, (memory) => restore(runtime, memory)));
  if (restored?.started) {
    goOn(restored.started, runtime, kept);
    return "restored";
  }
  const [python, libraries] = await Promise.all([startPython(runtime), readLibraries(runtime)]);
  if (kept) {
    try {
      openDesk(python, { ...libraries, engine: await kept.sound() });
      answer = doorOf(python);
      afterwards(() => loadAhead(python).then(() => restored?.wanted && makeSnapshot(of)));
      return "compiled";
    } catch (error) {
      console.warn("the compiled engine did not open; starting from source", error);
      await dropEngine(BUILD);
      python.runPython(FORGET);
    }
  }
  openDesk(python, { ...libraries, engine: await readSource() });
  answer = doorOf(python);
  afterwards(async () => {
    await loadAhead(python);
    const engine = await keepEngine(BUILD, runtime, await compileEngine(python));
    makeSnapshot({ ...of, engine });
  });
  return "source";
}

/**
 * A restored Python and its door: a memory without one is given up like any that does not restore.
 * @param {string} runtime
 * @param {import("./snapshot.js").Memory} memory
 */
async function restore(runtime, memory) {
  const python = await restorePython(runtime, memory);
  return { python, door: doorOf(python) };
}

/**
 * Answers with a restored Python, and brings it its files. A next start does not find again what is damaged, and is asked
 * for; without them for any other reason there is no engine.
 * @param {Awaited<ReturnType<typeof restore>>} started
 * @param {string} runtime
 * @param {import("./shelf.js").Kept} kept the compiled engine that its memory was made with
 */
function goOn({ python, door }, runtime, kept) {
  const files = bringFiles(python, runtime, kept.sound);
  answer = askedAgain(door, files);
  files.then(
    () => afterwards(() => loadAhead(python)),
    (error) => postMessage({ [error instanceof Damaged ? "again" : "asleep"]: String(error) }),
  );
}

/** Once the first questions had their turn. @param {() => Promise<unknown>} work */
function afterwards(work) {
  setTimeout(() => work().catch(console.warn), PAUSE);
}

/**
 * By another worker, so that nobody waits for it; what becomes of it is nothing to this one.
 * @param {import("./snapshot.js").Of} of
 */
function makeSnapshot(of) {
  if (typeof Worker === "undefined") return;
  setTimeout(() => {
    const maker = new Worker(new URL("./maker.js", import.meta.url), { type: "module", name: "snapshot" });
    maker.onmessage = () => maker.terminate();
    maker.onerror = (event) => {
      event.preventDefault();
      console.warn("no memory was made", event.message);
      maker.terminate();
    };
    maker.postMessage(of);
  }, REST);
}

/**
 * @param {{ data: { boot?: Boot, id?: number, ask?: string } }} message
 */
async function receive({ data: { boot, id, ask } }) {
  if (boot) {
    if (boot.build !== BUILD) return postMessage({ asleep: "engine-other-build" });
    try {
      postMessage({ awake: BUILD, from: await start(boot) });
    } catch (error) {
      postMessage({ asleep: String(error) });
    }
    return;
  }
  try {
    if (!answer) throw new Error("asked before it was awake");
    postMessage({ id, answer: await answer(/** @type {string} */ (ask)) });
  } catch (error) {
    postMessage({ id, error: String(error) });
  }
}

addEventListener("message", receive);
