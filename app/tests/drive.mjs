/** Drives the built app in Debian's Chromium, at the size of a phone, by touch. */

import { execFileSync } from "node:child_process";
import { createServer } from "node:http";
import { createReadStream, existsSync, statSync } from "node:fs";
import { dirname, extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

export const BUILT = join(dirname(fileURLToPath(import.meta.url)), "../../src/longpoint/serve/app");
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

/** A machine that is busy with other tests may take as long as this for a step of a second. */
const PATIENCE_MS = 60_000;

/** A browser with a profile of its own, so that it can be killed and come back. */
export async function phone(profile, options = {}) {
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-dev-shm-usage"],
    viewport: PHONE,
    hasTouch: true,
    isMobile: true,
    deviceScaleFactor: 2,
    ...options,
  });
  context.setDefaultTimeout(PATIENCE_MS);
  return context;
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

/** All that a phone's journal holds, in the order of writing, as the page's own store has it. */
export function written(page) {
  return page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const asked = indexedDB.open("longpoint");
        asked.onerror = () => reject(asked.error);
        asked.onsuccess = () => {
          const all = asked.result.transaction("entries").objectStore("entries").getAll();
          all.onsuccess = () => {
            asked.result.close();
            resolve(all.result);
          };
        };
      }),
  );
}

/** In a page: keeps final plans from being asked for, from `holdsFinal` on until `letGo()`. */
export function holdFinalPlans() {
  const post = Worker.prototype.postMessage;
  const held = [];
  Worker.prototype.postMessage = function (message, ...rest) {
    const send = () => post.call(this, message, ...rest);
    if (window.holdsFinal && message.request?.includes('"is_first":false')) held.push(send);
    else send();
  };
  window.letGo = () => {
    window.holdsFinal = false;
    held.splice(0).forEach((send) => send());
  };
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

/** Types a figure with keys that a keyboard has too, and waits until it is kept. */
export async function type(page, value) {
  const text = String(value);
  const hash = await page.evaluate(() => location.hash);
  await page.keyboard.type(text.replace("-", ""));
  if (text.startsWith("-")) await page.keyboard.press("-");
  await page.keyboard.press("Enter");
  await page.waitForFunction((was) => location.hash !== was, hash);
}

const SIZES = {
  mm: { face: "57", thickness: "19", quirk: "5", stick: "5400" },
  inches: { face: "2 1/4", thickness: "11/16", quirk: "3/16", stick: "192" },
};

/** Begins a house whose openings get 57 x 19, quirk 5, out of sticks of 5400; or near that. */
export async function beginHouse(page, name, dialect = "nz", units = "mm") {
  const { face, thickness, quirk, stick } = SIZES[units];
  await page.getByRole("link", { name: "Begin a house" }).tap();
  await page.getByLabel("Name of the house").fill(name);
  await page.getByText(units, { exact: true }).tap();
  await page.getByLabel("Words on the sheets").selectOption(dialect);
  await page.getByLabel("Face width").fill(face);
  await page.getByLabel("Thickness").fill(thickness);
  await page.getByLabel(/^(Quirk|Reveal|Margin)/).fill(quirk);
  await page.getByLabel("Sticks come in").fill(stick);
  await page.getByRole("button", { name: "Begin" }).tap();
  await page.getByRole("heading", { name: "Add an opening" }).waitFor();
}

/** Adds an opening, and stands at its first line. */
export async function addOpening(page, mark, kind, room, isTwoFaced = false) {
  await page.getByText(kind, { exact: true }).tap();
  await page.getByLabel("Room").fill(room);
  if (isTwoFaced) await page.getByText("both faces").tap();
  await page.getByRole("button", { name: new RegExp(`Add ${mark} `) }).tap();
  await page.getByRole("group", { name: "Keypad" }).waitFor();
}

/** Chooses a text as a file, on the screen that opens one. */
export async function openText(page, text) {
  await page
    .locator("input[type=file]")
    .first()
    .setInputFiles({ name: "x.toml", mimeType: "text/plain", buffer: Buffer.from(text) });
}

/** Reads the width at the bottom of an opening again, from the house's own screen. */
export async function secondLook(page, mark, value) {
  await page.getByRole("link", { name: new RegExp(`^${mark} ?`) }).first().tap();
  // The drawing moves what is below it: a tap meanwhile would land on something else.
  await page.locator(".picture svg").first().waitFor();
  await page.getByRole("link", { name: /Width at the bottom/ }).tap();
  await page.getByText("A second look").tap();
  await type(page, value);
}

export async function tab(page, name) {
  await page.getByRole("navigation", { name: "Parts of the job" }).getByText(name).tap();
}

/** Ends every process of the browser that runs on a profile, as a flat battery would. */
export function pullThePlug(profile) {
  const listed = execFileSync("ps", ["-eo", "pid=,args="], { encoding: "utf8" });
  for (const line of listed.split("\n")) {
    const [, pid, args] = /^\s*(\d+) (.*)$/.exec(line) ?? [];
    if (pid && args.includes(`--user-data-dir=${profile}`)) {
      try {
        process.kill(Number(pid), "SIGKILL");
      } catch {
        // It went with the one before.
      }
    }
  }
}
