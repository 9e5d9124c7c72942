/**
 * The page's end of the lines to the workers that run the core.
 *
 * What is asked while readings are taken is answered within a moment. The final plan of all but a
 * small house takes up to a minute, so it has a worker of its own, and so has all that goes by it:
 * that worker remembers it.
 */

import type { Answer, Refusal, Request } from "../messages";
import { Line, type Loading, type Waiting } from "./line";
import { signal } from "./signal";

/** How far the planner has come; screens show it while it loads. */
export const planner = signal<Loading>({ progress: "python", share: 0 });

const prompt = new Line(planner.set);
/** To load anew takes as long as it may go on with a plan of older readings, and longer. */
const patient = new Line(({ progress }) => progress === "failed" && doWithout(), 2_000);
/** Whether there may be a second worker: a phone may have no room for it. */
let hasPatient = true;

/** Of so few openings, runs, walls and other trim a plan is made before a worker has loaded. */
const SMALL = 4;
let last = 0;

/** Start the worker that answers at once; called once, as the page opens. */
export function startPlanner(): void {
  prompt.start();
  // The files are those of another version now; what has loaded goes on.
  if (navigator.serviceWorker?.controller) {
    navigator.serviceWorker.addEventListener("controllerchange", doWithout);
  }
}

/** Start the worker that makes final plans where this one wants it, so that it has loaded then. */
export function expectFinalPlan(document: Document): void {
  if (hasPatient && !isSmall(document)) patient.start();
}

function doWithout(): void {
  hasPatient = false;
  for (const each of patient.close()) prompt.ask(each);
}

/** What the core answers to one kind of asking, or why it can't. */
export type AnswerTo<K extends Request["ask"]> = Extract<Answer, { kind: K }> | Refusal;

/**
 * Ask the core.
 *
 * A fault of the planner itself comes back as a refusal too, so that a screen has one way to fail;
 * so does what was given up.
 */
export function ask<K extends Request["ask"]>(
  request: Extract<Request, { ask: K }>,
  givenUp?: AbortSignal,
): Promise<AnswerTo<K>> {
  const message = { id: ++last, request: JSON.stringify(request) };
  const line = hasPatient && takesLong(request) ? patient : prompt;
  return new Promise((resolve) => {
    givenUp?.addEventListener("abort", () => resolve(fault("it was given up")));
    const answer: Waiting["answer"] = (found) => {
      if ("answer" in found) resolve(JSON.parse(found.answer) as AnswerTo<K>);
      else resolve(fault(found.trouble));
    };
    line.ask({ message, answer, givenUp });
  });
}

/** Whether it goes by a final plan that takes long; what does is alike for all of a house. */
function takesLong(request: Request): boolean {
  switch (request.ask) {
    case "plan":
      return !request.is_first && !isSmall(request.document);
    case "sheets":
    case "saw":
    case "label":
      return !isSmall(request.document);
    default:
      return false;
  }
}

type Document = Extract<Request, { ask: "plan" }>["document"];

function isSmall({ openings, runs, rooms, trims }: Document): boolean {
  const walls = listed(rooms).flatMap((room) => listed((room as { walls?: unknown }).walls));
  const places = [openings, runs, trims].reduce<number>((sum, all) => sum + listed(all).length, 0);
  return places + walls.length <= SMALL;
}

function listed(found: unknown): readonly unknown[] {
  return Array.isArray(found) ? found : [];
}

function fault(trouble: string): Refusal {
  return {
    kind: "refusal",
    read: "Your readings are kept on this phone.",
    wrong: `The planner stopped over this: ${trouble.trim().split("\n").at(-1) ?? ""}`,
    do: "Close the app and open it again. If it stops here again, copy the house off this phone and plan it on a laptop.",
  };
}
