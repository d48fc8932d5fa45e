/** All that a tuner wants to know of a tuning, as data: what is printed, drawn and given to other programs. */
import { pitchText } from '../../grammar/vocabulary/pitches';
import { type Direction, directionOf, FIFTH, MAJOR_THIRD, MINOR_THIRD } from './beats';
import { fifthName, noteName, placeOf } from './fifths';
import { type KeyColour, keyColours } from './keyColours';
import { layAgain, layBearings, type Retuned, retunings, type Step } from './laying';
import { NOTES } from './temperament';
import { inWords } from './tempering';
import {
  centsFromA,
  centsFromC,
  everyInterval,
  frequencyOf,
  type Interval,
  offset,
  pitchFrom,
  placesIn,
  type Tuning,
} from './tuning';

export interface TuningSheet {
  readonly schema: 'bentside.tuning/1';
  readonly temperament: string;
  readonly title: string;
  /** What is doubtful in it; "" if nothing. */
  readonly note: string;
  /** Frequency of a4 in hertz. */
  readonly pitch: number;
  /** From c upwards; of a divided key both notes. */
  readonly notes: readonly SheetNote[];
  /** Upon each of the twelve notes, from the flattest; the last closes the circle. */
  readonly fifths: readonly SheetFifth[];
  readonly majorThirds: readonly SheetInterval[];
  readonly minorThirds: readonly SheetInterval[];
  readonly keys: readonly KeyColour[];
  /** The bearings in their order, with what proves them. */
  readonly steps: readonly SheetStep[];
  /** What moves where another tuning goes before. */
  readonly retuning: Retuning | null;
  readonly cautions: readonly string[];
}

export interface SheetNote {
  readonly note: string;
  /** Cents above c, and above a. */
  readonly fromC: number;
  readonly fromA: number;
  /** Cents above equal temperament on the same a. */
  readonly offset: number;
  /** In hertz, in the octave from c4. */
  readonly frequency: number;
}

export interface SheetInterval {
  /** `c-e`; both notes as they are called. */
  readonly interval: string;
  /** Cents by which it is wider than pure. */
  readonly width: number;
  /** A second, in the octave from f3, without sign. */
  readonly beats: number;
  readonly direction: Direction;
}

export interface SheetFifth extends SheetInterval {
  /** In parts of commas: `-1/4 sc`. */
  readonly tempering: string;
}

export interface SheetStep {
  /** `f3-a3`. */
  readonly interval: string;
  readonly beats: number;
  readonly direction: Direction;
  readonly width: number;
  /** `fifth`, `fourth`, `octave`, `major third`. */
  readonly kind: string;
  /** The note that is set; null where what stands is only proved. */
  readonly tunes: string | null;
  /** Frequencies of the lower and of the upper note. */
  readonly hertz: readonly [number, number];
  /** The partials that meet and beat: of the lower note and of the upper one. */
  readonly partials: readonly [number, number];
}

export interface Retuning {
  readonly from: string;
  readonly fromPitch: number;
  readonly notes: readonly { readonly note: string; readonly was: string; readonly cents: number }[];
  readonly steps: readonly SheetStep[];
}

/** What stands beside every advice to retune. */
export const TUNING_CAUTIONS: readonly string[] = [
  'Every change of pitch or temperament changes the tension of the strings. A string drawn above the pitch for which it was made can break and hurt whoever stands near: keep face and eyes away, and let a string down before you draw it up.',
  'A great change of the whole can warp or crack an instrument. Which pitch yours bears, its maker or a professional tuner knows; follow them rather than this sheet, and leave an old instrument to its conservator.',
  'Turn a pin by small strokes of the arm and rest the hands; if they hurt, stop, and ask a doctor or a physiotherapist if they go on hurting.',
];

/** Cents by which no string should rise without a question: a quarter of a tone. */
const MUCH = 50;

