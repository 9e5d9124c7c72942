/**
 * Plans houses as a phone does: on its Python, with its own engines behind the ports.
 *
 *     node plans.mjs OUT FILE ...
 *
 * OUT becomes a JSON object: of each house file its plan document; as `weighed` what
 * `weighed_here.py` tells.
 */

import { readFileSync, writeFileSync } from "node:fs";
import { corePython } from "./python.mjs";

const [out, ...files] = process.argv.slice(2);
if (!files.length) throw new Error("which? node plans.mjs OUT FILE ...");

const { python, ports } = await corePython();
for (const name of ["plan_here.py", "weighed_here.py"]) {
  python.runPython(readFileSync(new URL(name, import.meta.url), "utf8"));
}
const weighed = JSON.parse(python.globals.get("both_ways")(ports));
const planned = python.globals.get("planned");
const plans = files.map((file) => [file, JSON.parse(planned(readFileSync(file, "utf8"), ports))]);
writeFileSync(out, JSON.stringify({ ...Object.fromEntries(plans), weighed }));
