/** How far a fifth is from pure: exact parts of commas, and cents where it was given by what the ear hears. */
import { add, format, multiply, subtract, type Time, time, toNumber, ZERO } from '../../grammar/time';

/** An exact number: what times are made of serves for parts of commas too. */
export type Fraction = Time;

/** Narrow is negative. */
export interface Tempering {
  /** Parts of the syntonic comma, 81/80. */
  readonly sc: Fraction;
  /** Parts of the Pythagorean comma, by which twelve pure fifths are more than seven octaves. */
  readonly pc: Fraction;
  /** What is no part of a comma, since it was told in beats. */
  readonly cents: number;
}

const centsOf = (ratio: number): number => 1200 * Math.log2(ratio);

/** In cents. */
export const SYNTONIC_COMMA = centsOf(81 / 80);
export const PYTHAGOREAN_COMMA = centsOf(531441 / 524288);
export const PURE_FIFTH = centsOf(3 / 2);
export const PURE_MAJOR_THIRD = centsOf(5 / 4);

export const PURE: Tempering = { sc: ZERO, pc: ZERO, cents: 0 };

export const tempered = (parts: Partial<Tempering>): Tempering => ({ ...PURE, ...parts });

/** What twelve fifths must lack together, so that they come to seven octaves. */
export const CIRCLE = tempered({ pc: time(-1) });

export const plus = (a: Tempering, b: Tempering): Tempering => ({
  sc: add(a.sc, b.sc),
  pc: add(a.pc, b.pc),
  cents: a.cents + b.cents,
});

export const minus = (a: Tempering, b: Tempering): Tempering => ({
  sc: subtract(a.sc, b.sc),
  pc: subtract(a.pc, b.pc),
  cents: a.cents - b.cents,
});

export const times = (n: number, { sc, pc, cents }: Tempering): Tempering => ({
  sc: multiply(time(n), sc),
  pc: multiply(time(n), pc),
  cents: n * cents,
});

export const sumOf = (all: readonly Tempering[]): Tempering => all.reduce(plus, PURE);

/** In cents. */
export const size = ({ sc, pc, cents }: Tempering): number =>
  toNumber(sc) * SYNTONIC_COMMA + toNumber(pc) * PYTHAGOREAN_COMMA + cents;

/** Cents nearer than this are the same to every ear and every table. */
export const AS_GOOD_AS_NOTHING = 0.0005;

/** One part of one comma. */
export function partOf(comma: 'sc' | 'pc', sign: '' | '+' | '-', n: number, d: number): Tempering {
  const part = time(sign === '-' ? -n : n, d);
  return tempered(comma === 'sc' ? { sc: part } : { pc: part });
}

/** What is typed as `-1/4 pc` or `+7/8 sc -1/2 pc`. */
export const temperingFrom = (text: string): Tempering =>
  sumOf(
    [...text.matchAll(/([+-])(\d+)(?:\/(\d+))? (sc|pc)/g)].map(([, sign, n, d = '1', comma]) =>
      partOf(comma as 'sc' | 'pc', sign as '+' | '-', Number(n), Number(d)),
    ),
  );

/** As it is typed, `-1/4 sc`; `pure`; in cents where it is no part of a comma. */
export function inWords({ sc, pc, cents }: Tempering): string {
  const parts = [sc, pc].flatMap((part, index) =>
    part.n === 0 ? [] : [`${signed(format(part))} ${index === 0 ? 'sc' : 'pc'}`],
  );
  if (Math.abs(cents) >= AS_GOOD_AS_NOTHING) parts.push(`${signed(cents.toFixed(3))} cents`);
  return parts.length === 0 ? 'pure' : parts.join(' ');
}

const signed = (text: string): string => (text.startsWith('-') ? text : `+${text}`);
