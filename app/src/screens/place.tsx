/** A room, a wall, a run or other trim: drawing, pieces, what is read of it, and its parts. */

import { useEffect, useState } from "preact/hooks";
import { useSignal } from "../core/signal";
import { limits, needPlan, write, type Standing } from "../house";
import type { FoldedPlace, Form, FormLine, Limits } from "../messages";
import { openingsNow } from "../openings_now";
import { Echo, useLook } from "../parts/echo";
import { TextField } from "../parts/fields";
import { Frame } from "../parts/frame";
import { PieceRows } from "../parts/pieces";
import { StateOf } from "../parts/state";
import { WhoDiffers } from "../parts/who_read";
import {
  formOf,
  leftOf,
  nextAsked,
  partsOf,
  placesNow,
  sameWay,
  shownIn,
  textsIn,
  type Way,
} from "../places_now";
import { go, link } from "../route";

export function Place({ standing, way }: { standing: Standing; way: Way }) {
  const known = useSignal(limits);
  useEffect(needPlan, [standing.fold]);
  const places = known ? placesNow(standing, known) : [];
  const place = places.find((each) => sameWay(each.place, way));
  const form = known && place && formOf(known, place);
  const look = useLook(standing, way);
  if (!known || !place || !form) {
    return (
      <Frame title={way.at(-1) ?? ""} back={link("h", standing.key)} house={standing.key} tab="read">
        <p>It isn't there, or it was left out.</p>
      </Frame>
    );
  }
  const isPart = way.length > 2;
  const above = isPart ? ["place", ...way.slice(0, -2)] : ["house"];
  const next = nextAsked(place, form);
  const leaveOut = async () => {
    await write({ what: "place-left-out", house: standing.key, place: way });
    go("h", standing.key, ...above);
  };
  const hasLook = leftOf(places, way) === 0;
  return (
    <Frame
      title={place.title}
      above={standing.fold?.name}
      back={link("h", standing.key, ...above)}
      house={standing.key}
      tab="read"
    >
      <div class="beside">
        <div class="stack">
          <StateOf
            stands={{ state: place.state, left: leftOf(places, way) }}
            isHeld={standing.plan?.held.includes(place.root)}
            isPlanned={Boolean(standing.plan)}
          />
          <WhoDiffers lines={place.lines} />
          {next && (
            <a class="act main" href={link("h", standing.key, "fill", next.line, ...way)}>
              Read {next.short.toLowerCase()}
            </a>
          )}
          {isPart && !next && (
            <a class="act main" href={link("h", standing.key, "place", ...way.slice(0, -2))}>
              On with {way.at(-3)}
            </a>
          )}
          {/* Before the drawing, which comes late and would move them under the thumb. */}
          {form.lines
            .filter((line) => line.scale === "tables")
            .map((line) => (
              <Parts
                key={line.line}
                standing={standing}
                limits={known}
                places={places}
                place={place}
                line={line}
              />
            ))}
          {hasLook && <Echo standing={standing} way={way} asks />}
        </div>
        <div class="stack">
          {hasLook && look?.kind === "look" && look.pieces.length > 0 && (
            <PieceRows rows={look.pieces} />
          )}
          {look?.kind === "look" && look.lines.length > 0 && (
            <details>
              <summary>How it is made</summary>
              {look.lines.map((line) => (
                <p key={line}>{line}</p>
              ))}
            </details>
          )}
          <Lines standing={standing} place={place} form={form} />
          <button class="act stop" onClick={() => void leaveOut()}>
            Leave {place.title} out
          </button>
        </div>
      </div>
    </Frame>
  );
}

/** What is written of a place, line by line; what isn't says what then holds. */
function Lines({ standing, place, form }: { standing: Standing; place: FoldedPlace; form: Form }) {
  const lines = form.lines.filter((line) => line.scale !== "tables");
  const isWritten = (line: FormLine) => line.asked || textsIn(place, line.line).length > 0;
  const more = lines.filter((line) => !isWritten(line));
  return (
    <>
      <section class="stack" aria-label="What is written">
        <h2>What is written</h2>
        <Rows standing={standing} place={place} lines={lines.filter(isWritten)} />
      </section>
      {more.length > 0 && (
        <details>
          <summary>{more.length} more that can be said of it</summary>
          <Rows standing={standing} place={place} lines={more} />
        </details>
      )}
    </>
  );
}

