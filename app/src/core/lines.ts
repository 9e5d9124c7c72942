/**
 * Draws of a house judged over typed arrays, behind the core's port of the lines.
 *
 * A line is looked at only for draws whose errors are long enough for it to rule, the lines that
 * rule most often come first, and a draw that doesn't fit is left out of the lines that follow.
 */

import { errors, type Quantile } from "./stream";

const SHARED_STREAM = 0;
const PRIVATE_STREAM = 1;

/** What is this small beside 1 is rounding. */
const NOUGHT = 1e-12;

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

/** Return in how many draws each opening fits, and how many don't at once. */
export function tally(house: ToldHouse, lines: Float64Array): Tally {
  const shared = errors(house.key, SHARED_STREAM, house.draws, house.shared, house);
  const pools = new Map<string, Float64Array[]>();
  const misfits = new Int32Array(house.draws);
  let at = 0;
  const openings = house.openings.map((opening) => {
    let pool = pools.get(opening.own);
    if (!pool) {
      pool = errors(house.key, PRIVATE_STREAM, house.poolRows, opening.own, house);
      pools.set(opening.own, pool);
    }
    const points = gather(shared, pool, opening.firstRow, house);
    const terms = shared.length + pool.length;
    const anywhere = new Uint8Array(house.draws);
    const fits = opening.groups.map((count) => {
      const width = terms + 1;
      const group = lines.subarray(at, at + count * width);
      at += count * width;
      const failing = judge(group, count, points, terms);
      failing.forEach((fails, draw) => (anywhere[draw] = (anywhere[draw] ?? 0) | fails));
      return house.draws - total(failing);
    });
    anywhere.forEach((fails, draw) => (misfits[draw] = (misfits[draw] ?? 0) + fails));
    return { fits, together: house.draws - total(anywhere) };
  });
  const counts = new Array<number>(house.openings.length + 1).fill(0);
  for (const count of misfits) counts[count] = (counts[count] ?? 0) + 1;
  return { openings, misfits: counts };
}

/** The errors of an opening, draw by draw: (draws x terms), its own rows taken round the pool. */
function gather(
  shared: Float64Array[],
  pool: Float64Array[],
  firstRow: number,
  house: ToldHouse,
): Float64Array {
  const terms = shared.length + pool.length;
  const points = new Float64Array(house.draws * terms);
  for (let draw = 0; draw < house.draws; draw++) {
    const row = (draw + firstRow) % house.poolRows;
    let to = draw * terms;
    for (const column of shared) points[to++] = column[draw] ?? 0;
    for (const column of pool) points[to++] = column[row] ?? 0;
  }
  return points;
}

/** Tell, draw by draw, whether some line of a group is above 1. */
function judge(
  lines: Float64Array,
  count: number,
  points: Float64Array,
  terms: number,
): Uint8Array {
  const draws = terms ? points.length / terms : 0;
  const failing = new Uint8Array(draws);
  const found = directions(lines, count, terms);
  if (!found) return failing.fill(1);
  const axes = axesOf(found.map((direction) => direction.along));
  const along = onAxes(points, draws, terms, axes);
  const width = axes.length;
  const lengths = Float64Array.from({ length: draws }, (_, draw) =>
    Math.sqrt(dot(along, draw * width, along, draw * width, width)),
  );
  let left = Int32Array.from(lengths.keys()).sort(
    (a, b) => (lengths[b] as number) - (lengths[a] as number),
  );
  let lost = 0;
  for (const { along: direction, reach } of found) {
    const parts = Float64Array.from(axes, (axis) => dot(direction, 0, axis, 0, terms));
    for (const draw of left) {
      if ((lengths[draw] as number) < reach) break;
      if (!failing[draw] && dot(parts, 0, along, draw * width, width) > reach) {
        failing[draw] = 1;
        lost++;
      }
    }
    if (lost * 8 > left.length) {
      left = left.filter((draw) => !failing[draw]);
      lost = 0;
    }
  }
  return failing;
}

/** One direction of errors, and how far along it a draw may lie. */
interface Direction {
  readonly along: Float64Array;
  readonly reach: number;
}

/** The lines of a group, those that rule first; undefined: one is above 1 whatever is drawn. */
function directions(lines: Float64Array, count: number, terms: number): Direction[] | undefined {
  const found: Direction[] = [];
  for (let line = 0; line < count; line++) {
    const at = line * (terms + 1);
    const offset = lines[at] as number;
    const size = Math.sqrt(dot(lines, at + 1, lines, at + 1, terms));
    if (size === 0) {
      if (offset > 1) return undefined;
      continue;
    }
    const along = lines.slice(at + 1, at + 1 + terms).map((part) => part / size);
    found.push({ along, reach: (1 - offset) / size });
  }
  return found.sort((a, b) => a.reach - b.reach);
}

/** As few axes as the directions need: errors that always come together count as one. */
function axesOf(directions: readonly Float64Array[]): Float64Array[] {
  const rest = directions.map((direction) => direction.slice());
  const axes: Float64Array[] = [];
  for (;;) {
    const sizes = rest.map((row) => Math.sqrt(dot(row, 0, row, 0, row.length)));
    const longest = sizes.reduce((best, size, at) => (size > (sizes[best] ?? 0) ? at : best), 0);
    const size = sizes[longest] ?? 0;
    if (size <= NOUGHT) return axes;
    const axis = (rest[longest] as Float64Array).map((part) => part / size);
    axes.push(axis);
    for (const row of rest) {
      const part = dot(row, 0, axis, 0, axis.length);
      for (let term = 0; term < axis.length; term++) {
        row[term] = (row[term] as number) - part * (axis[term] as number);
      }
    }
    (rest[longest] as Float64Array).fill(0);
  }
}

function onAxes(
  points: Float64Array,
  draws: number,
  terms: number,
  axes: readonly Float64Array[],
): Float64Array {
  const along = new Float64Array(draws * axes.length);
  for (let draw = 0, to = 0; draw < draws; draw++) {
    for (const axis of axes) along[to++] = dot(points, draw * terms, axis, 0, terms);
  }
  return along;
}

function dot(a: Float64Array, i: number, b: Float64Array, j: number, terms: number): number {
  let sum = 0;
  for (let term = 0; term < terms; term++) sum += (a[i + term] as number) * (b[j + term] as number);
  return sum;
}

function total(flags: Uint8Array): number {
  let sum = 0;
  for (const flag of flags) sum += flag;
  return sum;
}
