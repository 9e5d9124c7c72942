/** Open a house file: from a laptop, or from another phone. */

import { useState } from "preact/hooks";
import { ask } from "../core/link";
import { open } from "../house";
import { freshName } from "../journal/entry";
import { keep, setFact } from "../journal/store";
import type { Opened, Refusal } from "../messages";
import { Frame } from "../parts/frame";
import { Refused, Said } from "../parts/said";
import { goInstead, link } from "../route";

interface Chosen {
  readonly text: string;
  readonly said: Opened | Refusal;
}

export function OpenFile() {
  const [chosen, setChosen] = useState<Chosen | undefined>();
  const choose = async (file: File | undefined) => {
    if (!file) return;
    const text = await file.text();
    setChosen({ text, said: await ask<"open">({ ask: "open", text }) });
  };
  const take = async ({ text, said }: Chosen) => {
    if (said.kind === "refusal") return;
    const house = freshName();
    await keep([{ what: "opened-file", house, text }]);
    await setFact(`glimpse:${house}`, { name: said.name, read: 0, asked: 0, held: 0 });
    await open(house);
    goInstead("h", house, "house");
  };
  return (
    <Frame title="Open a house file" back={link()}>
      <label class="field">
        <span>A house file, .toml or .json</span>
        <input
          type="file"
          accept=".toml,.json,application/toml,application/json,text/plain"
          onChange={(event) => void choose(event.currentTarget.files?.[0])}
        />
      </label>
      <div aria-live="polite" class="stack">
        {chosen?.said.kind === "refusal" && <Refused said={chosen.said} />}
        {chosen?.said.kind === "open" && (
          <>
            <p>
              <b>{chosen.said.name}</b>, {chosen.said.openings} openings.
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
