/**
 * The journal in the phone's own store.
 *
 * An entry counts as kept only when the store has said that it is on the disk: the transaction asks
 * for strict durability and is over. Its number is drawn inside the same transaction, so that two
 * open windows never give one number twice.
 */

import { openDB, type DBSchema, type IDBPDatabase, type IDBPObjectStore } from "idb";
import type { Entry } from "../messages";
import { freshName, type Fresh } from "./entry";
import { letGo, notKept } from "./refused";

interface Shelf extends DBSchema {
  entries: { key: [string, number]; value: Entry; indexes: { house: string } };
  facts: { key: string; value: unknown };
}

const NAME = "longpoint";
const VERSION = 1;
const STRICT = { durability: "strict" } as const;

let opened: Promise<IDBPDatabase<Shelf>> | undefined;

/** Open the store, bringing what an older version wrote up to this one. */
export function shelf(): Promise<IDBPDatabase<Shelf>> {
  opened ??= openDB<Shelf>(NAME, VERSION, {
    upgrade(db, from) {
      if (from < 1) {
        const entries = db.createObjectStore("entries", { keyPath: ["device", "counter"] });
        entries.createIndex("house", "house");
        db.createObjectStore("facts");
      }
    },
    // A newer version waits in another window: let it have the store.
    blocking: (_current, _blocked, event) => {
      (event.target as IDBDatabase).close();
      letGo();
    },
    terminated: () => (opened = undefined),
  });
  // Where a newer version has been at work, this one can't even open it.
  opened.catch((why: Error) => (why.name === "VersionError" ? letGo() : notKept(why)));
  return opened;
}

/** Write entries down, all or none; returns them once they are durable. Else the screen says so. */
export async function keep(fresh: readonly Fresh[]): Promise<Entry[]> {
  try {
    return await written(fresh);
  } catch (why) {
    notKept(why);
    throw why;
  }
}

async function written(fresh: readonly Fresh[]): Promise<Entry[]> {
  const db = await shelf();
  const tx = db.transaction(["entries", "facts"], "readwrite", STRICT);
  const facts = tx.objectStore("facts");
  const entries = tx.objectStore("entries");
  const device = await ownName(facts);
  // Above whatever is here, also from another phone: the counts tell what was in sight.
  let counter = await highestOf(device, entries, facts);
  const at = new Date().toISOString();
  const kept = fresh.map((one) => ({ ...one, device, counter: ++counter, at }) as Entry);
  for (const entry of kept) void entries.add(entry);
  await tx.done;
  told.postMessage([...new Set(kept.map((entry) => entry.house))]);
  afterKept();
  return kept;
}

type Written<M extends IDBTransactionMode> = Pick<
  IDBPObjectStore<Shelf, ("entries" | "facts")[], "entries", M>,
  "openKeyCursor"
>;

async function highestOf<M extends IDBTransactionMode>(
  device: string,
  entries: Written<M>,
  facts: Pick<Facts, "get">,
): Promise<number> {
  const mine = IDBKeyRange.bound([device, 0], [device, Infinity]);
  const last = (await entries.openKeyCursor(mine, "prev"))?.key[1] ?? 0;
  return Math.max(last, ((await facts.get("seen")) as number | undefined) ?? 0);
}

/** The highest count of any device here; the core holds what is opened to it. */
export async function highest(): Promise<number> {
  const device = await deviceName();
  const tx = (await shelf()).transaction(["entries", "facts"]);
  return highestOf(device, tx.objectStore("entries"), tx.objectStore("facts"));
}

/** What is done after something was kept here. */
let afterKept = (): void => undefined;

export function whenKept(act: () => void): void {
  afterKept = act;
}

/** The name under which this phone writes, the same for good. */
export async function deviceName(): Promise<string> {
  const known = await fact<string>("device");
  if (known) return known;
  const tx = (await shelf()).transaction("facts", "readwrite", STRICT);
  const name = await ownName(tx.store);
  await tx.done;
  return name;
}

type Facts = IDBPObjectStore<Shelf, ("entries" | "facts")[], "facts", "readwrite">;

async function ownName(facts: Pick<Facts, "get" | "put">): Promise<string> {
  const known = (await facts.get("device")) as string | undefined;
  if (known) return known;
  const name = freshName();
  void facts.put(name, "device");
  return name;
}

/** Take over entries of another phone as they are; those already here stay as they are. */
export async function takeOver(entries: readonly Entry[]): Promise<number> {
  try {
    return await added(entries);
  } catch (why) {
    notKept(why);
    throw why;
  }
}

async function added(entries: readonly Entry[]): Promise<number> {
  const db = await shelf();
  const tx = db.transaction(["entries", "facts"], "readwrite", STRICT);
  const [there, facts] = [tx.objectStore("entries"), tx.objectStore("facts")];
  let count = 0;
  let seen = ((await facts.get("seen")) as number | undefined) ?? 0;
  for (const entry of entries) {
    seen = Math.max(seen, entry.counter);
    if ((await there.getKey([entry.device, entry.counter])) === undefined) {
      void there.add(entry);
      count++;
    }
  }
  void facts.put(seen, "seen");
  await tx.done;
  told.postMessage([...new Set(entries.map((entry) => entry.house))]);
  return count;
}

/** All entries of a house, in the order of writing. */
export async function entriesOf(house: string): Promise<Entry[]> {
  const db = await shelf();
  return (await db.getAllFromIndex("entries", "house", house)).sort(inOrder);
}

/** The keys of all houses on this phone. */
export async function houseKeys(): Promise<string[]> {
  const db = await shelf();
  const found: string[] = [];
  let cursor = await db.transaction("entries").store.index("house").openKeyCursor(null, "nextunique");
  while (cursor) {
    found.push(cursor.key);
    cursor = await cursor.continue();
  }
  return found;
}

/** A fact about this phone or one house, not part of any journal. */
export async function fact<T>(name: string): Promise<T | undefined> {
  return (await (await shelf()).get("facts", name)) as T | undefined;
}

/** Remember a fact; it may be lost with the power, as it can be had again. */
export async function setFact(name: string, value: unknown): Promise<void> {
  await (await shelf()).put("facts", value, name);
}

/** Told of every house that was written in, here or in another window. */
const told = new BroadcastChannel("longpoint-kept");

export function whenKeptElsewhere(act: (houses: string[]) => void): void {
  told.onmessage = ({ data }: MessageEvent<string[]>) => act(data);
}

function inOrder(a: Entry, b: Entry): number {
  return a.counter - b.counter || (a.device < b.device ? -1 : 1);
}
