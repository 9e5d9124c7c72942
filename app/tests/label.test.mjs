/** A piece by its printed label: from a picture of one, and by the camera that looks at another. */

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { after, before, test } from "node:test";
import { fileURLToPath } from "node:url";
import { beginHouse, phone, plannerReady, served, type } from "./drive.mjs";

const HERE = dirname(fileURLToPath(import.meta.url));
const HOUSE = join(HERE, "../../tests/scenarios/pipit.toml");

const folder = mkdtempSync(join(tmpdir(), "longpoint-label-"));
/** The first two pieces off the saw: their labels lie before the camera. */
const pieces = [];
let server;
let house;
let context;
let page;

before(async () => {
  const sheets = join(folder, "sheets");
  longpoint("plan", HOUSE, "--out", sheets, "--draws", "1000");
  longpoint("labels", sheets, "--grid", "62x29");
  python(join(HERE, "core/label_pictures.py"), join(sheets, "labels.pdf"), folder);
  const plan = JSON.parse(readFileSync(join(sheets, "plan.json"), "utf8"));
  pieces.push(...plan.sticks[0].pieces.slice(0, 2));
  server = await served();
  context = await phone(join(folder, "phone"), {
    permissions: ["camera"],
    args: [
      "--no-sandbox",
      "--disable-dev-shm-usage",
      "--use-fake-ui-for-media-stream",
      "--use-fake-device-for-media-stream",
      `--use-file-for-fake-video-capture=${join(folder, "label.y4m")}`,
    ],
  });
  page = context.pages()[0] ?? (await context.newPage());
  await page.goto(server.address);
  await plannerReady(page);
});

after(async () => {
  await context?.close();
  await server?.stop();
  rmSync(folder, { recursive: true, force: true });
});

function python(...args) {
  return execFileSync(process.env.PYTHON ?? "python3", args, { encoding: "utf8" });
}

/** A house with an opening held ends with 1: its labels are printed all the same. */
function longpoint(...args) {
  try {
    python("-m", "longpoint.cli.main", ...args);
  } catch (trouble) {
    if (trouble.status !== 1) throw trouble;
  }
}

async function houseHere() {
  return (await page.evaluate(() => location.hash)).split("/")[2];
}

const at = (...way) =>
  page.evaluate((to) => (location.hash = to), `#/${["h", ...way].join("/")}`);

async function readPicture(house) {
  await at(house, "label");
  await page.getByLabel("Or a picture of the label").setInputFiles(join(folder, "label.bmp"));
}

test("a label of a house that isn't here says so", async () => {
  await beginHouse(page, "Wheatear");
  await readPicture(await houseHere());
  await page.getByText(/^No house on this phone has those readings/).waitFor();
});

test("the camera reads a label of another house, and leads to it", async () => {
  const other = await houseHere();
  await page.evaluate(() => (location.hash = "#/open"));
  await page.locator("input[type=file]").first().setInputFiles(HOUSE);
  await page.getByRole("button", { name: "Keep it on this phone" }).tap();
  await page.getByText(/of 8 openings can be cut as planned/).waitFor();
  house = await houseHere();
  await at(other, "label");
  await page.getByRole("button", { name: "Read with the camera" }).tap();
  await page.getByText("This label is of Pipit").waitFor();
  await page.getByRole("link", { name: "Look there" }).tap();
  await page.getByText(pieces[1], { exact: true }).waitFor();
  await page.getByText("still to be cut").waitFor();
  assert.equal(await houseHere(), house);
  assert.equal(await page.getByText("Look at it").count(), 0);
});

test("a printed label shows its piece, and where it goes", async () => {
  await readPicture(house);
  await page.getByText(pieces[0], { exact: true }).waitFor();
  await page.getByRole("link", { name: /: where it goes$/ }).tap();
  await page.getByRole("heading", { name: "Pieces" }).waitFor();
});

test("a label from before a reading says so, though the reading comes from another window", async () => {
  await readPicture(house);
  await page.getByText(pieces[0], { exact: true }).waitFor();
  const other = await context.newPage();
  await other.goto(`${server.address}#/h/${house}/read/W1/top`);
  await other.getByRole("heading", { name: "Width at the head" }).waitFor();
  await type(other, 1188);
  await page.getByText("Written first since it was printed: W1 top read: 1188 mm").waitFor();
  await page.getByText("may have been cut to other lengths").waitFor();
  await page.getByText(pieces[0], { exact: true }).waitFor();
});
