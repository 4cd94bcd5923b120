// @ts-check
// Makes the memory that the next start restores: a Python that has opened the desk and loaded as many of its questions
// as the memory holds, and that nobody has told or asked anything.

import { keptEngine } from "./compiled.js";
import { packMemory } from "./memory.js";
import { loadAhead, openDesk, readLibraries, startPython } from "./python.js";
import { keepSnapshot } from "./snapshot.js";
import { isFree } from "../room.js";

/** Bytes, of which the memory takes a third: what is kept for speed takes no room from readings and photos. */
const ROOM = 100_000_000;

/** @param {import("./snapshot.js").Of} of */
async function make(of) {
  if (!(await isFree(ROOM))) return;
  const [kept, libraries, python] = await Promise.all([
    keptEngine(of.build, of.runtime),
    readLibraries(of.runtime),
    startPython(of.runtime, { _makeSnapshot: true }),
  ]);
  if (!kept || kept.digest !== of.engine) return;
  openDesk(python, { ...libraries, engine: await kept.sound() });
  let memory = python.makeMemorySnapshot();
  await loadAhead(python, () => {
    const larger = python.makeMemorySnapshot();
    // The runtime cannot take back a memory that has grown beyond what it begins with.
    if (larger.length > memory.length) return false;
    memory = larger;
    return true;
  });
  await keepSnapshot(of, packMemory(memory));
}

addEventListener("message", async ({ data }) => {
  // One is enough, however many pages are open.
  await navigator.locks.request("snapshot-making", { ifAvailable: true }, (lock) => lock && make(data)).catch(console.warn);
  postMessage("done");
});
