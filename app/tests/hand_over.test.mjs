/** A house from one phone to another: codes on one screen, read back, joined on the other. */

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { after, before, test } from "node:test";
import { fileURLToPath } from "node:url";
import { openText, phone, plannerReady, secondLook, served, tab, written } from "./drive.mjs";

const SCENARIOS = join(dirname(fileURLToPath(import.meta.url)), "../../tests/scenarios");
/** Its first four openings: how long a plan takes says nothing of how a house is handed over. */
const [HOUSE] = readFileSync(join(SCENARIOS, "pipit.toml"), "utf8").split('[[openings]]\nmark = "W5"');
/** Counts that are taken in where another is the highest, and counts that aren't: the core's own. */
const COUNTS_AHEAD = JSON.parse(readFileSync(join(SCENARIOS, "counts-ahead.json"), "utf8"));
const READ = `
import sys, numpy, zxingcpp
for path in sys.argv[1:]:
    wide = int(path.rsplit(".", 2)[1])
    found = zxingcpp.read_barcodes(numpy.fromfile(path, numpy.uint8).reshape(-1, wide))
    print(found[0].text if found else "")
`;

const folder = mkdtempSync(join(tmpdir(), "longpoint-hand-over-"));
const shots = [];
const greys = [];
let server;
let context;
let page;
let given;

async function begin(name) {
  context = await phone(join(folder, name), { acceptDownloads: true });
  page = context.pages()[0] ?? (await context.newPage());
  await page.goto(server.address);
  await plannerReady(page);
}

/** A picture as bytes from black to white, its width in its name: what the second reader takes. */
async function asGrey(png, path) {
  const { wide, url } = await page.evaluate(async (text) => {
    const bytes = Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
    const picture = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
    const canvas = new OffscreenCanvas(picture.width, picture.height);
    const drawn = canvas.getContext("2d");
    drawn.drawImage(picture, 0, 0);
    const { data } = drawn.getImageData(0, 0, picture.width, picture.height);
    const grey = new Uint8Array(data.length / 4);
    for (let at = 0; at < grey.length; at++) grey[at] = data[4 * at + 1];
    // As one text: a list of a million numbers takes seconds on its way out of the browser.
    const reader = new FileReader();
    const read = new Promise((resolve) => (reader.onload = resolve));
    reader.readAsDataURL(new Blob([grey]));
    await read;
    return { wide: picture.width, url: reader.result };
  }, png.toString("base64"));
  const name = path.replace(".png", `.${wide}.grey`);
  writeFileSync(name, Buffer.from(url.split(",")[1], "base64"));
  return name;
}

/** What the button gives, as text; a touch screen would ask the phone where to. */
async function download(button) {
  await page.evaluate(() => (navigator.canShare = undefined));
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: button }).tap(),
  ]);
  return readFileSync(await file.path(), "utf8");
}

/** Says which is the highest count of other phones that this one has seen. */
function setSeen(highest) {
  return page.evaluate(
    (seen) =>
      new Promise((resolve, reject) => {
        const asked = indexedDB.open("longpoint");
        asked.onerror = () => reject(asked.error);
        asked.onsuccess = () => {
          const tx = asked.result.transaction("facts", "readwrite");
          tx.objectStore("facts").put(seen, "seen");
          tx.oncomplete = () => {
            asked.result.close();
            resolve(seen);
          };
        };
      }),
    highest,
  );
}

before(async () => {
  server = await served();
  await begin("one");
});

after(async () => {
  await context?.close();
  await server?.stop();
  rmSync(folder, { recursive: true, force: true });
});

