/**
 * The random stream of the forecast: the same numbers as the core draws, many at a time.
 *
 * Philox with four words and ten rounds (Salmon et al. 2011); the normal quantile is AS 241, whose
 * polynomials the core hands over.
 */

const ROUNDS = 10;
const MULTIPLIERS = [0xd2511f53, 0xcd9e8d57] as const;
const INCREMENTS = [0x9e3779b9, 0xbb67ae85] as const;

/** Quarters that are remembered; with 20 000 draws of each source they take some 20 MB. */
const REMEMBERED = 32;

/** Coefficients above and below the line, highest power first. */
export type Ratio = readonly [readonly number[], readonly number[]];

/** What a source of error is drawn by. */
export interface Quantile {
  readonly centre: Ratio;
  readonly tail: Ratio;
}

/** The upper 32 bits of a product of two words. */
function high(a: number, b: number): number {
  const a0 = a & 0xffff;
  const a1 = a >>> 16;
  const b0 = b & 0xffff;
  const b1 = b >>> 16;
  const middle = a1 * b0 + ((a0 * b0) >>> 16);
  const other = a0 * b1 + (middle & 0xffff);
  return a1 * b1 + Math.floor(middle / 65536) + Math.floor(other / 65536);
}

/** Write four words that belong to a counter under a key. */
function philox(
  row: number,
  quarter: number,
  stream: number,
  key: readonly [number, number],
  words: Uint32Array,
): void {
  let c0 = row;
  let c1 = quarter;
  let c2 = stream;
  let c3 = 0;
  let [k0, k1] = key;
  for (let round = 0; round < ROUNDS; round++) {
    const h0 = high(MULTIPLIERS[0], c0);
    const l0 = Math.imul(MULTIPLIERS[0], c0);
    const h1 = high(MULTIPLIERS[1], c2);
    const l1 = Math.imul(MULTIPLIERS[1], c2);
    c0 = (h1 ^ c1 ^ k0) >>> 0;
    c1 = l1 >>> 0;
    c2 = (h0 ^ c3 ^ k1) >>> 0;
    c3 = l0 >>> 0;
    k0 = (k0 + INCREMENTS[0]) >>> 0;
    k1 = (k1 + INCREMENTS[1]) >>> 0;
  }
  words[0] = c0;
  words[1] = c1;
  words[2] = c2;
  words[3] = c3;
}

/** How many standard uncertainties a normal error stays below with a given chance. */
export function normalQuantile(chance: number, by: Quantile): number {
  const q = chance - 0.5;
  if (Math.abs(q) <= 0.425) return ratio(by.centre, 0.180625 - q * q, q);
  // No chance of the stream is below 2**-33: no depth is above 4.8, none in the far tail.
  const depth = Math.sqrt(-Math.log(q < 0 ? chance : 1 - chance));
  const size = ratio(by.tail, depth - 1.6, 1);
  return q < 0 ? -size : size;
}

/** Quarters drawn before; the next forecast of a house, and each of its openings, asks for them. */
const drawn = new Map<string, Float64Array[]>();

/**
 * The errors of a set of draws, one column of `rows` numbers for each source. They are to be read,
 * not written.
 *
 * @param spreads a letter for each source: n(ormal) or r(ectangular)
 */
export function errors(
  key: readonly [number, number],
  stream: number,
  rows: number,
  spreads: string,
  by: Quantile,
): Float64Array[] {
  const quarters = spreads.match(/.{1,4}/g) ?? [];
  return quarters.flatMap((letters, quarter) => {
    const name = [...key, stream, rows, quarter, letters].join();
    const found = drawn.get(name) ?? drawQuarter(key, stream, rows, quarter, letters, by);
    drawn.delete(name);
    drawn.set(name, found);
    for (const oldest of drawn.keys()) {
      if (drawn.size <= REMEMBERED) break;
      drawn.delete(oldest);
    }
    return found;
  });
}

/** The columns of up to four sources that are drawn together. */
function drawQuarter(
  key: readonly [number, number],
  stream: number,
  rows: number,
  quarter: number,
  letters: string,
  by: Quantile,
): Float64Array[] {
  const columns = Array.from(letters, () => new Float64Array(rows));
  const words = new Uint32Array(4);
  for (let row = 0; row < rows; row++) {
    philox(row, quarter, stream, key, words);
    columns.forEach((column, word) => {
      const chance = ((words[word] as number) + 0.5) * 2 ** -32;
      column[row] =
        letters[word] === "r" ? Math.sqrt(12) * (chance - 0.5) : normalQuantile(chance, by);
    });
  }
  return columns;
}

function ratio([above, below]: Ratio, x: number, times: number): number {
  return (polynomial(above, x) * times) / polynomial(below, x);
}

function polynomial(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (const coefficient of coefficients) value = value * x + coefficient;
  return value;
}
