/** Every screen of the app, of the cabin with a loft and more trim than it has. */

import { readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { plannerReady } from "./drive.mjs";

const CABIN = join(dirname(fileURLToPath(import.meta.url)), "../../tests/scenarios/pipit.toml");

const MORE_TRIM = `
[[trims]]
mark = "T1"
kind = "picture-rail"
room = "Main"
profile = "SK90"
height = 2100

[[trims]]
mark = "T2"
kind = "cover-bead"
profile = "QD12"
lengths = [900, 450]
`;

/** Writes the house file that the screens show. */
export function writeHouse(path) {
  writeFileSync(path, readFileSync(CABIN, "utf8") + MORE_TRIM);
}

// By the page itself: whether a finger gets there is looked at for every control.
const click = (control) => control.evaluate((element) => element.click());
const tap = (name) => (page) => click(page.getByRole("button", { name }));
const choose = (words) => (page) => click(page.getByText(words, { exact: true }));

/**
 * [address, a text that stands on it once it is there, what is tapped first].
 *
 * HOUSE stands for the key of the house, INCHES for that of a house read in inches. Of the forms
 * there is one line for each way of answering.
 */
export const SCREENS = [
  ["", "Begin a house"],
  ["begin", "The tape reads"],
  ["open", "From another phone's screen"],
  ["about", "Before you cut"],
  ["crew", "is of no crew yet"],
  ["crew", "What is this phone called?", (page) => page.evaluate(() => (location.hash = "#crew=as-the-laptop-shows-it"))],
  ["h/HOUSE/house", "readings"],
  ["h/HOUSE/read/W1/left", "Height at the left side"],
  ["h/HOUSE/read/W1/plane.tl", "0 is flush"],
  ["h/HOUSE/read/W3/done", "Readings"],
  ["h/INCHES/read/W1/left", "inches"],
  ["h/INCHES/read/W1/left", "15/16", tap(/^\/16/)],
  ["h/HOUSE/add", "What is it?"],
  ["h/HOUSE/add", "Name of the room", choose("walls and floor")],
  ["h/HOUSE/add", "Mark (else S15)", choose("skirting run")],
  ["h/HOUSE/add", "Which trim?", choose("other trim")],
  ["h/HOUSE/opening/W1", "Pieces"],
  ["h/HOUSE/opening/W3", "Readings"],
  ["h/HOUSE/place/rooms/Main", "Pieces"],
  ["h/HOUSE/place/rooms/Main/walls/E partition", "What is written"],
  ["h/HOUSE/place/runs/S3", "Pieces"],
  ["h/HOUSE/place/trims/T1", "What is written"],
  ["h/HOUSE/place/trims/T2", "What is written"],
  ["h/HOUSE/fill/closed/rooms/Main", "Closed"],
  ["h/HOUSE/fill/length/rooms/Main/walls/N", "What is this reading?"],
  ["h/HOUSE/fill/corner/rooms/Main/walls/N", "Corner with the next wall"],
  ["h/HOUSE/fill/bow/rooms/Main/walls/N", "is more"],
  ["h/HOUSE/fill/floor/rooms/Main/walls/N", "How far along and how high"],
  ["h/HOUSE/fill/profile/rooms/Main/walls/N", "Or written"],
  ["h/HOUSE/fill/left/runs/S3", "architrave"],
  ["h/HOUSE/fill/walls/trims/T1", "E partition"],
  ["h/HOUSE/fill/lengths/trims/T2", "Lengths, one behind the other"],
  ["h/HOUSE/saw", "To be said back"],
  ["h/HOUSE/saw", "is still good", tap("Spoiled")],
  ["h/HOUSE/label", "Hold the square code"],
  ["h/HOUSE/wall/W1", "What to tap"],
  ["h/HOUSE/buy", "All together"],
  ["h/HOUSE/sheets", "Cutting"],
  ["h/HOUSE/sheets/cut", "Print"],
  ["h/HOUSE/settings", "Profiles"],
  ["h/HOUSE/hand-over", "Show it in"],
  ["h/HOUSE/hand-over", "Picture 1 of", tap(/^Show it in/)],
  ["h/HOUSE/place/rooms/Gone", "left out"],
];

/** The same for a phone that is of a crew: `joinCrew` makes it one. */
export const CREW_SCREENS = [
  ["crew", "Last shared"],
  ["crew", "Leave, and keep my houses", tap("Leave the crew")],
  ["h/HOUSE/house", "From Kim's phone"],
];

/** Makes a phone one that is of a crew, whose laptop has gone home. */
export async function joinCrew(page, house) {
  await page.evaluate(
    (key) =>
      new Promise((resolve, reject) => {
        const asked = indexedDB.open("longpoint");
        asked.onerror = () => reject(asked.error);
        asked.onsuccess = () => {
          const write = asked.result.transaction("facts", "readwrite");
          const put = (name, value) => write.objectStore("facts").put(value, name);
          put("crew", { name: "Sam's phone", secret: "x", since: "2026-03-02T07:30:00Z" });
          put("crew-phones", { kim: "Kim's phone" });
          put(`shared:${key}`, { at: "2026-03-02T15:30:00Z", there: {} });
          put(`came:${key}`, [{ device: "kim", words: ["2 readings of W1 top"], more: 0 }]);
          write.oncomplete = () => {
            asked.result.close();
            resolve();
          };
        };
      }),
    house,
  );
  await page.reload();
  await plannerReady(page);
}

/** Stands at a screen, its drawings there. */
export async function show(page, houses, [path, text, first]) {
  const to = path.replace("HOUSE", houses.mm).replace("INCHES", houses.inches);
  // By way of another screen: what was tapped on the one before is forgotten.
  await page.evaluate(() => (location.hash = "#/about"));
  await page.getByText("Before you cut").first().waitFor();
  await page.evaluate((hash) => (location.hash = hash), `#/${encodeURI(to)}`);
  if (first) await first(page);
  await page.getByText(text).first().waitFor();
  await settled(page);
}

/** Waits until nothing is to come on a screen any more. */
export async function settled(page) {
  for (const coming of ["Drawing it", "Planning …", "First plan:"]) {
    await page.getByText(coming).waitFor({ state: "detached" });
  }
}