test("a house with a second look at a line is shown as pictures", async () => {
  await page.getByRole("link", { name: "Open a house" }).tap();
  await openText(page, HOUSE);
  await page.getByRole("button", { name: "Keep it on this phone" }).tap();
  await secondLook(page, "W1", 1196);
  await tab(page, "House");
  await page.getByRole("link", { name: /W1.*HELD/ }).waitFor();
  given = await download("Copy the house file");
  assert.match(given, /bottom = \[1186, 1196\]/, "both readings leave the phone");
  await page.getByRole("link", { name: "Hand over to another phone" }).tap();
  await page.getByRole("button", { name: /^Show it in/ }).tap();
  const [, count] = /of (\d+)/.exec(await page.getByRole("heading", { level: 1 }).innerText());
  for (let at = 0; at < Number(count); at++) {
    await page.getByRole("heading", { name: `Picture ${at + 1} of ${count}` }).waitFor();
    const path = join(folder, `code-${at}.png`);
    const shot = await page.screenshot({ path });
    shots.push(path);
    greys.push(await asGrey(shot, path));
    if (at + 1 < Number(count)) await page.getByRole("button", { name: "Next" }).tap();
  }
  await context.close();
});

test("a second reader finds each code on the screen", () => {
  const python = process.env.PYTHON ?? "python3";
  const read = execFileSync(python, ["-c", READ, ...greys], { encoding: "utf8" });
  const parts = read.trim().split("\n");
  assert.equal(parts.length, shots.length);
  for (const part of parts) assert.match(part, /^LPJ1\./);
});

test("the other phone joins them to the same house", async () => {
  await begin("two");
  await page.getByRole("link", { name: "Open a house" }).tap();
  const pick = page.getByLabel("Or pictures of its screen");
  await pick.setInputFiles(shots.slice(1).reverse());
  await page.getByText(/still wanted: 1\./).waitFor();
  await pick.setInputFiles(shots.slice(0, 1));
  await page.getByRole("button", { name: "Keep it on this phone" }).tap();
  await page.getByRole("link", { name: /W1.*HELD/ }).waitFor();
  assert.equal(await download("Copy the house file"), given);
});

test("what both read goes on: a journal sent back as a file is put beside what stands", async () => {
  await secondLook(page, "W1", 1186);
  await tab(page, "House");
  await page.getByRole("link", { name: "Hand over to another phone" }).tap();
  const journal = await download("Send it as a file");
  await context.close();
  await begin("one");
  await page.getByRole("link", { name: "Open a house" }).tap();
  await openText(page, journal);
  await page.getByText("It is on this phone already").waitFor();
  await page.getByRole("button", { name: "Keep it on this phone" }).tap();
  await page.getByRole("link", { name: /W1/ }).first().waitFor();
  await page.locator(".state.held").nth(1).waitFor({ state: "detached" });
  assert.match(await download("Copy the house file"), /bottom = \[1186, 1196, 1186\]/);
});

test("a journal with a count too far ahead is refused, and the phone counts on as before", async () => {
  await page.getByRole("link", { name: "Hand over to another phone" }).tap();
  const journal = JSON.parse(await download("Send it as a file"));
  const own = await written(page);
  await context.close();
  await begin("three");
  await page.getByRole("link", { name: "Open a house" }).tap();
  for (const { highest, counter, is_taken } of COUNTS_AHEAD) {
    await setSeen(highest);
    const last = { ...journal.entries.at(-1), device: "far", counter };
    await openText(page, JSON.stringify({ ...journal, entries: [...journal.entries, last] }));
    const said = is_taken ? page.getByRole("button", { name: "Keep it on this phone" }) : page.getByRole("alert");
    await said.waitFor();
    // What is chosen next is told from this by what stands there meanwhile.
    await openText(page, is_taken ? "name = " : JSON.stringify(journal));
    await said.waitFor({ state: "detached" });
  }
  assert.deepEqual(await written(page), []);
  await context.close();
  await begin("one");
  await page.getByRole("link", { name: "Open a house" }).tap();
  const far = { ...journal.entries.at(-1), device: "far", counter: 2 ** 53 - 1 };
  await openText(page, JSON.stringify({ ...journal, entries: [...journal.entries, far] }));
  await page.getByText("further ahead").waitFor();
  assert.deepEqual(await written(page), own, "what is on the phone stays");
  await openText(page, HOUSE);
  await page.getByRole("button", { name: "Keep it on this phone" }).tap();
  await tab(page, "House");
  const highest = Math.max(...own.map(({ counter }) => counter));
  const after = await written(page);
  assert.equal(Math.max(...after.map(({ counter }) => counter)), highest + 1);
});
