/** Walk round the room: one reading at a time, in a fixed order, and an echo at the end. */

import { useEffect, useState } from "preact/hooks";
import { useSignal } from "../core/signal";
import { limits, needPlan, write, type Standing } from "../house";
import type { FoldedOpening, FoldedPlace, Limits, LineLimits } from "../messages";
import { linesOf, nextLine, openingsNow, readersOf, textsOf } from "../openings_now";
import { Echo } from "../parts/echo";
import { Choices } from "../parts/fields";
import { Frame } from "../parts/frame";
import { toldAtOnce } from "../parts/instant";
import { Keypad, type Told } from "../parts/keypad";
import { Sides } from "../parts/sides";
import { WhoRead } from "../parts/who_read";
import { leftOf, placesNow } from "../places_now";
import { go, link } from "../route";

interface Props {
  readonly standing: Standing;
  readonly mark?: string | undefined;
  readonly line?: string | undefined;
}

export function Read({ standing, mark, line }: Props) {
  const known = useSignal(limits);
  const openings = known ? openingsNow(standing, known) : [];
  const places = known ? placesNow(standing, known) : [];
  const opening =
    openings.find((each) => each.mark === mark) ??
    openings.find((each) => each.left > 0) ??
    openings.at(-1);
  const name = standing.fold?.name;
  if (!known || !opening) {
    return (
      <Frame title="Read" above={name} back={link()} house={standing.key} tab="read">
        {places.length > 0 ? (
          <Along openings={openings} places={places} at="" standing={standing} />
        ) : (
          <p>There is no opening yet. Stand at the door, go round to the left.</p>
        )}
        <a class="act main" href={link("h", standing.key, "add")}>
          Add an opening
        </a>
      </Frame>
    );
  }
  const lines = linesOf(known, opening.what);
  const asked =
    lines.find((each) => each.line === line) ??
    (line === "done" ? undefined : nextLine(opening, lines));
  const title = [opening.mark, opening.room].filter(Boolean).join(", ");
  const foot = !asked && <Onward house={standing.key} opening={opening} openings={openings} />;
  return (
    <Frame title={title} above={name} back={link()} house={standing.key} tab="read" foot={foot}>
      <Along openings={openings} places={places} at={opening.mark} standing={standing} />
      {asked ? (
        <OneLine
          key={`${opening.mark} ${asked.line}`}
          standing={standing}
          opening={opening}
          line={asked}
          lines={lines}
          limits={known}
        />
      ) : (
        <Done standing={standing} opening={opening} lines={lines} />
      )}
    </Frame>
  );
}

/** The walk so far as a stretch of tape, and the openings along it. */
function Along({
  openings,
  places,
  at,
  standing,
}: {
  openings: readonly FoldedOpening[];
  places: readonly FoldedPlace[];
  at: string;
  standing: Standing;
}) {
  const house = standing.key;
  const held = new Set(
    standing.plan?.openings.filter((each) => each.verdict === "hold").map((each) => each.mark),
  );
  return (
    <nav class="along" aria-label="The walk">
      {openings.map((opening) => {
        const isHeld = opening.state === "held" || (!opening.left && held.has(opening.mark));
        return (
          <a
            key={opening.mark}
            href={link("h", house, "read", opening.mark)}
            aria-current={opening.mark === at ? "step" : undefined}
            class={isHeld ? "held" : opening.left ? "open" : "read"}
          >
            {opening.mark}
            <small>{isHeld ? "HELD" : opening.left ? `${opening.left} left` : "read"}</small>
          </a>
        );
      })}
      {places
        .filter((place) => place.place.length === 2)
        .map((place) => {
          const left = leftOf(places, place.place);
          const isHeld = standing.fold?.held.some((said) => said.place === place.root);
          return (
            <a
              key={place.root}
              href={link("h", house, "place", ...place.place)}
              class={isHeld ? "held" : left ? "open" : "read"}
            >
              {place.root}
              <small>{isHeld ? "HELD" : left ? `${left} left` : "read"}</small>
            </a>
          );
        })}
      <a href={link("h", house, "add")} aria-label="Add an opening">
        +<small>add</small>
      </a>
    </nav>
  );
}

interface LineProps {
  readonly standing: Standing;
  readonly opening: FoldedOpening;
  readonly line: LineLimits;
  readonly lines: readonly LineLimits[];
  readonly limits: Limits;
}

