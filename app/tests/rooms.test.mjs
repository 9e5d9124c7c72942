/** A room, a run and other trim typed on the phone: walls one by one, held and released. */

import assert from "node:assert/strict";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { beginHouse, phone, plannerReady, served, tab, type } from "./drive.mjs";

const profile = mkdtempSync(join(tmpdir(), "longpoint-rooms-"));
let server;
let context;
let page;

before(async () => {
  server = await served();
  context = await phone(profile);
  page = context.pages()[0] ?? (await context.newPage());
  await page.goto(server.address);
  await plannerReady(page);
  await beginHouse(page, "Dunlin");
});

after(async () => {
  await context?.close();
  await server?.stop();
  rmSync(profile, { recursive: true, force: true });
});

async function addProfile(name, face, thickness) {
  await page.getByLabel("Name", { exact: true }).fill(name);
  await page.getByLabel("Face, mm").fill(face);
  await page.getByLabel("Thick, mm").fill(thickness);
  await page.getByRole("button", { name: "Add profile" }).tap();
  await page.locator(".rows").getByText(name, { exact: true }).waitFor();
}

test("skirting and its sticks are set once", async () => {
  await tab(page, "House");
  await page.getByRole("link", { name: /^Settings/ }).tap();
  await addProfile("SK95", "95", "18");
  await addProfile("PR45", "45", "20");
  await page.getByLabel(/^At the floor/).selectOption("SK95");
  for (const name of ["SK95", "PR45"]) {
    await page.getByLabel(/^Profile/).selectOption(name);
    await page.getByLabel("Length, mm").fill("5400");
    await page.getByRole("button", { name: "Add stick" }).tap();
    await page.locator(".rows").getByText(`${name} at the merchant`).waitFor();
  }
});

test("a room is read wall by wall, and its skirting is planned", async () => {
  await tab(page, "Read");
  await page.getByRole("link", { name: "Add an opening" }).first().tap();
  await page.getByText("walls and floor").tap();
  await page.getByLabel("Name of the room").fill("Loft");
  await page.getByRole("button", { name: "Add Loft and read it" }).tap();
  // E leans out by a degree: W is 4000 x tan 1 = 70 longer.
  for (const [wall, length, corner] of [
    ["N", 4000, "90"],
    ["E", 3000, "91"],
    ["S", "4000.5", "89"],
    ["W", 3070, "90"],
  ]) {
    await page.getByRole("button", { name: `Add wall ${wall}` }).tap();
    await page.getByRole("heading", { name: "Length", level: 2 }).waitFor();
    await type(page, length);
    await page.getByRole("heading", { name: "Corner", exact: true }).waitFor();
    await type(page, corner);
    await page.getByRole("link", { name: "On with Loft" }).tap();
    // The drawing moves what is below it: a tap meanwhile would land on something else.
    await page.getByRole("heading", { name: "Loft", exact: true }).waitFor();
    await page.getByText("Drawing it").waitFor({ state: "detached" });
  }
  await page.getByText("The corner after E is 1.0 degrees wider").waitFor();
  await page.locator(".piece").nth(3).waitFor();
});

test("a second look at a wall that disagrees holds the room, a third releases it", async () => {
  await page.getByRole("link", { name: /^N/ }).tap();
  await page.getByRole("link", { name: /^Length/ }).tap();
  await page.getByText("A second look").tap();
  await type(page, 4100);
  await page.getByText("Loft: held").first().waitFor();
  await tab(page, "House");
  await page.getByRole("link", { name: /Loft.*HELD/ }).tap();
  await page.getByRole("link", { name: /^N/ }).tap();
  await page.getByRole("link", { name: /^Length/ }).tap();
  await page.getByText("Stands as 4000 and 4100").waitFor();
  await page.getByText("A second look").tap();
  await type(page, 4001);
  await tab(page, "House");
  await page.getByRole("link", { name: /Loft.*ready/ }).waitFor();
});

test("a run and a picture rail are asked for by their forms", async () => {
  await page.getByRole("link", { name: /^Add an opening, a room/ }).tap();
  await page.getByText("skirting run").tap();
  await page.getByRole("button", { name: "Add S1 and read it" }).tap();
  await page.getByRole("heading", { name: "Length", level: 2 }).waitFor();
  await type(page, 2284);
  await page.getByRole("button", { name: "internal" }).tap();
  await page.getByRole("heading", { name: "Right", exact: true }).waitFor();
  await page.getByRole("button", { name: "external" }).tap();
  await page.getByText("S1, run").first().waitFor();
  await page.locator(".piece").waitFor();
  await tab(page, "House");
  await page.getByRole("link", { name: /^Add an opening, a room/ }).tap();
  await page.getByText("other trim").tap();
  await page.getByLabel(/^Which trim/).selectOption({ label: "picture rail" });
  await page.getByLabel("Room").fill("Loft");
  await page.getByRole("button", { name: "Add T1 and read it" }).tap();
  await page.getByRole("button", { name: "PR45" }).tap();
  await page.getByRole("heading", { name: "Height", exact: true }).waitFor();
  await type(page, 2100);
  await page.getByText("T1, picture rail").first().waitFor();
  await page.locator(".piece").first().waitFor();
  assert.equal(await page.locator(".piece").count(), 4);
  await page.reload();
  await tab(page, "House");
  await page.getByRole("link", { name: /T1.*ready/ }).waitFor();
});
