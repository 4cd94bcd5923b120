// @ts-check
// Starts Python from our own files, opens the engine's desk in it, and loads what its first questions will want.

import { HEAD, unpackMemory } from "./memory.js";

/** The build these scripts were served with, and where. */
export const [, BASE = "", BUILD = ""] = /^(.*)\/v\/([^/]+)\/engine\/[^/]+$/.exec(new URL(import.meta.url).pathname) ?? [];

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

/** @typedef {{marshmallow: Uint8Array, pint: Uint8Array}} Libraries */
/** @typedef {Libraries & {engine: Uint8Array}} Archives */

/** The engine as source. */
export const readSource = () => bytes(`${BASE}/v/${BUILD}/engine.zip`);

/**
 * What Python reads besides its own library and the engine: the libraries that this stands on.
 * @param {string} runtime
 * @returns {Promise<Libraries>}
 */
export async function readLibraries(runtime) {
  const [marshmallow, pint] = await Promise.all([
    bytes(`${BASE}/rt/${runtime}/marshmallow/marshmallow.zip`),
    bytes(`${BASE}/rt/${runtime}/pint/pint.zip`),
  ]);
  return { marshmallow, pint };
}

/** Python's own library. @param {string} runtime */
export const readOwn = (runtime) => bytes(libraryOf(runtime));

/** @param {string} runtime */
const folderOf = (runtime) => `${BASE}/rt/${runtime}/pyodide/`;

/** @param {string} runtime */
const libraryOf = (runtime) => `${folderOf(runtime)}stdlib.zip`;

/**
 * The runtime's two modules: the second is asked for by the first, but later than it could be.
 * @param {string} runtime
 * @returns {Promise<any[]>}
 */
export function fetchPython(runtime) {
  return Promise.all(["pyodide.mjs", "pyodide.asm.mjs"].map((name) => import(`${folderOf(runtime)}${name}`)));
}

/**
 * Starts Python from our own files only: an empty lock file, so that it asks for none.
 * @param {string} runtime
 * @param {{_makeSnapshot?: boolean, _loadSnapshot?: Uint8Array, createPyodideModule?: Function, stdLibURL?: string}} [memory]
 */
export async function startPython(runtime, memory = {}) {
  const folder = folderOf(runtime);
  const [{ loadPyodide }] = await fetchPython(runtime);
  const info = { abi_version: "2026_0", arch: "wasm32", platform: "emscripten_5_0_3", python: "3.14.2" };
  return loadPyodide({
    indexURL: folder,
    stdLibURL: libraryOf(runtime),
    lockFileContents: { info, packages: {} },
    packageBaseUrl: folder,
    checkAPIVersion: true,
    ...memory,
  });
}

/**
 * Python with a memory taken back. Most of what it takes to have a Python at all does not depend on that, and is done
 * while the memory is still being checked: the runtime is told of it by a heading that is filled in later. Not while it
 * is being read, for that waits again and again for this thread.
 * @param {string} runtime
 * @param {import("./snapshot.js").Memory} memory as it was packed
 */
export async function restorePython(runtime, memory) {
  const [[, { default: createModule }]] = await Promise.all([fetchPython(runtime), memory.read()]);
  const head = new Uint8Array(HEAD);
  return startPython(runtime, {
    _loadSnapshot: head,
    stdLibURL: `${BASE}/v/${BUILD}/engine/empty.zip`, // files.js brings what is to lie there
    createPyodideModule: async (/** @type {object} */ settings) => {
      const [module, packed] = await Promise.all([createModule(settings), memory.sound()]);
      unpackMemory(packed, head, module.HEAPU8);
      return module;
    },
  });
}

/**
 * What Python finds beside it.
 * @param {any} python
 * @param {Archives} archives
 */
export function putArchives(python, archives) {
  for (const [name, data] of Object.entries(archives)) python.FS.writeFile(`/${name}.zip`, data);
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
export const FORGET = `
import importlib, sys
for name in [name for name in sys.modules if name.split(".")[0] == "scantling"]:
    del sys.modules[name]
importlib.invalidate_caches()
sys.path_importer_cache.pop("/engine.zip", None)
`;

/**
 * Python with our archives in their places and the engine's desk open.
 * @param {any} python
 * @param {Archives} archives
 */
export function openDesk(python, archives) {
  putArchives(python, archives);
  const scope = python.toPy({ __name__: "place" });
  python.runPython(PLACE, { globals: scope });
  scope.destroy();
  python.runPython(OPEN);
}

/** The engine's one door, from the archive at /engine.zip. */
const OPEN = "from scantling.engine.desk import Desk";

/**
 * A door of its own, to an empty notebook.
 * @param {any} python one whose desk is open
 * @returns {(text: string) => string}
 */
export function doorOf(python) {
  return python.runPython("Desk().answer_text");
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
export const PAUSE = 20;

/**
 * Loads what the first questions would have to wait for, a file at a time with a pause after each: a question that is
 * asked meanwhile waits for one of them and not for all.
 * @param {any} python
 * @param {() => boolean} [goOn] asked after each
 */
export async function loadAhead(python, goOn = () => true) {
  const scope = python.toPy({ __name__: "ahead" });
  const loadNext = python.runPython(AHEAD, { globals: scope });
  while (loadNext() && goOn()) await new Promise((go) => setTimeout(go, PAUSE));
  loadNext.destroy();
  scope.destroy();
}
