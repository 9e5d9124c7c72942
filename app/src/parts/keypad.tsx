/** The big keypad: one thumb, gloves on; a hardware keyboard does as well. */

import { useLayoutEffect, useRef, useState } from "preact/hooks";
import {
  asFeet,
  behindPoint,
  figure,
  fraction,
  isTyped,
  NOTHING,
  otherwise,
  shown,
  withFigure,
  without,
  withPoint,
  written,
  type Scale,
  type Typed,
} from "./typed";

export interface Told {
  readonly kind: "stop" | "look" | "said";
  readonly text: string;
}

interface Props {
  readonly scale: Scale;
  /** Whether it may be less than nothing. */
  readonly signed?: boolean;
  /** Whether it is how proud or shy something stands: nothing typed is flush. */
  readonly ofPlane?: boolean;
  /** What is read, for those who hear the screen. */
  readonly label: string;
  /** What may be said of a figure at once; undefined: nothing. */
  readonly check: (value: number) => Told | undefined;
  readonly keep: (text: string) => Promise<void>;
  /** What was kept last, or what happened. */
  readonly said?: Told | undefined;
}

/** A key of a keyboard, or what a key on the glass does. */
type Stroke = string | ((typed: Typed) => Typed);

/**
 * What was struck while a figure was being kept: it is the beginning of the next one. A fast hand,
 * or a tape that types by itself, doesn't wait for the disk.
 */
let ahead: Stroke[] = [];

const FIGURES = ["1", "2", "3", "4", "5", "6", "7", "8", "9"] as const;

export function Keypad(props: Props) {
  const { scale, signed = false, ofPlane = false, label, check, keep, said } = props;
  const [typed, show] = useState<Typed>(NOTHING);
  const [inSixteenths, setInSixteenths] = useState(false);
  const [keeping, setKeeping] = useState(false);
  // What was typed counts at once, drawn or not: a fast hand is never a figure ahead of Keep.
  const latest = useRef<Typed>(NOTHING);
  const isKeeping = useRef(false);
  const isHere = useRef(true);
  const change = (by: (typed: Typed) => Typed) => {
    latest.current = by(latest.current);
    show(latest.current);
  };
  const toldOf = (now: Typed) => (isTyped(now) ? check(figure(now, scale)) : said);
  // Flush is typed as 0: a bounced Keep would else be the next corner's reading.
  const mayKeepIt = (now: Typed) => isTyped(now) && toldOf(now)?.kind !== "stop";
  const told = toldOf(typed);
  const mayKeep = mayKeepIt(typed) && !keeping;

  const finish = async () => {
    const now = latest.current;
    if (!mayKeepIt(now)) return;
    const meanwhile: Stroke[] = [];
    ahead = meanwhile;
    isKeeping.current = true;
    setKeeping(true);
    try {
      await keep(written(now, scale));
      latest.current = NOTHING;
    } finally {
      isKeeping.current = false;
      if (isHere.current) {
        show(latest.current);
        setInSixteenths(false);
        setKeeping(false);
      }
      // No keypad follows, or this one goes on.
      if (ahead === meanwhile) ahead = [];
      if (isHere.current) for (const stroke of meanwhile.splice(0)) strike(stroke);
    }
  };

  const strike = (stroke: Stroke) => {
    if (isKeeping.current) {
      // A second Keep with no figure before it is a bouncing thumb.
      const isBounce = stroke === "Enter" && (ahead.at(-1) ?? stroke) === stroke;
      if (!isBounce) ahead.push(stroke);
    } else if (typeof stroke === "function") change(stroke);
    else if (stroke === "Enter") void finish();
    else change((now) => withKey(now, stroke, scale, signed));
  };
  const press = (by: (typed: Typed) => Typed) => strike(by);

  useLayoutEffect(() => {
    for (const stroke of ahead.splice(0)) strike(stroke);
    return () => {
      isHere.current = false;
    };
  }, []);

  // Before the screen is painted: between two lines no key is struck into the void.
  useLayoutEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (isWrittenIn(event.target) || event.ctrlKey || event.metaKey || !KEYS.test(event.key)) return;
      if (event.key === "Enter" && event.target instanceof HTMLButtonElement) return;
      strike(event.key);
      event.preventDefault();
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  });

  return (
    <div class="stack">
      <div class="shown">
        <output aria-label={`${label}, as typed`}>{shown(typed, scale) || " "}</output>
        <span class="both">
          {ofPlane ? planeWords(typed, scale) : otherwise(typed, scale) || unitWords(scale)}
        </span>
      </div>
      <div class="told" aria-live="polite">
        {told && <p class={told.kind}>{told.text}</p>}
      </div>
      {inSixteenths ? (
        <Sixteenths
          chosen={typed.sixteenths}
          choose={(sixteenths) => {
            press((now) => ({ ...now, sixteenths }));
            setInSixteenths(false);
          }}
        />
      ) : (
        <div class="keys" role="group" aria-label="Keypad">
          {FIGURES.slice(0, 3).map((key) => (
            <Key key={key} text={key} press={() => press((now) => withFigure(now, key))} />
          ))}
          <Key text="Back" label="Take the last figure back" words press={() => press(without)} />
          {FIGURES.slice(3, 6).map((key) => (
            <Key key={key} text={key} press={() => press((now) => withFigure(now, key))} />
          ))}
          <Extra signed={signed} ofPlane={ofPlane} typed={typed} press={press} />
          {FIGURES.slice(6, 9).map((key) => (
            <Key key={key} text={key} press={() => press((now) => withFigure(now, key))} />
          ))}
          <button class="keep" disabled={!mayKeep} onClick={() => strike("Enter")}>
            Keep
          </button>
          <Left scale={scale} typed={typed} press={press} />
          <Key text="0" press={() => press((now) => withFigure(now, "0"))} />
          <Right
            scale={scale}
            typed={typed}
            press={press}
            toSixteenths={() => setInSixteenths(true)}
          />
        </div>
      )}
    </div>
  );
}

