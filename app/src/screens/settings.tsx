/** What holds for the whole house: trim, stock, saw, tape. Every change is one more entry. */

import { useState } from "preact/hooks";
import { useSignal } from "../core/signal";
import { countryWords, limits, write, type Standing } from "../house";
import { Choices, TextField } from "../parts/fields";
import { Frame } from "../parts/frame";
import { link } from "../route";
import { capital, typed } from "./begin";

type Table = Readonly<Record<string, unknown>>;

export function Settings({ standing }: { standing: Standing }) {
  const said = countryWords(useSignal(limits), standing.fold?.dialect);
  const document = standing.fold?.document ?? {};
  const units = standing.fold?.units ?? "mm";
  const set = (key: readonly string[], value: unknown) =>
    write({ what: "setting", house: standing.key, key, value });
  const defaults = table(document["defaults"]);
  const profiles = table(document["profiles"]);
  const saw = String(defaults["saw"] ?? "S1");
  const tape = String(defaults["tape"] ?? "T1");
  const found = table(table(table(document["saws"])[saw])["found"]);
  const value = (key: string) => text(defaults[key]);
  const named = (kind: "saw" | "tape", name: string) =>
    defaults[kind] === undefined
      ? ([{ what: "setting", house: standing.key, key: ["defaults", kind], value: name }] as const)
      : [];
  return (
    <Frame
      title="Settings"
      above={standing.fold?.name}
      back={link("h", standing.key, "house")}
      house={standing.key}
      tab="house"
    >
      <section class="stack">
        <h2>Trim</h2>
        <div class="two">
          <OnChange
            label={`${capital(said?.quirk ?? "quirk")}, ${units}`}
            value={value("quirk")}
            save={(t) => set(["defaults", "quirk"], typed(t, units))}
          />
          <Choose
            label="Round openings"
            value={value("architrave")}
            names={Object.keys(profiles)}
            save={(name) => set(["defaults", "architrave"], name)}
          />
          <Choose
            label="At the floor"
            value={value("skirting")}
            names={Object.keys(profiles)}
            save={(name) => set(["defaults", "skirting"], name)}
          />
        </div>
        <Choices
          legend="Way of fixing"
          value={value("method") || "batch"}
          choices={[
            { value: "batch", words: "all cut first" },
            { value: "in-place", words: "marked in place" },
            { value: "bench", words: "joined on the bench" },
          ]}
          change={(way) => void set(["defaults", "method"], way)}
        />
      </section>
      <Profiles profiles={profiles} units={units} set={set} />
      <Stock document={document} profiles={Object.keys(profiles)} units={units} set={set} />
      <section class="stack">
        <h2>Saw</h2>
        <p class="faint">
          Cut two test pieces at 45 to the left and two to the right. What did they really give?
        </p>
        <div class="two">
          {(["left", "right"] as const).map((side) => (
            <OnChange
              key={side}
              label={`Found ${side}, degrees`}
              value={text(found[side])}
              save={(t) =>
                write(
                  {
                    what: "setting",
                    house: standing.key,
                    key: ["saws", saw, "found", side],
                    value: t.trim() ? Number(t) : null,
                  },
                  ...named("saw", saw),
                )
              }
            />
          ))}
          <OnChange
            label={`Saw cut (kerf), ${units}`}
            value={text(table(table(document["saws"])[saw])["kerf"])}
            save={(t) =>
              write(
                {
                  what: "setting",
                  house: standing.key,
                  key: ["saws", saw, "kerf"],
                  value: typed(t, units),
                },
                ...named("saw", saw),
              )
            }
          />
        </div>
      </section>
      <section class="stack">
        <h2>Tape</h2>
        <Choices
          legend="Class, printed at the start of the blade"
          value={text(table(table(document["tapes"])[tape])["class"]) || "II"}
          choices={["I", "II", "III"].map((each) => ({ value: each, words: each }))}
          change={(each) =>
            void write(
              {
                what: "setting",
                house: standing.key,
                key: ["tapes", tape, "class"],
                value: each,
              },
              ...named("tape", tape),
            )
          }
        />
      </section>
    </Frame>
  );
}

type Set = (key: readonly string[], value: unknown) => Promise<void>;

