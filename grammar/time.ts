/**
 * Exact musical time, counted in semibreves.
 *
 * A time is a normalised fraction. Numerator and denominator are safe integers as long as they fit and BigInt beyond,
 * so that no sum ever loses a fraction of a triplet. Floating point has no place here.
 */
export interface Time {
  readonly n: number | bigint;
  /** Always positive. */
  readonly d: number | bigint;
}

/** Zero semibreves. */
export const ZERO: Time = { n: 0, d: 1 };
/** One semibreve. */
export const SEMIBREVE: Time = { n: 1, d: 1 };

/** The greatest common divisor of whole numbers that are not negative. */
export function gcd(a: number, b: number): number {
  let [greater, smaller] = [a, b];
  while (smaller !== 0) {
    const rest = greater % smaller;
    greater = smaller;
    smaller = rest;
  }
  return greater;
}

/** The same of big ones. */
export function bigGcd(a: bigint, b: bigint): bigint {
  while (b !== 0n) [a, b] = [b, a % b];
  return a;
}

const fits = (value: bigint): boolean =>
  value <= BigInt(Number.MAX_SAFE_INTEGER) && value >= -BigInt(Number.MAX_SAFE_INTEGER);

function fromBig(n: bigint, d: bigint): Time {
  if (d < 0n) [n, d] = [-n, -d];
  const common = bigGcd(n < 0n ? -n : n, d);
  if (common > 1n) [n, d] = [n / common, d / common];
  return fits(n) && fits(d) ? { n: Number(n), d: Number(d) } : { n, d };
}

/**
 * The time n/d in semibreves, normalised.
 * @throws RangeError if d is zero or either part is not a safe integer.
 */
export function time(n: number, d = 1): Time {
  if (!Number.isSafeInteger(n) || !Number.isSafeInteger(d) || d === 0) throw new RangeError(`no exact time: ${n}/${d}`);
  return d < 0 ? reduced(-n, -d) : reduced(n, d);
}

/** The time n/d of safe integers, d positive. */
function reduced(n: number, d: number): Time {
  const common = gcd(n < 0 ? -n : n, d);
  return common === 1 ? normalised(n, d) : normalised(n / common, d / common);
}

/** Parts below which a time is kept once made: a score repeats few times over and over. */
const KEPT = { n: 2048, d: 256 } as const;
const kept: Time[][] = [];

/** The time of parts that have no common divisor. */
function normalised(n: number, d: number): Time {
  // A zero may have come with a sign.
  if (n === 0) return ZERO;
  if (n < 0 || n >= KEPT.n || d >= KEPT.d) return { n, d };
  kept[d] ??= [];
  const row = kept[d] as Time[];
  const known = row[n];
  if (known !== undefined) return known;
  const made = { n, d };
  row[n] = made;
  return made;
}

/** Both parts as numbers whose products stay safe, or undefined. */
const SMALL = 2 ** 26;
const small = (t: Time): t is { n: number; d: number } =>
  typeof t.n === 'number' && typeof t.d === 'number' && t.n < SMALL && t.n > -SMALL && t.d < SMALL;

/** a + b. */
export function add(a: Time, b: Time): Time {
  if (a.n === 0) return b;
  if (b.n === 0) return a;
  if (small(a) && small(b)) return a.d === b.d ? reduced(a.n + b.n, a.d) : reduced(a.n * b.d + b.n * a.d, a.d * b.d);
  return fromBig(BigInt(a.n) * BigInt(b.d) + BigInt(b.n) * BigInt(a.d), BigInt(a.d) * BigInt(b.d));
}

/** −a. */
const negate = (a: Time): Time => (a.n === 0 ? ZERO : { n: -a.n, d: a.d });

/** a − b. */
export function subtract(a: Time, b: Time): Time {
  if (b.n === 0) return a;
  if (small(a) && small(b)) return a.d === b.d ? reduced(a.n - b.n, a.d) : reduced(a.n * b.d - b.n * a.d, a.d * b.d);
  return add(a, negate(b));
}

/** a · b. */
export function multiply(a: Time, b: Time): Time {
  if (small(a) && small(b)) return reduced(a.n * b.n, a.d * b.d);
  return fromBig(BigInt(a.n) * BigInt(b.n), BigInt(a.d) * BigInt(b.d));
}

/**
 * a / b.
 * @throws RangeError if b is zero.
 */
export function divide(a: Time, b: Time): Time {
  if (isZero(b)) throw new RangeError('division of a time by zero');
  if (small(a) && small(b)) return time(a.n * b.d, a.d * b.n);
  return fromBig(BigInt(a.n) * BigInt(b.d), BigInt(a.d) * BigInt(b.n));
}

/** Negative, zero or positive as a is before, at or after b. */
export function compare(a: Time, b: Time): number {
  if (small(a) && small(b)) return a.n * b.d - b.n * a.d;
  const left = BigInt(a.n) * BigInt(b.d);
  const right = BigInt(b.n) * BigInt(a.d);
  return left < right ? -1 : left > right ? 1 : 0;
}

/**
 * How many whole times b goes into a, rounded down.
 * @throws RangeError if b is zero.
 */
export function wholeTimes(a: Time, b: Time): number {
  const { n, d } = divide(a, b);
  const rest = BigInt(n) % BigInt(d);
  return Number((BigInt(n) - rest) / BigInt(d)) - (rest < 0n ? 1 : 0);
}

/** Whether a is a whole number of times b; b is not zero. */
export const isMultiple = (a: Time, b: Time): boolean => divide(a, b).d === 1;

/** Whether both are the same time (both are normalised, so parts decide). */
export const equal = (a: Time, b: Time): boolean => a.n === b.n && a.d === b.d;
export const isZero = (a: Time): boolean => a.n === 0;
export const isNegative = (a: Time): boolean => a.n < 0;
export const latest = (a: Time, b: Time): Time => (compare(a, b) >= 0 ? a : b);
export const earliest = (a: Time, b: Time): Time => (compare(a, b) <= 0 ? a : b);

/** The sum of all times given. */
export const sum = (times: Iterable<Time>): Time => {
  let total = ZERO;
  for (const t of times) total = add(total, t);
  return total;
};

/** "3/8", or "2" for a whole number; negative with a leading "-". */
export const format = (a: Time): string => (a.d === 1 ? `${a.n}` : `${a.n}/${a.d}`);

/** The time written by {@link format}; undefined if the text is none. */
export function parseTime(text: string): Time | undefined {
  const match = /^(-?\d+)(?:\/(\d+))?$/.exec(text);
  if (match === null) return undefined;
  const d = BigInt(match[2] ?? '1');
  return d === 0n ? undefined : fromBig(BigInt(match[1] ?? '0'), d);
}

/** For seconds and drawing only, where exactness ends. */
export const toNumber = (a: Time): number => Number(a.n) / Number(a.d);
