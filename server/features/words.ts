/** Times and places in a bar, in the trade's words. */
import { compare, equal, format, isZero, multiply, SEMIBREVE, type Time, time } from '../../grammar/time';
import type { ValueForm } from '../../grammar/tree';
import { dotsInWords, valueName } from '../score/amounts';
import type { Bar } from '../score/score';

/** "dotted crotchet", "quaver, 3 in the time of 2". */
export function valueInWords({ base, dots, proportion }: ValueForm): string {
  const ratio = proportion === undefined ? '' : `, ${proportion.n} in the time of ${proportion.m}`;
  return `${dotsInWords(dots)}${valueName(base) ?? format(base)}${ratio}`;
}

/** "1/4 of a semibreve", "1 semibreve", "5/2 semibreves". */
function semibreves(length: Time): string {
  if (compare(length, SEMIBREVE) < 0) return `${format(length)} of a semibreve`;
  return `${format(length)} ${equal(length, SEMIBREVE) ? 'semibreve' : 'semibreves'}`;
}

/** "bar 3, beat 2", "bar 3, beat 2 1/2"; without a meter "bar 3, at its beginning", "bar 3, after 1/4 of a semibreve". */
export function placeInWords({ number, meter }: Bar, inBar: Time): string {
  if (meter === undefined) return `bar ${number}, ${isZero(inBar) ? 'at its beginning' : `after ${semibreves(inBar)}`}`;
  const beats = multiply(inBar, time(meter.beatValue));
  const whole = Math.floor(Number(beats.n) / Number(beats.d));
  const rest = { n: Number(beats.n) - whole * Number(beats.d), d: beats.d };
  return `bar ${number}, beat ${whole + 1}${rest.n === 0 ? '' : ` ${rest.n}/${rest.d}`}`;
}

/** "0:07.5". */
export function clock(seconds: number): string {
  const tenths = Math.round(seconds * 10);
  const minutes = Math.floor(tenths / 600);
  const rest = ((tenths % 600) / 10).toFixed(1).replace(/\.0$/, '');
  return `${minutes}:${rest.padStart(rest.includes('.') ? 4 : 2, '0')}`;
}
