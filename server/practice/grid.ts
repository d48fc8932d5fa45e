/** The metric grid of a bar: practices act on pairs and groups that belong to it, not on any neighbours. */
import { add, compare, isMultiple, multiply, subtract, type Time, time, wholeTimes } from '../../grammar/time';
import { isThreefold } from '../score/clock';
import { type Bar, isSpecial, type Meter, type Piece } from '../score/score';

export interface Grid {
  readonly bar: Bar;
  readonly meter: Meter;
  /** Where the bar would begin if it were whole: an upbeat ends a bar. */
  readonly start: Time;
  readonly end: Time;
  /** A beat of the meter, dotted in 6/4, 6/8, 9/8 and 12/8 (Hotteterre 1719). */
  readonly beat: Time;
  /** What a beat is divided into where it is threefold; else the beat itself. */
  readonly division: Time;
}

/** The grids of bars whose time is measured and known. */
export const gridsOf = ({ bars }: Piece): readonly Grid[] =>
  bars.flatMap((bar) => {
    const { meter, expected, onset, duration } = bar;
    if (meter === undefined || expected === undefined || bar.broken) return [];
    const end = add(onset, duration);
    const start = isUpbeat(bar, bars[bar.index - 1]) ? subtract(end, expected) : onset;
    return [{ bar, meter, start, end, ...beatsOf(meter) }];
  });

/** A short bar is an upbeat where the music begins or begins again; elsewhere it lacks its end. */
const isUpbeat = ({ duration, expected }: Bar, before: Bar | undefined): boolean =>
  expected !== undefined && compare(duration, expected) < 0 && (before === undefined || isSpecial(before.closing));

function beatsOf({ beats, beatValue }: Meter): Pick<Grid, 'beat' | 'division'> {
  const division = time(1, beatValue);
  return { beat: isThreefold({ beats }) ? multiply(division, time(3)) : division, division };
}

/** Whether a group that begins at a moment and lasts so long is one of the meter: it crosses no beat that it does not begin. */
export function isGroup({ start, end, beat, division, meter }: Grid, from: Time, length: Time): boolean {
  const place = subtract(from, start);
  const to = add(from, length);
  if (compare(to, end) > 0) return false;
  if (!isThreefold(meter)) return isMultiple(place, compare(length, beat) >= 0 ? beat : length);
  const nextBeat = multiply(beat, time(wholeTimes(place, beat) + 1));
  if (compare(to, add(start, nextBeat)) > 0) return false;
  return isMultiple(place, compare(length, division) >= 0 ? division : length);
}
