/** A house read in inches and sixteenths by a crew of the States: its figures and its words. */

import assert from "node:assert/strict";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { addOpening, beginHouse, phone, plannerReady, served, tab } from "./drive.mjs";

const profile = mkdtempSync(join(tmpdir(), "longpoint-inches-"));
let server;
let context;
let page;

before(async () => {
  server = await served();
  context = await phone(profile);
  page = context.pages()[0] ?? (await context.newPage());
  await page.goto(server.address);
  await plannerReady(page);
  await beginHouse(page, "Wheatear", "us", "inches");
});

after(async () => {
  await context?.close();
  await server?.stop();
  rmSync(profile, { recursive: true, force: true });
});

/** Types inches and a part of one by touch, and keeps them. */
async function keepInches(text) {
  const [whole, part] = text.split(" ");
  const hash = await page.evaluate(() => location.hash);
  const keys = page.getByRole("group", { name: "Keypad" });
  for (const figure of whole) await keys.getByRole("button", { name: figure, exact: true }).tap();
  if (part) {
    await keys.getByRole("button", { name: /part$/ }).tap();
    const parts = page.getByRole("group", { name: "Part of an inch" });
    await parts.getByRole("button", { name: part, exact: true }).tap();
  }
  await keys.getByRole("button", { name: "Keep" }).tap();
  await page.waitForFunction((was) => location.hash !== was, hash);
}

/** Goes to a screen of the house in hand. */
async function goTo(screen) {
  await page.evaluate((to) => {
    location.hash = location.hash.replace(/^(#.h.[^/]+).*/, `$1/${to}`);
  }, screen);
}

/** What stands on the screen, drawings included; nothing of it in mm or in words of elsewhere. */
async function standsInInches() {
  const text = await page.locator("#work").evaluate((work) => work.textContent);
  assert.doesNotMatch(text, /\bmm\b/, "nothing is in mm");
  assert.doesNotMatch(text, /\b(skirting|architrave|quirk|mitre|moulding|lining)(?!_)/i, "its words");
  return text;
}

test("a window is entered in inches and sixteenths", async () => {
  await addOpening(page, "W1", "window", "Den");
  // 35 15/16 by 47 3/16: the diagonals are the root of their squares, 59.31.
  for (const reading of ["47 3/16", "35 15/16", "47 3/16", "35 15/16", "59 5/16", "59 5/16"]) {
    await keepInches(reading);
  }
  await goTo("opening/W1");
  await page.locator(".piece").nth(3).waitFor();
  const text = await standsInInches();
  // To long points a leg is the side, two reveals of 3/16 and two faces of 2 1/4 more: 4 7/8.
  assert.match(text, /long to long 52 1\/16/);
  assert.match(text, /long to long 40 13\/16/);
  assert.match(text, /47 3\/16/, "the readings stand as they were read");
});

test("the saw and what to buy are in inches", async () => {
  await tab(page, "Saw");
  await page.getByText("To be said back").waitFor();
  await standsInInches();
  assert.match(await page.locator(".huge").innerText(), /^\d+( \d+\/\d+)?"?$/);
  await tab(page, "Buy");
  await page.locator(".buy").first().waitFor();
  const bought = await standsInInches();
  assert.match(bought, /of 192\b/);
  assert.match(bought, /2 1\/4/);
});

test("so are the house, its settings and the wall", async () => {
  for (const [screen, text] of [
    ["house", "readings."],
    ["settings", "Saw cut (kerf), in"],
    ["wall/W1", "in inches"],
  ]) {
    await goTo(screen);
    await page.getByText(text).first().waitFor();
    await standsInInches();
  }
});

test("a wall is read in inches, in the words of the country", async () => {
  await goTo("add");
  await page.getByText("baseboard run").waitFor();
  await page.getByText("stool and apron").waitFor();
  await page.getByText("walls and floor").tap();
  await page.getByLabel("Name of the room").fill("Den");
  await page.getByRole("button", { name: "Add Den and read it" }).tap();
  await page.getByRole("button", { name: "Add wall N" }).tap();
  await page.getByRole("heading", { name: "Length", level: 2 }).waitFor();
  await keepInches("144 1/2");
  await page.evaluate(() => (location.hash = location.hash.replace("fill/corner", "place")));
  await page.getByText("144 1/2").waitFor();
  await page.getByText(/more that can be said of it/).tap();
  await page.getByText("Baseboard", { exact: true }).waitFor();
  await standsInInches();
});
