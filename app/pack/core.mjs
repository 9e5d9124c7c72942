/**
 * Packs for the page what it can come to of the core, and of Python's library; `pack.py` says how.
 * Copies Python itself beside them.
 *
 *     node pack/core.mjs OUT
 */

import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { loadPyodide } from "pyodide";

const SHELLS = new Set(["cli", "exchange", "render", "serve", "store"]);
const RUNTIME = ["pyodide.asm.mjs", "pyodide.asm.wasm"];

/** What of the package that draws codes is needed to draw one. */
const CODES = ["__init__.py", "consts.py", "encoder.py", "utils.py", "writers.py"];

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

/** The modules that draw codes, from the Python that builds the app. */
function codeModules() {
  const folder = process.env["LONGPOINT_SEGNO"];
  if (!folder) throw new Error("where is segno? `make app` says it");
  return CODES.map((file) => [`segno/${file}`, readFileSync(join(folder, file), "utf8")]);
}

/** What each country says in English otherwise, as [path in the package, contents]. */
function words() {
  const folder = join(source, "longpoint/speech/words");
  return readdirSync(folder)
    .filter((name) => name.startsWith("en_") && name.endsWith(".mo"))
    .sort()
    .map((name) => [relative(source, join(folder, name)), readFileSync(join(folder, name))]);
}

const python = await loadPyodide();
python.runPython(readFileSync(join(here, "pack.py"), "utf8"));
python.globals.set("page", readFileSync(join(here, "../src/core/ports.py"), "utf8"));
python.globals.set("found", python.toPy([...modules(join(source, "longpoint")), ...codeModules()]));
python.runPython("modules = reached_modules(page, found)");
// Archives, under a name that every host compresses on the way: few do so for a zip.
python.globals.set("words", python.toPy(words().map(([path, made]) => [path, new Uint8Array(made)])));
const packed = python.runPython("core_zip(modules, [(path, bytes(made)) for path, made in words])").toJs();
writeFileSync(join(out, "core.zip.wasm"), packed);
const whole = new Uint8Array(readFileSync(require.resolve("pyodide/python_stdlib.zip")));
python.globals.set("library", python.toPy(whole));
const library = python.runPython("library_zip(library.tobytes(), modules)").toJs();
writeFileSync(join(out, "library.zip.wasm"), library);

// What is checked while a figure is typed, so that nothing waits for Python.
python.unpackArchive(packed, "zip", { extractDir: "/core" });
const limits = python.runPython(`
import json, sys
sys.path.insert(0, "/core")
from longpoint.phone import Ports, answer
from longpoint.survey.house import Dialect
asked = [(each.value, json.dumps({"ask": "limits", "dialect": each.value})) for each in Dialect]
json.dumps([[dialect, answer(text, Ports())] for dialect, text in asked])
`);
for (const [dialect, text] of JSON.parse(limits)) {
  writeFileSync(join(out, `limits-${dialect}.json`), text);
}
