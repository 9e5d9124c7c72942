/** Why the phone's store takes nothing more; every screen shows it. */

import { signal } from "../core/signal";

interface WhyRefused {
  readonly read: string;
  readonly wrong: string;
  readonly do: string;
}

export const refused = signal<WhyRefused | undefined>(undefined);

/** A newer version waits in another window: this one has closed the store. */
export function letGo(): void {
  refused.set({
    read: "A newer version of this app was opened in another window of this phone.",
    wrong: "Two versions can't write in one store, so this window has let go of it. What was said to be kept is there.",
    do: "Go on in the other window, or load this one again; until then nothing typed here is kept.",
  });
}

/** What was to be written down is not on the disk. */
export function notKept(why: unknown): void {
  // Once it is known why, what follows from it says no more.
  if (refused.get()) return;
  const reason = why instanceof Error ? why.message || why.name : String(why);
  refused.set({
    read: "Something typed just now was to be kept on this phone.",
    wrong: `The phone's store refuses it: ${reason} It is not kept; what was said to be kept before is there.`,
    do: "Write it on paper, make room on the phone, then load this page again and type it once more.",
  });
}