/** What stands before all others where strings rise much. */
function cautionsOf(found: Retuning | null): readonly string[] {
  const highest = Math.max(0, ...(found?.notes ?? []).map(({ cents }) => cents));
  if (highest <= MUCH) return TUNING_CAUTIONS;
  const rise = `Here strings rise by as much as ${Math.round(highest)} cents: ask the maker of the instrument or a professional tuner first whether they and it bear that.`;
  return [rise, ...TUNING_CAUTIONS];
}

/** The lowest keys of the octaves for which frequencies and beats are given: c4, and f3 where temperaments are laid. */
const FROM_C4 = 60;
const FROM_F3 = 53;

const rounded = (value: number, places: number): number => {
  const found = Math.round(value * 10 ** places) / 10 ** places;
  return found === 0 ? 0 : found;
};

/** @param before the tuning from which the instrument comes */
export function sheetOf(tuning: Tuning, before?: Tuning): TuningSheet {
  const { temperament, pitch } = tuning;
  const retuning = before === undefined ? null : retuningOf(before, tuning);
  return {
    schema: 'bentside.tuning/1',
    temperament: temperament.name,
    title: temperament.title,
    note: temperament.note ?? '',
    pitch: rounded(pitch, 3),
    notes: notesOf(tuning),
    fifths: fifthsOf(tuning),
    majorThirds: everyInterval(tuning, MAJOR_THIRD, FROM_F3).map(sheetInterval),
    minorThirds: everyInterval(tuning, MINOR_THIRD, FROM_F3).map(sheetInterval),
    keys: keyColours(tuning).map(sheetKey),
    steps: layBearings(tuning).map((step) => sheetStep(tuning, step)),
    retuning,
    cautions: cautionsOf(retuning),
  };
}

const notesOf = (tuning: Tuning): SheetNote[] =>
  placesIn(tuning)
    .map((place) => ({
      note: noteName(place),
      fromC: rounded(centsFromC(tuning, place), 3),
      fromA: rounded(centsFromA(tuning, place), 3),
      offset: rounded(offset(tuning, place), 3),
      frequency: rounded(frequencyOf(tuning, pitchFrom(FROM_C4, place)), 3),
    }))
    .sort((a, b) => a.frequency - b.frequency);

/** Of a divided key the note that belongs to the circle. */
function fifthsOf({ temperament, pitch }: Tuning): SheetFifth[] {
  const { first, fifths } = temperament;
  const heard = everyInterval({ temperament, pitch, more: [] }, FIFTH, FROM_F3);
  return fifths.map((tempering, index) => ({
    ...sheetInterval(heard[index] as Interval),
    interval: index === NOTES - 1 ? fifthName(first + index, first) : fifthName(first + index),
    tempering: inWords(tempering),
  }));
}

const sheetInterval = ({ low, high, width, beats }: Interval): SheetInterval => ({
  interval: `${noteName(placeOf(low))}-${noteName(placeOf(high))}`,
  width: rounded(width, 3),
  beats: rounded(Math.abs(beats), 2),
  direction: directionOf(beats),
});

const sheetKey = (key: KeyColour): KeyColour => ({
  ...key,
  third: rounded(key.third, 2),
  fifth: rounded(key.fifth, 2),
  unrest: rounded(key.unrest, 2),
});

const sheetStep = (tuning: Tuning, { interval, low, high, beats, direction, width, kind, tunes }: Step): SheetStep => ({
  interval,
  beats: rounded(beats, 2),
  direction,
  width: rounded(width, 2),
  kind: kind.name,
  tunes: tunes === undefined ? null : pitchText(tunes),
  hertz: [rounded(frequencyOf(tuning, low), 3), rounded(frequencyOf(tuning, high), 3)],
  partials: [kind.lower, kind.upper],
});

function retuningOf(before: Tuning, after: Tuning): Retuning {
  const moved = retunings(before, after);
  return {
    from: before.temperament.name,
    fromPitch: rounded(before.pitch, 3),
    notes: moved.map(({ from, to, cents }: Retuned) => ({
      note: noteName(to),
      was: noteName(from),
      cents: rounded(cents, 1),
    })),
    steps: layAgain(after, moved).map((step) => sheetStep(after, step)),
  };
}
