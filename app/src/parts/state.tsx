/** How far an opening has come: a shape and a word, then a colour. */

import type { FoldedOpening, OpeningState } from "../messages";
import { HeldMark, LookMark, ReadyMark, UnreadMark } from "./marks";

export function StateOf({
  opening,
  plan,
}: {
  opening: FoldedOpening;
  plan?: OpeningState | undefined;
}) {
  if (opening.state === "unread" || opening.state === "part") {
    const word = opening.state === "part" ? `${opening.left} to read` : "not read";
    return (
      <span class="state">
        <UnreadMark /> {word}
      </span>
    );
  }
  if (opening.state === "held" || plan?.verdict === "hold") {
    return (
      <span class="state held">
        <HeldMark /> HELD
      </span>
    );
  }
  if (!plan) {
    return (
      <span class="state">
        <ReadyMark /> read
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
