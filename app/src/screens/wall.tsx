/** On the wall: gaps in, what to tap out. */

import { useState } from "preact/hooks";
import { ask } from "../core/link";
import { useSignal } from "../core/signal";
import { countryWords, limits, write, type Standing } from "../house";
import type { Refusal, Wall as WallSaid } from "../messages";
import { TextField } from "../parts/fields";
import { Frame } from "../parts/frame";
import { Refused } from "../parts/said";
import { link } from "../route";

const CORNERS = [
  ["tl", "top left"],
  ["tr", "top right"],
  ["bl", "bottom left"],
  ["br", "bottom right"],
] as const;

type Gaps = Readonly<Record<string, readonly [string, string]>>;

const NONE: readonly [string, string] = ["", ""];

export function Wall({ standing, mark }: { standing: Standing; mark?: string | undefined }) {
  const openings = standing.fold?.openings.filter((each) => each.state === "read") ?? [];
  const opening = openings.find((each) => each.mark === mark);
  return (
    <Frame
      title={opening ? `${opening.mark} on the wall` : "On the wall"}
      above={standing.fold?.name}
      back={opening ? link("h", standing.key, "wall") : link()}
      house={standing.key}
      tab="wall"
    >
      {opening ? (
        <OneSet
          key={opening.mark}
          standing={standing}
          mark={opening.mark}
          hasSill={opening.trim === "all-round"}
        />
      ) : (
        <>
          <p>Which set stands open? Tack its pieces, and read the joints before filling.</p>
          <ul class="rows">
            {openings.map((each) => (
              <li key={each.mark}>
                <a href={link("h", standing.key, "wall", each.mark)}>
                  <b>{each.mark}</b>
                  <span class="grow">{each.room}</span>
                  {standing.fold?.gaps[each.mark] ? "gaps read" : ""}
                </a>
              </li>
            ))}
          </ul>
          {!openings.length && <p class="faint">No opening is read to its last line yet.</p>}
        </>
      )}
    </Frame>
  );
}

interface SetProps {
  readonly standing: Standing;
  readonly mark: string;
  readonly hasSill: boolean;
}

function OneSet({ standing, mark, hasSill }: SetProps) {
  const mitre = countryWords(useSignal(limits), standing.fold?.dialect)?.mitre ?? "mitre";
  const [gaps, setGaps] = useState<Gaps>(standing.fold?.gaps[mark] ?? {});
  const [said, setSaid] = useState<WallSaid | Refusal | undefined>();
  const corners = hasSill ? CORNERS : CORNERS.slice(0, 2);
  const unit = standing.fold?.units === "in" ? "inches" : "mm";
  const tell = async (event: Event) => {
    event.preventDefault();
    const document = standing.fold?.document;
    if (!document) return;
    const told = Object.fromEntries(
      corners.map(([corner]) => {
        const [heel, toe] = gaps[corner] ?? NONE;
        return [corner, [heel.trim() || "?", toe.trim() || "?"] as const];
      }),
    );
    await write({ what: "wall-gaps", house: standing.key, opening: mark, gaps: told });
    setSaid(await ask<"wall">({ ask: "wall", document, opening: mark, gaps: told }));
  };
  const change = (corner: string, end: 0 | 1, text: string) => {
    const [heel, toe] = gaps[corner] ?? NONE;
    setGaps({ ...gaps, [corner]: end ? [heel, text] : [text, toe] });
  };
  return (
    <form class="stack" onSubmit={(event) => void tell(event)}>
      <p>
        How far each {mitre} stands open at its heel (outside) and its toe (inside), in {unit}. A
        closed end is 0; leave out what you can't read.
      </p>
      {corners.map(([corner, words]) => (
        <fieldset key={corner} class="field two">
          <legend>{words}</legend>
          {(["heel", "toe"] as const).map((end, at) => (
            <TextField
              key={end}
              label={`${end}`}
              value={known(gaps[corner]?.[at])}
              change={(text) => change(corner, at ? 1 : 0, text)}
              figures
            />
          ))}
        </fieldset>
      ))}
      <button class="act main wide">What to tap</button>
      <div aria-live="polite" class="stack">
        {said?.kind === "refusal" && <Refused said={said} />}
        {said?.kind === "wall" && <Taps said={said} />}
      </div>
    </form>
  );
}

function known(text: string | undefined): string {
  return text === undefined || text === "?" ? "" : text;
}

function Taps({ said }: { said: WallSaid }) {
  return (
    <>
      <Lines title="What is seen" lines={said.says} />
      {said.taps.length > 0 && (
        <section class="card">
          <h2>Tap in this order</h2>
          <ol class="numbered">
            {said.taps.map((tap) => (
              <li key={tap}>{tap}</li>
            ))}
          </ol>
        </section>
      )}
      <Lines title="What stays" lines={said.leaves} />
      <Lines title="Then" lines={said.then} />
      <Lines title="What can't be told" lines={said.blind} />
    </>
  );
}

function Lines({ title, lines }: { title: string; lines: readonly string[] }) {
  if (!lines.length) return null;
  return (
    <section class="card">
      <h2>{title}</h2>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </section>
  );
}
