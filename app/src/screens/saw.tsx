/** At the saw: one piece at a time, in cut order. */

import { useEffect, useState } from "preact/hooks";
import { needPlan, tellSaw, type Standing } from "../house";
import type { CutEnd, CutStep, Refusal } from "../messages";
import { Frame } from "../parts/frame";
import { Keypad } from "../parts/keypad";
import { Refused } from "../parts/said";
import { link } from "../route";
import { PlanComing } from "./plan_coming";

export function Saw({ standing }: { standing: Standing }) {
  useEffect(needPlan, [standing.fold]);
  const [refusal, setRefusal] = useState<Refusal | undefined>();
  const [asks, setAsks] = useState<"spoiled" | "short" | undefined>();
  const [isTelling, setTelling] = useState(false);
  const [said, setSaid] = useState("");
  const { plan } = standing;
  // Nobody is to cut by sticks that may still change.
  const step = standing.isFirst ? undefined : plan?.cuts[0];

  const tell = async (told: string, done: string) => {
    setTelling(true);
    setAsks(undefined);
    const found = await tellSaw(told);
    setTelling(false);
    setRefusal(found?.kind === "refusal" ? found : undefined);
    if (found?.kind === "saw") {
      const more = found.new.length ? ` One more stick is needed: ${found.new.join(", ")}.` : "";
      setSaid(done + more);
    }
  };
  const isBusy = isTelling || standing.isPlanning;
  const foot = step && !asks && (
    <div class="acts saw-acts">
      <button
        class="act main"
        disabled={isBusy}
        onClick={() => void tell(`cut ${step.piece}`, `${step.piece} is cut.`)}
      >
        Cut
      </button>
      <button class="act stop" disabled={isBusy} onClick={() => setAsks("spoiled")}>
        Spoiled
      </button>
      <button class="act" disabled={isBusy} onClick={() => setAsks("short")}>
        Stick is short
      </button>
    </div>
  );
  return (
    <Frame
      title="At the saw"
      above={standing.fold?.name}
      back={link()}
      house={standing.key}
      tab="saw"
      foot={foot}
    >
      <PlanComing standing={standing} />
      {refusal && <Refused said={refusal} />}
      {standing.isFirst && (
        <div class="card">
          <h2>The cut list comes with the final plan.</h2>
          <p>It is being worked out on this phone; it takes some seconds, seldom a minute.</p>
        </div>
      )}
      {plan && !step && !standing.isFirst && (
        <div class="card">
          <h2>{plan.pieces ? "All that can be cut is cut." : "There is nothing to cut yet."}</h2>
          {!plan.pieces && <p>Read an opening to its last line, and its pieces come here.</p>}
        </div>
      )}
      {step && plan && !asks && (
        <>
          <OnePiece step={step} done={plan.done.length} all={plan.pieces} />
          <Following steps={plan.cuts.slice(1)} />
          <p class="faint">
            Sticks and order are of cut plan <b>{plan.cut_code}</b>, this phone's own. A sheet or
            another phone with another code lays the same pieces on other sticks: cut by one of the
            two.
          </p>
        </>
      )}
      {plan && !asks && plan.pieces > 0 && (
        <a class="act wide" href={link("h", standing.key, "label")}>
          Read a label
        </a>
      )}
      <p role="status" class="faint">
        {isBusy && step ? "Planning the rest …" : said}
      </p>
      {step && asks && (
        <HowLong
          step={step}
          asks={asks}
          units={standing.fold?.units ?? "mm"}
          tell={(told, done) => tell(told, done)}
          back={() => setAsks(undefined)}
        />
      )}
    </Frame>
  );
}

function OnePiece({ step, done, all }: { step: CutStep; done: number; all: number }) {
  return (
    <section class="stack one-piece" aria-label={`Cut ${step.piece}`}>
      <div class="row">
        <h2 class="grow">{step.what}</h2>
        <span class="faint">
          {done + 1} of {all}
        </span>
      </div>
      <div
        class="picture stick"
        role="group"
        aria-label={`Stick ${step.stick}`}
        tabIndex={0}
        dangerouslySetInnerHTML={{ __html: step.svg }}
      />
      <p class="faint">{step.stick_words}</p>
      <div class="cut">
        <End end={step.left} side="Left" />
        <div class="figure-block">
          <p class="said-back">
            <b class="huge">{step.figure}</b>
            <span class="word">
              <small class="faint">To be said back:</small> <b>{step.check}</b>
            </span>
          </p>
          <p>{step.how_words}</p>
        </div>
        <End end={step.right} side="Right" />
      </div>
      {step.remarks.map((remark) => (
        <p key={remark} class="said warning">
          {remark}
        </p>
      ))}
      <div class="aloud">
        <p>
          <span class="faint">Read out: </span>
          {step.aloud}
        </p>
        {"speechSynthesis" in window && (
          <button class="act" onClick={() => speak(`${step.aloud}. ${step.check}.`)}>
            Say it
          </button>
        )}
      </div>
    </section>
  );
}

function End({ end, side }: { end: CutEnd; side: string }) {
  return (
    <div class="end">
      <span class="faint">{side} end</span>
      <div class="picture" dangerouslySetInnerHTML={{ __html: end.svg }} />
      <b>{end.setting}</b>
      {end.remarks.map((remark) => (
        <small key={remark}>{remark}</small>
      ))}
    </div>
  );
}

function Following({ steps }: { steps: readonly CutStep[] }) {
  if (!steps.length) return null;
  return (
    <details>
      <summary>Then come {steps.length} more</summary>
      <ul class="rows">
        {steps.map((step) => (
          <li key={step.piece}>
            <span class="row spaced">
              <span class="grow">{step.what}</span>
              <span class="faint">{step.stick}</span>
              <b class="figures">{step.figure}</b>
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}

interface HowLongProps {
  readonly step: CutStep;
  readonly asks: "spoiled" | "short";
  readonly units: "mm" | "in";
  readonly tell: (told: string, done: string) => Promise<void>;
  readonly back: () => void;
}

/** What is left of a spoiled piece, or how long a stick really is. */
function HowLong({ step, asks, units, tell, back }: HowLongProps) {
  const isSpoiled = asks === "spoiled";
  const question = isSpoiled
    ? `How much of ${step.piece} is still good, square to its shorter points?`
    : `How long is stick ${step.stick}?`;
  return (
    <section class="stack" aria-label={question}>
      <h2>{question}</h2>
      {isSpoiled && (
        <button
          class="act"
          onClick={() => void tell(`spoiled ${step.piece}`, `${step.piece} is to be cut again.`)}
        >
          Nothing of it
        </button>
      )}
      <Keypad
        scale={units}
        label={question}
        check={() => undefined}
        keep={(text) =>
          isSpoiled
            ? tell(`spoiled ${step.piece} ${text}`, `${step.piece} is to be cut again.`)
            : tell(`short ${step.stick} ${text}`, `${step.stick} is ${text} long.`)
        }
      />
      <button class="act" onClick={back}>
        Back to the piece
      </button>
    </section>
  );
}

function speak(text: string): void {
  speechSynthesis.cancel();
  const said = new SpeechSynthesisUtterance(text);
  said.rate = 0.8;
  speechSynthesis.speak(said);
}
