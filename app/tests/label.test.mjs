/** A piece's label, read by the camera (a film in place of one) and from pictures. */

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { after, before, test } from "node:test";
import { fileURLToPath } from "node:url";
import { phone, plannerReady, served } from "./drive.mjs";
import { writeHouse } from "./screens.mjs";

const folder = mkdtempSync(join(tmpdir(), "longpoint-label-"));
const DRAWN = join(dirname(fileURLToPath(import.meta.url)), "core/label_pictures.py");
let server;
let context;
let page;

before(async () => {
  const house = join(folder, "cabin.toml");
  writeHouse(house);
  execFileSync(process.env.PYTHON ?? "python3", [DRAWN, house, folder]);
  server = await served();
  context = await phone(join(folder, "profile"), {
    args: [
      "--no-sandbox",
      "--disable-dev-shm-usage",
      "--use-fake-ui-for-media-stream",
      "--use-fake-device-for-media-stream",
      `--use-file-for-fake-video-capture=${join(folder, "label.y4m")}`,
    ],
    permissions: ["camera"],
  });
  page = context.pages()[0] ?? (await context.newPage());
  page.setDefaultTimeout(60_000);
  await page.goto(server.address);
  await plannerReady(page);
  await page.evaluate(() => (location.hash = "#/open"));
  await page.locator("input[type=file]").first().setInputFiles(house);
  await page.getByRole("button", { name: "Keep it on this phone" }).tap();
  await page.getByText(/of 8 openings can be cut as planned/).waitFor();
  await page.getByRole("link", { name: "Saw", exact: true }).tap();
  await page.getByRole("link", { name: "Read a label" }).tap();
});

after(async () => {
  await context?.close();
  await server?.stop();
  rmSync(folder, { recursive: true, force: true });
});

test("the camera reads a label, and the piece is there with its figure", async () => {
  await page.getByRole("button", { name: "Read with the camera" }).tap();
  await page.getByText("W1 head").waitFor();
  await page.getByText("still to be cut").waitFor();
  assert.equal(await page.getByText("Look at it").count(), 0);
  await page.getByRole("button", { name: "Close the camera" }).tap();
});

test("a label of other readings is told apart, and the piece shown all the same", async () => {
  await page.locator("input[type=file]").setInputFiles(join(folder, "old.png"));
  await page.getByText("may have been cut to other lengths").waitFor();
  await page.getByText("W1 head").waitFor();
});

test("what is no label is refused, and the next one is read", async () => {
  await page.locator("input[type=file]").setInputFiles(join(folder, "other.png"));
  await page.getByText("It is no label of a piece").waitFor();
  await page.locator("input[type=file]").setInputFiles(join(folder, "old.png"));
  await page.getByRole("link", { name: "W1: where it goes" }).tap();
  await page.getByRole("heading", { name: "Pieces" }).waitFor();
});
