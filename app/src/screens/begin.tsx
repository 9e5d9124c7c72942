/** A new house: its name, and the trim that most of it gets. */

import { useState } from "preact/hooks";
import { useSignal } from "../core/signal";
import { countryWords, limits, open } from "../house";
import { freshName } from "../journal/entry";
import { keep, setFact } from "../journal/store";
import { Choices, TextField } from "../parts/fields";
import { Frame } from "../parts/frame";
import { goInstead, link } from "../route";

export function Begin() {
  const known = useSignal(limits);
  const [name, setName] = useState("");
  const [units, setUnits] = useState<"mm" | "in">("mm");
  const [dialect, setDialect] = useState("uk");
  const [face, setFace] = useState("");
  const [thickness, setThickness] = useState("");
  const [quirk, setQuirk] = useState("");
  const [stick, setStick] = useState("");
  const said = countryWords(known, dialect)?.quirk ?? "quirk";
  const wanting = missing({ name, face, thickness, [said]: quirk, stick });

  const begin = async (event: Event) => {
    event.preventDefault();
    if (wanting) return;
    const house = freshName();
    const profile = `AR${face.replace(/[^0-9]+/g, "-")}`;
    const set = (key: readonly string[], value: unknown) =>
      ({ what: "setting", house, key, value }) as const;
    await keep([
      { what: "house-made", house, name: name.trim(), units, dialect },
      set(["profiles", profile], { face: typed(face, units), thickness: typed(thickness, units) }),
      set(["defaults", "architrave"], profile),
      set(["defaults", "quirk"], typed(quirk, units)),
      set(["stock"], [{ profile, length: typed(stick, units) }]),
    ]);
    await setFact(`glimpse:${house}`, { name: name.trim(), read: 0, asked: 0, held: 0 });
    await open(house);
    goInstead("h", house, "add");
  };
  const unit = units === "mm" ? "mm" : "inches, like 2 1/4";
  return (
    <Frame title="Begin a house" back={link()}>
      <form class="stack" onSubmit={(event) => void begin(event)}>
        <TextField label="Name of the house or job" value={name} change={setName} />
        <Choices
          legend="The tape reads"
          value={units}
          choices={[
            { value: "mm", words: "mm" },
            { value: "in", words: "inches" },
          ]}
          change={(value) => setUnits(value === "in" ? "in" : "mm")}
        />
        <label class="field">
          <span>Words on the sheets are those of</span>
          <select value={dialect} onChange={(event) => setDialect(event.currentTarget.value)}>
            {known?.dialects.map(({ value, words }) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        </label>
        <h2>The trim round its openings</h2>
        <div class="two">
          <TextField label={`Face width, ${unit}`} value={face} change={setFace} figures />
          <TextField label={`Thickness, ${unit}`} value={thickness} change={setThickness} figures />
          <TextField
            label={`${capital(said)}: set back from the edge, ${unit}`}
            value={quirk}
            change={setQuirk}
            figures
          />
          <TextField label={`Sticks come in, ${unit}`} value={stick} change={setStick} figures />
        </div>
        <p class="faint">More profiles, stock, the saw and the tape: under House, Settings.</p>
        {wanting && <p class="faint">Still wanted: {wanting}.</p>}
        <button class="act main wide" disabled={Boolean(wanting)}>
          Begin
        </button>
      </form>
    </Frame>
  );
}

export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** As a house file has it: a number in mm, a text in inches. */
export function typed(text: string, units: "mm" | "in"): number | string {
  const plain = text.trim().replace(",", ".");
  return units === "mm" && Number.isFinite(Number(plain)) ? Number(plain) : plain;
}

function missing(fields: Readonly<Record<string, string>>): string {
  const names: Readonly<Record<string, string>> = { stick: "length of the sticks" };
  const empty = Object.entries(fields).filter(([, text]) => !text.trim());
  return empty.map(([name]) => names[name] ?? name).join(", ");
}
