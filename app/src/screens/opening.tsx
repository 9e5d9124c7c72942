/** One opening: drawing, what is to be said, pieces, readings. */

import { useEffect } from "preact/hooks";
import { useSignal } from "../core/signal";
import { limits, needPlan, write, type Standing } from "../house";
import { linesOf, openingsNow } from "../openings_now";
import { Echo, useLook } from "../parts/echo";
import { Frame } from "../parts/frame";
import { PieceRows } from "../parts/pieces";
import { StateOf } from "../parts/state";
import { WhoDiffers } from "../parts/who_read";
import { go, link } from "../route";
import { ReadAgain } from "./read";

export function Opening({ standing, mark }: { standing: Standing; mark: string }) {
  const known = useSignal(limits);
  useEffect(needPlan, [standing.fold]);
  const look = useLook(standing, ["openings", mark]);
  const opening = known && openingsNow(standing, known).find((each) => each.mark === mark);
  if (!known || !opening) return <Frame title={mark} back={link()} house={standing.key}>{null}</Frame>;
  const plan = standing.plan?.openings.find((each) => each.mark === mark);
  const leaveOut = async () => {
    await write({ what: "opening-left-out", house: standing.key, opening: mark });
    go("h", standing.key, "house");
  };
  return (
    <Frame
      title={[mark, opening.room].filter(Boolean).join(", ")}
      above={standing.fold?.name}
      back={link("h", standing.key, "house")}
      house={standing.key}
      tab="house"
    >
      <div class="beside">
        <div class="stack">
          <div class="row">
            <StateOf stands={opening} plan={plan} />
            {plan?.chance && <span class="grow faint">fits {plan.chance}</span>}
          </div>
          {plan?.why && <p>{plan.why}</p>}
          <WhoDiffers lines={opening.lines} />
          <Echo standing={standing} way={["openings", mark]} />
        </div>
        <div class="stack">
          {look?.kind === "look" && look.pieces.length > 0 && <PieceRows rows={look.pieces} />}
          <ReadAgain house={standing.key} opening={opening} lines={linesOf(known, opening.what)} />
          <button class="act stop" onClick={() => void leaveOut()}>
            Leave {mark} out
          </button>
        </div>
      </div>
    </Frame>
  );
}
