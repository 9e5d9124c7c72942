/**
 * Plans houses as a phone does: on its Python, with its own engines behind the ports.
 *
 *     node plans.mjs OUT FILE ...
 *
 * OUT becomes a JSON object: of each house file its plan document.
 */

import { readFileSync, writeFileSync } from "node:fs";
import { corePython } from "./python.mjs";

const [out, ...files] = process.argv.slice(2);
if (!files.length) throw new Error("which? node plans.mjs OUT FILE ...");

const { python, ports } = await corePython();
python.runPython(readFileSync(new URL("plan_here.py", import.meta.url), "utf8"));
const planned = python.globals.get("planned");
const plans = files.map((file) => [file, JSON.parse(planned(readFileSync(file, "utf8"), ports))]);
writeFileSync(out, JSON.stringify(Object.fromEntries(plans)));
