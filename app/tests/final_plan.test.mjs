/** While a final plan is made: what is read goes before it, and a plan of older readings is given up. */

import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { after, before, test } from "node:test";
import { fileURLToPath } from "node:url";
import { holdFinalPlans, openText, phone, plannerReady, served, tab, type } from "./drive.mjs";

const EXAMPLE = join(dirname(fileURLToPath(import.meta.url)), "../../examples/wren-house.toml");
/** Its openings alone: enough that a final plan takes a while. The floor of one door isn't read. */
const [HOUSE] = readFileSync(EXAMPLE, "utf8").replace("bottom = 822\n", "").split("[[rooms]]");
/** So few that a worker of its own isn't worth while. */
const [SMALL] = HOUSE.replace('"Wren House"', '"Wren Lodge"').split(/\[\[openings\]\].*\nmark = "W3"/);
const FIRST = "First plan: its sticks may still change";

const profile = mkdtempSync(join(tmpdir(), "longpoint-final-"));
let server;
let context;
let page;

/** In a page: counts its workers; where `isSmallPhone` is kept, only the first of them loads. */
function watchWorkers() {
  window.workers = 0;
  window.Worker = class extends Worker {
    constructor(url, options) {
      window.workers += 1;
      const isRefused = localStorage.isSmallPhone && window.workers > 1;
      super(isRefused ? new URL("no-room.js", location.href) : url, options);
    }
  };
}

before(async () => {
  server = await served();
  context = await phone(profile);
  await context.addInitScript(watchWorkers);
  await context.addInitScript(holdFinalPlans);
  page = context.pages()[0] ?? (await context.newPage());
  await page.goto(server.address);
  await plannerReady(page);
});

after(async () => {
  await context?.close();
  await server?.stop();
  rmSync(profile, { recursive: true, force: true });
});

const isFirstPlan = async () => (await page.getByText(FIRST).count()) > 0;
const finalPlan = () => page.getByText(FIRST).waitFor({ state: "detached", timeout: 120_000 });
const lookAt = (mark) => page.getByRole("link", { name: new RegExp(`^${mark} `) }).first().tap();

async function secondLook(value) {
  await lookAt("W1");
  await page.locator(".picture svg").first().waitFor();
  await page.getByRole("link", { name: /Width at the bottom/ }).tap();
  await page.getByText("A second look").tap();
  await type(page, value);
  await tab(page, "House");
  await page.getByText(FIRST).waitFor();
}

async function openHouse(text) {
  await page.getByRole("link", { name: "Open a house" }).tap();
  await openText(page, text);
  await page.getByRole("button", { name: "Keep it on this phone" }).tap();
  await page.getByText(FIRST).waitFor();
}

test("an opening is looked at while the final plan is made", async () => {
  await openHouse(HOUSE);
  await lookAt("W1");
  await page.locator(".picture svg").first().waitFor();
  await tab(page, "Sheets");
  await page.getByText("The sheets come with the final plan").waitFor();
  await tab(page, "House");
  assert.ok(await isFirstPlan(), "the drawing waited for the final plan");
  await finalPlan();
  assert.equal(await page.evaluate(() => window.workers), 2);
});

test("a door whose floor isn't read is bought for where it can be cut all the same", async () => {
  await page.getByRole("link", { name: /^D1 .* 1 to read/ }).waitFor();
  await tab(page, "Buy");
  const left = await page.locator(".said", { hasText: "Not counted" }).innerText();
  assert.match(left, /W\d/);
  assert.doesNotMatch(left, /D1/);
  await tab(page, "House");
});

test("readings that are written meanwhile end a plan that goes on and on", async () => {
  await page.evaluate(() => (window.holdsFinal = true));
  await secondLook(1176);
  assert.equal(await page.evaluate(() => window.workers), 2);
  await secondLook(1177);
  await page.waitForFunction(() => window.workers === 3);
  assert.ok(await isFirstPlan());
  await page.evaluate(() => window.letGo());
  await finalPlan();
  await tab(page, "Saw");
  await page.getByRole("button", { name: "Cut", exact: true }).waitFor();
});

test("what answers at once is never stopped, and makes the final plan of a small house", async () => {
  await page.evaluate(() => {
    window.holdsFinal = true;
    location.hash = "";
  });
  await openHouse(SMALL);
  const workers = await page.evaluate(() => window.workers);
  await secondLook(1176);
  await secondLook(1177);
  // Longer than a plan of older readings may go on elsewhere.
  await page.waitForTimeout(2_500);
  await page.evaluate(() => window.letGo());
  await finalPlan();
  await tab(page, "Buy");
  await page.getByRole("button", { name: "Send the order as text" }).waitFor();
  assert.equal(await page.evaluate(() => window.workers), workers);
});

test("a phone without room for a second worker has its final plan from the first", async () => {
  await page.evaluate(() => {
    localStorage.isSmallPhone = "yes";
    location.hash = "";
  });
  await page.reload();
  await page.getByRole("link", { name: /Wren House/ }).tap();
  await page.getByText(/can be cut as planned/).waitFor();
  await finalPlan();
  await tab(page, "Saw");
  await page.getByRole("button", { name: "Cut", exact: true }).waitFor();
  assert.equal(await page.evaluate(() => window.workers), 2);
});
