/** Puts the app on the phone, and says when a newer one waits. */

import { signal } from "../core/signal";

export type Standing = "fetching" | "on this phone" | "newer waits" | "only here";

/** Whether the app would open without a network. */
export const standing = signal<Standing>("fetching");

/** Whether the browser has promised to keep what was written down. */
export const promised = signal<boolean | undefined>(undefined);

let registration: ServiceWorkerRegistration | undefined;

export async function install(): Promise<void> {
  if (!("serviceWorker" in navigator) || import.meta.env.DEV) {
    standing.set("only here");
    return;
  }
  try {
    registration = await navigator.serviceWorker.register("./sw.js", { updateViaCache: "none" });
  } catch {
    standing.set(navigator.serviceWorker.controller ? "on this phone" : "only here");
    return;
  }
  registration.addEventListener("updatefound", look);
  navigator.serviceWorker.addEventListener("controllerchange", look);
  look();
}

/** Ask the browser not to clear away what was written down; only once there is something. */
export async function askToStay(): Promise<void> {
  if (!navigator.storage?.persist) return;
  promised.set((await navigator.storage.persisted()) || (await navigator.storage.persist()));
}

/** Change over to the newer version. Everything kept is in the store, so nothing can be lost. */
export function takeNewer(): void {
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), {
    once: true,
  });
  registration?.waiting?.postMessage("take over");
}

function look(): void {
  if (!registration) return;
  const coming = registration.installing;
  coming?.addEventListener("statechange", look);
  if (registration.waiting && registration.active) standing.set("newer waits");
  else if (registration.active) standing.set("on this phone");
  else standing.set("fetching");
}
