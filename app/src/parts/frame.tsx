/** Head at the top, the work in the middle, the tabs where the thumb is. */

import type { ComponentChildren } from "preact";
import { planner } from "../core/link";
import { useSignal } from "../core/signal";
import { refused } from "../journal/refused";
import { BackMark, BuyMark, HouseMark, SawMark, SheetMark, TapeMark, WallMark } from "./marks";
import { Refused } from "./said";

export type Tab = "house" | "read" | "saw" | "wall" | "buy" | "sheets";

const TABS = [
  { tab: "house", word: "House", Mark: HouseMark },
  { tab: "read", word: "Read", Mark: TapeMark },
  { tab: "saw", word: "Saw", Mark: SawMark },
  { tab: "wall", word: "Wall", Mark: WallMark },
  { tab: "buy", word: "Buy", Mark: BuyMark },
  { tab: "sheets", word: "Sheets", Mark: SheetMark },
] as const;

interface Props {
  readonly title: string;
  readonly above?: string | undefined;
  readonly back?: string | undefined;
  readonly house?: string | undefined;
  readonly tab?: Tab | undefined;
  readonly aside?: ComponentChildren;
  /** What is done most, within reach of the thumb. */
  readonly foot?: ComponentChildren;
  readonly children: ComponentChildren;
}

export function Frame({ title, above, back, house, tab, aside, foot, children }: Props) {
  return (
    <div class={house ? "frame with-tabs" : "frame"}>
      <header class="head">
        {back === undefined ? (
          <span class="bare" aria-hidden="true" />
        ) : (
          <a class="bare" href={back} aria-label="Back">
            <BackMark />
          </a>
        )}
        <div class="where">
          {above && <small>{above}</small>}
          <h1 tabIndex={-1} id="title">
            {title}
          </h1>
        </div>
        {aside}
      </header>
      <main class="work" id="work" aria-labelledby="title">
        <StoreRefuses />
        <PlannerComing />
        {children}
      </main>
      {foot && <div class="foot">{foot}</div>}
      {house && (
        <nav class="tabs" aria-label="Parts of the job">
          {TABS.map(({ tab: name, word, Mark }) => (
            <a
              key={name}
              href={`#/h/${house}/${name}`}
              aria-current={name === tab ? "page" : undefined}
            >
              <Mark />
              {word}
            </a>
          ))}
        </nav>
      )}
    </div>
  );
}

/** Nothing that is typed is kept any more. */
function StoreRefuses() {
  const said = useSignal(refused);
  return said ? <Refused said={said} /> : null;
}

/** While the planner loads, and if it can't: readings can be kept either way. */
function PlannerComing() {
  const { progress, share, why } = useSignal(planner);
  if (progress === "ready") return null;
  if (progress === "failed") {
    return (
      <div class="said stop" role="alert">
        <p>The planner did not start. What you read is kept all the same.</p>
        <p class="faint">{why}</p>
      </div>
    );
  }
  return (
    <div class="coming" role="status">
      <div class="run" aria-hidden="true">
        <i style={{ width: `${Math.max(4, share * 100)}%` }} />
      </div>
      <p class="faint">The planner is getting ready; readings are kept meanwhile.</p>
    </div>
  );
}
