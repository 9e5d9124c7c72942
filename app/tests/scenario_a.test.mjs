/**
 * The cabin of scenario A on the phone: server stopped, network off, entered by touch, a misreading
 * caught and read again, planned, a piece spoiled, planned again, a sheet printed, reloaded.
 */

import assert from "node:assert/strict";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import {
  addOpening,
  beginHouse,
  holdFinalPlans,
  keep,
  onThePhone,
  phone,
  plannerReady,
  served,
  tab,
  type,
} from "./drive.mjs";

// [mark, kind, room, left, top, right, bottom, rising, falling, plane bl, tl, tr, br, faces]
const OPENINGS = [
  ["W1", "window", "Main", 462, 1187, 462, 1186, 1274, 1272, 1, 0, 0, 0],
  ["W2", "window", "Main", 1012, 886, 1010, 886, 1346, 1344, 1, 2, 1, 0],
  ["W3", "window", "Main", 598, 1187, 599, 1178, 1322, 1322, 0, 0, 0, 0],
  ["W4", "window", "Bath", 592, 448, 592, 448, 742, 742, 0, -1, -1, 0],
  ["W5", "window", "Main", 1012, 886, 1006, 884, 1340, 1343, 0, 0, -3, -1],
  ["W6", "window", "Loft", 460, 1183, 463, 1184, 1275, 1267, 0, 0, 0, 1],
  ["D1", "door", "Main", 2034, 819, 2026, 819, 2192, 2186, 0, 0, 0, 1],
  ["D2", "door", "Bath", 2012, 719, 2012, 718, 2136, 2137, 1, 1, 0, 0, 2],
];

const profile = mkdtempSync(join(tmpdir(), "longpoint-phone-"));
let context;
let page;

before(async () => {
  const server = await served();
  context = await phone(profile);
  await context.addInitScript(holdFinalPlans);
  page = context.pages()[0] ?? (await context.newPage());
  await page.goto(server.address);
  await onThePhone(page);
  await plannerReady(page);
  await server.stop();
  await context.setOffline(true);
  await page.reload();
});

after(async () => {
  await context?.close();
  rmSync(profile, { recursive: true, force: true });
});

async function addAndRead([mark, kind, room, ...figures], readOne) {
  await page.getByRole("link", { name: "Add an opening" }).first().tap();
  await addOpening(page, mark, kind, room, figures[10] === 2);
  for (const figure of figures.slice(0, 10)) await readOne(figure);
  await page.getByRole("heading", { name: "Readings" }).waitFor();
}

test("a house is begun with no network", async () => {
  await plannerReady(page);
  await beginHouse(page, "Pipit");
});

test("a misreading is caught, held, and released by reading again", async () => {
  await tab(page, "Read");
  for (const opening of OPENINGS.slice(0, 2)) await addAndRead(opening, (figure) => type(page, figure));
  // The third with the thumb, key by key.
  await addAndRead(OPENINGS[2], async (figure) => {
    const hash = await page.evaluate(() => location.hash);
    await keep(page, figure);
    await page.waitForFunction((was) => location.hash !== was, hash);
  });
  await page.getByText("digits swapped").first().waitFor();
  await page.getByText("HELD").first().waitFor();
  await tab(page, "House");
  await page.getByRole("link", { name: /W3.*HELD/ }).waitFor();
  assert.equal(await page.locator(".state.held").count(), 1);
  await tab(page, "Saw");
  await page.getByRole("button", { name: "Cut", exact: true }).waitFor();
  assert.equal(await page.getByText("W3").count(), 0, "a held opening has no piece at the saw");
  await page.getByText("this phone's own").waitFor();
  await tab(page, "House");
  await page.getByRole("link", { name: /W3/ }).tap();
  await page.getByRole("link", { name: /Width at the head/ }).tap();
  await page.getByText("Stands as 1187").waitFor();
  await type(page, 1178);
  await page.getByRole("heading", { name: "Readings" }).waitFor();
  await page.getByText("digits swapped").waitFor({ state: "detached" });
});

