/** Whether this phone is of a crew, and how it becomes one of it. */

import { signal } from "../core/signal";
import { deviceName, fact, setFact } from "../journal/store";
import { laptop, type ThreeSentences } from "./laptop";
import { useUpToken } from "./token";

/** What is kept of a crew that this phone is of, or was. */
export interface Member {
  /** As it calls itself. */
  readonly name: string;
  /** The page's own secret; the cookie alone opens nothing. */
  readonly secret: string;
  readonly since: string;
  /** Why it is not let in any more. */
  readonly out?: ThreeSentences | undefined;
}

export type Knocking =
  | { readonly is: "asking" }
  | { readonly is: "waiting"; readonly check: string }
  | { readonly is: "refused"; readonly said: ThreeSentences };

export const member = signal<Member | undefined>(undefined);
export const knocking = signal<Knocking | undefined>(undefined);

const FACT = "crew";
const AWAY: ThreeSentences = {
  read: "This phone knocks at the crew's laptop.",
  wrong: "The laptop isn't there.",
  do: "Look that `longpoint serve` runs there and both are in one network, then take the code that it shows now.",
};

export async function loadMember(): Promise<void> {
  member.set(await fact<Member>(FACT));
}

export async function setMember(next: Member | undefined): Promise<void> {
  await setFact(FACT, next);
  member.set(next);
}

/** Knock under a name, and wait until somebody at the laptop has answered. */
export async function knock(name: string): Promise<void> {
  const token = useUpToken();
  if (!token) return;
  knocking.set({ is: "asking" });
  const found = await laptop.knock(token, name, await deviceName());
  if (found.is !== "done") {
    knocking.set({ is: "refused", said: found.is === "refused" ? found.said : AWAY });
    return;
  }
  const { waiting, check } = found.body;
  knocking.set({ is: "waiting", check });
  for (;;) {
    const answer = await laptop.letIn(waiting);
    if (answer.is === "done" && answer.body.secret) {
      await setMember({ name, secret: answer.body.secret, since: new Date().toISOString() });
      knocking.set(undefined);
      return;
    }
    if (answer.is === "refused" && answer.status !== 429) {
      knocking.set({ is: "refused", said: answer.said });
      return;
    }
    // The door is answered so often and no oftener; a laptop that is away for a moment comes back.
    const wait_s = answer.is === "refused" ? answer.after_s : 0;
    await new Promise((resolve) => setTimeout(resolve, Math.max(ASK_EVERY_S, wait_s) * 1000));
  }
}

const ASK_EVERY_S = 1;

/** End it on both sides; what was read stays on the phone. */
export async function leave(): Promise<void> {
  const now = member.get();
  if (now && !now.out) await laptop.leave(now.secret);
  await setMember(undefined);
}
