/** One more room, skirting run or other trim: its mark, and then its form asks the rest. */

import { useState } from "preact/hooks";
import { write, type Standing } from "../house";
import type { Limits } from "../messages";
import { TextField } from "../parts/fields";
import { placesNow } from "../places_now";
import { goInstead } from "../route";

/** What can be added besides openings, and the list of the house file it goes to. */
export type OtherList = "rooms" | "runs" | "trims";

export function others(skirting: string) {
  const found: readonly { readonly value: OtherList; readonly words: string }[] = [
    { value: "rooms", words: "walls and floor" },
    { value: "runs", words: `${skirting} run` },
    { value: "trims", words: "other trim" },
  ];
  return found;
}

interface Props {
  readonly standing: Standing;
  readonly limits: Limits;
  readonly list: OtherList;
  readonly room: string;
}

export function AddPlace({ standing, limits: known, list, room: before }: Props) {
  const kinds = known.forms.filter((form) => /^trims:[^.]+$/.test(form.form));
  const places = placesNow(standing, known);
  const [room, setRoom] = useState(before);
  const [mark, setMark] = useState("");
  const [kind, setKind] = useState(kinds[0]?.form ?? "");
  const taken = places.filter((place) => place.place.length === 2).map((place) => place.root);
  const letter = list === "runs" ? "S" : "T";
  const suggested = list === "rooms" ? "" : nextMark(letter, taken);
  const named = mark.trim() || suggested;
  const isTaken = taken.includes(named);
  const form = known.forms.find((each) => each.form === (list === "trims" ? kind : list));

  const add = async (event: Event) => {
    event.preventDefault();
    if (isTaken || !named || !form) return;
    const way = [list, named];
    const values = {
      ...(list === "trims" ? { kind: kind.replace("trims:", "") } : {}),
      ...(list !== "rooms" && room.trim() ? { room: room.trim() } : {}),
    };
    await write({ what: "place-added", house: standing.key, place: way, values });
    const first = form.lines.find((line) => line.asked && line.scale !== "tables" && !(line.line in values));
    goInstead("h", standing.key, ...(first ? ["fill", first.line] : ["place"]), ...way);
  };
  return (
    <form class="stack" onSubmit={(event) => void add(event)}>
      {list === "trims" && (
        <label class="field">
          <span>Which trim?</span>
          <select value={kind} onChange={(event) => setKind(event.currentTarget.value)}>
            {kinds.map(({ form: value, title }) => (
              <option key={value} value={value}>
                {title.replace(/^an? /, "")}
              </option>
            ))}
          </select>
        </label>
      )}
      <TextField
        label={list === "rooms" ? "Name of the room" : `Mark (else ${suggested})`}
        value={mark}
        change={setMark}
      />
      {list !== "rooms" && <TextField label="Room" value={room} change={setRoom} />}
      {isTaken && (
        <p class="told" role="alert">
          <b>{named} is there already.</b> Give this one another.
        </p>
      )}
      <button class="act main wide" disabled={isTaken || !named}>
        Add {named || "it"} and read it
      </button>
    </form>
  );
}

function nextMark(letter: string, taken: readonly string[]): string {
  for (let number = 1; ; number++) {
    if (!taken.includes(`${letter}${number}`)) return `${letter}${number}`;
  }
}
