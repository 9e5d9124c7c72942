/** A house off another phone's screen: by the camera, or from pictures of it. */

import { useRef, useState } from "preact/hooks";
import { ask } from "../core/link";
import type { Refusal } from "../messages";
import { CodeEyes } from "../parts/code_eyes";
import { Refused } from "../parts/said";

interface Props {
  /** What the pictures hold, once all of them are read. */
  readonly got: (text: string) => void;
}

export function ReadCodes({ got }: Props) {
  const parts = useRef<readonly string[]>([]);
  const [told, setTold] = useState("");
  const [refusal, setRefusal] = useState<Refusal | undefined>();
  const [isDone, setDone] = useState(false);

  const take = async (text: string): Promise<void> => {
    if (parts.current.includes(text)) return;
    const found = await ask<"joined">({ ask: "joined", parts: [...parts.current, text] });
    if (found.kind === "refusal") {
      setRefusal(found);
      return;
    }
    setRefusal(undefined);
    parts.current = [...parts.current, text];
    const read = found.count - found.missing.length;
    setTold(
      found.missing.length
        ? `${read} of ${found.count} read; still wanted: ${found.missing.join(", ")}.`
        : `All ${found.count} read.`,
    );
    if (found.text) {
      setDone(true);
      got(found.text);
    }
  };
  return (
    <section class="stack" aria-label="From another phone's screen">
      <h2>From another phone's screen</h2>
      <p class="faint">There: House, Hand over, Show it in pictures.</p>
      <CodeEyes take={take} pictures="Or pictures of its screen" isDone={isDone} />
      <p role="status" class="told">
        {told}
      </p>
      {refusal && <Refused said={refusal} />}
    </section>
  );
}
