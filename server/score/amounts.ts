/** Durations in the trade's words. */
import { divide, equal, format, multiply, type Time, time } from '../../grammar/time';
import type { ValueForm } from '../../grammar/tree';

/** Values by their part of a semibreve, one and several of them. */
export const valueNames: readonly (readonly [number, string, string])[] = [
  [1, 'semibreve', 'semibreves'],
  [2, 'minim', 'minims'],
  [4, 'crotchet', 'crotchets'],
  [8, 'quaver', 'quavers'],
  [16, 'semiquaver', 'semiquavers'],
  [32, 'demisemiquaver', 'demisemiquavers'],
  [64, 'hemidemisemiquaver', 'hemidemisemiquavers'],
  [128, 'semihemidemisemiquaver', 'semihemidemisemiquavers'],
];

/** Every value with a name, from the longest: one and several of them. */
const named: readonly { readonly length: Time; readonly one: string; readonly several: string }[] = [
  { length: time(8), one: 'maxima', several: 'maximae' },
  { length: time(4), one: 'longa', several: 'longae' },
  { length: time(2), one: 'breve', several: 'breves' },
  ...valueNames.map(([parts, one, several]) => ({ length: time(1, parts), one, several })),
];

/** "crotchet"; undefined if a length is no value that has a name. */
export const valueName = (base: Time): string | undefined => named.find(({ length }) => equal(length, base))?.one;

const DOTS = ['', 'dotted ', 'double-dotted ', 'triple-dotted '];

/** "dotted ", to stand before the name of a value; "" where there are none. */
export const dotsInWords = (dots: number): string => DOTS[dots] ?? `${dots} dots `;

/** "1 file", "3 files". */
export const howMany = (count: number, one: string, several: string): string =>
  `${count} ${count === 1 ? one : several}`;

/** "dotted crotchets", "breves"; a value without a name as a part of a semibreve. */
export function valuesInWords({ base, dots }: Pick<ValueForm, 'base' | 'dots'>): string {
  const several = named.find(({ length }) => equal(length, base))?.several;
  return `${dotsInWords(dots)}${several ?? `times ${format(base)}`}`;
}

/** The largest value of which both times are whole multiples, not larger than a crotchet. */
function unitOf(a: Time, b: Time): readonly [number, string, string] | undefined {
  return valueNames.find(([d]) => d >= 4 && multiply(a, time(d)).d === 1 && multiply(b, time(d)).d === 1);
}

/** "7 quavers" beside a needed "8": both counted in one value; fractions of a semibreve where none fits. */
export function counted(have: Time, need: Time): { readonly have: string; readonly need: string } {
  const unit = unitOf(have, need);
  if (unit === undefined) return { have: `${format(have)} of a semibreve`, need: format(need) };
  const [d, one, many] = unit;
  const count = multiply(have, time(d));
  return { have: `${format(count)} ${count.n === 1 ? one : many}`, need: format(multiply(need, time(d))) };
}

/** "5 of 8 quavers": how much of a bar there is. */
export function portion(have: Time, whole: Time): string {
  const unit = unitOf(have, whole);
  const [d, one, many] = unit ?? [1, 'semibreve', 'semibreves'];
  const [part, all] = [multiply(have, time(d)), multiply(whole, time(d))];
  return `${format(part)} of ${format(all)} ${all.n === 1 ? one : many}`;
}

const intervals = [
  'a unison',
  'a second',
  'a third',
  'a fourth',
  'a fifth',
  'a sixth',
  'a seventh',
  'an octave',
  'a ninth',
  'a tenth',
  'an eleventh',
  'a twelfth',
  'a thirteenth',
  'a fourteenth',
  'two octaves',
];

/** "a seventh" for six degrees up or down. */
export const intervalOf = (degrees: number): string => intervals[Math.abs(degrees)] ?? 'more than two octaves';

const isPowerOfTwo = (n: number | bigint): boolean => Number.isInteger(Math.log2(Number(n)));

/** Whether a time is 2 to some power, of a semibreve. */
export const isBinary = ({ n, d }: Time): boolean =>
  n > 0 && (n === 1 || d === 1) && isPowerOfTwo(n) && isPowerOfTwo(d);

/** A share of a time, for counting units in a tuplet. */
export const share = (t: Time, parts: number): Time => divide(t, time(parts));
