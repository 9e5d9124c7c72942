/** The house in hand: its journal, how it stands, and its plan; screens watch it. */

import { ask, expectFinalPlan, planner, type AnswerTo } from "./core/link";
import { signal } from "./core/signal";
import type { Fresh } from "./journal/entry";
import { entriesOf, fact, keep, setFact, whenKeptElsewhere } from "./journal/store";
import type { Entry, Fold, Limits, Plan, Refusal } from "./messages";
import { askToStay } from "./service/install";

/** What a list of houses says of one. */
export interface Glimpse {
  readonly name: string;
  readonly read: number;
  readonly asked: number;
  readonly held: number;
}

export interface Standing {
  readonly key: string;
  readonly entries: readonly Entry[];
  /** How it stands; as it was last seen until the planner is ready. */
  readonly fold?: Fold;
  /** How many of the entries the fold has seen. */
  readonly folded: number;
  /** Its plan; of older readings while `isPlanning`. */
  readonly plan?: Plan;
  /** What the plan, or the refusal to make one, is of. */
  readonly planOf?: Fold;
  readonly isPlanning: boolean;
  /** Whether the plan is a first one, whose sticks may still change. */
  readonly isFirst: boolean;
  readonly refusal?: Refusal;
}

interface Seen {
  readonly fold: Fold;
  readonly folded: number;
}

export const current = signal<Standing | undefined>(undefined);
export const limits = signal<Limits | undefined>(undefined);

/** How many lines were written since the last answer; only the newest answer counts. */
let round = 0;

/** How many screens show the plan. */
let watching = 0;

/** The plan that is being made. */
let making: { readonly fold: Fold; readonly stop: AbortController } | undefined;

/** The words on the screen are those of the house in hand; before there is one, those of the UK. */
let inWords = "";

export async function loadLimits(dialect = "uk"): Promise<void> {
  if (dialect === inWords) return;
  inWords = dialect;
  const found = await fetch(`${import.meta.env.BASE_URL}core/limits-${dialect}.json`);
  const read = (await found.json()) as Limits;
  if (dialect === inWords) limits.set(read);
}

/** The words of a country for what is set of a house. */
export function countryWords(known: Limits | undefined, dialect: string | undefined) {
  return known?.dialects.find(({ value }) => value === dialect) ?? known?.dialects[0];
}

/** Take a house in hand; what was last seen of it comes at once. */
export async function open(key: string): Promise<void> {
  if (current.get()?.key === key) return;
  const [entries, fold] = await Promise.all([entriesOf(key), fact<Seen>(`fold:${key}`)]);
  const seen = fold ? { fold: fold.fold, folded: fold.folded } : { folded: 0 };
  if (fold) void loadLimits(fold.fold.dialect);
  current.set({ key, entries, isPlanning: false, isFirst: false, ...seen });
  await refold();
}

/** Write down, and see how the house stands then. Returns once it is kept. */
export async function write(...fresh: readonly Fresh[]): Promise<void> {
  const kept = await keep(fresh);
  const now = current.get();
  if (now && kept[0]?.house === now.key) {
    const isPlanning = now.isPlanning || Boolean(now.plan);
    current.set({ ...now, entries: [...now.entries, ...kept], isPlanning });
    void refold();
  }
  void askToStay();
}

/**
 * Ask for the plan of what stands; a screen that shows it calls this, and the other way when it
 * closes. A plan that nobody looks at isn't begun.
 */
export function needPlan(): () => void {
  watching++;
  void replan();
  return () => {
    watching--;
  };
}

async function refold(): Promise<void> {
  const mine = ++round;
  const now = current.get();
  if (!now) return;
  const fold = await ask<"fold">({ ask: "fold", entries: now.entries });
  const after = current.get();
  if (mine !== round || after?.key !== now.key) return;
  if (fold.kind === "refusal") {
    current.set({ ...after, refusal: fold });
    return;
  }
  const { refusal, ...rest } = after;
  const folded = now.entries.length;
  const stands = sameOr(fold, rest.fold);
  const hasPlan = !refusal && rest.planOf !== undefined && isOfSame(rest.planOf, stands);
  const planned = hasPlan ? { planOf: stands, isPlanning: rest.isFirst } : {};
  current.set({ ...rest, fold: stands, folded, ...planned });
  void loadLimits(fold.dialect);
  void setFact(`fold:${now.key}`, { fold, folded } satisfies Seen);
  void setFact(`glimpse:${now.key}`, glimpseOf(fold));
  await replan();
}

