/// <reference lib="webworker" />
/**
 * The worker: loads Python and the core as the page opens, then answers one request at a time.
 *
 * In: `{ id, request }`, the request a text that the core reads. Out: `{ id, answer }`; in between,
 * unasked, `{ progress, share }`.
 */

import loadHighs from "highs";
import highsWasm from "highs/runtime?url";
import { loadPyodide } from "pyodide";
import { calls } from "./calls";
import portsSource from "./ports.py?raw";
import type { FromWorker, ToWorker } from "./line";

// The worker itself is one folder down in a build.
const core = new URL(import.meta.env.DEV ? "/core/" : "../core/", self.location.href);

function say(message: FromWorker): void {
  self.postMessage(message);
}

type Made = (...engines: ReturnType<typeof calls>) => (request: string) => string;

async function load(): Promise<(request: string) => string> {
  say({ progress: "python", share: 0.05 });
  const packed = fetch(new URL("core.zip.wasm", core)).then((response) => response.arrayBuffer());
  const solver = loadHighs({ locateFile: () => highsWasm });
  const python = await loadPyodide({
    indexURL: core.href,
    packageBaseUrl: core.href,
    stdLibURL: new URL("library.zip.wasm", core).href,
    lockFileURL: new URL("lock.json", core).href,
  });
  say({ progress: "core", share: 0.5 });
  python.unpackArchive(await packed, "zip", { extractDir: "/lib/core" });
  python.runPython("import sys; sys.path.insert(0, '/lib/core')");
  const highs = await solver;
  say({ progress: "core", share: 0.7 });
  python.runPython(portsSource);
  const globals = python.globals as unknown as { get(name: string): unknown };
  const made = globals.get("made") as Made;
  return made(...calls(highs));
}

const ready = load();
ready.then(
  () => say({ progress: "ready", share: 1 }),
  (trouble: unknown) => say({ progress: "failed", share: 1, why: String(trouble) }),
);

self.onmessage = async (event: MessageEvent<ToWorker>) => {
  const { id, request } = event.data;
  try {
    say({ id, answer: (await ready)(request) });
  } catch (trouble) {
    say({ id, trouble: String(trouble) });
  }
};