function Rows({
  standing,
  place,
  lines,
}: {
  standing: Standing;
  place: FoldedPlace;
  lines: readonly FormLine[];
}) {
  return (
    <ul class="rows readings">
      {lines.map((line) => (
        <li key={line.line}>
          <a href={link("h", standing.key, "fill", line.line, ...place.place)}>
            <span class="grow">
              <b>{line.short}</b>
              <small class="faint block">{line.words}</small>
            </span>
            <b class="figures">{shownIn(place, line).join(" / ") || "not said"}</b>
          </a>
        </li>
      ))}
    </ul>
  );
}

interface PartsProps {
  readonly standing: Standing;
  readonly limits: Limits;
  readonly places: readonly FoldedPlace[];
  readonly place: FoldedPlace;
  readonly line: FormLine;
}

/** The parts of a place, and one more of them. */
function Parts({ standing, limits: known, places, place, line }: PartsProps) {
  const [label, setLabel] = useState("");
  const rows = partsOf(places, [...place.place]).filter((each) => each.place.at(-2) === line.line);
  const form = known.forms.find((each) => each.form === line.form);
  if (!form) return null;
  const taken = rows.map((each) => each.place.at(-1) ?? "");
  const suggested = form.label ? nextLabel(line.line, taken, openMarks(standing, known)) : "";
  const named = form.label ? label.trim() || suggested : String(rows.length + 1);
  // A room has three walls or more; what else there may be is no step of the walk.
  const isNext = line.asked && rows.length < 3 && !leftOf(places, place.place);
  const isFree = named !== "" && !taken.includes(named);
  const what = form.title.replace(/^an? /, "");
  const add = async (event: Event) => {
    event.preventDefault();
    if (!isFree) return;
    const way = [...place.place, line.line, named];
    await write({
      what: "place-added",
      house: standing.key,
      place: way,
      values: line.line === "walls" && hasSkirting(standing) ? { skirting: true } : {},
    });
    setLabel("");
    const first = form.lines.find((each) => each.asked) ?? form.lines[0];
    go("h", standing.key, ...(first ? ["fill", first.line] : ["place"]), ...way);
  };
  return (
    <section class="stack" aria-label={line.short}>
      <h2>{line.short}</h2>
      <p class="faint">{line.words}</p>
      <ul class="rows">
        {rows.map((each) => (
          <li key={each.title}>
            <a href={link("h", standing.key, "place", ...each.place)}>
              <b class="mark">{each.place.at(-1)}</b>
              <span class="grow figures">{summary(each)}</span>
              <StateOf stands={{ state: each.state, left: each.left }} />
            </a>
          </li>
        ))}
      </ul>
      <form class="two" onSubmit={(event) => void add(event)}>
        {form.label && (
          <TextField
            label={`Its ${form.label}${suggested ? ` (else ${suggested})` : ""}`}
            value={label}
            change={setLabel}
          />
        )}
        <button class={isNext ? "act main" : "act"} disabled={!isFree}>
          Add {what} {named}
        </button>
      </form>
    </section>
  );
}

function summary(place: FoldedPlace): string {
  return place.lines
    .filter((line) => line.texts.length && !["skirting", "profile"].includes(line.line))
    .slice(0, 2)
    .map((line) => line.texts.join(" / "))
    .join(", ");
}

function hasSkirting(standing: Standing): boolean {
  const defaults = standing.fold?.document["defaults"];
  return typeof defaults === "object" && defaults !== null && "skirting" in defaults;
}

function openMarks(standing: Standing, known: Limits): readonly string[] {
  return openingsNow(standing, known).map((opening) => opening.mark);
}

/** Walls go round by the compass; what stands in them has its mark already. */
function nextLabel(list: string, taken: readonly string[], marks: readonly string[]): string {
  const names = list === "walls" ? ["N", "E", "S", "W", "5", "6", "7", "8", "9", "10"] : marks;
  return names.find((name) => !taken.includes(name)) ?? "";
}
