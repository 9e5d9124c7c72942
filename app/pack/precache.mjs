/**
 * Tells the service worker which files there are, each with its hash; last step of the build.
 *
 *     node pack/precache.mjs BUILT
 */

import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";

const built = process.argv[2];
if (!built) throw new Error("which build? node pack/precache.mjs BUILT");

function files(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? files(path) : [path];
  });
}

const hash = (bytes) => createHash("sha256").update(bytes).digest("hex").slice(0, 16);
const service = join(built, "sw.js");
const listed = files(built)
  .filter((path) => path !== service && !path.endsWith(".map"))
  .map((path) => [
    `./${relative(built, path)}`.replace("./index.html", "./"),
    hash(readFileSync(path)),
  ])
  .sort();
const version = hash(JSON.stringify(listed));
const text = readFileSync(service, "utf8")
  .replaceAll("__FILES__", JSON.stringify(listed))
  .replaceAll("__VERSION__", JSON.stringify(version));
if (text.includes("__FILES__") || text.includes("__VERSION__")) throw new Error("not filled in");
writeFileSync(service, text);
