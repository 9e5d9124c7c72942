/** Drives the built app in Debian's Chromium, at the size of a phone, by touch. */

import { spawn } from "node:child_process";
import { createServer } from "node:http";
import { createReadStream, existsSync, statSync } from "node:fs";
import { dirname, extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

export const BUILT = join(dirname(fileURLToPath(import.meta.url)), "../../build/app");
export const PHONE = { width: 390, height: 844 };

const KINDS = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".mjs": "text/javascript",
  ".css": "text/css",
  ".wasm": "application/wasm",
  ".json": "application/json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".zip": "application/zip",
  ".txt": "text/plain",
  ".webmanifest": "application/manifest+json",
};

/** Serves the build on loopback; stop() is the network gone for good. */
export async function served(folder = BUILT) {
  const server = createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url, "http://x").pathname));
    const file = join(folder, path === "/" ? "index.html" : path);
    if (!existsSync(file) || !statSync(file).isFile()) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { "content-type": KINDS[extname(file)] ?? "application/octet-stream" });
    createReadStream(file).pipe(response);
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = `http://127.0.0.1:${server.address().port}/`;
  return {
    address,
    stop: () =>
      new Promise((resolve) => {
        server.close(resolve);
        server.closeAllConnections();
      }),
  };
}

/** A browser with a profile of its own, so that it can be killed and come back. */
export async function phone(profile, options = {}) {
  return chromium.launchPersistentContext(profile, {
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-dev-shm-usage"],
    viewport: PHONE,
    hasTouch: true,
    isMobile: true,
    deviceScaleFactor: 2,
    ...options,
  });
}

/** Waits until the planner answers. */
export async function plannerReady(page) {
  await page.waitForFunction(
    () => performance.getEntriesByName("longpoint-ready-1").length > 0,
    undefined,
    { timeout: 120_000 },
  );
}

/** Waits until the whole app is on the phone. */
export async function onThePhone(page) {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
}

/** Types a figure on the keypad by touch, and keeps it. */
export async function keep(page, text) {
  const keys = page.getByRole("group", { name: "Keypad" });
  const [whole, part] = String(text).split(".");
  for (const figure of whole.replace("-", "")) {
    await keys.getByRole("button", { name: figure, exact: true }).tap();
  }
  if (whole.startsWith("-")) await keys.getByRole("button", { name: /±/ }).tap();
  if (part === "5") await keys.getByRole("button", { name: "and a half" }).tap();
  await keys.getByRole("button", { name: "Keep" }).tap();
}

export { spawn };
