/** The page's engines as the core calls them: Python's arrays in, texts or typed arrays out. */

import type { Highs } from "highs";
import { solverCall } from "./highs";
import { tally, type ToldHouse } from "./lines";
import { weighedLines } from "./weighing";

/** A Python array as it comes across: asked for a copy, it gives a typed array. */
export interface Across<T> {
  toJs(): T;
}

type Doubles = Across<Float64Array>;
type Whole = Across<Int32Array>;

/** What `ports.py` is made with, in its order. */
export function calls(highs: Highs) {
  return [
    solverCall(highs),
    (told: string, lines: Doubles) =>
      JSON.stringify(tally(JSON.parse(told) as ToldHouse, lines.toJs())),
    (rows: number, columns: Doubles, errors: Doubles, sizes: Whole, members: Whole) =>
      weighedLines(rows, columns.toJs(), errors.toJs(), sizes.toJs(), members.toJs()),
  ] as const;
}
