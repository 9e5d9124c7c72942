/** The sheets: the same as on paper, shown, printed and handed on from here. */

import { useEffect, useRef, useState } from "preact/hooks";
import { ask } from "../core/link";
import { needPlan, type Standing } from "../house";
import type { Refusal, SheetPage } from "../messages";
import { Frame } from "../parts/frame";
import { SheetMark } from "../parts/marks";
import { Refused } from "../parts/said";
import { link } from "../route";
import { giveFile } from "../service/give";
import { PlanComing } from "./plan_coming";

export function Sheets({ standing, name }: { standing: Standing; name?: string | undefined }) {
  useEffect(needPlan, [standing.fold]);
  const [sheets, setSheets] = useState<readonly SheetPage[] | undefined>();
  const [refusal, setRefusal] = useState<Refusal | undefined>();
  const { fold, plan, planOf, isFirst } = standing;
  const isPlanned = Boolean(plan) && !standing.refusal && planOf === fold && !isFirst;
  useEffect(() => {
    let isCurrent = true;
    // The final plan first: readings that are written meanwhile stop it, not its sheets.
    if (fold && isPlanned) {
      const { document, held, saw } = fold;
      void ask<"sheets">({ ask: "sheets", document, held, saw }).then((found) => {
        if (!isCurrent) return;
        if (found.kind === "refusal") setRefusal(found);
        else setSheets(found.sheets);
      });
    }
    return () => {
      isCurrent = false;
    };
  }, [fold, isPlanned]);
  const sheet = sheets?.find((each) => each.name === name);
  return (
    <Frame
      title={sheet?.title ?? "Sheets"}
      above={fold?.name}
      back={sheet ? link("h", standing.key, "sheets") : link()}
      house={standing.key}
      tab="sheets"
    >
      {refusal && <Refused said={refusal} />}
      <PlanComing standing={standing} first="The sheets come with the final plan …" />
      {isPlanned && !sheets && !refusal && (
        <p role="status" class="faint">
          Writing the sheets …
        </p>
      )}
      {sheet ? (
        <OneSheet sheet={sheet} />
      ) : (
        <ul class="rows">
          {sheets?.map((each) => (
            <li key={each.name}>
              <a href={link("h", standing.key, "sheets", each.name)}>
                <span class="house-mark" aria-hidden="true">
                  <SheetMark />
                </span>
                <b class="grow">{each.title}</b>
              </a>
            </li>
          ))}
        </ul>
      )}
    </Frame>
  );
}

function OneSheet({ sheet }: { sheet: SheetPage }) {
  const page = useRef<HTMLIFrameElement>(null);
  return (
    <>
      <div class="acts">
        <button class="act main" onClick={() => page.current?.contentWindow?.print()}>
          Print
        </button>
        <button
          class="act"
          onClick={() => void giveFile(`${sheet.name}.html`, sheet.html, "text/html")}
        >
          Hand on
        </button>
      </div>
      <iframe
        ref={page}
        class="sheet"
        title={sheet.title}
        sandbox="allow-same-origin allow-modals"
        srcDoc={sheet.html}
      />
    </>
  );
}
