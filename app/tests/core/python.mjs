/**
 * The core as a phone has it, in Node: Pyodide, the packed core, and the page's own engines behind
 * its ports. What the worker does is bundled from its own sources.
 */

import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import loadHighs from "highs";
import { loadPyodide } from "pyodide";
import { build } from "vite";

const here = dirname(fileURLToPath(import.meta.url));
const app = join(here, "../..");
const BUILT = join(app, "../src/longpoint/serve/app");

/** The engines of the worker, from their TypeScript. */
async function engines() {
  const made = await build({
    configFile: false,
    logLevel: "error",
    build: {
      write: false,
      minify: false,
      lib: { entry: join(app, "src/core/calls.ts"), formats: ["es"] },
    },
  });
  const [{ output }] = Array.isArray(made) ? made : [made];
  return import(`data:text/javascript,${encodeURIComponent(output[0].code)}`);
}

/** Python with the core in it, its ports, and `answers(request)` as the worker answers. */
export async function corePython() {
  const [{ calls }, highs, python] = await Promise.all([
    engines(),
    loadHighs(),
    loadPyodide({ stdLibURL: join(BUILT, "core/library.zip.wasm") }),
  ]);
  const packed = new Uint8Array(readFileSync(join(BUILT, "core/core.zip.wasm")));
  python.unpackArchive(packed, "zip", {
    extractDir: "/lib/core",
  });
  python.runPython("import sys; sys.path.insert(0, '/lib/core')");
  python.runPython(readFileSync(join(app, "src/core/ports.py"), "utf8"));
  const made = calls(highs);
  const answers = python.globals.get("made")(...made);
  return { python, answers, ports: python.globals.get("ports_of")(...made) };
}
