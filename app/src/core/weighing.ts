/**
 * Sets of a frame's rows weighed over typed arrays, behind the core's port: weights with which no
 * move has a say and whose limits add up to 1.
 *
 * Gaussian elimination with row pivots, one equation for each move and one for the limits.
 */

/** A pivot, what is left of an equation, or a weight below nought: this small it is rounding. */
const SMALL = 1e-7;

/**
 * Return the lines of those sets that have weights, one after the other.
 *
 * @param rows how many rows there are
 * @param columns of each row its moves and limit
 * @param errors of each row what every error changes in it
 * @param sizes of each set how many rows it has
 * @param members the rows of one set after those of the other
 */
export function weighedLines(
  rows: number,
  columns: Float64Array,
  errors: Float64Array,
  sizes: Int32Array,
  members: Int32Array,
): Float64Array {
  const count = columns.length / rows;
  const slots = errors.length / rows;
  const lines = new Float64Array(sizes.length * slots);
  let found = 0;
  let first = 0;
  for (const size of sizes) {
    const chosen = members.subarray(first, first + size);
    first += size;
    const weights = weightsOf(columns, count, chosen);
    if (!weights) continue;
    const line = lines.subarray(found, found + slots);
    found += slots;
    chosen.forEach((row, at) => {
      const weight = weights[at] as number;
      for (let slot = 0; slot < slots; slot++) {
        line[slot] = (line[slot] as number) + weight * (errors[row * slots + slot] as number);
      }
    });
  }
  return lines.slice(0, found);
}

/** The weights of a set; undefined where there is no single answer without a negative one. */
function weightsOf(
  columns: Float64Array,
  count: number,
  chosen: Int32Array,
): Float64Array | undefined {
  const size = chosen.length;
  const equations = Array.from({ length: count }, (_, move) => {
    const equation = new Float64Array(size + 1);
    chosen.forEach((row, at) => (equation[at] = columns[row * count + move] as number));
    return equation;
  });
  const limits = equations[count - 1];
  if (!limits || size > count) return undefined;
  limits[size] = 1;
  for (let step = 0; step < size; step++) {
    if (!eliminated(equations, step)) return undefined;
  }
  if (equations.slice(size).some((left) => Math.abs(left[size] as number) > SMALL)) {
    return undefined;
  }
  const weights = equations.slice(0, size).map((equation) => equation[size] as number);
  for (let step = size - 1; step > 0; step--) {
    for (let at = 0; at < step; at++) {
      const part = (equations[at] as Float64Array)[step] as number;
      weights[at] = (weights[at] as number) - part * (weights[step] as number);
    }
  }
  if (Math.min(...weights) < -SMALL * Math.max(1, ...weights)) return undefined;
  return Float64Array.from(weights, (weight) => Math.max(0, weight));
}

/** Solve for one unknown and put it in below; false: no equation tells it. */
function eliminated(equations: Float64Array[], step: number): boolean {
  const lead = (at: number) => Math.abs((equations[at] as Float64Array)[step] as number);
  let best = step;
  for (let at = step + 1; at < equations.length; at++) if (lead(at) > lead(best)) best = at;
  if (lead(best) < SMALL) return false;
  const pivot = equations[best] as Float64Array;
  equations[best] = equations[step] as Float64Array;
  equations[step] = pivot;
  const by = pivot[step] as number;
  for (let at = step; at < pivot.length; at++) pivot[at] = (pivot[at] as number) / by;
  for (let below = step + 1; below < equations.length; below++) {
    const equation = equations[below] as Float64Array;
    const factor = equation[step] as number;
    if (factor === 0) continue;
    for (let at = step; at < pivot.length; at++) {
      equation[at] = (equation[at] as number) - factor * (pivot[at] as number);
    }
  }
  return true;
}
