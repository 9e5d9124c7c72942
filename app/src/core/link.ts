/** The page's end of the line to the worker that runs the core. */

import type { Answer, Refusal, Request } from "../messages";
import { signal } from "./signal";

export interface ToWorker {
  readonly id: number;
  readonly request: string;
}

export type Progress = "python" | "core" | "ready" | "failed";

export type FromWorker =
  | { readonly id: number; readonly answer: string }
  | { readonly id: number; readonly trouble: string }
  | { readonly progress: Progress; readonly share: number; readonly why?: string };

/** How far the planner has come; screens show it while it loads. */
export const planner = signal<{ progress: Progress; share: number; why?: string }>({
  progress: "python",
  share: 0,
});

let worker: Worker | undefined;
let last = 0;
const waiting = new Map<number, (message: FromWorker) => void>();

/** Start the worker; called once, as the page opens. */
export function startPlanner(): void {
  worker = new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });
  worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
    if ("progress" in data) {
      planner.set(data);
      return;
    }
    waiting.get(data.id)?.(data);
    waiting.delete(data.id);
  };
  worker.onerror = (event) => {
    planner.set({ progress: "failed", share: 1, why: event.message });
  };
}

/** What the core answers to one kind of asking, or why it can't. */
export type AnswerTo<K extends Request["ask"]> = Extract<Answer, { kind: K }> | Refusal;

/**
 * Ask the core.
 *
 * A fault of the planner itself comes back as a refusal too, so that a screen has one way to fail.
 */
export function ask<K extends Request["ask"]>(
  request: Extract<Request, { ask: K }>,
): Promise<AnswerTo<K>> {
  const id = ++last;
  return new Promise((resolve) => {
    waiting.set(id, (message) => {
      if ("answer" in message) resolve(JSON.parse(message.answer) as AnswerTo<K>);
      else resolve(fault("trouble" in message ? message.trouble : "no answer"));
    });
    worker?.postMessage({ id, request: JSON.stringify(request) } satisfies ToWorker);
  });
}

function fault(trouble: string): Refusal {
  return {
    kind: "refusal",
    read: "Your readings are kept on this phone.",
    wrong: `The planner stopped over this: ${trouble.trim().split("\n").at(-1) ?? ""}`,
    do: "Close the app and open it again. If it stops here again, copy the house off this phone and plan it on a laptop.",
  };
}
