/** A piece's label read off its code: which piece it is, and what it should measure now. */

import { useEffect, useState } from "preact/hooks";
import { ask } from "../core/link";
import type { Standing } from "../house";
import { entriesOf, houseKeys } from "../journal/store";
import type { Fold, LabelHouse, LabelRead, Refusal } from "../messages";
import { CodeEyes } from "../parts/code_eyes";
import { Frame } from "../parts/frame";
import { PieceRows } from "../parts/pieces";
import { Findings, Refused } from "../parts/said";
import { link } from "../route";

interface Props {
  readonly standing: Standing;
  /** What a label says that was read already, when its house wasn't in hand. */
  readonly text?: string | undefined;
}

interface Found {
  readonly text: string;
  readonly whose: LabelHouse;
  /** Of the house in hand only. */
  readonly read?: LabelRead | undefined;
}

export function Label({ standing, text }: Props) {
  const [seen, setSeen] = useState(text);
  const [found, setFound] = useState<Found | Refusal | undefined>();
  const { key, fold } = standing;
  useEffect(() => setSeen(text), [text]);
  // A label may be read before the readings written last are taken in: then it is read again.
  useEffect(() => {
    let isNewest = true;
    if (seen && fold) {
      void look(seen, key, fold).then((answer) => isNewest && setFound(answer));
    }
    return () => {
      isNewest = false;
    };
  }, [seen, key, fold]);
  return (
    <Frame
      title="Read a label"
      above={standing.fold?.name}
      back={link("h", key, "saw")}
      house={key}
      tab="saw"
    >
      <p>Hold the square code of a piece's label before the camera.</p>
      <CodeEyes take={setSeen} pictures="Or a picture of the label" isDone={false} />
      <div aria-live="polite" class="stack">
        {found && "kind" in found && <Refused said={found} />}
        {found && "whose" in found && <Whose found={found} house={key} />}
      </div>
    </Frame>
  );
}

/** Every opening's head is called alike in every house: first it is asked whose label it is. */
async function look(text: string, key: string, fold: Fold): Promise<Found | Refusal> {
  const houses = await houseKeys();
  const journals = await Promise.all(
    houses.map(async (house) => ({ house, entries: await entriesOf(house) })),
  );
  const whose = await ask<"label-house">({ ask: "label-house", text, journals });
  if (whose.kind === "refusal" || whose.house !== key) {
    return whose.kind === "refusal" ? whose : { text, whose };
  }
  const { document, held, saw } = fold;
  const read = await ask<"label">({ ask: "label", text, document, held, saw });
  return read.kind === "refusal" ? read : { text, whose, read };
}

function Whose({ found: { text, whose, read }, house }: { found: Found; house: string }) {
  if (!read) {
    return (
      <div class="card">
        <p>
          This label is of <b>{whose.name}</b>.
        </p>
        <a class="act wide" href={link("h", whose.house, "label", text)}>
          Look there
        </a>
      </div>
    );
  }
  return (
    <>
      {whose.since && <p>Written first since it was printed: {whose.since}.</p>}
      <Read read={read} house={house} />
    </>
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
