/** What is to be said: three sentences, told apart by shape and word as well as colour. */

import type { ComponentChildren } from "preact";
import type { Said as Finding } from "../messages";
import { HeldMark, LookMark, SaidMark } from "./marks";

interface ThreeSentences {
  readonly read: string;
  readonly wrong: string;
  readonly do: string;
}

const KINDS = {
  stop: { word: "Held", Mark: HeldMark },
  warning: { word: "Look at it", Mark: LookMark },
  note: { word: "Good to know", Mark: SaidMark },
} as const;

interface Props {
  readonly severity: keyof typeof KINDS;
  readonly place?: string | undefined;
  readonly said: ThreeSentences;
  readonly children?: ComponentChildren;
}

export function Said({ severity, place, said, children }: Props) {
  const { word, Mark } = KINDS[severity];
  return (
    <div class={`said ${severity}`}>
      <strong>
        <Mark />
        {place ? `${place}: ${word.toLowerCase()}` : word}
      </strong>
      <p>{said.read}</p>
      <p>{said.wrong}</p>
      <p>
        <b>{said.do}</b>
      </p>
      {children}
    </div>
  );
}

export function Refused({ said }: { said: ThreeSentences }) {
  return (
    <div role="alert">
      <Said severity="stop" said={said} />
    </div>
  );
}

/** Findings one below the other. */
export function Findings({ said }: { said: readonly Finding[] }) {
  return (
    <>
      {said.map((one) => (
        <Said
          key={one.code + one.place + one.read}
          severity={one.severity}
          place={one.place}
          said={one}
        />
      ))}
    </>
  );
}
