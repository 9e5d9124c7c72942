/// <reference lib="webworker" />
/**
 * The service worker: the whole app is on the phone after the first visit.
 *
 * Each version has a store of its own, filled before it may serve; files that did not change are
 * copied from the version before, so that an update costs only what is new. A new version waits
 * until the carpenter takes it, and nothing that was written down is touched by it.
 */

declare const self: ServiceWorkerGlobalScope;

/** Path and hash of every file; filled in by the build. */
declare const __FILES__: readonly (readonly [path: string, hash: string])[];
declare const __VERSION__: string;

const STORE = `longpoint-app-${__VERSION__}`;
const HASH = "x-longpoint-hash";
const AT_ONCE = 6;

async function fill(): Promise<void> {
  const store = await caches.open(STORE);
  const before = (await caches.keys()).filter((name) => name.startsWith("longpoint-app-"));
  const olds = await Promise.all(before.map((name) => caches.open(name)));
  const left = [...__FILES__];
  const fetchNext = async (): Promise<void> => {
    for (let next = left.shift(); next; next = left.shift()) {
      const [path, hash] = next;
      await store.put(path, (await fromBefore(olds, path, hash)) ?? (await fetched(path, hash)));
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, fetchNext));
}

async function fromBefore(
  olds: readonly Cache[],
  path: string,
  hash: string,
): Promise<Response | undefined> {
  for (const old of olds) {
    const found = await old.match(path);
    if (found?.headers.get(HASH) === hash) return found;
  }
  return undefined;
}

async function fetched(path: string, hash: string): Promise<Response> {
  const response = await fetch(new Request(path, { cache: "no-cache" }));
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  const headers = new Headers(response.headers);
  headers.set(HASH, hash);
  // What comes compressed is kept as it reads.
  headers.delete("content-encoding");
  headers.delete("content-length");
  return new Response(await response.blob(), { status: 200, headers });
}

async function clear(): Promise<void> {
  for (const name of await caches.keys()) {
    if (name.startsWith("longpoint-app-") && name !== STORE) await caches.delete(name);
  }
  await self.clients.claim();
}

async function serve(request: Request): Promise<Response> {
  const wanted = request.mode === "navigate" ? "./" : request;
  // To open a store would make it anew where the version after this one has just cleared it away.
  const found = await caches.match(wanted, { cacheName: STORE, ignoreSearch: true });
  return found ?? fetch(request);
}

self.addEventListener("install", (event) => event.waitUntil(fill()));
self.addEventListener("activate", (event) => event.waitUntil(clear()));
self.addEventListener("message", (event) => {
  if (event.data === "take over") void self.skipWaiting();
});
self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  const isOwn = url.origin === self.location.origin && !url.pathname.includes("/crew/");
  if (event.request.method === "GET" && isOwn) {
    event.respondWith(serve(event.request));
  }
});

export {};
