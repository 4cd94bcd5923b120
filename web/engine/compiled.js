// @ts-check
// Keeps the engine as this phone compiled it, so that the next start need not compile; any doubt means: not kept.

import { Shelf } from "./shelf.js";

/** Between two modules, in ms. */
const PAUSE = 20;

/** @param {string} build */
const shelf = (build) => new Shelf("compiled", build);

/** @param {string} build @param {string} runtime */
const address = (build, runtime) => `/compiled/${build}/${runtime}`;

/**
 * The compiled engine of this very build and runtime, not read yet, or null.
 * @param {string} build
 * @param {string} runtime
 * @returns {Promise<import("./shelf.js").Kept | null>}
 */
export async function keptEngine(build, runtime) {
  try {
    return await shelf(build).find(address(build, runtime));
  } catch (error) {
    console.warn("no compiled engine", error);
    return null;
  }
}

/**
 * @param {string} build
 * @param {string} runtime
 * @param {Uint8Array<ArrayBuffer>} data
 * @returns {Promise<string>} its digest
 */
export async function keepEngine(build, runtime, data) {
  return shelf(build).keep(address(build, runtime), data);
}

/** @param {string} build */
export async function dropEngine(build) {
  await shelf(build).drop();
}

const COMPILE = `
import importlib._bootstrap_external as bootstrap, io, zipfile

out = io.BytesIO()
given, made = zipfile.ZipFile("/engine.zip"), zipfile.ZipFile(out, "w")

def compile_next(names=iter(given.namelist())):
    name = next(names, None)
    if name is None:
        made.close()
        return out.getvalue()
    code = compile(given.read(name), "/engine.zip/" + name, "exec", dont_inherit=True)
    made.writestr(name + "c", bytes(bootstrap._code_to_hash_pyc(code, bytes(8), False)))

compile_next
`;

/**
 * The engine's source at /engine.zip as an archive of compiled modules, made by the Python that will read it. One module
 * at a time with a pause after each: it takes a slow phone seconds, and a question must not wait for all of it.
 * @param {any} python
 * @returns {Promise<Uint8Array<ArrayBuffer>>}
 */
export async function compileEngine(python) {
  // Its own namespace: a name left behind in the interpreter's could be mistaken for the engine's.
  const scope = python.toPy({ __name__: "compiled" });
  const compileNext = python.runPython(COMPILE, { globals: scope });
  try {
    for (;;) {
      const made = compileNext();
      if (made) {
        const data = made.toJs().slice();
        made.destroy();
        return data;
      }
      await new Promise((go) => setTimeout(go, PAUSE));
    }
  } finally {
    compileNext.destroy();
    scope.destroy();
  }
}
