/**
 * Packs the core for the page: every room but the shells, compiled by the very Python that will
 * run it, so that a phone has nothing to compile. Copies what Python needs beside it.
 *
 *     node pack/core.mjs OUT
 */

import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { loadPyodide } from "pyodide";

const SHELLS = new Set(["cli", "exchange", "render", "serve", "store"]);
const RUNTIME = ["pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip"];

const here = dirname(fileURLToPath(import.meta.url));
const source = join(here, "../../src");
const out = process.argv[2];
if (!out) throw new Error("where to? node pack/core.mjs OUT");
mkdirSync(out, { recursive: true });

const require = createRequire(import.meta.url);
for (const file of RUNTIME) copyFileSync(require.resolve(`pyodide/${file}`), join(out, file));

// Which Python this is, and no package: nothing is ever installed from elsewhere.
const { info } = JSON.parse(readFileSync(require.resolve("pyodide/pyodide-lock.json"), "utf8"));
writeFileSync(join(out, "lock.json"), JSON.stringify({ info, packages: {} }));

/** Every module of the core, as [path in the package, text]. */
function modules(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    const inside = relative(source, path);
    if (entry.isDirectory()) {
      return SHELLS.has(inside.split("/")[1]) || entry.name === "__pycache__" ? [] : modules(path);
    }
    return entry.name.endsWith(".py") ? [[inside, readFileSync(path, "utf8")]] : [];
  });
}

const python = await loadPyodide();
python.globals.set("modules", python.toPy(modules(join(source, "longpoint")).sort()));
const packed = python.runPython(`
import importlib._bootstrap_external as external, io, zipfile

made = io.BytesIO()
with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as file:
    for path, text in modules:
        code = compile(text, path, "exec", dont_inherit=True)
        # A hash that nobody checks: there is no source beside it.
        compiled = external._code_to_hash_pyc(code, b"longpnt1", False)
        file.writestr(zipfile.ZipInfo(path + "c"), compiled, zipfile.ZIP_DEFLATED)
made.getvalue()
`);
writeFileSync(join(out, "core.zip"), packed.toJs());

// What is checked while a figure is typed, so that nothing waits for Python.
python.unpackArchive(packed.toJs(), "zip", { extractDir: "/core" });
const limits = python.runPython(`
import sys
sys.path.insert(0, "/core")
from longpoint.phone import Ports, answer
answer('{"ask": "limits"}', Ports())
`);
writeFileSync(join(out, "limits.json"), limits);
