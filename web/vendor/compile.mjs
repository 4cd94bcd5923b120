// Compiles Python modules with the runtime that will read them: node compile.mjs OUT.zip IN.zip…  (called by fetch.py)
import fs from "node:fs";
import { loadPyodide } from "./pyodide.mjs";

const [, , out, ...inputs] = process.argv;
// A fixed hash seed: constants that are sets would otherwise be written in another order every time.
const python = await loadPyodide({ indexURL: "./", env: { PYTHONHASHSEED: "0" } });
for (const name of inputs) python.FS.writeFile(`/${name}`, fs.readFileSync(name));
python.globals.set("inputs", python.toPy(inputs));
console.log(
  python.runPython(`
import importlib._bootstrap_external as bootstrap
import io, zipfile

def kept(name):
    # importlib.metadata asks for METADATA (pint reads its own version there); the rest of dist-info serves installers.
    if ".dist-info/" in name:
        return name.endswith("/METADATA")
    return not name.endswith("/") and "/testsuite/" not in name and not name.endswith((".typed", ".pyi"))

out, count = io.BytesIO(), 0
with zipfile.ZipFile(out, "w") as made:
    for source in inputs:
        archive = zipfile.ZipFile("/" + source)
        for name in sorted(filter(kept, archive.namelist())):
            data = archive.read(name)
            if name.endswith(".py"):
                # An unchecked-hash pyc never asks for its source, which is not shipped.
                code = compile(data, name, "exec", dont_inherit=True, optimize=0)
                name, data, count = name + "c", bytes(bootstrap._code_to_hash_pyc(code, bytes(8), False)), count + 1
            made.writestr(zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0)), data, zipfile.ZIP_DEFLATED, 9)
open("/out.zip", "wb").write(out.getvalue())
f"{count} modules, {len(out.getvalue())} bytes"
`),
);
fs.writeFileSync(out, python.FS.readFile("/out.zip"));
