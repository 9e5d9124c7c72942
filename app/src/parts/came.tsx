/** What came of a house from the crew's other phones, until it was seen. */

import { useEffect, useState } from "preact/hooks";
import { useSignal } from "../core/signal";
import { calledBy, phones } from "../crew/phones";
import { cameOf, rounds } from "../crew/share";
import { fact, setFact } from "../journal/store";
import type { CameFrom } from "../messages";

export function CameIn({ house }: { house: string }) {
  const round = useSignal(rounds);
  const known = useSignal(phones);
  const [came, setCame] = useState<readonly CameFrom[]>([]);
  useEffect(() => {
    void fact<readonly CameFrom[]>(cameOf(house)).then((found) => setCame(found ?? []));
  }, [house, round]);
  if (!came.length) return null;
  const seen = async () => {
    await setFact(cameOf(house), []);
    setCame([]);
  };
  return (
    <div class="card" role="status">
      {came.map((each, at) => (
        <p key={at}>
          From <b>{calledBy(known, each.device)}</b>: {each.words.join("; ")}
          {each.more > 0 && `; and ${each.more} more before`}.
        </p>
      ))}
      <button class="act" onClick={() => void seen()}>
        Seen
      </button>
    </div>
  );
}
