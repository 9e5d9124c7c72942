/** One line of a room, wall, run or other trim: asked for by the form that the core gives. */

import { useState } from "preact/hooks";
import { useSignal } from "../core/signal";
import { limits, write, type Standing } from "../house";
import type { FoldedPlace, FormLine, Limits } from "../messages";
import { openingsNow, readersOf } from "../openings_now";
import { Choices, TextField } from "../parts/fields";
import { Frame } from "../parts/frame";
import { toldOfPlace } from "../parts/instant";
import { Keypad } from "../parts/keypad";
import { formOf, nextAsked, placesNow, sameWay, shownIn, textsIn, type Way } from "../places_now";
import { go, link } from "../route";
import { typed } from "./begin";

const PAD = { length: "length", signed: "length", angle: "deg", count: "count" } as const;

interface Props {
  readonly standing: Standing;
  readonly name: string;
  readonly way: Way;
}

export function Fill({ standing, name, way }: Props) {
  const known = useSignal(limits);
  const places = known ? placesNow(standing, known) : [];
  const place = places.find((each) => sameWay(each.place, way));
  const form = known && place && formOf(known, place);
  const line = form?.lines.find((each) => each.line === name);
  if (!known || !place || !form || !line) {
    return (
      <Frame title={way.at(-1) ?? ""} back={link("h", standing.key)} house={standing.key} tab="read">
        <p>It isn't there, or it was left out.</p>
      </Frame>
    );
  }
  const onward = (written: boolean) => {
    const lines = written ? place.lines.map((l) => (l.line === name ? { ...l, texts: ["-"] } : l)) : place.lines;
    const next = nextAsked({ ...place, lines }, form, name);
    go("h", standing.key, ...(next ? ["fill", next.line] : ["place"]), ...way);
  };
  const change = async (value: unknown) => {
    await write({ what: "place-changed", house: standing.key, place: way, key: name, value });
    onward(value !== null);
  };
  const asked = { standing, place, line, limits: known, change, onward };
  return (
    <Frame
      title={place.title}
      above={standing.fold?.name}
      back={link("h", standing.key, "place", ...way)}
      house={standing.key}
      tab="read"
    >
      {line.scale in PAD ? <OneFigure key={name} {...asked} /> : <OneValue key={name} {...asked} />}
    </Frame>
  );
}

interface Asked {
  readonly standing: Standing;
  readonly place: FoldedPlace;
  readonly line: FormLine;
  readonly limits: Limits;
  readonly change: (value: unknown) => Promise<void>;
  readonly onward: (written: boolean) => void;
}

function Question({ place, line }: Pick<Asked, "place" | "line">) {
  const texts = shownIn(place, line);
  return (
    <div class="stack">
      <h2>{line.short}</h2>
      <p>{line.words}</p>
      {texts.length > 0 && <p>Stands as {texts.join(" and ")}</p>}
      {!line.asked && line.left_out && <p class="faint">Left out: {line.left_out}.</p>}
    </div>
  );
}

