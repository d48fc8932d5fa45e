/** Chords whose notes are struck one after another. */
import { add, compare, divide, earliest, multiply, type Time, time } from '../../grammar/time';
import type { RecipePhrase } from '../../grammar/tree';
import { type Clock, partOf, secondsOf } from '../score/clock';
import type { PerformedEvent, Realised, SoundingPitch } from '../score/performance';
import { degreeOf } from './degrees';
import type { Pieces } from './pieces';
import { SHORTEST_STROKE } from './place';

/** Seconds: the whole of a spreading, of a final chord; from note to note, with others in passing, in an upbeat. Common practice. */
const SPREAD = { whole: 0.35, final: 0.6, gap: 0.07, filled: 0.09, inUpbeat: 0.03 } as const;
/** Seconds below which a third is struck plain, with nothing in passing. Common practice. */
export const SHORTEST_FILLED = 0.25;

export interface Spreading {
  /** Of one chord, over several staves perhaps. */
  readonly notes: readonly PerformedEvent[];
  readonly how: NonNullable<RecipePhrase['spread']>;
  readonly clock: Clock;
  /** Nothing comes after it. */
  readonly final: boolean;
  /** A last short chord before a barline, or a short one after a dot. */
  readonly upbeat: boolean;
  readonly realised: Realised;
  /** The note between two others: the auxiliary above the lower one. */
  between(lower: PerformedEvent): SoundingPitch;
  /** In print values are multiples of this. */
  readonly grid: Time | undefined;
}

/** A note in its turn, perhaps one that is not in the chord. */
interface Struck {
  readonly event: PerformedEvent;
  readonly passing: SoundingPitch | undefined;
}

/** Strikes the notes in turn; each is held, those in passing are released as the next is struck. */
export function spread(spreading: Spreading, pieces: Pieces): void {
  const series = seriesOf(spreading);
  const gap = gapOf(spreading, series.length);
  const begun = new Set<number>();
  series.forEach(({ event, passing }, index) => {
    const late = multiply(gap, time(index));
    const { realised } = spreading;
    const onset = add(event.onset, late);
    if (passing !== undefined) pieces.addBeside(event, { pitch: passing, onset, duration: gap, realised });
    else {
      pieces.delay(event, late, realised, !begun.has(event.voice));
      begun.add(event.voice);
    }
  });
}

const key = ({ pitch }: PerformedEvent): number => pitch?.midi ?? 0;

function seriesOf({ notes, how, between }: Spreading): Struck[] {
  const rising = [...notes].sort((a, b) => key(a) - key(b));
  const series = rising.flatMap((event, index): Struck[] => {
    const next = rising[index + 1];
    const fills = how.filled && isThird(event.pitch, next?.pitch);
    return [{ event, passing: undefined }, ...(fills ? [{ event, passing: between(event) }] : [])];
  });
  return how.direction === 'up' ? series : series.reverse();
}

const isThird = (lower: SoundingPitch | undefined, upper: SoundingPitch | undefined): boolean =>
  lower !== undefined && upper !== undefined && degreeOf(upper) - degreeOf(lower) === 2;

/**
 * From note to note: the whole takes no more than a quarter of the chord; beside notes in passing each has an eighth, but at
 * least a stroke, at most what is usual. In print it is the smallest value, or less where the chord is short.
 */
function gapOf({ notes, how, clock, final, upbeat, grid }: Spreading, count: number): Time {
  const length = notes.map(({ duration }) => duration).reduce(earliest);
  const gaps = count - 1;
  if (grid !== undefined) return fitting(grid, divide(length, time(2 * gaps)));
  if (how.filled) {
    const passing = Math.min(SPREAD.filled, Math.max(SHORTEST_STROKE, secondsOf(clock, length) / 8));
    return partOf(clock, length, passing, 2 * gaps);
  }
  const whole = final ? SPREAD.final : SPREAD.whole;
  return partOf(clock, length, Math.min(upbeat ? SPREAD.inUpbeat : SPREAD.gap, whole / gaps), 4 * gaps);
}

/** Halved until it is no longer than so much. */
const fitting = (value: Time, most: Time): Time =>
  compare(value, most) <= 0 ? value : fitting(divide(value, time(2)), most);
