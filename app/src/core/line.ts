/** A worker that runs the core, and who waits for its answers; they come in the order of asking. */

export interface ToWorker {
  readonly id: number;
  readonly request: string;
}

export type Progress = "python" | "core" | "ready" | "failed";

/** How far a worker has come. */
export interface Loading {
  readonly progress: Progress;
  readonly share: number;
  readonly why?: string;
}

export type FromWorker = Answered | Loading;

export type Answered =
  | { readonly id: number; readonly answer: string }
  | { readonly id: number; readonly trouble: string };

export interface Waiting {
  readonly message: ToWorker;
  readonly answer: (message: Answered) => void;
  /** Aborted once nobody waits any more. */
  readonly givenUp?: AbortSignal | undefined;
}

/** How long it may go on with what nobody waits for; to load anew takes as long and longer. */
const GRACE_MS = 2_000;

export class Line {
  private worker: Worker | undefined;
  /** In the order of asking. */
  private readonly waiting = new Map<number, Waiting>();

  constructor(private readonly told: (loading: Loading) => void) {}

  /** Start the worker, unless it runs. */
  start(): void {
    if (this.worker) return;
    const worker = new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
      if ("progress" in data) this.told(data);
      else this.answered(data);
    };
    worker.onerror = (event) => this.told({ progress: "failed", share: 1, why: event.message });
    this.worker = worker;
    for (const { message } of this.waiting.values()) worker.postMessage(message);
  }

  /**
   * Ask it; the worker is started where it doesn't run.
   *
   * A worker that is still busy with what was given up a while ago is stopped, and what else waits
   * is asked of a new one.
   */
  ask(asked: Waiting): void {
    this.waiting.set(asked.message.id, asked);
    asked.givenUp?.addEventListener("abort", () => setTimeout(() => this.free(), GRACE_MS));
    if (this.worker) this.worker.postMessage(asked.message);
    else this.start();
  }

  /** Stop the worker; returns what still waits, to be asked elsewhere. */
  close(): readonly Waiting[] {
    this.stop();
    const left = [...this.waiting.values()];
    this.waiting.clear();
    return left;
  }

  private answered(data: Answered): void {
    this.waiting.get(data.id)?.answer(data);
    this.waiting.delete(data.id);
  }

  private free(): void {
    const [busyWith] = this.waiting.values();
    if (!busyWith?.givenUp?.aborted) return;
    this.stop();
    if (this.waiting.size) this.start();
  }

  private stop(): void {
    this.worker?.terminate();
    this.worker = undefined;
    for (const [id, { givenUp }] of this.waiting) if (givenUp?.aborted) this.waiting.delete(id);
  }
}
