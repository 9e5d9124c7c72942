/** Where the carpenter is: told by the address behind the #, so that Back and a bookmark work. */

import { signal } from "./core/signal";
import { takeToken } from "./crew/token";

export const route = signal<readonly string[]>(parts());

function parts(): readonly string[] {
  takeToken();
  return location.hash.replace(/^#\/?/, "").split("/").filter(Boolean).map(decodeURIComponent);
}

export function watchRoute(): void {
  addEventListener("hashchange", () => {
    route.set(parts());
    document.getElementById("work")?.scrollTo(0, 0);
    // Those who hear the screen hear where they have come to.
    requestAnimationFrame(() => document.getElementById("title")?.focus({ preventScroll: true }));
  });
}

/** Go on at once: the screen changes before the next key is struck. */
export function go(...to: readonly string[]): void {
  location.hash = link(...to);
  route.set(parts());
}

/** Go on from a form that is done with: Back doesn't return to it. */
export function goInstead(...to: readonly string[]): void {
  location.replace(link(...to));
}

export function link(...to: readonly string[]): string {
  return `#/${to.map(encodeURIComponent).join("/")}`;
}
