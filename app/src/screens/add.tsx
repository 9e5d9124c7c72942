/** One more opening, room, run or other trim, found on the walk. */

import { useState } from "preact/hooks";
import { useSignal } from "../core/signal";
import { countryWords, limits, write, type Standing } from "../house";
import { openingsNow } from "../openings_now";
import { Choices, TextField } from "../parts/fields";
import { Frame } from "../parts/frame";
import { goInstead, link } from "../route";
import { AddPlace, others } from "./add_place";

const LETTERS: Readonly<Record<string, string>> = { window: "W", door: "D", cased: "C" };

export function AddOpening({ standing }: { standing: Standing }) {
  const known = useSignal(limits);
  const openings = known ? openingsNow(standing, known) : [];
  const [kind, setKind] = useState("window");
  const [room, setRoom] = useState(openings.at(-1)?.room ?? "");
  const [mark, setMark] = useState("");
  const [trim, setTrim] = useState("");
  const [faces, setFaces] = useState("1");
  const more = others(countryWords(known, standing.fold?.dialect)?.skirting ?? "skirting");
  const other = more.find((each) => each.value === kind)?.value;
  if (!known) return null;
  const suggested = nextMark(kind, openings.map((opening) => opening.mark));
  const named = mark.trim() || suggested;
  const layout = trim || (kind === "window" ? "all-round" : "legs-and-head");
  const isTaken = openings.some((opening) => opening.mark === named);

  const add = async (event: Event) => {
    event.preventDefault();
    if (isTaken) return;
    const house = standing.key;
    const both = { what: "opening-changed", house, opening: named, key: ["faces"], value: 2 } as const;
    await write(
      { what: "opening-added", house, opening: named, room: room.trim(), kind, trim: layout },
      ...(faces === "2" && kind !== "window" ? [both] : []),
    );
    goInstead("h", house, "read", named);
  };
  return (
    <Frame
      title={other ? "Add to the house" : "Add an opening"}
      above={standing.fold?.name}
      back={link("h", standing.key, "read")}
      house={standing.key}
      tab="read"
    >
      <Choices
        legend="What is it?"
        value={kind}
        choices={[...known.kinds.map(({ kind: value, words }) => ({ value, words })), ...more]}
        change={setKind}
      />
      {other ? (
        <AddPlace key={other} standing={standing} limits={known} list={other} room={room} />
      ) : (
      <form class="stack" onSubmit={(event) => void add(event)}>
        <TextField label="Room" value={room} change={setRoom} />
        <TextField
          label={`Mark, as pencilled on it (else ${suggested})`}
          value={mark}
          change={setMark}
        />
        <Choices legend="Trim" value={layout} choices={known.trims} change={setTrim} />
        {kind !== "window" && (
          <Choices
            legend="Trimmed on"
            value={faces}
            choices={[
              { value: "1", words: "this face" },
              { value: "2", words: "both faces" },
            ]}
            change={setFaces}
          />
        )}
        {isTaken && (
          <p class="told" role="alert">
            <b>{named} is there already.</b> Give this one another mark.
          </p>
        )}
        <button class="act main wide" disabled={isTaken}>
          Add {named} and read it
        </button>
      </form>
      )}
    </Frame>
  );
}

function nextMark(kind: string, taken: readonly string[]): string {
  const letter = LETTERS[kind] ?? "O";
  for (let number = 1; ; number++) {
    if (!taken.includes(`${letter}${number}`)) return `${letter}${number}`;
  }
}