function Profiles({ profiles, units, set }: { profiles: Table; units: "mm" | "in"; set: Set }) {
  const [name, setName] = useState("");
  const [face, setFace] = useState("");
  const [thickness, setThickness] = useState("");
  const add = async (event: Event) => {
    event.preventDefault();
    if (!name.trim() || !face.trim() || !thickness.trim()) return;
    const made = { face: typed(face, units), thickness: typed(thickness, units) };
    await set(["profiles", name.trim()], made);
    setName("");
    setFace("");
    setThickness("");
  };
  return (
    <section class="stack">
      <h2>Profiles</h2>
      <ul class="rows">
        {Object.entries(profiles).map(([each, profile]) => (
          <li key={each}>
            <span class="row spaced">
              <b class="grow">{each}</b>
              <span class="figures">
                {text(table(profile)["face"])} x {text(table(profile)["thickness"])}
              </span>
            </span>
          </li>
        ))}
      </ul>
      <form class="three" onSubmit={(event) => void add(event)}>
        <TextField label="Name" value={name} change={setName} />
        <TextField label={`Face, ${units}`} value={face} change={setFace} figures />
        <TextField label={`Thick, ${units}`} value={thickness} change={setThickness} figures />
        <button class="act">Add profile</button>
      </form>
    </section>
  );
}

interface StockProps {
  readonly document: Table;
  readonly profiles: readonly string[];
  readonly units: "mm" | "in";
  readonly set: Set;
}

function Stock({ document, profiles, units, set }: StockProps) {
  const [profile, setProfile] = useState("");
  const [length, setLength] = useState("");
  const [price, setPrice] = useState("");
  const [where, setWhere] = useState<"stock" | "offcuts">("stock");
  const rows = (key: string) => (document[key] as readonly Table[] | undefined) ?? [];
  const add = async (event: Event) => {
    event.preventDefault();
    const of = profile || profiles[0];
    if (!of || !length.trim()) return;
    const row = {
      profile: of,
      length: typed(length, units),
      ...(where === "stock" && price.trim() ? { price: Number(price.replace(",", ".")) } : {}),
    };
    await set([where], [...rows(where), row]);
    setLength("");
    setPrice("");
  };
  return (
    <section class="stack">
      <h2>Sticks</h2>
      <ul class="rows">
        {(["stock", "offcuts"] as const).flatMap((key) =>
          rows(key).map((row, at) => (
            <li key={`${key}${at}`}>
              <span class="row spaced">
                <span class="grow">
                  <b>{text(row["profile"])}</b> {key === "stock" ? "at the merchant" : "on the rack"}
                </span>
                <b class="figures">{text(row["length"])}</b>
                <button
                  type="button"
                  class="bare"
                  aria-label={`Take out ${text(row["profile"])} ${text(row["length"])}`}
                  onClick={() => void set([key], rows(key).filter((_, other) => other !== at))}
                >
                  ✕
                </button>
              </span>
            </li>
          )),
        )}
      </ul>
      <form class="stack" onSubmit={(event) => void add(event)}>
        <Choices
          legend="Where is it?"
          value={where}
          choices={[
            { value: "stock", words: "at the merchant" },
            { value: "offcuts", words: "offcut on the rack" },
          ]}
          change={(value) => setWhere(value === "offcuts" ? "offcuts" : "stock")}
        />
        <div class="three">
          <Choose label="Profile" value={profile || (profiles[0] ?? "")} names={profiles} save={setProfile} />
          <TextField label={`Length, ${units}`} value={length} change={setLength} figures />
          {where === "stock" && <TextField label="Price" value={price} change={setPrice} figures />}
          <button class="act">Add stick</button>
        </div>
      </form>
    </section>
  );
}

interface OnChangeProps {
  readonly label: string;
  readonly value: string;
  readonly save: (text: string) => unknown;
}

/** A field that is kept when it is left, as one entry. */
function OnChange({ label, value, save }: OnChangeProps) {
  return (
    <label class="field">
      <span>{label}</span>
      <input
        key={value}
        defaultValue={value}
        inputMode="decimal"
        autocomplete="off"
        onChange={(event) => void save(event.currentTarget.value)}
      />
    </label>
  );
}

interface ChooseProps {
  readonly label: string;
  readonly value: string;
  readonly names: readonly string[];
  readonly save: (name: string) => unknown;
}

function Choose({ label, value, names, save }: ChooseProps) {
  return (
    <label class="field">
      <span>{label}</span>
      <select value={value} onChange={(event) => void save(event.currentTarget.value)}>
        {!names.includes(value) && <option value={value}>{value || "none yet"}</option>}
        {names.map((name) => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

function table(value: unknown): Table {
  return typeof value === "object" && value !== null ? (value as Table) : {};
}

function text(value: unknown): string {
  return value === undefined || value === null || typeof value === "object" ? "" : String(value);
}
