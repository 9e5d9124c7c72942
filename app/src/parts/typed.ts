/**
 * What stands on the keypad's display, key by key.
 *
 * It is kept as it will be written down: the core reads it as text, and nothing is worked out here
 * but how it looks in the other way of saying it.
 */

/** What is being typed: whole figures, and what the keys below add. */
export interface Typed {
  readonly feet: string | undefined;
  readonly whole: string;
  readonly sixteenths: number;
  readonly half: boolean;
  readonly minus: boolean;
  /** Whether a point was the last key: a tape in mm has .5 behind it and nothing else. */
  readonly behindPoint: boolean;
}

export type Scale = "mm" | "in" | "deg" | "count";

export const NOTHING: Typed = {
  feet: undefined,
  whole: "",
  sixteenths: 0,
  half: false,
  minus: false,
  behindPoint: false,
};

const MOST_FIGURES = 5;

export function withFigure(typed: Typed, figure: string): Typed {
  if (typed.behindPoint) return { ...typed, behindPoint: false, half: figure === "5" };
  if (typed.whole.replace(".", "").length >= MOST_FIGURES) return typed;
  const whole = typed.whole === "0" && figure !== "." ? figure : typed.whole + figure;
  return { ...typed, whole };
}

/** The point of degrees: once, and never in front. */
export function withPoint(typed: Typed): Typed {
  return typed.whole && !typed.whole.includes(".") ? { ...typed, whole: `${typed.whole}.` } : typed;
}

/** A point, or a half at once: both are typed for it. */
export function behindPoint(typed: Typed): Typed {
  return { ...typed, half: true, behindPoint: true };
}

/** Take the last thing typed away. */
export function without(typed: Typed): Typed {
  if (typed.behindPoint) return { ...typed, behindPoint: false, half: false };
  if (typed.half) return { ...typed, half: false };
  if (typed.sixteenths) return { ...typed, sixteenths: 0 };
  if (typed.whole) return { ...typed, whole: typed.whole.slice(0, -1) };
  if (typed.feet !== undefined) return { ...typed, feet: undefined, whole: typed.feet };
  return { ...typed, minus: false };
}

/** What was typed so far are feet; inches follow. */
export function asFeet(typed: Typed): Typed {
  if (typed.feet !== undefined || !typed.whole) return typed;
  return { ...typed, feet: typed.whole, whole: "" };
}

export function isTyped(typed: Typed): boolean {
  return Boolean(typed.whole || typed.half || typed.sixteenths || typed.feet);
}

/** The reading as it is written down. */
export function written(typed: Typed, scale: Scale): string {
  const whole = typed.whole.replace(/\.$/, "");
  const sign = typed.minus ? "-" : "";
  if (scale !== "in") {
    return sign + (typed.half ? `${whole || "0"}.5` : whole || "0");
  }
  const inches = [whole, fraction(typed.sixteenths)].filter(Boolean).join(" ") || "0";
  return sign + (typed.feet === undefined ? inches : `${typed.feet}' ${inches}"`);
}

/** The reading as it is shown while it is typed. */
export function shown(typed: Typed, scale: Scale): string {
  if (!isTyped(typed)) return "";
  if (scale === "in") {
    return written(typed, scale).replace("-", "−") + (typed.feet === undefined ? '"' : "");
  }
  return (typed.minus ? "−" : "") + typed.whole + (typed.half ? "½" : "");
}

/** The figure in the scale's own unit, to hold against the least and the most. */
export function figure(typed: Typed, scale: Scale): number {
  const whole = Number(typed.whole || "0");
  const part = scale === "in" ? typed.sixteenths / 16 : typed.half ? 0.5 : 0;
  const feet = scale === "in" ? Number(typed.feet ?? "0") * 12 : 0;
  return (typed.minus ? -1 : 1) * (feet + whole + part);
}

/** The same reading said another way, so that a slip in the unit is seen. */
export function otherwise(typed: Typed, scale: Scale): string {
  if (!isTyped(typed)) return "";
  const value = figure(typed, scale);
  if (scale === "mm") return Math.abs(value) < 1000 ? "mm" : `${(value / 1000).toFixed(3)} m`;
  if (scale === "deg") return "degrees";
  if (scale === "count") return "";
  const [feet, left] = [Math.floor(Math.abs(value) / 12), Math.abs(value) % 12];
  const parts = [Math.floor(left), fraction(typed.sixteenths)].filter(Boolean).join(" ") || "0";
  return typed.feet === undefined && feet ? `${feet}' ${parts}"` : `${trimmed(value)} in`;
}

/** Sixteenths as the tape shows them: 12 of them are 3/4. */
export function fraction(sixteenths: number): string {
  if (!sixteenths) return "";
  let [above, below] = [sixteenths, 16];
  while (above % 2 === 0) [above, below] = [above / 2, below / 2];
  return `${above}/${below}`;
}

function trimmed(value: number): string {
  return String(Math.round(value * 10000) / 10000);
}
