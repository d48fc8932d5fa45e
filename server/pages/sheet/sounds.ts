/** What the buttons of a teaching sheet sound, as data in the page. */
import { type Time, time } from '../../../grammar/time';
import type { Stroke } from '../../sound/mix';

/** By the name on the button: the strings plucked, at each of `PACES`. */
export type SheetSounds = Readonly<Record<string, readonly (readonly PluckedString[])[]>>;

/** A string in hertz and milliseconds from the beginning: `[415, 0, 480]`. */
export type PluckedString = readonly [frequency: number, at: number, until: number];

/** At which part of the tempo a sheet can be heard: slower, signs have more strokes. */
export const PACES: readonly { readonly pace: Time; readonly says: string }[] = [
  { pace: time(1), says: 'in tempo' },
  { pace: time(3, 4), says: 'at three quarters' },
  { pace: time(1, 2), says: 'at half' },
];

export const pluckedString = ({ frequency, at, until }: Stroke): PluckedString => [
  Number(frequency.toFixed(2)),
  Math.round(at * 1000),
  Math.round(until * 1000),
];
