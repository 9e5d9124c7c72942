/** The opening as its readings say: drawn by the core, leaning as much as it leans, and more. */

import { useEffect, useState } from "preact/hooks";
import { ask, planner } from "../core/link";
import { useSignal } from "../core/signal";
import type { Standing } from "../house";
import type { Look, Refusal } from "../messages";
import { Findings, Refused, Said } from "./said";

export function useLook(standing: Standing, way: readonly string[]): Look | Refusal | undefined {
  const [look, setLook] = useState<Look | Refusal | undefined>();
  const document = standing.fold?.document;
  const held = standing.fold?.held ?? [];
  useEffect(() => {
    let isCurrent = true;
    if (document) {
      void ask<"look">({ ask: "look", document, place: way, held }).then((found) => {
        if (isCurrent) setLook(found);
      });
    }
    return () => {
      isCurrent = false;
    };
  }, [document, way.join("/")]);
  return look;
}

export function Echo({
  standing,
  way,
  asks,
}: {
  standing: Standing;
  way: readonly string[];
  asks?: boolean;
}) {
  const look = useLook(standing, way);
  const { progress } = useSignal(planner);
  const held = standing.fold?.held.filter((said) => said.place === way[1]) ?? [];
  const saidOfHeld = held.map((said) => (
    <Said key={said.code} severity={said.severity} place={said.place} said={said} />
  ));
  if (!look) {
    return (
      <>
        {saidOfHeld}
        <p class="picture awaited">
          {progress === "ready" ? "Drawing it …" : "It is drawn once the planner is ready."}
        </p>
      </>
    );
  }
  if (look.kind === "refusal") return <Refused said={look} />;
  return (
    <>
      {saidOfHeld}
      <div class="stack" aria-live="polite">
        <Findings said={look.findings.filter(
            (said) => said.severity !== "note" && said.code !== "readings-differ",
          )} />
      </div>
      {look.faces.map((face) => (
        <figure key={face.svg.length} class="stack">
          <div class="picture" dangerouslySetInnerHTML={{ __html: face.svg }} />
          {face.question && (
            <figcaption>
              {asks && <b>{way[0] === "openings" ? "Does it lean this way? " : "Does it look like this? "}</b>}
              {face.question}
            </figcaption>
          )}
        </figure>
      ))}
      <Findings said={look.findings.filter((said) => said.severity === "note")} />
    </>
  );
}