function OneLine({ standing, opening, line, lines, limits: known }: LineProps) {
  const units = standing.fold?.units ?? "mm";
  const texts = textsOf(opening, line.line);
  const [how, setHow] = useState("counts");
  const isSecondLook = texts.length > 0 && how === "again";
  const check = (value: number): Told | undefined =>
    toldAtOnce(value, { line, opening, units, isSecondLook }, known);
  const onward = () => {
    const after = { ...opening, lines: withText(opening, line.line) };
    const next = nextLine(after, lines, line.line);
    go("h", standing.key, "read", opening.mark, next?.line ?? "done");
  };
  const keepIt = async (text: string) => {
    await write({
      what: "reading",
      house: standing.key,
      opening: opening.mark,
      line: line.line,
      value_text: text,
      unit: units,
      again: isSecondLook,
      over: isSecondLook ? [] : readersOf(opening, line.line),
    });
    lastKept = `Kept: ${opening.mark} ${line.short} ${text}`;
    onward();
  };
  const number = lines.indexOf(line) + 1;
  return (
    <div class="asked">
      <div class="stack">
        <div class="line">
          <div>
            <p class="faint">
              {number} of {lines.length}
              {line.asked ? "" : ", if you have it"}
            </p>
            <h2>{line.words}</h2>
            {texts.length > 0 && <p>Stands as {texts.join(" and ")}</p>}
          </div>
          <Sides line={line.line} isDoor={opening.what !== "window"} words={line.words} />
        </div>
        {texts.length > 0 && (
          <Choices
            legend="What is this reading?"
            value={how}
            choices={[
              { value: "counts", words: "It counts now" },
              { value: "again", words: "A second look" },
            ]}
            change={setHow}
          />
        )}
        {!line.asked && (
          <button class="act" onClick={onward}>
            Not read
          </button>
        )}
      </div>
      <Keypad
        scale={units}
        signed={line.scale === "proud"}
        ofPlane={line.scale === "proud"}
        label={line.words}
        check={check}
        keep={keepIt}
        said={lastKept ? { kind: "said", text: lastKept } : undefined}
      />
    </div>
  );
}

/** What was kept last, said on the screen that follows. */
let lastKept = "";

function withText(opening: FoldedOpening, line: string) {
  return opening.lines.map((each) =>
    each.line === line ? { ...each, texts: each.texts.length ? each.texts : ["0"] } : each,
  );
}

function Done({
  standing,
  opening,
  lines,
}: {
  standing: Standing;
  opening: FoldedOpening;
  lines: readonly LineLimits[];
}) {
  useEffect(needPlan, [standing.fold]);
  return (
    <>
      <p role="status">{lastKept}</p>
      <Echo standing={standing} way={["openings", opening.mark]} asks />
      <ReadAgain house={standing.key} opening={opening} lines={lines} />
    </>
  );
}

/** Where the walk goes on: below, as the drawing above comes late and is of any height. */
function Onward({
  house,
  opening,
  openings,
}: {
  house: string;
  opening: FoldedOpening;
  openings: readonly FoldedOpening[];
}) {
  const following = openings.find((each) => each.left > 0 && each.mark !== opening.mark);
  return (
    <div class="acts">
      {following ? (
        <a class="act main" href={link("h", house, "read", following.mark)}>
          On to {following.mark}
        </a>
      ) : (
        <a class="act main" href={link("h", house, "add")}>
          Add an opening
        </a>
      )}
      <a class="act" href={link("h", house, "opening", opening.mark)}>
        Look at {opening.mark}
      </a>
    </div>
  );
}

export function ReadAgain({
  house,
  opening,
  lines,
}: {
  house: string;
  opening: FoldedOpening;
  lines: readonly LineLimits[];
}) {
  return (
    <section class="stack" aria-label="Readings">
      <h2>Readings</h2>
      <ul class="rows readings">
        {lines.map((line) => {
          const texts = textsOf(opening, line.line);
          if (!texts.length && !line.asked) return null;
          return (
            <li key={line.line}>
              <a href={link("h", house, "read", opening.mark, line.line)}>
                <span class="grow">
                  {line.words}
                  <WhoRead line={opening.lines.find((each) => each.line === line.line)} />
                </span>
                <b class="figures">{texts.join(" / ") || "not read"}</b>
              </a>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
