/** A piece's label read off its code: which piece it is, and what it should measure now. */

import { useRef, useState } from "preact/hooks";
import { ask } from "../core/link";
import type { Standing } from "../house";
import type { LabelRead, Refusal } from "../messages";
import { CodeEyes } from "../parts/code_eyes";
import { Frame } from "../parts/frame";
import { PieceRows } from "../parts/pieces";
import { Findings, Refused } from "../parts/said";
import { link } from "../route";

export function Label({ standing }: { standing: Standing }) {
  const [found, setFound] = useState<LabelRead | Refusal | undefined>();
  const last = useRef("");
  const take = async (text: string) => {
    const { fold } = standing;
    // The camera sees one label many times.
    if (!fold || text === last.current) return;
    last.current = text;
    const { document, held, saw } = fold;
    setFound(await ask<"label">({ ask: "label", text, document, held, saw }));
  };
  return (
    <Frame
      title="Read a label"
      above={standing.fold?.name}
      back={link("h", standing.key, "saw")}
      house={standing.key}
      tab="saw"
    >
      <p>Hold the square code of a piece's label before the camera.</p>
      <CodeEyes take={take} pictures="Or a picture of the label" isDone={false} />
      <div aria-live="polite" class="stack">
        {found?.kind === "refusal" && <Refused said={found} />}
        {found?.kind === "label" && <Read read={found} house={standing.key} />}
      </div>
    </Frame>
  );
}

function Read({ read, house }: { read: LabelRead; house: string }) {
  return (
    <>
      <p>
        <b>{read.what}</b>
        {read.room && `, ${read.room}`}: {read.is_cut ? "cut." : "still to be cut."}
      </p>
      <Findings said={read.findings} />
      <PieceRows rows={[read.row]} />
      {read.opening && (
        <>
          <a class="act wide" href={link("h", house, "opening", read.opening)}>
            {read.opening}: where it goes
          </a>
          <a class="act wide" href={link("h", house, "wall", read.opening)}>
            {read.opening} on the wall
          </a>
        </>
      )}
    </>
  );
}
