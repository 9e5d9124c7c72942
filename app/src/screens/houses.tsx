/** All houses on this phone, and how to begin one. */

import { useEffect, useState } from "preact/hooks";
import { useSignal } from "../core/signal";
import { rounds } from "../crew/share";
import type { Glimpse } from "../house";
import { fact, houseKeys } from "../journal/store";
import { Frame } from "../parts/frame";
import { HeldMark, HouseMark } from "../parts/marks";
import { link } from "../route";
import { standing, takeNewer } from "../service/install";

interface Row extends Glimpse {
  readonly key: string;
}

export function Houses() {
  const [rows, setRows] = useState<readonly Row[] | undefined>();
  const round = useSignal(rounds);
  useEffect(() => {
    void listed().then(setRows);
  }, [round]);
  return (
    <Frame title="Houses" aside={<a class="bare" href={link("about")}>About</a>}>
      <NewerWaits />
      {rows?.length === 0 && (
        <div class="card">
          <h2>Nothing is read yet.</h2>
          <p>
            Begin a house, walk round its rooms with the tape, and take the pieces to the saw. All
            of it works without a network, and stays on this phone.
          </p>
        </div>
      )}
      <ul class="rows">
        {rows?.map((row) => (
          <li key={row.key}>
            <a href={link("h", row.key, "house")}>
              <span class="house-mark" aria-hidden="true">
                <HouseMark />
              </span>
              <span class="grow">
                <b>{row.name}</b>
                <Told row={row} />
              </span>
            </a>
          </li>
        ))}
      </ul>
      <div class="acts">
        <a class="act main" href={link("begin")}>
          Begin a house
        </a>
        <a class="act" href={link("open")}>
          Open a house
        </a>
        <a class="act" href={link("crew")}>
          The crew
        </a>
      </div>
    </Frame>
  );
}

function Told({ row }: { row: Row }) {
  return (
    <span class="faint told-row">
      {row.asked ? `${row.read} of ${row.asked} readings` : "no opening yet"}
      {row.held > 0 && (
        <span class="state held">
          <HeldMark /> {row.held} held
        </span>
      )}
    </span>
  );
}

export function NewerWaits() {
  if (useSignal(standing) !== "newer waits") return null;
  return (
    <div class="card" role="status">
      <p>A newer version of this app is on the phone. What you kept stays as it is.</p>
      <button class="act" onClick={takeNewer}>
        Change over now
      </button>
    </div>
  );
}

async function listed(): Promise<readonly Row[]> {
  const keys = await houseKeys();
  return Promise.all(
    keys.map(async (key) => {
      const seen = await fact<Glimpse>(`glimpse:${key}`);
      return { key, ...(seen ?? { name: "A house", read: 0, asked: 0, held: 0 }) };
    }),
  );
}
