// @ts-check
// Keeps the engine as this phone compiled it, so that the next start need not compile; any doubt means: not kept.

/** Between two modules, in ms. */
const PAUSE = 20;

/** @param {string} build */
const shelf = (build) => `compiled-${build}`;

/** @param {string} build @param {string} runtime */
const address = (build, runtime) => `/compiled/${build}/${runtime}`;

/**
 * @param {BufferSource} data
 * @returns {Promise<string>}
 */
async function digest(data) {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", data));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/**
 * The compiled engine of this very build and runtime, or null. Damaged bytecode can run and answer wrongly, which is
 * why it is never used on its name alone.
 * @param {string} build
 * @param {string} runtime
 * @returns {Promise<Uint8Array | null>}
 */
export async function keptEngine(build, runtime) {
  try {
    const found = await caches.match(address(build, runtime), { cacheName: shelf(build) });
    if (!found) return null;
    const data = new Uint8Array(await found.arrayBuffer());
    if ((await digest(data)) === found.headers.get("x-digest")) return data;
    await dropEngine(build);
  } catch (error) {
    console.warn("no compiled engine", error);
  }
  return null;
}

/**
 * Keeps it, and throws away what other builds kept.
 * @param {string} build
 * @param {string} runtime
 * @param {Uint8Array<ArrayBuffer>} data
 */
export async function keepEngine(build, runtime, data) {
  for (const name of await caches.keys()) {
    if (name.startsWith("compiled-") && name !== shelf(build)) await caches.delete(name);
  }
  const headers = { "x-digest": await digest(data), "content-type": "application/zip" };
  await (await caches.open(shelf(build))).put(address(build, runtime), new Response(data, { headers }));
}

/** @param {string} build */
export async function dropEngine(build) {
  await caches.delete(shelf(build));
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