const KEYS = /^([0-9.'-]|Backspace|Enter)$/;

/** What is typed after a key of a keyboard. */
function withKey(now: Typed, key: string, scale: Scale, signed: boolean): Typed {
  switch (key) {
    case ".":
      if (scale === "mm") return behindPoint(now);
      return scale === "deg" ? withPoint(now) : now;
    case "-":
      return signed ? { ...now, minus: !now.minus } : now;
    case "'":
      return asFeet(now);
    case "Backspace":
      return without(now);
    default:
      return withFigure(now, key);
  }
}

interface KeyProps {
  readonly scale: Scale;
  readonly typed: Typed;
  readonly press: (change: (typed: Typed) => Typed) => void;
}

interface ExtraProps {
  readonly signed: boolean;
  readonly ofPlane: boolean;
  readonly typed: Typed;
  readonly press: (change: (typed: Typed) => Typed) => void;
}

function Extra({ signed, ofPlane, typed, press }: ExtraProps) {
  if (signed) {
    const [less, more] = ofPlane ? ["is shy", "is proud"] : ["is less", "is more"];
    return (
      <Key
        small={typed.minus ? less : more}
        text="±"
        press={() => press((now) => ({ ...now, minus: !now.minus }))}
      />
    );
  }
  return <Key text="Clear" words press={() => press(() => NOTHING)} />;
}

function Left({ scale, press }: KeyProps) {
  if (scale === "in") return <Key text="′" small="feet" press={() => press(asFeet)} />;
  if (scale === "deg") return <Key text="." label="Point" press={() => press(withPoint)} />;
  return <Key text="00" press={() => press((now) => withFigure(withFigure(now, "0"), "0"))} />;
}

function Right({ scale, typed, press, toSixteenths }: KeyProps & { toSixteenths: () => void }) {
  if (scale === "count") return <Key text="Clear" words press={() => press(() => NOTHING)} />;
  if (scale === "in") {
    return <Key text={fraction(typed.sixteenths) || "/16"} small="part" press={toSixteenths} />;
  }
  return (
    <Key
      text="½"
      label="and a half"
      on={typed.half}
      press={() => press((now) => ({ ...now, half: !now.half }))}
    />
  );
}

function Sixteenths({ chosen, choose }: { chosen: number; choose: (sixteenths: number) => void }) {
  return (
    <div class="keys sixteenths" role="group" aria-label="Part of an inch">
      {Array.from({ length: 16 }, (_, part) => (
        <Key
          key={part}
          text={fraction(part) || "even"}
          on={part === chosen}
          press={() => choose(part)}
        />
      ))}
    </div>
  );
}

interface OneKey {
  readonly text: string;
  readonly small?: string;
  readonly label?: string;
  readonly on?: boolean;
  readonly words?: boolean;
  readonly press: () => void;
}

function Key({ text, small, label, on, words, press }: OneKey) {
  return (
    <button
      type="button"
      class={words ? "words" : undefined}
      aria-label={label}
      aria-pressed={on}
      onClick={press}
    >
      {text}
      {small && (
        <small>
          <br />
          {small}
        </small>
      )}
    </button>
  );
}

function unitWords(scale: Scale): string {
  const words = { mm: "mm", in: "inches", deg: "degrees", count: "how many" } as const;
  return words[scale];
}

function planeWords(typed: Typed, scale: Scale): string {
  if (!isTyped(typed)) return `${unitWords(scale)}, 0 is flush`;
  const value = figure(typed, scale);
  return value === 0 ? "flush" : `${unitWords(scale)} ${value > 0 ? "proud" : "shy"}`;
}

/** Whether a key goes to a field of its own; a choice that was tapped is none. */
function isWrittenIn(target: EventTarget | null): boolean {
  if (target instanceof HTMLInputElement) return !["radio", "checkbox"].includes(target.type);
  return target instanceof HTMLSelectElement || target instanceof HTMLTextAreaElement;
}
