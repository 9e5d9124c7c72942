/** How far an opening or another place has come: a shape and a word, then a colour. */

import type { LineState, OpeningState } from "../messages";
import { HeldMark, LookMark, ReadyMark, UnreadMark } from "./marks";

interface Props {
  readonly stands: { readonly state: LineState; readonly left: number };
  readonly plan?: OpeningState | undefined;
  /** Whether the plan holds it, where it has no verdict of its own. */
  readonly isHeld?: boolean | undefined;
  readonly isPlanned?: boolean | undefined;
}

export function StateOf({ stands, plan, isHeld, isPlanned }: Props) {
  if (stands.state === "held" || plan?.verdict === "hold" || (isHeld && !stands.left)) {
    return (
      <span class="state held">
        <HeldMark /> HELD
      </span>
    );
  }
  if (stands.left) {
    const word = stands.state === "unread" ? "not read" : `${stands.left} to read`;
    return (
      <span class="state">
        <UnreadMark /> {word}
      </span>
    );
  }
  if (!plan) {
    return (
      <span class={isPlanned ? "state ready" : "state"}>
        <ReadyMark /> {isPlanned ? "ready" : "read"}
      </span>
    );
  }
  if (plan.verdict === "batch" || plan.verdict === "none") {
    return (
      <span class="state ready">
        <ReadyMark /> {plan.verdict === "batch" ? "ready" : "read"}
      </span>
    );
  }
  return (
    <span class="state look">
      <LookMark /> {plan.words}
    </span>
  );
}
