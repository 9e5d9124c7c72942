/**
 * Gathers the licences of everything that is bundled.
 *
 *     node pack/licences.mjs OUT
 */

import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const out = process.argv[2];
if (!out) throw new Error("where to? node pack/licences.mjs OUT");

/** Text of the licence of a package, or of one kept beside this file where it brings none. */
function licence(name) {
  const folder = join(here, "../node_modules", name);
  const about = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const file = readdirSync(folder).find((each) => /^licen[cs]e/i.test(each));
  const kept = join(here, "licences", `${about.license}.txt`);
  if (!file && !existsSync(kept)) throw new Error(`${name}: no text of ${about.license}`);
  const text = readFileSync(file ? join(folder, file) : kept, "utf8");
  return `${name} ${about.version} (${about.license})\n\n${text.trim()}`;
}

const asked = JSON.parse(readFileSync(join(here, "../package.json"), "utf8")).dependencies;
const own = readFileSync(join(here, "../../LICENSE"), "utf8").trim();
const python = readFileSync(join(here, "licences/Python.txt"), "utf8").trim();
const codes = readFileSync(join(here, "licences/segno.txt"), "utf8").trim();
const parts = [`longpoint (MIT)\n\n${own}`, ...Object.keys(asked).map(licence), codes, python];
writeFileSync(out, `${parts.join(`\n\n${"-".repeat(60)}\n\n`)}\n`);
