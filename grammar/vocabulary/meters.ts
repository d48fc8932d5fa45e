/**
 * Meter signs and the bar that each usually means.
 *
 * Sources: C and cut C, Quantz, Versuch, 1752, chapter V, section 13; 3/1, section 14; the signs 2, 3, 3/2, 3/4, 6/4,
 * 3/8, 6/8, 9/8, 12/8, Hotteterre, L'Art de préluder, 1719. O is the perfect tempus of three semibreves (from memory).
 */
export interface MeterSign {
  /** Beats in a bar and the part of a semibreve that each is: a bar of `beats`/`beatValue` semibreves. */
  readonly beats: number;
  readonly beatValue: number;
  readonly describe: string;
}

/** Signs that are no fraction. */
export const meterSigns: Readonly<Record<string, MeterSign>> = {
  C: { beats: 4, beatValue: 4, describe: 'common time: four crotchets' },
  'cut-C': { beats: 2, beatValue: 2, describe: 'cut time: two minims' },
  O: { beats: 3, beatValue: 1, describe: 'perfect time: three semibreves' },
  '2': { beats: 2, beatValue: 2, describe: 'two quick minims' },
  '3': { beats: 3, beatValue: 4, describe: 'three crotchets' },
  '3/2': { beats: 3, beatValue: 2, describe: 'three slow minims' },
  '3/1': { beats: 3, beatValue: 1, describe: 'three semibreves' },
  '3/4': { beats: 3, beatValue: 4, describe: 'three crotchets' },
  '3/8': { beats: 3, beatValue: 8, describe: 'three quavers' },
  '6/4': { beats: 6, beatValue: 4, describe: 'six crotchets' },
  '6/8': { beats: 6, beatValue: 8, describe: 'six quavers' },
  '9/8': { beats: 9, beatValue: 8, describe: 'nine quavers' },
  '12/8': { beats: 12, beatValue: 8, describe: 'twelve quavers' },
  '2/4': { beats: 2, beatValue: 4, describe: 'two crotchets' },
  '4/8': { beats: 4, beatValue: 8, describe: 'four quavers' },
};

/** Most beats in a bar. */
export const MOST_BEATS = 99;
/** The smallest part of a semibreve that can be a beat. */
export const SMALLEST_BEAT = 128;

/** Whether a bar can be `n` of the `d`th part of a semibreve. */
export const possibleMeter = (n: number, d: number): boolean =>
  Number.isInteger(n) && n >= 1 && n <= MOST_BEATS && isBeatValue(d);

/** Whether `d` names a written value: 1, 2, 4 … 128. */
export const isBeatValue = (d: number): boolean => d >= 1 && d <= SMALLEST_BEAT && Number.isInteger(Math.log2(d));

const fraction = /^(\d{1,3})\/(\d{1,3})$/;

/** The usual meaning of a meter sign; a fraction not in the table is read as it stands. Undefined where there is none. */
export function meterOf(sign: string): MeterSign | undefined {
  if (Object.hasOwn(meterSigns, sign)) return meterSigns[sign];
  const match = fraction.exec(sign);
  const [beats, beatValue] = [Number(match?.[1]), Number(match?.[2])];
  return possibleMeter(beats, beatValue) ? { beats, beatValue, describe: `${beats}/${beatValue}` } : undefined;
}
