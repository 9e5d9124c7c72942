/**
 * Every screen against WCAG 2.2 AA in light, dark and sun; at 320 px, with text of twice the size,
 * with both and on its side, nothing over the edge and no control out of reach. The screens are
 * walked once.
 */

import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { beginHouse, addOpening, PHONE, phone, plannerReady, served } from "./drive.mjs";
import { CREW_SCREENS, joinCrew, SCREENS, show, writeHouse } from "./screens.mjs";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
/** What is looked at in each light: everything once, then what depends on colours and lines. */
const LIGHTS = {
  light: { type: "tag", values: TAGS },
  dark: { type: "rule", values: ["color-contrast", "link-in-text-block"] },
  sun: { type: "rule", values: ["color-contrast", "link-in-text-block", "target-size"] },
};
const SIZES = [
  ["at 320 px", { width: 320, height: 700 }, "100%"],
  ["with text of twice the size", PHONE, "200%"],
  ["at 320 px with text of twice the size", { width: 320, height: 700 }, "200%"],
  ["on its side", { width: 844, height: 390 }, "100%"],
];
/** Of the height of the screen, the work keeps this much whatever stands above and below it. */
const LEAST_WORK = 0.33;

const folder = mkdtempSync(join(tmpdir(), "longpoint-access-"));
const found = { light: [], dark: [], sun: [], over: [], unreached: [] };
const seen = [];
const houses = { mm: "", inches: "" };
let server;
let context;
let page;

before(async () => {
  server = await served();
  // The page's own rules forbid foreign scripts; the checker is one. And a mobile page that is too
  // wide is zoomed out until it fits: here it has to stand out.
  context = await phone(join(folder, "profile"), { bypassCSP: true, isMobile: false });
  page = context.pages()[0] ?? (await context.newPage());
  await page.goto(server.address);
  await plannerReady(page);
  await beginHouse(page, "Wheatear", "us", "inches");
  await addOpening(page, "W1", "window", "Den");
  houses.inches = await houseHere();
  await page.evaluate(() => (location.hash = "#/open"));
  writeHouse(join(folder, "cabin.toml"));
  await page.locator("input[type=file]").first().setInputFiles(join(folder, "cabin.toml"));
  await page.getByRole("button", { name: "Keep it on this phone" }).tap();
  await page.getByText(/of 8 openings can be cut as planned/).waitFor();
  houses.mm = await houseHere();
  await page.evaluate(AXE);
  for (const screen of SCREENS) await look(screen);
  await joinCrew(page, houses.mm);
  await page.evaluate(AXE);
  for (const screen of CREW_SCREENS) await look(screen);
});

after(async () => {
  await context?.close();
  await server?.stop();
  rmSync(folder, { recursive: true, force: true });
});

async function houseHere() {
  return (await page.evaluate(() => location.hash)).split("/")[2];
}

async function look(screen) {
  const name = `${screen[0]} (${screen[1]})`;
  await show(page, houses, screen);
  for (const [light, runOnly] of Object.entries(LIGHTS)) {
    await page.evaluate((value) => (document.documentElement.dataset.light = value), light);
    for (const each of await violations(runOnly)) found[light].push(`${name}: ${each}`);
  }
  for (const [how, size, text] of SIZES) {
    await page.setViewportSize(size);
    await page.evaluate((value) => (document.documentElement.style.fontSize = value), text);
    const { wide, unreached } = await page.evaluate(inSight, LEAST_WORK);
    if (wide > 1) found.over.push(`${name} ${how}: ${wide} px`);
    for (const each of unreached) found.unreached.push(`${name} ${how}: ${each}`);
  }
  await page.evaluate(() => (document.documentElement.style.fontSize = ""));
  await page.setViewportSize(PHONE);
  seen.push(name);
}

async function violations(runOnly) {
  const { violations: broken } = await page.evaluate(
    (only) => window.axe.run(document, { runOnly: only, iframes: false }),
    runOnly,
  );
  return broken.map(
    (each) => `${each.id}: ${each.nodes.map((node) => node.html.slice(0, 120)).join(" | ")}`,
  );
}

/** In the page: how much is over the edge, and which controls no finger gets at. */
function inSight(leastWork) {
  const work = document.getElementById("work");
  const root = document.documentElement;
  const wide = Math.max(root.scrollWidth - innerWidth, work.scrollWidth - work.clientWidth);
  const unreached = [];
  if (work.clientHeight < leastWork * innerHeight) {
    unreached.push(`the work has only ${work.clientHeight} of ${innerHeight} px`);
  }
  for (const control of document.querySelectorAll("a, button, input, select, textarea, summary")) {
    // What is tapped of a choice is its label.
    const target = control.type === "radio" ? control.closest("label") : control;
    if (!target.checkVisibility() || target.classList.contains("skip")) continue;
    target.scrollIntoView({ block: "center", inline: "center" });
    const box = target.getBoundingClientRect();
    const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
    const top = document.elementFromPoint(x, y);
    const isTop = top !== null && (target.contains(top) || top.control === control);
    // A row of many words may be higher than the screen; its middle is tapped all the same.
    const isHigh = box.height > Math.min(work.clientHeight, 0.8 * innerHeight);
    const fits = isHigh || (box.top > -1 && box.bottom < innerHeight + 1);
    if (isTop && fits && box.left > -1 && box.right < innerWidth + 1) continue;
    const said = (target.ariaLabel ?? target.innerText ?? target.type).replace(/\s+/g, " ");
    unreached.push(`${target.tagName} ${said.slice(0, 60)}`);
  }
  work.scrollTo(0, 0);
  return { wide, unreached };
}

for (const light of Object.keys(LIGHTS)) {
  test(`no screen breaks WCAG 2.2 AA, ${light}`, () => assert.deepEqual(found[light], []));
}

test("nothing runs over the edge", () => assert.deepEqual(found.over, []));

test("every control is within reach, and nothing lies over it", () => {
  assert.deepEqual(found.unreached, []);
});

test("every screen was looked at", () => assert.equal(seen.length, SCREENS.length + CREW_SCREENS.length));