function OneFigure({ standing, place, line, limits: known, change, onward }: Asked) {
  const units = standing.fold?.units ?? "mm";
  const texts = textsIn(place, line.line);
  const [how, setHow] = useState("counts");
  const isSecondLook = line.is_reading && texts.length > 0 && how === "again";
  const pad = PAD[line.scale as keyof typeof PAD];
  const keepIt = async (text: string) => {
    if (!line.is_reading) {
      await change(pad === "length" ? typed(text, units) : Number(text));
      return;
    }
    await write({
      what: "place-read",
      house: standing.key,
      place: place.place,
      line: line.line,
      value_text: text,
      unit: pad === "deg" ? "deg" : units,
      again: isSecondLook,
      over: isSecondLook ? [] : readersOf(place, line.line),
    });
    onward(true);
  };
  return (
    <div class="asked">
      <div class="stack">
        <Question place={place} line={line} />
        {line.is_reading && texts.length > 0 && (
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
        <Without line={line} texts={texts} change={change} onward={onward} />
      </div>
      <Keypad
        scale={pad === "length" ? units : pad}
        signed={line.least < 0}
        label={line.short}
        check={(value) => toldOfPlace(value, { line, texts, units, isSecondLook }, known)}
        keep={keepIt}
      />
    </div>
  );
}

function Without({
  line,
  texts,
  change,
  onward,
}: Pick<Asked, "line" | "change" | "onward"> & { texts: readonly string[] }) {
  if (texts.length) {
    return (
      <button class="act" type="button" onClick={() => void change(null)}>
        Take it out
      </button>
    );
  }
  return (
    <button class="act" type="button" onClick={() => onward(false)}>
      {line.asked ? "Not now" : "Not read"}
    </button>
  );
}

function OneValue(asked: Asked) {
  const { place, line, change, onward } = asked;
  const texts = textsIn(place, line.line);
  return (
    <div class="stack">
      <Question place={place} line={line} />
      {line.scale === "choice" || line.scale === "flag" ? (
        <Taps {...asked} />
      ) : line.scale === "names" ? (
        <Several {...asked} />
      ) : line.scale === "text" && line.names ? (
        <OneOf {...asked} />
      ) : (
        <Written {...asked} />
      )}
      <Without line={line} texts={texts} change={change} onward={onward} />
    </div>
  );
}

/** One tap, and on. */
function Taps({ place, line, change }: Asked) {
  const isFlag = line.scale === "flag";
  const choices = isFlag
    ? [
        { value: "yes", words: "yes" },
        { value: "no", words: "no" },
      ]
    : line.choices;
  const now = textsIn(place, line.line)[0];
  return (
    <div class="acts" role="group" aria-label={line.short}>
      {choices.map(({ value, words }) => (
        <button
          key={value}
          type="button"
          class="act"
          aria-pressed={value === now}
          onClick={() => void change(isFlag ? value === "yes" : value)}
        >
          {words}
        </button>
      ))}
    </div>
  );
}

/** The names that a line may take. */
function namesFor({ standing, place, line, limits: known }: Asked): readonly string[] {
  const document = standing.fold?.document ?? {};
  const places = placesNow(standing, known);
  switch (line.names) {
    case "profiles":
      return Object.keys((document["profiles"] as object | undefined) ?? {});
    case "openings":
      return openingsNow(standing, known).map((opening) => opening.mark);
    case "rooms":
      return places.filter((each) => each.form === "rooms").map((each) => each.root);
    case "walls": {
      const root = places.find((each) => sameWay(each.place, place.place.slice(0, 2)));
      const walls = places.filter((each) => each.form === "rooms.walls");
      const own = walls.filter((each) => each.root === root?.room);
      return (own.length ? own : walls).map((each) => each.place.at(-1) ?? "");
    }
    default:
      return [];
  }
}

function OneOf(asked: Asked) {
  const { place, line, change } = asked;
  const names = namesFor(asked);
  const now = textsIn(place, line.line)[0];
  return (
    <>
      <div class="acts" role="group" aria-label={line.short}>
        {names.map((name) => (
          <button
            key={name}
            type="button"
            class="act"
            aria-pressed={name === now}
            onClick={() => void change(name)}
          >
            {name}
          </button>
        ))}
      </div>
      <Written {...asked} />
    </>
  );
}

function Several(asked: Asked) {
  const { place, line, change } = asked;
  const [chosen, setChosen] = useState<readonly string[]>(textsIn(place, line.line));
  const names = namesFor(asked);
  if (!names.length) return <Written {...asked} />;
  const toggle = (name: string) =>
    setChosen(chosen.includes(name) ? chosen.filter((each) => each !== name) : [...chosen, name]);
  return (
    <>
      <div class="acts" role="group" aria-label={line.short}>
        {names.map((name) => (
          <button
            key={name}
            type="button"
            class="act"
            aria-pressed={chosen.includes(name)}
            onClick={() => toggle(name)}
          >
            {chosen.includes(name) ? "✓ " : ""}
            {name}
          </button>
        ))}
      </div>
      <button
        type="button"
        class="act main"
        disabled={!chosen.length}
        onClick={() => void change(chosen)}
      >
        Keep {chosen.join(", ")}
      </button>
    </>
  );
}

const HINTS: Readonly<Record<string, string>> = {
  names: "Names, one behind the other with commas",
  lengths: "Lengths, one behind the other with commas",
  angles: "Degrees, one behind the other with commas",
  points: "How far along and how high, a pair behind the other with commas: 0 9, 4188 0",
  number: "A figure",
};

/** What can't be tapped is written: names, rows of lengths, points. */
function Written({ standing, place, line, change }: Asked) {
  const units = standing.fold?.units ?? "mm";
  const [text, setText] = useState(textsIn(place, line.line).join(", "));
  const value = valueOf(text, line, units);
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        if (value !== undefined) void change(value);
      }}
    >
      <TextField
        label={HINTS[line.scale] ?? (line.names ? "Or written" : "Written")}
        value={text}
        change={setText}
        figures={line.scale === "number"}
      />
      <button class="act main" disabled={value === undefined}>
        Keep
      </button>
    </form>
  );
}

/** As the house file has it; undefined: nothing that could be kept. */
function valueOf(text: string, line: FormLine, units: "mm" | "in"): unknown {
  const parts = text
    .split(",")
    .map((part) => part.trim())
    .filter(Boolean);
  if (!parts.length) return undefined;
  switch (line.scale) {
    case "names":
      return parts;
    case "lengths":
      return parts.map((part) => typed(part, units));
    case "angles":
      return allNumbers(parts);
    case "number":
      return allNumbers(parts)?.[0];
    case "points": {
      const pairs = parts.map((part) => part.split(/\s+/).map((each) => typed(each, units)));
      return pairs.every((pair) => pair.length === 2) ? pairs : undefined;
    }
    default:
      return text.trim();
  }
}

function allNumbers(parts: readonly string[]): readonly number[] | undefined {
  const numbers = parts.map(Number);
  return numbers.every(Number.isFinite) ? numbers : undefined;
}
