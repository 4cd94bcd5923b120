// @ts-check
// Runs the engine: boots Python, then answers questions one at a time. It knows nothing of the page and keeps nothing.

import { compileEngine, dropEngine, keptEngine, keepEngine } from "./compiled.js";

/** The build this script was served with; a page of another build must not be answered, its questions may differ. */
const [, BASE = "", BUILD = ""] = /^(.*)\/v\/([^/]+)\/engine\/[^/]+$/.exec(new URL(import.meta.url).pathname) ?? [];

/** @typedef {{ build: string, runtime: string }} Boot */

/** @type {((text: string) => string) | null} */
let answer = null;

/**
 * The bytes of one file of ours; a page of "not found" must never be read as an archive.
 * @param {string} url
 * @returns {Promise<Uint8Array>}
 */
async function bytes(url) {
  const reply = await fetch(url);
  if (!reply.ok) throw new Error(`${url}: ${reply.status}`);
  return new Uint8Array(await reply.arrayBuffer());
}

/**
 * Starts Python from our own files only: an empty lock file, so that it asks for none.
 * @param {string} runtime
 */
async function startPython(runtime) {
  const folder = `${BASE}/rt/${runtime}/pyodide/`;
  // The second is asked for by the first, but later than it could be.
  const [{ loadPyodide }] = await Promise.all([import(`${folder}pyodide.mjs`), import(`${folder}pyodide.asm.mjs`)]);
  const info = { abi_version: "2026_0", arch: "wasm32", platform: "emscripten_5_0_3", python: "3.14.2" };
  return loadPyodide({
    indexURL: folder,
    stdLibURL: `${folder}stdlib.zip`,
    lockFileContents: { info, packages: {} },
    packageBaseUrl: folder,
    checkAPIVersion: true,
  });
}

/**
 * Python's own part of the start: where our archives are, and that pint is unpacked only when something imports it.
 * Most starts never need it, and it is slow; unpacked it must be, for it opens its table of units as a file beside it.
 */
const PLACE = `
import sys
from importlib.machinery import PathFinder

class PintWhenAsked:
    def find_spec(self, name, path=None, target=None):
        if name != "pint":
            return None
        import zipfile
        sys.meta_path.remove(self)
        zipfile.ZipFile("/pint.zip").extractall("/pint")
        sys.path.append("/pint")
        return PathFinder.find_spec(name)

sys.path += ["/engine.zip", "/marshmallow.zip"]
sys.meta_path.append(PintWhenAsked())
`;

/** Before a second try: half an import would be found again, and so would the list of the old archive's files. */
const FORGET = `
import importlib, sys
for name in [name for name in sys.modules if name.split(".")[0] == "scantling"]:
    del sys.modules[name]
importlib.invalidate_caches()
sys.path_importer_cache.pop("/engine.zip", None)
`;

/**
 * The engine's one door, from the archive at /engine.zip.
 * @param {any} python
 * @returns {(text: string) => string}
 */
function openDesk(python) {
  return python.runPython("from scantling.engine.desk import Desk\nDesk().answer_text");
}

/** The files of questions, one by one; false when there are none left. */
const AHEAD = `
from scantling.engine.questions import FILES, QUESTIONS

def load_next(waiting=iter(FILES.values())):
    names = next(waiting, None)
    return bool(names and QUESTIONS[names[0]])

load_next
`;

/** Between two files, in ms. */
const PAUSE = 20;

/**
 * Loads what the first questions would have to wait for, a file at a time with a pause after each: a question that is
 * asked meanwhile waits for one of them and not for all.
 * @param {any} python
 */
async function loadAhead(python) {
  const scope = python.toPy({ __name__: "ahead" });
  const loadNext = python.runPython(AHEAD, { globals: scope });
  while (loadNext()) await new Promise((go) => setTimeout(go, PAUSE));
  loadNext.destroy();
  scope.destroy();
}

/**
 * Boots with the engine as this phone compiled it earlier, or from source on any doubt.
 * @param {Boot} boot
 */
async function start({ runtime }) {
  const [python, engine, marshmallow, pint, kept] = await Promise.all([
    startPython(runtime),
    bytes(`${BASE}/v/${BUILD}/engine.zip`),
    bytes(`${BASE}/rt/${runtime}/marshmallow/marshmallow.zip`),
    bytes(`${BASE}/rt/${runtime}/pint/pint.zip`),
    keptEngine(BUILD, runtime),
  ]);
  const archives = { "engine.zip": kept ?? engine, "marshmallow.zip": marshmallow, "pint.zip": pint };
  for (const [name, data] of Object.entries(archives)) python.FS.writeFile(`/${name}`, data);
  python.runPython(PLACE, { globals: python.toPy({ __name__: "place" }) });
  if (kept) {
    try {
      answer = openDesk(python);
      setTimeout(() => loadAhead(python).catch(console.warn), PAUSE);
      return "compiled";
    } catch (error) {
      console.warn("the compiled engine did not open; starting from source", error);
      await dropEngine(BUILD);
      python.FS.writeFile("/engine.zip", engine);
      python.runPython(FORGET);
    }
  }
  answer = openDesk(python);
  const compiled = async () => keepEngine(BUILD, runtime, await compileEngine(python));
  setTimeout(() => loadAhead(python).then(compiled).catch(console.warn), PAUSE);
  return "source";
}

/**
 * @param {{ data: { boot?: Boot, id?: number, ask?: string } }} message
 */
async function receive({ data: { boot, id, ask } }) {
  if (boot) {
    if (boot.build !== BUILD) return postMessage({ asleep: `page of ${boot.build}, engine of ${BUILD}` });
    try {
      postMessage({ awake: BUILD, from: await start(boot) });
    } catch (error) {
      postMessage({ asleep: String(error) });
    }
    return;
  }
  try {
    if (!answer) throw new Error("asked before it was awake");
    postMessage({ id, answer: answer(/** @type {string} */ (ask)) });
  } catch (error) {
    postMessage({ id, error: String(error) });
  }
}

addEventListener("message", receive);
