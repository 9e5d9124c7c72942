/** What the page asks of the crew's laptop: the requests under `/crew/`, and their answers. */

import type { Entry, SeenUpTo } from "../messages";

export interface ThreeSentences {
  readonly read: string;
  readonly wrong: string;
  readonly do: string;
}

export type Seen = Readonly<Record<string, SeenUpTo>>;

/** Done; refused, with why; or nobody is there. */
export type Answered<T> =
  | { readonly is: "done"; readonly status: number; readonly body: T }
  | { readonly is: "refused"; readonly status: number; readonly said: ThreeSentences; readonly after_s: number }
  | { readonly is: "away" };

export interface Shared {
  readonly seen: Seen;
  readonly entries: readonly Entry[];
  readonly more: boolean;
}

/** Long enough for a large house on a weak signal; then it is tried again later. */
const LONGEST_MS = 20_000;

export const laptop = {
  knock: (token: string, name: string, device: string) =>
    post<{ waiting: string; check: string }>("knock", { token, name, device }),
  letIn: (waiting: string) => post<{ secret?: string }>("let-in", { waiting }),
  houses: (secret: string) =>
    asked<readonly { house: string; seen: Seen }[]>("houses", { method: "GET" }, secret),
  phones: (secret: string) =>
    asked<readonly { device: string; name: string }[]>("phones", { method: "GET" }, secret),
  share: (secret: string, house: string, seen: Seen, entries: readonly Entry[]) =>
    post<Shared>(`houses/${encodeURIComponent(house)}/share`, { seen, entries }, secret),
  leave: (secret: string) => post<{ done: boolean }>("leave", {}, secret),
};

function post<T>(path: string, body: unknown, secret?: string): Promise<Answered<T>> {
  const headers = { "content-type": "application/json" };
  return asked<T>(path, { method: "POST", body: JSON.stringify(body), headers }, secret);
}

async function asked<T>(path: string, how: RequestInit, secret?: string): Promise<Answered<T>> {
  const headers = new Headers(how.headers);
  if (secret) headers.set("x-longpoint-device", secret);
  let answer: Response;
  try {
    answer = await fetch(`${import.meta.env.BASE_URL}crew/${path}`, {
      ...how,
      headers,
      credentials: "same-origin",
      cache: "no-store",
      redirect: "error",
      signal: AbortSignal.timeout(LONGEST_MS),
    });
  } catch {
    return { is: "away" };
  }
  const body: unknown = await answer.json().catch(() => undefined);
  if (answer.ok && body !== undefined) {
    return { is: "done", status: answer.status, body: body as T };
  }
  const after_s = Number(answer.headers.get("retry-after")) || 0;
  return isSaid(body)
    ? { is: "refused", status: answer.status, said: body, after_s }
    : { is: "away" };
}

function isSaid(body: unknown): body is ThreeSentences {
  return typeof body === "object" && body !== null && "read" in body && "wrong" in body && "do" in body;
}