/** The older of two equal folds: what was planned of it is still right. */
function sameOr(fold: Fold, older: Fold | undefined): Fold {
  return older && sameText(fold, older) ? older : fold;
}

/** Whether what the plan says of openings is of older readings. */
export function isOld({ isPlanning, isFirst, planOf, fold, folded, entries }: Standing): boolean {
  return isPlanning && !(isFirst && planOf === fold && folded === entries.length);
}

/** Ask for a first plan, then for the final one; a plan of older readings is given up. */
async function replan(): Promise<void> {
  const now = current.get();
  const fold = now?.fold;
  if (!fold || (making && isOfSame(making.fold, fold))) return;
  making?.stop.abort();
  making = undefined;
  if (!watching || (now.planOf === fold && !now.isFirst)) return;
  const { document, held, saw } = fold;
  const mine = { fold, stop: new AbortController() };
  making = mine;
  current.set({ ...now, isPlanning: true });
  // Of the same readings, and once the cutting has begun, a final one has been made before.
  const is_first = !saw && !(now.planOf && isOfSameReadings(now.planOf, fold));
  if (is_first) expectFinalPlan(document);
  const plan = await ask<"plan">({ ask: "plan", document, held, saw, is_first }, mine.stop.signal);
  if (making !== mine) return;
  making = undefined;
  const after = current.get();
  if (after?.key === now.key && after.fold && isOfSame(after.fold, fold)) {
    const { refusal: _, plan: older, ...rest } = after;
    const isFirst = plan.kind === "plan" && plan.is_first;
    // A first plan goes with its refused final one: nobody is to cut by it.
    const stays = older && !after.isFirst ? { plan: older } : {};
    const found = plan.kind === "refusal" ? { ...stays, refusal: plan } : { plan };
    const isPlanning = isFirst || after.folded < after.entries.length;
    current.set({ ...rest, ...found, planOf: after.fold, isPlanning, isFirst });
  }
  await replan();
}

/** Whether two folds have the same plan. */
function isOfSame(one: Fold, other: Fold): boolean {
  return one === other || (one.saw === other.saw && isOfSameReadings(one, other));
}

function isOfSameReadings(one: Fold, other: Fold): boolean {
  return sameText([one.document, one.held], [other.document, other.held]);
}

function sameText(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

function glimpseOf(fold: Fold): Glimpse {
  const held = fold.openings.filter((opening) => opening.state === "held").length;
  return { name: fold.name, read: fold.read, asked: fold.asked, held };
}

/** Tell the core what happened at the saw, and keep it with where the cutting stands then. */
export async function tellSaw(told: string): Promise<AnswerTo<"saw"> | undefined> {
  const now = current.get();
  if (!now?.fold) return undefined;
  const { document, held } = now.fold;
  const saw = (now.planOf === now.fold && now.plan?.saw) || now.fold.saw;
  const found = await ask<"saw">({ ask: "saw", document, held, saw, told });
  if (found.kind === "saw") {
    await write({ what: "cut-news", house: now.key, told, state: found.saw });
  }
  return found;
}

/** Read the journal of a house again: another window wrote in it, or another phone's came. */
export async function lookAgain(key: string): Promise<void> {
  const entries = await entriesOf(key);
  const now = current.get();
  if (now?.key !== key) return;
  current.set({ ...now, entries });
  await refold();
}

/** See again what a list of houses says of one that isn't in hand. */
export async function glance(key: string): Promise<void> {
  if (current.get()?.key === key) return;
  const entries = await entriesOf(key);
  const fold = await ask<"fold">({ ask: "fold", entries });
  if (fold.kind === "refusal") return;
  await setFact(`fold:${key}`, { fold, folded: entries.length } satisfies Seen);
  await setFact(`glimpse:${key}`, glimpseOf(fold));
}

export function watchOthers(): void {
  whenKeptElsewhere((houses) => {
    const key = current.get()?.key;
    if (key && houses.includes(key)) void lookAgain(key);
  });
}

/** Whether the core answers yet. */
export function isReady(): boolean {
  return planner.get().progress === "ready";
}
