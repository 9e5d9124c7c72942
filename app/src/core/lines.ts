/**
 * Draws of a house judged over typed arrays, behind the core's port of the lines.
 *
 * A line is looked at only for draws whose errors are long enough for it to rule: they lie in front,
 * column by column, so that each line runs straight through them.
 */

import { errors, type Quantile } from "./stream";

const SHARED_STREAM = 0;
const PRIVATE_STREAM = 1;

/** What is this small beside 1 is rounding. */
const NOUGHT = 1e-12;

/** Draws are put in order of length by so many steps. */
const STEPS = 256;

interface ToldOpening {
  readonly firstRow: number;
  readonly own: string;
  readonly groups: readonly number[];
}

/** What the core tells of a house; its lines come beside it, as one array. */
export interface ToldHouse extends Quantile {
  readonly draws: number;
  readonly key: readonly [number, number];
  readonly poolRows: number;
  readonly shared: string;
  readonly openings: readonly ToldOpening[];
}

/** Counts of a house: where it fits, and in how many draws how many openings don't. */
export interface Tally {
  readonly openings: readonly { fits: number[]; together: number }[];
  readonly misfits: number[];
}

/** One number of each draw. */
type Column = Float64Array;

/** Return in how many draws each opening fits, and how many don't at once. */
export function tally(house: ToldHouse, lines: Float64Array): Tally {
  const { draws, poolRows } = house;
  const shared = errors(house.key, SHARED_STREAM, draws, house.shared, house);
  const misfits = new Int32Array(draws);
  let at = 0;
  const openings = house.openings.map((opening) => {
    const pool = errors(house.key, PRIVATE_STREAM, poolRows, opening.own, house);
    const terms = [...shared, ...pool.map((column) => from(column, opening.firstRow, draws))];
    const anywhere = new Uint8Array(draws);
    const fits = opening.groups.map((count) => {
      const width = terms.length + 1;
      const group = lines.subarray(at, at + count * width);
      at += count * width;
      const failing = judge(directions(group, count, terms.length), terms, draws);
      failing.forEach((fails, draw) => (anywhere[draw] = (anywhere[draw] ?? 0) | fails));
      return draws - total(failing);
    });
    anywhere.forEach((fails, draw) => (misfits[draw] = (misfits[draw] ?? 0) + fails));
    return { fits, together: draws - total(anywhere) };
  });
  const counts = new Array<number>(house.openings.length + 1).fill(0);
  for (const count of misfits) counts[count] = (counts[count] ?? 0) + 1;
  return { openings, misfits: counts };
}

/** So many rows of a column from one of them on, round its end. */
function from(column: Column, first: number, rows: number): Column {
  const found = new Float64Array(rows);
  const begin = column.subarray(first, first + rows);
  found.set(begin);
  found.set(column.subarray(0, rows - begin.length), begin.length);
  return found;
}

/** Tell, draw by draw, whether some line of a group is above 1. */
function judge(found: Direction[] | undefined, terms: Column[], draws: number): Uint8Array {
  const failing = new Uint8Array(draws);
  if (!found) return failing.fill(1);
  const axes = axesOf(found.map((direction) => direction.along));
  const along = axes.map((axis) => weighed(axis, terms, draws));
  const { order, longer } = byLength(along, draws);
  const sorted = along.map((column) => inOrder(column, order));
  for (const { along: direction, reach } of found) {
    const parts = Float64Array.from(axes, (axis) => dot(direction, axis));
    const values = weighed(parts, sorted, longer(reach));
    for (let at = 0; at < values.length; at++) {
      if ((values[at] as number) > reach) failing[order[at] as number] = 1;
    }
  }
  return failing;
}

/** A column with its rows in another order. */
function inOrder(column: Column, order: Int32Array): Column {
  const found = new Float64Array(order.length);
  for (let at = 0; at < order.length; at++) found[at] = column[order[at] as number] as number;
  return found;
}

