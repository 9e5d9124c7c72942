/** A house for another phone: its journal as a file, or as pictures that the other one reads. */

import { useEffect, useState } from "preact/hooks";
import { ask } from "../core/link";
import type { Standing } from "../house";
import type { HandOver as HandedOver, Refusal } from "../messages";
import { Frame } from "../parts/frame";
import { Refused } from "../parts/said";
import { link } from "../route";
import { giveFile } from "../service/give";

export function HandOver({ standing }: { standing: Standing }) {
  const [found, setFound] = useState<HandedOver | Refusal | undefined>();
  const [at, setAt] = useState<number | undefined>();
  const { entries } = standing;
  useEffect(() => {
    void ask<"hand-over">({ ask: "hand-over", entries }).then(setFound);
  }, [entries]);
  const name = standing.fold?.name ?? "house";
  const picture = found?.kind === "hand-over" && at !== undefined ? found.pictures[at] : undefined;
  if (found?.kind === "hand-over" && picture && at !== undefined) {
    return <Picture svg={picture} at={at} of={found.pictures.length} show={setAt} house={standing.key} />;
  }
  const file = `${name.toLowerCase().replace(/[^a-z0-9]+/g, "-")}.journal.json`;
  return (
    <Frame
      title="Hand over"
      above={standing.fold?.name}
      back={link("h", standing.key, "house")}
      house={standing.key}
      tab="house"
    >
      <p>
        All that was written of this house, for another phone: readings, what they took the place
        of, what was cut. There it is put together with what that phone has of the house; nothing is
        written over, on either.
      </p>
      {!found && <p role="status">Packing it …</p>}
      {found?.kind === "refusal" && <Refused said={found} />}
      {found?.kind === "hand-over" && (
        <div class="stack">
          <button
            class="act main wide"
            onClick={() => void giveFile(file, found.text, "application/json")}
          >
            Send it as a file
          </button>
          {found.pictures.length > 0 ? (
            <button class="act wide" onClick={() => setAt(0)}>
              Show it in {found.pictures.length}{" "}
              {found.pictures.length === 1 ? "picture" : "pictures"}
            </button>
          ) : (
            <p class="faint">It would take {found.count} pictures: send it as a file.</p>
          )}
          <p class="faint">
            On the other phone: Houses, Open a house, then choose the file or read the pictures.
          </p>
        </div>
      )}
    </Frame>
  );
}

interface PictureProps {
  readonly svg: string;
  readonly at: number;
  readonly of: number;
  readonly show: (at: number | undefined) => void;
  readonly house: string;
}

/** One picture, as large as the screen has room, and the ones before and after it. */
function Picture({ svg, at, of, show, house }: PictureProps) {
  const [runs, setRuns] = useState(false);
  useEffect(() => {
    if (!runs) return undefined;
    const timer = setInterval(() => show((at + 1) % of), 1500);
    return () => clearInterval(timer);
  }, [runs, at, of]);
  return (
    <Frame
      title={`Picture ${at + 1} of ${of}`}
      back={link("h", house, "hand-over")}
      house={house}
      foot={
        <div class="acts">
          <button class="act" disabled={of === 1} onClick={() => show((at + of - 1) % of)}>
            Before
          </button>
          <button class="act main" disabled={of === 1} onClick={() => show((at + 1) % of)}>
            Next
          </button>
        </div>
      }
    >
      <div class="code" dangerouslySetInnerHTML={{ __html: svg }} />
      <div class="acts">
        {of > 1 && (
          <button class="act" aria-pressed={runs} onClick={() => setRuns(!runs)}>
            {runs ? "Hold it" : "Show one after the other"}
          </button>
        )}
        <button class="act" onClick={() => show(undefined)}>
          Done
        </button>
      </div>
    </Frame>
  );
}