test("figures struck faster than the disk keeps them are all there, in their places", async () => {
  const [mark, kind, room, ...figures] = OPENINGS[3];
  await tab(page, "Read");
  await page.getByRole("link", { name: "Add an opening" }).first().tap();
  await addOpening(page, mark, kind, room);
  // As a tape does that types by itself: nothing is waited for, and a bounced key counts once.
  await page.keyboard.type(figures.map((figure) => `${figure}\n\n`).join(""));
  await page.getByRole("heading", { name: "Readings" }).waitFor();
  const kept = await page.locator(".readings b").allInnerTexts();
  assert.deepEqual(kept.map(Number), figures);
});

test("the rest of the walk is read and the house planned", async () => {
  for (const opening of OPENINGS.slice(4)) await addAndRead(opening, (figure) => type(page, figure));
  await page.evaluate(() => (window.holdsFinal = true));
  await tab(page, "House");
  await page.getByText("48 of 48").waitFor();
  await page.getByText(/of 8 openings can be cut as planned/).waitFor();
  assert.equal(await page.locator(".state.held").count(), 0);
});

test("by a first plan nothing is ordered or cut; the final one comes after it", async () => {
  await tab(page, "Buy");
  await page.getByText("First plan: its sticks may still change").waitFor();
  const order = page.getByRole("button", { name: "The order comes with the final plan" });
  assert.ok(await order.isDisabled());
  await tab(page, "Saw");
  await page.getByText("The cut list comes with the final plan.").waitFor();
  assert.equal(await page.getByRole("button", { name: "Cut", exact: true }).count(), 0);
  await page.evaluate(() => window.letGo());
  await page.getByRole("button", { name: "Cut", exact: true }).waitFor();
  await tab(page, "Buy");
  await page.getByText("First plan:").waitFor({ state: "detached" });
  assert.ok(await page.getByRole("button", { name: "Send the order as text" }).isEnabled());
  await page.getByText("proved: no plan buys less").waitFor();
  assert.equal(await page.locator(".buy:not(.spare) .huge").innerText(), "8");
});

/** Six signs: which piece lies on which stick. */
const cutPlan = () => page.locator("p:has-text('cut plan') b").innerText();

test("a spoiled piece is planned again, and a cut one is done", async () => {
  await tab(page, "Saw");
  const planned = await cutPlan();
  assert.match(planned, /^\w{6}$/);
  const piece = async () =>
    (await page.locator("section[aria-label^='Cut ']").getAttribute("aria-label")).slice(4);
  const first = await piece();
  await page.getByRole("button", { name: "Cut", exact: true }).tap();
  await page.getByText(`${first} is cut.`).waitFor();
  await page.getByText(/^2 of/).waitFor();
  assert.equal(await cutPlan(), planned, "all is cut as planned");
  const second = await piece();
  assert.notEqual(second, first);
  await page.getByRole("button", { name: "Spoiled" }).tap();
  await page.getByRole("button", { name: "Nothing of it" }).tap();
  await page.getByText(`${second} is to be cut again.`).waitFor();
  await page.getByRole("button", { name: "Cut", exact: true }).waitFor();
  await page.getByText(/^2 of/).waitFor();
  assert.notEqual(await cutPlan(), planned);
});

test("a sheet is shown and printed, of the cut plan that is cut by", async () => {
  const cutBy = await cutPlan();
  await tab(page, "Sheets");
  await page.getByRole("link", { name: "Cutting, again" }).tap();
  const sheet = page.frameLocator("iframe");
  await sheet.getByRole("heading", { name: "Cutting, again" }).waitFor();
  await sheet.getByText(`Cut plan ${cutBy}.`).waitFor();
  await page.evaluate(() => {
    const inside = document.querySelector("iframe").contentWindow;
    inside.print = () => (window.printed = inside.document.title);
  });
  await page.getByRole("button", { name: "Print" }).tap();
  assert.equal(await page.evaluate(() => window.printed), "Cutting, again - Pipit");
});

test("a reload loses nothing", async () => {
  await page.reload();
  await tab(page, "House");
  await page.getByText("48 of 48").waitFor();
  await page.getByText(/1 of 40 pieces cut|1 of \d+ pieces cut/).waitFor();
  await page.getByRole("button", { name: /Take back: spoiled/ }).waitFor();
});
