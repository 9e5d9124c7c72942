/**
 * Two phones and the laptop that they share with: what each reads, the other sees; a laptop that was
 * killed, a phone that was put out, and no network at all lose nothing.
 */

import assert from "node:assert/strict";
import { execFileSync, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { isDeepStrictEqual } from "node:util";
import { phone, plannerReady, tab, type, written } from "./drive.mjs";

const HOUSE = `
format = "longpoint-house/1"
name = "Siskin"

[defaults]
architrave = "AR57"
quirk = 5

[profiles.AR57]
face = 57
thickness = 19

[[stock]]
profile = "AR57"
length = 5400

[[openings]]
mark = "W1"
kind = "window"
trim = "all-round"
left = 462
top = 1186
right = 462
bottom = 1186
rising = 1273
falling = 1273

[[openings]]
mark = "W2"
kind = "window"
trim = "all-round"
left = 1012
top = 886
right = 1012
bottom = 886
rising = 1345
falling = 1345
`;

const folder = mkdtempSync(join(tmpdir(), "longpoint-crew-"));
const phones = {};
/** What a page says when it breaks a rule of its own. */
const broken = [];
const PYTHON = process.env.PYTHON ?? "python3";
const store = join(folder, "houses.store");
let port;
let laptop;
let house;

const longpoint = (...words) => ["-m", "longpoint.cli.main", ...words, "--store", store];

/** The laptop's side: what it says, and what is typed there. */
class Laptop {
  said = "";

  constructor(port) {
    this.process = spawn(PYTHON, longpoint("serve", "--port", port));
    for (const stream of [this.process.stdout, this.process.stderr]) {
      stream.on("data", (text) => (this.said += text));
    }
  }

  /** What is said, once it is. */
  async hears(wanted) {
    for (let tries = 0; tries < 300; tries++) {
      const found = wanted.exec(this.said);
      if (found) {
        this.said = this.said.slice(found.index + found[0].length);
        return found;
      }
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    throw new Error(`never said: ${wanted}; but: ${this.said}`);
  }

  /** Gone at once, as with the power. */
  async kill() {
    const gone = new Promise((resolve) => this.process.once("exit", resolve));
    this.process.kill("SIGKILL");
    await gone;
  }
}

async function joins(name) {
  const context = await phone(join(folder, name));
  const page = context.pages()[0] ?? (await context.newPage());
  page.on("console", (said) => {
    if (/Content Security Policy|Refused to/.test(said.text())) broken.push(said.text());
  });
  const [link] = await laptop.hears(/http:\/\/\S+#crew=\S+/);
  await page.goto(link);
  assert.equal(new URL(page.url()).hash, "#/crew", "the token is out of the address");
  await page.getByLabel("What is this phone called?").fill(name);
  await page.getByRole("button", { name: "Knock" }).tap();
  const [, called, check] = await laptop.hears(/calls itself (.+) shows (\d{4})\. Let it in/);
  assert.equal(called, name);
  await page.getByText(check, { exact: true }).waitFor();
  laptop.process.stdin.write("y\n");
  await page.getByText(`This phone is ${name} to the crew`).waitFor();
  phones[name] = { context, page };
  await plannerReady(page);
  return page;
}

const at = (page, ...way) =>
  page.evaluate((to) => (location.hash = to), `#/${["h", house, ...way].join("/")}`);

/** Share, as it would by itself a little later. */
async function shares(page) {
  await page.evaluate(() => (location.hash = "#/crew"));
  await page.getByRole("button", { name: "Share now" }).tap();
  await page.getByText("nothing to give or to fetch").waitFor();
}

async function reads(page, line, value) {
  await at(page, "read", "W1", line);
  await page.getByRole("group", { name: "Keypad" }).waitFor();
  await type(page, value);
}

/** A port that nobody uses. */
async function freePort() {
  const server = createServer();
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  const found = String(server.address().port);
  await new Promise((resolve) => server.close(resolve));
  return found;
}

/** Which entries a phone has, in no order. */
async function journal(page) {
  const text = (entry) => JSON.stringify(Object.entries(entry).sort());
  return (await written(page)).map(text).sort();
}

before(async () => {
  port = await freePort();
  laptop = new Laptop(port);
  const kim = await joins("Kim's phone");
  await kim.evaluate(() => (location.hash = "#/open"));
  await kim.locator("input[type=file]").first().setInputFiles({
    name: "siskin.toml",
    mimeType: "text/plain",
    buffer: Buffer.from(HOUSE),
  });
  await kim.getByRole("button", { name: "Keep it on this phone" }).tap();
  await kim.getByText(/0 of 8 pieces cut/).waitFor();
  house = (await kim.evaluate(() => location.hash)).split("/")[2];
  await shares(kim);
  const sam = await joins("Sam's phone");
  await sam.evaluate(() => (location.hash = ""));
  await sam.getByRole("link", { name: /Siskin/ }).waitFor();
});

after(async () => {
  for (const { context } of Object.values(phones)) await context.close();
  await laptop?.kill();
  rmSync(folder, { recursive: true, force: true });
});

test("what two phones read unseen by each other holds the opening, and says who read what", async () => {
  const { page: kim } = phones["Kim's phone"];
  const { page: sam } = phones["Sam's phone"];
  await sam.context().setOffline(true);
  await reads(kim, "top", 1187);
  await reads(sam, "top", 1197);
  await shares(kim);
  await sam.context().setOffline(false);
  await shares(sam);
  await shares(kim);
  await at(kim, "house");
  await kim.getByText(/From Sam's phone: 1 reading of W1 top/).waitFor();
  await kim.getByRole("link", { name: /W1.*HELD/ }).waitFor();
  await kim.getByRole("link", { name: /W1.*HELD/ }).tap();
  const said = /^top: (1187 this phone, 1197 Sam's phone|1197 Sam's phone, 1187 this phone)$/;
  await kim.getByText(said).waitFor();
  await at(sam, "house");
  await sam.getByText(/From Kim's phone: 1 reading of W1 top/).waitFor();
  await sam.getByRole("link", { name: /W1.*HELD/ }).waitFor();
});

test("what is cut on one is cut on the other, and is kept by a laptop that is killed", async () => {
  const { page: kim } = phones["Kim's phone"];
  const { page: sam } = phones["Sam's phone"];
  await at(kim, "saw");
  await kim.getByText(/^1 of \d+$/).waitFor();
  await kim.getByRole("button", { name: "Cut", exact: true }).tap();
  await kim.getByText(/^2 of \d+$/).waitFor();
  await shares(kim);
  await laptop.kill();
  await reads(sam, "left", 463);
  await sam.evaluate(() => (location.hash = "#/crew"));
  await sam.getByRole("button", { name: "Share now" }).tap();
  await sam.getByText("The laptop isn't there just now.").waitFor();
  await sam.getByText("1 to give to the laptop").waitFor();
  laptop = new Laptop(port);
  await laptop.hears(/http:\/\/\S+#crew=\S+/);
  await shares(sam);
  await at(sam, "saw");
  await sam.getByText(/^2 of \d+$/).waitFor();
  await shares(kim);
  await at(kim, "house");
  await kim.getByText(/From Sam's phone:.*1 reading of W1 left/).waitFor();
  assert.ok(isDeepStrictEqual(await journal(kim), await journal(sam)), "both have the same");
});

test("a phone that is put out keeps its houses, and says what happened", async () => {
  const { page: kim } = phones["Kim's phone"];
  const { page: sam } = phones["Sam's phone"];
  execFileSync(PYTHON, longpoint("crew", "out", "Sam's phone"));
  await reads(sam, "right", 462);
  await sam.evaluate(() => (location.hash = "#/crew"));
  await sam.getByRole("button", { name: "Share now" }).tap();
  await sam.getByText("To the crew this phone was Sam's phone.").waitFor();
  await at(sam, "house");
  await sam.getByRole("link", { name: /W1.*HELD/ }).waitFor();
  await shares(kim);
  assert.equal((await journal(sam)).length, (await journal(kim)).length + 1);
});

test("the page keeps to its own rules, WebAssembly and all", () => {
  assert.deepEqual(broken, []);
});
