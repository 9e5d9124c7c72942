/** What can be said of a figure at once, by the limits that the core gives. */

import type { FoldedOpening, FormLine, Limits, LineLimits } from "../messages";
import { textsOf } from "../openings_now";
import type { Told } from "./keypad";

interface Asked {
  readonly line: LineLimits;
  readonly opening: FoldedOpening;
  readonly units: "mm" | "in";
  readonly isSecondLook: boolean;
}

/** A text as the keypad writes it, in mm; undefined: written in some other way. */
export function inMm(text: string, units: "mm" | "in", limits: Limits): number | undefined {
  if (units === "mm") return Number.isFinite(Number(text)) ? Number(text) : undefined;
  const found = /^-?(?:(\d+)' )?(\d+)?(?: ?(\d+)\/(\d+))?"?$/.exec(text);
  if (!found) return undefined;
  const [, feet, inches, above, below] = found.map((part) => Number(part ?? 0));
  const size = (feet ?? 0) * 12 + (inches ?? 0) + (below ? (above ?? 0) / below : 0);
  return (text.startsWith("-") ? -size : size) * limits.mm_per_inch;
}

export function toldAtOnce(value: number, asked: Asked, limits: Limits): Told | undefined {
  const { line, opening, units } = asked;
  const mm = units === "in" ? value * limits.mm_per_inch : value;
  if (mm > line.most) {
    return { kind: "stop", text: "That is too long for an opening. Look for a figure too many." };
  }
  if (mm < line.least) {
    const isShort = line.scale === "length";
    return {
      kind: isShort ? "look" : "stop",
      text: isShort ? "That is very short. Type on, or look at the unit." : "That is too far back.",
    };
  }
  const own = textsOf(opening, line.line).map((text) => inMm(text, units, limits));
  const first = own.find((each) => each !== undefined);
  if (asked.isSecondLook && first !== undefined && Math.abs(first - mm) > line.apart) {
    const apart = shownApart(first - mm, units, limits);
    return {
      kind: "look",
      text: `${apart} from the first reading. Both are kept, and a third decides.`,
    };
  }
  const across = textsOf(opening, line.beside).at(-1);
  const beside = across === undefined ? undefined : inMm(across, units, limits);
  if (beside !== undefined && Math.abs(beside - mm) > line.beside_apart) {
    return {
      kind: "look",
      text: `${shownApart(beside - mm, units, limits)} from the ${line.beside}, which reads ${across}. If the tape says so, keep it.`,
    };
  }
  return undefined;
}

interface AskedOfPlace {
  readonly line: FormLine;
  readonly texts: readonly string[];
  readonly units: "mm" | "in";
  readonly isSecondLook: boolean;
}

/** The same for a line of a room, a run or other trim. */
export function toldOfPlace(value: number, asked: AskedOfPlace, limits: Limits): Told | undefined {
  const { line, texts, units, isSecondLook } = asked;
  const isLength = line.scale === "length" || line.scale === "signed";
  const own = isLength && units === "in" ? value * limits.mm_per_inch : value;
  if (own > line.most) return { kind: "stop", text: "That is too much. Look for a figure too many." };
  if (own < line.least) {
    return line.scale === "angle"
      ? { kind: "look", text: "That is very little. Type on, or look at it again." }
      : { kind: "stop", text: "That is too little." };
  }
  const first = texts
    .map((text) => (isLength ? inMm(text, units, limits) : Number(text)))
    .find((each) => each !== undefined);
  if (isSecondLook && first !== undefined && Math.abs(first - own) > line.apart) {
    const apart = isLength ? shownApart(first - own, units, limits) : `${Math.abs(first - own)} degrees`;
    return { kind: "look", text: `${apart} from the first reading. Both are kept, and a third decides.` };
  }
  return undefined;
}

function shownApart(mm: number, units: "mm" | "in", limits: Limits): string {
  const size = Math.abs(mm);
  return units === "mm" ? `${Math.round(size * 2) / 2} mm` : `${(size / limits.mm_per_inch).toFixed(2)} in`;
}
