/**
 * Takes a picture of every screen, at a phone's and a laptop's width, of the cabin with a loft.
 *
 *     node app/pictures.mjs OUT
 */

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { crc32, deflateSync } from "node:zlib";
import { phone, plannerReady, served } from "./tests/drive.mjs";
import { joinCrew, settled } from "./tests/screens.mjs";

const HOUSE = join(dirname(fileURLToPath(import.meta.url)), "../tests/scenarios/pipit.toml");
const WIDTHS = { phone: { width: 390, height: 844 }, laptop: { width: 1280, height: 800 } };

// [name, address, a text that stands on it once it is there]
const SCREENS = [
  ["houses", "", "Begin a house"],
  ["begin", "begin", "The tape reads"],
  ["open", "open", "From another phone's screen"],
  ["about", "about", "Before you cut"],
  ["crew", "crew", "is of no crew yet"],
  ["house", "h/HOUSE/house", "readings"],
  ["add", "h/HOUSE/add", "What is it?"],
  ["read", "h/HOUSE/read/W1/left", "Height at the left side"],
  ["read-held", "h/HOUSE/read/W3/done", "digits swapped"],
  ["opening", "h/HOUSE/opening/W1", "Pieces"],
  ["room", "h/HOUSE/place/rooms/Main", "Walls"],
  ["corner", "h/HOUSE/fill/corner/rooms/Main/walls/N", "Corner with the next wall"],
  ["saw", "h/HOUSE/saw", "To be said back"],
  ["label", "h/HOUSE/label", "Hold the square code"],
  ["wall", "h/HOUSE/wall/W1", "What to tap"],
  ["buy", "h/HOUSE/buy", "No substitutes"],
  ["sheets", "h/HOUSE/sheets", "Cutting"],
  ["sheet", "h/HOUSE/sheets/cut", "Print"],
  ["settings", "h/HOUSE/settings", "Profiles"],
  ["hand-over", "h/HOUSE/hand-over", "Show it in"],
];

/** The same of a phone that is of a crew, whose laptop isn't there. */
const CREW_SCREENS = [
  ["crew-shared", "crew", "Last shared"],
  ["house-from-others", "h/HOUSE/house", "From Kim's phone"],
];

const MOST_COLOURS = 64;

/** The same picture in few colours: a screen is flat, and a page of many pictures has to load. */
async function small(page, png) {
  const { wide, high, text } = await page.evaluate(async (coded) => {
    const bytes = Uint8Array.from(atob(coded), (sign) => sign.charCodeAt(0));
    const picture = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
    const canvas = new OffscreenCanvas(picture.width, picture.height);
    const drawn = canvas.getContext("2d");
    drawn.drawImage(picture, 0, 0);
    const { data } = drawn.getImageData(0, 0, picture.width, picture.height);
    let text = "";
    for (let at = 0; at < data.length; at += 4) {
      text += String.fromCharCode(data[at], data[at + 1], data[at + 2]);
    }
    return { wide: picture.width, high: picture.height, text: btoa(text) };
  }, png.toString("base64"));
  return indexed(wide, high, Buffer.from(text, "base64"));
}

/** A PNG with a palette: the commonest colours, and for any other the nearest of them. */
function indexed(wide, high, rgb) {
  const counts = new Map();
  const colours = new Int32Array(wide * high);
  for (let at = 0; at < colours.length; at++) {
    const colour = (rgb[3 * at] << 16) | (rgb[3 * at + 1] << 8) | rgb[3 * at + 2];
    colours[at] = colour;
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
  }
  const palette = [...counts].sort((a, b) => b[1] - a[1]).slice(0, MOST_COLOURS).map(([c]) => c);
  const near = new Map(palette.map((colour, index) => [colour, index]));
  const apart = (a, b) =>
    [16, 8, 0].reduce((sum, shift) => sum + (((a >> shift) & 255) - ((b >> shift) & 255)) ** 2, 0);
  const nearest = (colour) => {
    let index = near.get(colour);
    if (index === undefined) {
      const all = palette.map((each) => apart(each, colour));
      index = all.indexOf(Math.min(...all));
      near.set(colour, index);
    }
    return index;
  };
  const rows = Buffer.alloc(high * (wide + 1));
  for (let y = 0; y < high; y++) {
    for (let x = 0; x < wide; x++) rows[y * (wide + 1) + 1 + x] = nearest(colours[y * wide + x]);
  }
  const head = Buffer.alloc(13);
  head.writeUInt32BE(wide, 0);
  head.writeUInt32BE(high, 4);
  head.set([8, 3, 0, 0, 0], 8);
  const table = Buffer.from(palette.flatMap((c) => [c >> 16, (c >> 8) & 255, c & 255]));
  const parts = [["IHDR", head], ["PLTE", table], ["IDAT", deflateSync(rows, { level: 9 })], ["IEND", Buffer.alloc(0)]];
  return Buffer.concat([Buffer.from("89504e470d0a1a0a", "hex"), ...parts.map(chunk)]);
}

function chunk([name, data]) {
  const body = Buffer.concat([Buffer.from(name), data]);
  const ends = Buffer.alloc(8);
  ends.writeUInt32BE(data.length, 0);
  ends.writeUInt32BE(crc32(body) >>> 0, 4);
  return Buffer.concat([ends.subarray(0, 4), body, ends.subarray(4)]);
}

async function takeAll(page, screens, house) {
  for (const [name, address, text] of screens) {
    const to = `#/${address.replace("HOUSE", house)}`;
    await page.evaluate((hash) => (location.hash = hash), to);
    await page.getByText(text).first().waitFor();
    for (const [width, size] of Object.entries(WIDTHS)) {
      await page.setViewportSize(size);
      await settled(page);
      await page.waitForTimeout(250);
      const path = join(out, `${name}-${width}.png`);
      writeFileSync(path, await small(page, await page.screenshot()));
    }
    await page.setViewportSize(WIDTHS.phone);
  }
}

const out = process.argv[2];
if (!out) throw new Error("where to? node app/pictures.mjs OUT");
mkdirSync(out, { recursive: true });
const profile = mkdtempSync(join(tmpdir(), "longpoint-pictures-"));
const server = await served();
const context = await phone(profile, { deviceScaleFactor: 1 });
try {
  const page = context.pages()[0] ?? (await context.newPage());
  page.setDefaultTimeout(60_000);
  await page.goto(server.address);
  await plannerReady(page);
  await page.getByRole("link", { name: "Open a house" }).tap();
  await page.locator("input[type=file]").first().setInputFiles(HOUSE);
  await page.getByRole("button", { name: "Keep it on this phone" }).tap();
  await page.getByText(/of 8 openings can be cut as planned/).waitFor();
  const house = (await page.evaluate(() => location.hash)).split("/")[2];
  await takeAll(page, SCREENS, house);
  await joinCrew(page, house);
  await takeAll(page, CREW_SCREENS, house);
} finally {
  await context.close();
  await server.stop();
  rmSync(profile, { recursive: true, force: true });
}
