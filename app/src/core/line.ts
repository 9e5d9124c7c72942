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

export class Line {
  private worker: Worker | undefined;
  /** In the order of asking. */
  private readonly waiting = new Map<number, Waiting>();

  /**
   * Args:
   *   told: Is told how far the worker has come.
   *   grace_ms: How long it may be busy with what was given up. It is stopped then, and what else
   *     waits is asked of a new one; none: it is never stopped.
   */
  constructor(
    private readonly told: (loading: Loading) => void,
    private readonly grace_ms?: number,
  ) {}

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

  /** Ask it; the worker is started where it doesn't run. */
  ask(asked: Waiting): void {
    this.waiting.set(asked.message.id, asked);
    if (this.grace_ms !== undefined) {
      asked.givenUp?.addEventListener("abort", () => setTimeout(() => this.free(), this.grace_ms));
    }
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
