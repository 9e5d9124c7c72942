/** The house at a glance: how far it is, what is held, and what to do next. */

import { useEffect, useState } from "preact/hooks";
import { ask } from "../core/link";
import { useSignal } from "../core/signal";
import { rounds } from "../crew/share";
import { isOld, limits, needPlan, write, type Standing } from "../house";
import { fact, setFact } from "../journal/store";
import type { FoldedPlace } from "../messages";
import { openingsNow } from "../openings_now";
import { CameIn } from "../parts/came";
import { Frame } from "../parts/frame";
import { Findings } from "../parts/said";
import { StateOf } from "../parts/state";
import { leftOf, placesNow } from "../places_now";
import { link } from "../route";
import { giveFile } from "../service/give";
import { promised } from "../service/install";
import { PlanComing } from "./plan_coming";

export function Glance({ standing }: { standing: Standing }) {
  const known = useSignal(limits);
  useEffect(needPlan, [standing.fold]);
  const { fold, plan } = standing;
  const openings = known ? openingsNow(standing, known) : [];
  const places = known ? placesNow(standing, known) : [];
  const marks = new Set([
    ...openings.map((opening) => opening.mark),
    ...places.map((place) => place.root),
  ]);
  const wide = plan?.findings.filter((said) => !marks.has(said.place)) ?? [];
  const notes = wide.filter((said) => said.severity === "note");
  const share = fold?.asked ? fold.read / fold.asked : 0;
  return (
    <Frame title={fold?.name ?? "House"} back={link()} house={standing.key} tab="house">
      <div class="beside">
        <div class="stack">
          <CameIn house={standing.key} />
          <div class="run" aria-hidden="true">
            <i style={{ width: `${share * 100}%` }} />
          </div>
          <p>
            <b>
              {fold?.read ?? 0} of {fold?.asked ?? 0}
            </b>{" "}
            readings. {plan && !isOld(standing) ? plan.summary : ""}
            {plan && plan.pieces > 0 ? ` ${plan.done.length} of ${plan.pieces} pieces cut.` : ""}
          </p>
          {openings.length + places.length > 0 && <PlanComing standing={standing} />}
          <ul class="rows" aria-label="Openings">
            {openings.map((opening) => (
              <li key={opening.mark}>
                <a href={link("h", standing.key, "opening", opening.mark)}>
                  <b class="mark">{opening.mark}</b>
                  <span class="grow">{opening.room}</span>
                  <StateOf
                    stands={opening}
                    plan={plan?.openings.find((each) => each.mark === opening.mark)}
                  />
                </a>
              </li>
            ))}
          </ul>
          {places.length > 0 && (
            <ul class="rows" aria-label="Rooms and other trim">
              {places
                .filter((place) => place.place.length === 2)
                .map((place) => (
                  <li key={place.place.join("/")}>
                    <a href={link("h", standing.key, "place", ...place.place)}>
                      <b class="mark">{place.root}</b>
                      <span class="grow">{kindOf(place)}</span>
                      <StateOf
                        stands={{ state: place.state, left: leftOf(places, place.place) }}
                        isHeld={plan?.held.includes(place.root)}
                        isPlanned={Boolean(plan)}
                      />
                    </a>
                  </li>
                ))}
            </ul>
          )}
          <a class="act" href={link("h", standing.key, "add")}>
            Add an opening, a room or other trim
          </a>
        </div>
        <div class="stack">
          <Findings said={wide.filter((said) => said.severity !== "note")} />
          {notes.length > 0 && (
            <details>
              <summary>{notes.length} things assumed or good to know</summary>
              <div class="stack">
                <Findings said={notes} />
              </div>
            </details>
          )}
          <TakeBack standing={standing} />
          <CopyOff standing={standing} />
          <a class="act" href={link("h", standing.key, "settings")}>
            Settings: trim, stock, saw, tape
          </a>
        </div>
      </div>
    </Frame>
  );
}

function kindOf(place: FoldedPlace): string {
  if (place.form === "rooms") return "room";
  const what = place.title.split(", ").at(-1) ?? "";
  return [place.room, what].filter(Boolean).join(", ") ;
}

function TakeBack({ standing }: { standing: Standing }) {
  const undo = standing.fold?.undo;
  if (!undo || standing.folded < standing.entries.length) return null;
  return (
    <button
      class="act"
      onClick={() => void write({ what: "undo", house: standing.key, of: undo.of })}
    >
      Take back: {undo.words}
    </button>
  );
}

/** The house as a file, and when it was last copied off this phone. */
function CopyOff({ standing }: { standing: Standing }) {
  const [copied, setCopied] = useState<string | undefined>();
  const isPromised = useSignal(promised);
  const name = `copied:${standing.key}`;
  const round = useSignal(rounds);
  useEffect(() => {
    void fact<string>(name).then(setCopied);
  }, [name, round]);
  const copy = async () => {
    if (!standing.fold) return;
    const file = await ask<"file">({ ask: "file", document: standing.fold.document });
    if (file.kind !== "file" || !(await giveFile(file.name, file.text, "application/toml"))) return;
    const now = new Date().toISOString();
    await setFact(name, now);
    setCopied(now);
  };
  return (
    <div class="card">
      <p>
        Last copied off this phone: <b>{copied ? new Date(copied).toLocaleString() : "never"}</b>
      </p>
      {isPromised === false && (
        <p class="faint">
          The browser may clear this page's store when the phone is full. Copy the house off it.
        </p>
      )}
      <button class="act" disabled={!standing.fold} onClick={() => void copy()}>
        Copy the house file
      </button>
      <a class="act" href={link("h", standing.key, "hand-over")}>
        Hand over to another phone
      </a>
    </div>
  );
}