/** Draws in order of their distance from no error, and how many of them may be this far or more. */
function byLength(along: readonly Column[], draws: number) {
  const lengths = new Float64Array(draws);
  for (const column of along) {
    for (let draw = 0; draw < draws; draw++) {
      const part = column[draw] as number;
      lengths[draw] = (lengths[draw] as number) + part * part;
    }
  }
  let longest = 0;
  for (let draw = 0; draw < draws; draw++) {
    const length = Math.sqrt(lengths[draw] as number);
    lengths[draw] = length;
    if (length > longest) longest = length;
  }
  // Step 0 is the longest.
  const step = (length: number) =>
    Math.floor((1 - Math.max(0, length) / (longest || 1)) * (STEPS - 1));
  const ends = new Int32Array(STEPS);
  for (const length of lengths) (ends[step(length)] as number)++;
  for (let at = 1; at < STEPS; at++) ends[at] = (ends[at] as number) + (ends[at - 1] as number);
  const next = new Int32Array(STEPS);
  next.set(ends.subarray(0, STEPS - 1), 1);
  const order = new Int32Array(draws);
  lengths.forEach((length, draw) => {
    const at = step(length);
    order[next[at] as number] = draw;
    (next[at] as number)++;
  });
  const longer = (reach: number) => (reach > longest ? 0 : (ends[step(reach)] as number));
  return { order, longer };
}

/** One direction of errors, and how far along it a draw may lie. */
interface Direction {
  readonly along: Float64Array;
  readonly reach: number;
}

/** The lines of a group; undefined: one is above 1 whatever is drawn. */
function directions(lines: Float64Array, count: number, terms: number): Direction[] | undefined {
  const found: Direction[] = [];
  for (let line = 0; line < count; line++) {
    const at = line * (terms + 1);
    const offset = lines[at] as number;
    const along = lines.slice(at + 1, at + 1 + terms);
    const size = Math.sqrt(dot(along, along));
    if (size > 0) found.push({ along: along.map((part) => part / size), reach: (1 - offset) / size });
    else if (offset > 1) return undefined;
  }
  return found;
}

/** As few axes as the directions need: errors that always come together count as one. */
function axesOf(directions: readonly Float64Array[]): Float64Array[] {
  const rest = directions.map((direction) => direction.slice());
  const axes: Float64Array[] = [];
  for (;;) {
    const sizes = rest.map((row) => Math.sqrt(dot(row, row)));
    const longest = sizes.reduce((best, size, at) => (size > (sizes[best] ?? 0) ? at : best), 0);
    const size = sizes[longest] ?? 0;
    if (size <= NOUGHT) return axes;
    const axis = (rest[longest] as Float64Array).map((part) => part / size);
    axes.push(axis);
    for (const row of rest) {
      const part = dot(row, axis);
      for (let term = 0; term < axis.length; term++) {
        row[term] = (row[term] as number) - part * (axis[term] as number);
      }
    }
    (rest[longest] as Float64Array).fill(0);
  }
}

/** The first rows of columns, added up by their weights; four columns at a time. */
function weighed(weights: Float64Array, columns: readonly Column[], rows: number): Column {
  const sums = new Float64Array(rows);
  const used = columns.flatMap((column, at) => (weights[at] ? [{ column, by: weights[at] }] : []));
  const none = { column: sums, by: 0 };
  for (let at = 0; at < used.length; at += 4) {
    const [a = none, b = none, c = none, d = none] = used.slice(at, at + 4);
    addFour(sums, a.column, a.by, b.column, b.by, c.column, c.by, d.column, d.by);
  }
  return sums;
}

function addFour(
  sums: Column,
  a: Column, ka: number,
  b: Column, kb: number,
  c: Column, kc: number,
  d: Column, kd: number,
): void {
  for (let row = 0; row < sums.length; row++) {
    sums[row] =
      (sums[row] as number) +
      ka * (a[row] as number) +
      kb * (b[row] as number) +
      kc * (c[row] as number) +
      kd * (d[row] as number);
  }
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < a.length; at++) sum += (a[at] as number) * (b[at] as number);
  return sum;
}

function total(flags: Uint8Array): number {
  let sum = 0;
  for (const flag of flags) sum += flag;
  return sum;
}
