/**
 * Runs test files of the core by the very Python that runs it on a phone.
 *
 *     node run.mjs PACKAGES OUT ONE_IN FILE ...
 *
 * PACKAGES is a folder of pure Python packages, pytest among them. Of each file its first test and
 * one in ONE_IN of the others is run; what came of them is written to OUT.
 */

import { writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { loadPyodide } from "pyodide";

const here = dirname(fileURLToPath(import.meta.url));
const [packages, out, oneIn, ...files] = process.argv.slice(2);
if (!files.length) throw new Error("which? node run.mjs PACKAGES OUT ONE_IN FILE ...");

const python = await loadPyodide();
for (const [from, to] of [
  [join(here, "../../.."), "/repo"],
  [packages, "/packages"],
]) {
  python.FS.mkdirTree(to);
  python.FS.mount(python.FS.filesystems.NODEFS, { root: from }, to);
}
python.globals.set("files", python.toPy(files));
python.globals.set("one_in", Number(oneIn));
const found = python.runPython(`
import os, sys
sys.dont_write_bytecode = True
os.chdir("/repo")
sys.path[:0] = ["/repo/app/tests/core", "/repo/src", "/repo", "/packages"]
import recorder
recorder.run(files, one_in)
`);
writeFileSync(out, found);
