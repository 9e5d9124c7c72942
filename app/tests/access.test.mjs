/** Every screen against WCAG 2.2 AA, in light, dark and sun, on a phone and at 320 px. */

import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { after, before, test } from "node:test";
import { fileURLToPath } from "node:url";
import { phone, plannerReady, served } from "./drive.mjs";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
const HOUSE = join(dirname(fileURLToPath(import.meta.url)), "../../tests/scenarios/pipit.toml");
const SCREENS = [
  ["", "Begin a house"],
  ["begin", "The tape reads"],
  ["open", "A house file"],
  ["about", "Before you cut"],
  ["h/HOUSE/house", "readings"],
  ["h/HOUSE/read/W1/left", "Height at the left side"],
  ["h/HOUSE/read/W3/done", "Readings"],
  ["h/HOUSE/add", "What is it?"],
  ["h/HOUSE/opening/W1", "Pieces"],
  ["h/HOUSE/opening/W3", "Readings"],
  ["h/HOUSE/saw", "To be said back"],
  ["h/HOUSE/wall/W1", "What to tap"],
  ["h/HOUSE/buy", "All together"],
  ["h/HOUSE/sheets", "Cutting"],
  ["h/HOUSE/sheets/cut", "Print"],
  ["h/HOUSE/settings", "Profiles"],
];

const profile = mkdtempSync(join(tmpdir(), "longpoint-access-"));
let server;
let context;
let page;
let house;

before(async () => {
  server = await served();
  // The page's own rules forbid foreign scripts; the checker is one.
  context = await phone(profile, { bypassCSP: true });
  page = context.pages()[0] ?? (await context.newPage());
  page.setDefaultTimeout(60_000);
  await page.goto(server.address);
  await plannerReady(page);
  await page.getByRole("link", { name: "Open a house" }).tap();
  await page.locator("input[type=file]").setInputFiles(HOUSE);
  await page.getByRole("button", { name: "Keep it on this phone" }).tap();
  await page.getByText(/of 8 openings can be cut as planned/).waitFor();
  house = (await page.evaluate(() => location.hash)).split("/")[2];
});

after(async () => {
  await context?.close();
  await server?.stop();
  rmSync(profile, { recursive: true, force: true });
});

async function show([path, text]) {
  await page.evaluate((to) => (location.hash = `#/${to}`), path.replace("HOUSE", house));
  await page.getByText(text).first().waitFor();
}

async function violations() {
  await page.evaluate(AXE);
  const found = await page.evaluate(
    (tags) => window.axe.run(document, { runOnly: { type: "tag", values: tags }, iframes: false }),
    TAGS,
  );
  return found.violations.map(
    (each) => `${each.id}: ${each.nodes.map((node) => node.html.slice(0, 120)).join(" | ")}`,
  );
}

for (const light of ["light", "dark", "sun"]) {
  test(`no screen breaks WCAG 2.2 AA, ${light}`, async () => {
    await page.evaluate((value) => (document.documentElement.dataset.light = value), light);
    const broken = [];
    for (const screen of SCREENS) {
      await show(screen);
      for (const each of await violations()) broken.push(`${screen[0]}: ${each}`);
    }
    assert.deepEqual(broken, []);
  });
}

test("at 320 px, and with text of twice the size, nothing runs over the edge", async () => {
  const over = [];
  for (const [width, size] of [
    [320, "100%"],
    [390, "200%"],
  ]) {
    await page.setViewportSize({ width, height: 700 });
    await page.evaluate((value) => (document.documentElement.style.fontSize = value), size);
    for (const screen of SCREENS) {
      await show(screen);
      const wide = await page.evaluate(() => {
        const work = document.getElementById("work");
        const page = document.documentElement;
        return Math.max(page.scrollWidth - innerWidth, work.scrollWidth - work.clientWidth);
      });
      if (wide > 1) over.push(`${screen[0]} at ${width} px, ${size}: ${wide} px`);
    }
  }
  assert.deepEqual(over, []);
});
