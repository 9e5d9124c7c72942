/** The crew: knock at its laptop, see how each house stands with it, leave it. */

import { useEffect, useState } from "preact/hooks";
import { useSignal } from "../core/signal";
import { knock, knocking, leave, member, type Knocking, type Member } from "../crew/member";
import { factOf, passing, rounds, shareSoon, sharing, type HouseShared } from "../crew/share";
import { hasToken } from "../crew/token";
import type { Glimpse } from "../house";
import { entriesOf, fact, houseKeys } from "../journal/store";
import { TextField } from "../parts/fields";
import { Frame } from "../parts/frame";
import { Refused, Said } from "../parts/said";
import { link } from "../route";

export function Crew() {
  const now = useSignal(member);
  const door = useSignal(knocking);
  return (
    <Frame title="The crew" back={link()}>
      {door ? (
        <Door door={door} />
      ) : hasToken() ? (
        <Knock />
      ) : now ? (
        <Within now={now} />
      ) : (
        <Outside />
      )}
    </Frame>
  );
}

function Outside() {
  return (
    <>
      <p>
        A crew's phones share their houses with one laptop: what one reads or cuts, the others see.
        This phone is of no crew yet.
      </p>
      <ol class="numbered">
        <li>
          On the laptop, run <code>longpoint serve --lan</code>; it shows a square code.
        </li>
        <li>Hold this phone's camera on the code, and open the address that it finds.</li>
        <li>Type a name, and let somebody at the laptop say yes.</li>
      </ol>
      <p class="faint">
        At the laptop's address the app has a store of its own: a house that was read elsewhere is
        taken there by Hand over.
      </p>
    </>
  );
}

function Knock() {
  const [name, setName] = useState("");
  const send = (event: Event) => {
    event.preventDefault();
    if (name.trim()) void knock(name.trim());
  };
  return (
    <form class="stack" onSubmit={send}>
      <p>
        The laptop's code was read. Every house on this phone goes to the laptop and to the crew's
        other phones, and theirs come here.
      </p>
      <TextField label="What is this phone called?" value={name} change={setName} />
      <button class="act main wide" disabled={!name.trim()}>
        Knock
      </button>
    </form>
  );
}

function Door({ door }: { door: Knocking }) {
  if (door.is === "refused") {
    return (
      <>
        <Refused said={door.said} />
        <button class="act wide" onClick={() => knocking.set(undefined)}>
          Back
        </button>
      </>
    );
  }
  return (
    <div class="card" role="status">
      {door.is === "asking" ? (
        <p>Knocking …</p>
      ) : (
        <>
          <p>The laptop shows four figures. They have to be these:</p>
          <p class="huge" aria-label={[...door.check].join(" ")}>
            {door.check}
          </p>
          <p>If they are, say yes at the laptop. If not, say no there: it isn't this phone.</p>
        </>
      )}
    </div>
  );
}

function Within({ now }: { now: Member }) {
  const going = useSignal(sharing);
  const [isSure, setSure] = useState(false);
  return (
    <>
      {now.out ? (
        <Said severity="stop" said={now.out}>
          <p>Every house stays on this phone, and can be read and cut on.</p>
        </Said>
      ) : (
        <p>
          This phone is <b>{now.name}</b> to the crew, since{" "}
          {new Date(now.since).toLocaleDateString()}.
        </p>
      )}
      {going === "away" && !now.out && (
        <Said
          severity="note"
          said={{
            read: "The laptop isn't there just now.",
            wrong: "What is read meanwhile is kept on this phone, and goes over once it is there.",
            do: "Nothing has to be done. For a house in a hurry there is Hand over, by file or pictures.",
          }}
        />
      )}
      <HousesShared />
      {!now.out && (
        <button class="act wide" disabled={going === "sharing"} onClick={() => shareSoon(0)}>
          {going === "sharing" ? "Sharing …" : "Share now"}
        </button>
      )}
      {isSure ? (
        <div class="acts">
          <button class="act stop" onClick={() => void leave()}>
            Leave, and keep my houses
          </button>
          <button class="act" onClick={() => setSure(false)}>
            Stay
          </button>
        </div>
      ) : (
        <button class="act wide" onClick={() => (now.out ? void leave() : setSure(true))}>
          {now.out ? "Be of no crew" : "Leave the crew"}
        </button>
      )}
    </>
  );
}

interface Row {
  readonly key: string;
  readonly name: string;
  readonly at?: string | undefined;
  readonly toGive: number | undefined;
  readonly isBehind: boolean;
  readonly trouble?: HouseShared["trouble"];
}

function HousesShared() {
  const round = useSignal(rounds);
  const [rows, setRows] = useState<readonly Row[]>([]);
  useEffect(() => {
    void listed().then(setRows);
  }, [round]);
  if (!rows.length) return <p class="faint">There is no house yet, here or on the laptop.</p>;
  return (
    <ul class="rows" aria-label="Houses">
      {rows.map((row) => (
        <li key={row.key}>
          <a href={link("h", row.key, "house")}>
            <span class="grow">
              <b>{row.name}</b>
              <span class="faint told-row">
                {row.at ? `Last shared: ${new Date(row.at).toLocaleString()}` : "Never shared yet"}
              </span>
              <span class="told-row">{balance(row)}</span>
            </span>
          </a>
          {row.trouble && <Said severity="warning" said={row.trouble} />}
        </li>
      ))}
    </ul>
  );
}

function balance({ toGive, isBehind }: Row): string {
  if (toGive === undefined) return "";
  const gives = toGive ? `${toGive} to give to the laptop` : "";
  const takes = isBehind ? "the laptop has more" : "";
  return [gives, takes].filter(Boolean).join(", ") || "nothing to give or to fetch";
}

async function listed(): Promise<readonly Row[]> {
  return Promise.all(
    (await houseKeys()).map(async (key) => {
      const [seen, shared, entries] = await Promise.all([
        fact<Glimpse>(`glimpse:${key}`),
        fact<HouseShared>(factOf(key)),
        entriesOf(key),
      ]);
      const found = await passing(entries, shared?.there ?? {});
      return {
        key,
        name: seen?.name ?? "A house",
        at: shared?.at,
        toGive: found?.lacking.length,
        isBehind: found?.is_behind ?? false,
        trouble: shared?.trouble,
      };
    }),
  );
}
