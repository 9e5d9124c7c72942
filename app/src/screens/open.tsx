/** Open a house: a file from a laptop, or all that another phone has of it. */

import { useEffect, useState } from "preact/hooks";
import { ask } from "../core/link";
import { lookAgain, open } from "../house";
import { freshName } from "../journal/entry";
import { highest, houseKeys, keep, setFact, takeOver } from "../journal/store";
import type { Opened, Refusal } from "../messages";
import { Frame } from "../parts/frame";
import { Refused, Said } from "../parts/said";
import { goInstead, link } from "../route";
import { ReadCodes } from "./read_codes";

interface Chosen {
  readonly text: string;
  readonly said: Opened | Refusal;
}

export function OpenFile() {
  const [chosen, setChosen] = useState<Chosen | undefined>();
  const [here, setHere] = useState<readonly string[]>([]);
  useEffect(() => {
    void houseKeys().then(setHere);
  }, []);
  const choose = async (text: string) => {
    const said = await ask<"open">({ ask: "open", text, highest: await highest() });
    setChosen({ text, said });
  };
  const take = async ({ text, said }: Chosen) => {
    if (said.kind === "refusal") return;
    const [first] = said.entries;
    const house = first?.house ?? freshName();
    if (first) await takeOver(said.entries);
    else await keep([{ what: "opened-file", house, text }]);
    await setFact(`glimpse:${house}`, { name: said.name, read: 0, asked: 0, held: 0 });
    await open(house);
    if (first) await lookAgain(house);
    goInstead("h", house, "house");
  };
  return (
    <Frame title="Open a house" back={link()}>
      <label class="field">
        <span>A house file, .toml or .json, or another phone's journal</span>
        <input
          type="file"
          accept=".toml,.json,application/toml,application/json,text/plain"
          onChange={(event) => void event.currentTarget.files?.[0]?.text().then(choose)}
        />
      </label>
      {chosen === undefined && <ReadCodes got={(text) => void choose(text)} />}
      <div aria-live="polite" class="stack">
        {chosen?.said.kind === "refusal" && <Refused said={chosen.said} />}
        {chosen?.said.kind === "open" && (
          <>
            <p>
              <b>{chosen.said.name}</b>, {chosen.said.openings} openings.
              {isHere(chosen.said, here) &&
                " It is on this phone already: what it has more is put beside what stands."}
            </p>
            <button class="act main wide" onClick={() => void take(chosen)}>
              Keep it on this phone
            </button>
            {chosen.said.findings.map((said) => (
              <Said
                key={said.place + said.read}
                severity={said.severity}
                place={said.place}
                said={said}
              />
            ))}
          </>
        )}
      </div>
    </Frame>
  );
}

function isHere(said: Opened, here: readonly string[]): boolean {
  return said.entries[0] !== undefined && here.includes(said.entries[0].house);
}
