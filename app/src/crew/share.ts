/**
 * Shares each house's journal with the laptop, in the background.
 *
 * Nothing waits for it. Whatever is there already on either side is left as it is, so it may stop in
 * the middle at any moment and begin again.
 */

import { ask } from "../core/link";
import { signal } from "../core/signal";
import { glance, lookAgain } from "../house";
import { entriesOf, fact, houseKeys, setFact, takeOver, whenKept } from "../journal/store";
import type { CameFrom, Entry, EntryKey, Passing } from "../messages";
import { laptop, type Seen, type ThreeSentences } from "./laptop";
import { member, setMember } from "./member";
import { rememberPhones } from "./phones";

/** How a house stands with the laptop. */
export interface HouseShared {
  /** When it was last alike on both; none: never yet. */
  readonly at?: string | undefined;
  /** What the laptop has of it, as it said last. */
  readonly there: Seen;
  readonly trouble?: ThreeSentences | undefined;
}

export type Sharing = "quiet" | "sharing" | "away";

export const sharing = signal<Sharing>("quiet");
/** Counts up whenever a house was shared: screens that show it look again. */
export const rounds = signal(0);

const MOST_ENTRIES = 500;
/** The laptop takes a million bytes at once; a sign may take several. */
const MOST_SIGNS = 300_000;
const LARGEST_BODY = 990_000;
const MOST_CALLS = 400;
const AFTER_KEPT_MS = 2_000;
const EVERY_MS = 30_000;

const TOO_LARGE: ThreeSentences = {
  read: "An entry of this house is to go to the laptop.",
  wrong: "It is a house file larger than the laptop takes at once.",
  do: "Hand the house over as a file; what was written since is shared all the same.",
};

export const factOf = (house: string): string => `shared:${house}`;
export const cameOf = (house: string): string => `came:${house}`;

let timer: ReturnType<typeof setTimeout> | undefined;

/** Share now and whenever there is a reason to; called once. */
export function startSharing(): void {
  const soon = () => shareSoon(0);
  addEventListener("online", soon);
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") soon();
  });
  whenKept(() => shareSoon(AFTER_KEPT_MS));
  member.watch((now) => {
    if (now && !now.out) soon();
  });
  soon();
}

/** Share in a while; what is kept until then goes along. */
export function shareSoon(wait_ms: number): void {
  clearTimeout(timer);
  timer = setTimeout(() => {
    // Where the store refuses, every screen says so already.
    void shareAll()
      .catch(() => undefined)
      .finally(() => shareSoon(EVERY_MS));
  }, wait_ms);
}

/** Share every house, here or there; one window does it for all. */
async function shareAll(): Promise<void> {
  const now = member.get();
  if (!now || now.out || document.visibilityState === "hidden") return;
  await navigator.locks.request("longpoint-share", { ifAvailable: true }, async (lock) => {
    if (!lock) return;
    sharing.set("sharing");
    sharing.set((await allShared(now.secret)) ? "quiet" : "away");
    rounds.set(rounds.get() + 1);
  });
}

/** False: the laptop is away. */
async function allShared(secret: string): Promise<boolean> {
  const found = await laptop.houses(secret);
  if (found.is !== "done") return refused(found);
  const phones = await laptop.phones(secret);
  if (phones.is === "done") await rememberPhones(phones.body);
  const there = new Map(found.body.map(({ house, seen }) => [house, seen]));
  for (const house of new Set([...(await houseKeys()), ...there.keys()])) {
    if (!(await shareHouse(secret, house, there.get(house) ?? {}))) return false;
  }
  return true;
}

/** Whether whoever refused is there all the same; being let in no more is written down. */
async function refused(found: { is: "away" } | { is: "refused"; status: number; said: ThreeSentences }) {
  if (found.is === "away") return false;
  const now = member.get();
  if (found.status === 401 && now) {
    const read = `To the crew this phone was ${now.name}.`;
    await setMember({ ...now, out: { ...found.said, read } });
  }
  return found.status !== 429 && found.status !== 503;
}

async function shareHouse(secret: string, house: string, first: Seen): Promise<boolean> {
  const arrived: Entry[] = [];
  let there = first;
  let trouble: ThreeSentences | undefined;
  let isThere = true;
  for (let call = 0; call < MOST_CALLS; call++) {
    const entries = await entriesOf(house);
    const now = await passing(entries, there);
    if (!now) break;
    const { batch, isAll } = batchOf(entries, now.lacking);
    if (!isAll && !batch.length) trouble = TOO_LARGE;
    if (!batch.length && !now.is_behind) break;
    const found = await laptop.share(secret, house, now.seen, batch);
    if (found.is !== "done") {
      isThere = await refused(found);
      // What clashes was refused by itself, and everything else was taken.
      if (found.is === "refused") trouble = found.said;
      break;
    }
    const came = found.body.entries.filter((entry) => entry.house === house);
    const added = await takeOver(came);
    arrived.push(...came);
    const isMoved = added > 0 || JSON.stringify(found.body.seen) !== JSON.stringify(there);
    there = found.body.seen;
    if (!isMoved && !found.body.more) break;
  }
  const isDone = isThere && !trouble && !member.get()?.out;
  await remember(house, { there, trouble, ...(isDone && { at: new Date().toISOString() }) });
  if (arrived.length) await tell(house, arrived);
  return isThere && !member.get()?.out;
}

/** What goes one way and whether anything comes the other; nothing where the planner can't say. */
export async function passing(
  entries: readonly Entry[],
  there: Seen,
): Promise<Passing | undefined> {
  const keys = entries.map(({ device, counter }) => ({ device, counter }));
  const found = await ask<"passing">({ ask: "passing", keys, there });
  return found.kind === "passing" ? found : undefined;
}

/** As many of the entries as go in one call; one that never goes is left out. */
function batchOf(entries: readonly Entry[], wanted: readonly EntryKey[]) {
  const names = new Set(wanted.map(nameOf));
  const batch: Entry[] = [];
  let signs = 0;
  let isAll = true;
  for (const entry of entries) {
    if (!names.has(nameOf(entry))) continue;
    const size = new TextEncoder().encode(JSON.stringify(entry)).length;
    if (size > LARGEST_BODY) {
      isAll = false;
      continue;
    }
    if (batch.length && (batch.length >= MOST_ENTRIES || signs + size > MOST_SIGNS)) break;
    batch.push(entry);
    signs += size;
  }
  return { batch, isAll };
}

function nameOf({ device, counter }: EntryKey): string {
  return `${counter} ${device}`;
}

async function remember(house: string, now: HouseShared): Promise<void> {
  const before = await fact<HouseShared>(factOf(house));
  await setFact(factOf(house), { ...now, at: now.at ?? before?.at } satisfies HouseShared);
  if (now.at) await setFact(`copied:${house}`, now.at);
}

/** Bring what came before whoever looks at the house, and keep what is to be said of it. */
async function tell(house: string, arrived: readonly Entry[]): Promise<void> {
  const found = await ask<"came">({ ask: "came", entries: arrived });
  if (found.kind === "came") {
    const before = (await fact<readonly CameFrom[]>(cameOf(house))) ?? [];
    await setFact(cameOf(house), [...before, ...found.by].slice(-MOST_TOLD));
  }
  await glance(house);
  await lookAgain(house);
}

const MOST_TOLD = 6;
