/**
 * Measures the built app in Chromium at the size of a phone; nothing is asserted.
 *
 *     node bench.mjs            (or: make app-bench)
 */

import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { brotliCompressSync, constants } from "node:zlib";
import { BUILT, onThePhone, phone, plannerReady, served } from "./drive.mjs";

const HOUSE = join(dirname(fileURLToPath(import.meta.url)), "../../tests/scenarios/pipit.toml");
const ROUNDS = 5;
const THROTTLE = 4;
/** What hosts compress by when they do it once for all. */
const BROTLI = { params: { [constants.BROTLI_PARAM_QUALITY]: 9 } };

const say = (what, value) => console.log(`| ${what} | ${value} |`);
const seconds = (ms) => `${(ms / 1000).toFixed(2)} s`;
const median = (found) => [...found].sort((a, b) => a - b)[Math.floor(found.length / 2)];

function download() {
  const files = readdirSync(BUILT, { recursive: true, withFileTypes: true });
  return files
    .filter((file) => file.isFile())
    .map((file) => brotliCompressSync(readFileSync(join(file.parentPath, file.name)), BROTLI).length)
    .reduce((sum, size) => sum + size, 0);
}

/** From an address to the moment in which something on the screen can be tapped and was painted. */
function watchFirst() {
  const look = () => {
    if (document.querySelector("#app main a, #app main button, #app #work a, #app .keys button")) {
      requestAnimationFrame(() => setTimeout(() => (window.usable = performance.now())));
    } else requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

/** From the key to the frame that shows what is said of the figure. */
function watchKeys() {
  window.answered = [];
  addEventListener(
    "keydown",
    (event) => {
      requestAnimationFrame(() =>
        setTimeout(() => window.answered.push(performance.now() - event.timeStamp)),
      );
    },
    true,
  );
}

async function throttled(context, page, rate) {
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate });
}

const readyAt = (page) =>
  page.evaluate(() => performance.getEntriesByName("longpoint-ready-1")[0].startTime);

const profile = mkdtempSync(join(tmpdir(), "longpoint-bench-"));
const server = await served();
const context = await phone(profile);
try {
  console.log("| the app | measured |\n|---|---|");
  say("first download, brotli 9", `${(download() / 1e6).toFixed(2)} MB`);
  let page = context.pages()[0] ?? (await context.newPage());
  await page.goto(server.address);
  await onThePhone(page);
  await plannerReady(page);
  say("planner ready, first visit", seconds(await readyAt(page)));
  await page.getByRole("link", { name: "Open a house" }).tap();
  await page.locator("input[type=file]").first().setInputFiles(HOUSE);
  await page.getByRole("button", { name: "Keep it on this phone" }).tap();
  await page.getByText(/of 8 openings can be cut as planned/).waitFor({ timeout: 120_000 });
  const house = (await page.evaluate(() => location.hash)).split("/")[2];
  await page.close();

  const [usable, ready, plan] = [[], [], []];
  for (let round = 0; round < ROUNDS; round++) {
    page = await context.newPage();
    await page.addInitScript(watchFirst);
    await throttled(context, page, THROTTLE);
    await page.goto(server.address);
    await page.waitForFunction(() => window.usable);
    usable.push(await page.evaluate(() => window.usable));
    await page.close();
    page = await context.newPage();
    await page.goto(`${server.address}#/h/${house}/settings`);
    await plannerReady(page);
    ready.push(await readyAt(page));
    // The fold comes first; the walk shows when it is there.
    await page.getByText("Profiles").first().waitFor();
    const began = performance.now();
    await page.evaluate((to) => (location.hash = to), `#/h/${house}/house`);
    await page.getByText(/of 8 openings can be cut as planned/).waitFor({ timeout: 120_000 });
    plan.push(performance.now() - began);
    if (round < ROUNDS - 1) await page.close();
  }
  say(`first usable screen, warm start, ${THROTTLE}x slower processor`, seconds(median(usable)));
  say("planner ready, warm start", seconds(median(ready)));
  say("scenario A forecast and planned in the worker, shown", seconds(median(plan)));

  await page.evaluate(watchKeys);
  await throttled(context, page, THROTTLE);
  const kept = [];
  for (let round = 0; round < ROUNDS; round++) {
    await page.evaluate((to) => (location.hash = to), `#/h/${house}/read/W1/top`);
    await page.getByRole("heading", { name: "Width at the head" }).waitFor();
    await page.keyboard.type(String(1181 + round), { delay: 60 });
    const began = performance.now();
    await page.keyboard.press("Enter");
    await page.getByText(`Kept: W1 top ${1181 + round}`).waitFor();
    kept.push(performance.now() - began);
  }
  const answered = await page.evaluate(() => window.answered);
  say(`what is said of a figure, after its key, ${THROTTLE}x slower`, `${median(answered).toFixed(0)} ms`);
  say("a reading said to be kept, after its key, the same", `${median(kept).toFixed(0)} ms`);
} finally {
  await context.close();
  await server.stop();
  rmSync(profile, { recursive: true, force: true });
}
