/**
 * What outlives the app: a journal that its first version wrote is read by this one, and a newer
 * version that the host serves comes into use without anything that was kept going missing. A window
 * that can't write any more says so.
 */

import assert from "node:assert/strict";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { BUILT, keep, onThePhone, phone, served, written } from "./drive.mjs";

/** A journal as the first version of the store had it; never to be brought up to date. */
const FIRST = [
  { what: "house-made", name: "Dunnock", units: "mm", dialect: "uk" },
  {
    what: "setting",
    key: ["profiles", "AR57"],
    value: { face: 57, thickness: 19 },
  },
  { what: "setting", key: ["defaults", "architrave"], value: "AR57" },
  { what: "setting", key: ["defaults", "quirk"], value: 5 },
  { what: "setting", key: ["stock"], value: [{ profile: "AR57", length: 5400 }] },
  { what: "opening-added", opening: "W1", room: "Main", kind: "window", trim: "all-round" },
  { what: "reading", opening: "W1", line: "left", value_text: "462", unit: "mm", again: false },
  { what: "reading", opening: "W1", line: "top", value_text: "1187", unit: "mm", again: false },
].map((entry, at) => ({
  ...entry,
  device: "firstphone",
  counter: at + 1,
  at: `2026-01-05T08:00:0${at}.000Z`,
  house: "dunnockkey",
}));

const profile = mkdtempSync(join(tmpdir(), "longpoint-update-"));
const host = mkdtempSync(join(tmpdir(), "longpoint-host-"));
let server;
let context;
let page;

before(async () => {
  cpSync(BUILT, host, { recursive: true });
  server = await served(host);
  context = await phone(profile);
  page = context.pages()[0] ?? (await context.newPage());
});

after(async () => {
  await context?.close();
  await server?.stop();
  for (const folder of [profile, host]) rmSync(folder, { recursive: true, force: true });
});

/** Write a journal into a store of the first version, before the app has opened one. */
function writeFirst(entries) {
  return new Promise((resolve, reject) => {
    const asked = indexedDB.open("longpoint", 1);
    asked.onerror = () => reject(asked.error);
    asked.onupgradeneeded = () => {
      const store = asked.result.createObjectStore("entries", { keyPath: ["device", "counter"] });
      store.createIndex("house", "house");
      asked.result.createObjectStore("facts");
    };
    asked.onsuccess = () => {
      const tx = asked.result.transaction(["entries", "facts"], "readwrite");
      for (const entry of entries) tx.objectStore("entries").add(entry);
      tx.objectStore("facts").put("firstphone", "device");
      tx.oncomplete = () => {
        asked.result.close();
        resolve();
      };
    };
  });
}

/** Open the store as a newer version would. */
function openNewer() {
  return new Promise((resolve, reject) => {
    const asked = indexedDB.open("longpoint", 99);
    asked.onerror = () => reject(asked.error);
    asked.onsuccess = () => {
      asked.result.close();
      resolve();
    };
  });
}

/** Serve a newer version: one file is other, and the list of files with it. */
function publish(text) {
  writeFileSync(join(host, "licences.txt"), text);
  const file = join(host, "sw.js");
  const before = readFileSync(file, "utf8");
  const now = before
    .replace(/("\.\/licences\.txt",")[0-9a-f]{16}/, "$10000000000000001")
    .replace(/(longpoint-app-\$\{")[0-9a-f]{16}/, "$10000000000000002");
  assert.equal([...now].filter((sign, at) => sign !== before[at]).length > 2, true);
  writeFileSync(file, now);
}

const licences = () => page.evaluate(async () => (await fetch("./licences.txt")).text());
const stores = () => page.evaluate(() => caches.keys());

test("a journal of the first version is read, and written on", async () => {
  await page.goto(`${server.address}licences.txt`);
  await page.evaluate(writeFirst, FIRST);
  await page.goto(server.address);
  await page.getByRole("link", { name: /A house/ }).tap();
  await page.getByText("2 of 6").waitFor();
  await page.evaluate(() => (location.hash = "#/h/dunnockkey/read/W1/right"));
  await page.getByRole("heading", { name: "Height at the right side" }).waitFor();
  await keep(page, 463);
  await page.getByText("Kept: W1 right 463").waitFor();
  const found = await written(page);
  assert.deepEqual(found.slice(0, FIRST.length), FIRST);
  assert.equal(found.length, FIRST.length + 1);
  assert.equal(found.at(-1).counter, FIRST.length + 1);
});

test("a newer version waits, is taken, and loses nothing", async () => {
  await onThePhone(page);
  const [old] = await stores();
  const kept = await written(page);
  publish("the licences of the newer version");
  await page.evaluate(() => (location.hash = ""));
  await page.reload();
  await page.getByText("A newer version of this app").waitFor();
  // It waits: this page still runs on what it was opened with.
  assert.notEqual(await licences(), "the licences of the newer version");
  await Promise.all([
    page.waitForEvent("load"),
    page.getByRole("button", { name: "Change over now" }).tap(),
  ]);
  assert.equal(await licences(), "the licences of the newer version");
  assert.deepEqual(await written(page), kept);
  await page.waitForFunction(async (was) => !(await caches.keys()).includes(was), old);
  assert.equal((await stores()).length, 1);
});

test("the newer version opens with no network, and goes on writing", async () => {
  await server.stop();
  await context.setOffline(true);
  await page.evaluate(() => (location.hash = "#/h/dunnockkey/read/W1/bottom"));
  await page.reload();
  await page.getByRole("heading", { name: "Width at the bottom" }).waitFor();
  assert.equal(await licences(), "the licences of the newer version");
  await keep(page, 1186);
  await page.getByText("Kept: W1 bottom 1186").waitFor();
  await page.evaluate(() => (location.hash = "#/h/dunnockkey/house"));
  await page.getByText("4 of 6").waitFor();
});

test("a window of an older version lets go of the store, and says that nothing more is kept", async () => {
  await page.evaluate(() => (location.hash = "#/h/dunnockkey/read/W1/bottom"));
  await page.getByRole("heading", { name: "Width at the bottom" }).waitFor();
  const newer = await context.newPage();
  await newer.goto(`${server.address}licences.txt`);
  await newer.evaluate(openNewer);
  await page.getByText("this window has let go of it").waitFor();
  await page.keyboard.type("1186");
  await page.keyboard.press("Enter");
  await page.getByText("nothing typed here is kept").waitFor();
  assert.equal(await page.getByText("Kept: W1 bottom").count(), 0);
  await newer.close();
});
