// @ts-check
// The files of a restored Python. Its memory has imported what the first questions want and holds none of them: they are
// read while it answers already, and a question that wants one sooner is asked again once they are there.

import { putArchives, readLibraries, readOwn } from "./python.js";

/** Where the restored Python looks for its own library. */
const OWN = "/lib/python314.zip";

/** An import that cannot be served yet ends the question, past whatever there makes up for a module that is missing. */
const AWAIT = `
import sys

class FilesAwaited(BaseException):
    pass

class Awaits:
    def find_spec(self, name, path=None, target=None):
        raise FilesAwaited(name)

awaits = Awaits()
sys.meta_path.insert(0, awaits)
lambda: sys.meta_path.remove(awaits)
`;

/**
 * Resolves when they are there.
 * @param {any} python
 * @param {string} runtime
 * @param {() => Promise<Uint8Array>} readEngine
 */
export async function bringFiles(python, runtime, readEngine) {
  const scope = python.toPy({ __name__: "awaits" });
  const goOn = python.runPython(AWAIT, { globals: scope });
  const [libraries, own, engine] = await Promise.all([readLibraries(runtime), readOwn(runtime), readEngine()]);
  python.FS.writeFile(OWN, own);
  putArchives(python, { ...libraries, engine });
  goOn();
  goOn.destroy();
  scope.destroy();
}

/**
 * The door of a Python whose files are on their way.
 * @param {(text: string) => string} door
 * @param {Promise<void>} files
 * @returns {(text: string) => Promise<string>}
 */
export function askedAgain(door, files) {
  return async (text) => {
    try {
      return door(text);
    } catch (error) {
      if (/** @type {any} */ (error).type !== "FilesAwaited") throw error;
      await files;
      return door(text);
    }
  };
}
