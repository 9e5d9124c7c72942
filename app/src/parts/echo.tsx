/** The opening as its readings say: drawn by the core, leaning as much as it leans, and more. */

import { useEffect, useState } from "preact/hooks";
import { ask, planner } from "../core/link";
import { useSignal } from "../core/signal";
import type { Standing } from "../house";
import type { Look, Refusal } from "../messages";
import { Findings, Refused, Said } from "./said";

export function useLook(standing: Standing, mark: string): Look | Refusal | undefined {
  const [look, setLook] = useState<Look | Refusal | undefined>();
  const document = standing.fold?.document;
  useEffect(() => {
    let isCurrent = true;
    if (document) {
      void ask<"look">({ ask: "look", document, opening: mark }).then((found) => {
        if (isCurrent) setLook(found);
      });
    }
    return () => {
      isCurrent = false;
    };
  }, [document, mark]);
  return look;
}

export function Echo({
  standing,
  mark,
  asks,
}: {
  standing: Standing;
  mark: string;
  asks?: boolean;
}) {
  const look = useLook(standing, mark);
  const { progress } = useSignal(planner);
  const held = standing.fold?.held.filter((said) => said.place === mark) ?? [];
  if (!look) return <p class="faint">{progress === "ready" ? "Drawing it …" : "It is drawn once the planner is ready."}</p>;
  if (look.kind === "refusal") return <Refused said={look} />;
  return (
    <>
      {held.map((said) => (
        <Said key={said.code} severity={said.severity} place={said.place} said={said} />
      ))}
      <div class="stack" aria-live="polite">
        <Findings said={look.findings.filter((said) => said.severity !== "note")} />
      </div>
      {look.faces.map((face) => (
        <figure key={face.svg.length} class="stack">
          <div class="picture" dangerouslySetInnerHTML={{ __html: face.svg }} />
          {face.question && (
            <figcaption>
              {asks && <b>Does it lean this way? </b>}
              {face.question}
            </figcaption>
          )}
        </figure>
      ))}
      <Findings said={look.findings.filter((said) => said.severity === "note")} />
    </>
  );
}
