/**
 * The phone dies while readings are typed: nothing that the screen called kept is missing after.
 *
 * KILLS says how often it dies; 100 in the long run.
 */

import assert from "node:assert/strict";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import {
  addOpening,
  beginHouse,
  onThePhone,
  phone,
  plannerReady,
  pullThePlug,
  served,
  written,
} from "./drive.mjs";

const KILLS = Number(process.env.KILLS ?? 5);
const SEED = 20_260;

/** Even numbers from 0 to 1, the same each time. */
function drawn(seed) {
  let state = seed;
  return () => {
    state = (state * 1_664_525 + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

test(`the phone dies ${KILLS} times while readings are typed`, async () => {
  const profile = mkdtempSync(join(tmpdir(), "longpoint-battery-"));
  const chance = drawn(SEED);
  const server = await served();
  let context = await phone(profile);
  let page = context.pages()[0] ?? (await context.newPage());
  await page.goto(server.address);
  await onThePhone(page);
  await plannerReady(page);
  await beginHouse(page, "Pipit");
  await addOpening(page, "W1", "window", "Main");
  const house = (await page.evaluate(() => location.hash)).split("/")[2];
  await server.stop();

  const said = [];
  let next = 1000;
  for (let kill = 0; kill < KILLS; kill++) {
    let isDead = false;
    const plug = setTimeout(
      () => {
        isDead = true;
        pullThePlug(profile);
      },
      300 + chance() * 2500,
    );
    try {
      while (!isDead) {
        const value = String(next++);
        await page.evaluate((to) => (location.hash = to), `#/h/${house}/read/W1/top`);
        await page.getByRole("heading", { name: "Width at the head" }).waitFor();
        await page.keyboard.type(value);
        await page.keyboard.press("Enter");
        await page.getByText(`Kept: W1 top ${value}`).waitFor();
        said.push(value);
      }
    } catch (trouble) {
      if (!isDead) throw trouble;
    }
    clearTimeout(plug);
    await context.close().catch(() => undefined);
    context = await phone(profile);
    page = context.pages()[0] ?? (await context.newPage());
    await page.goto(server.address);
    await page.getByRole("link", { name: /Pipit/ }).waitFor();
    const all = await written(page);
    const there = new Set(all.filter((e) => e.what === "reading").map((e) => e.value_text));
    assert.deepEqual(
      said.filter((value) => !there.has(value)),
      [],
      `after ${kill + 1} times`,
    );
    await page.evaluate((to) => (location.hash = to), `#/h/${house}/read/W1/left`);
    await page.getByRole("group", { name: "Keypad" }).waitFor();
  }
  console.log(`${said.length} readings were called kept, none is missing`);
  assert.ok(said.length >= KILLS, "too few readings to say anything");
  await context.close();
  rmSync(profile, { recursive: true, force: true });
});
