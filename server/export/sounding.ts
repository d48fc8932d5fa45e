/** What sounds of a score, piece after piece in playing time: for formats that are heard. */
import { add, compare, format, latest, subtract, type Time, ZERO } from '../../grammar/time';
import { openingOf } from '../readings/perform';
import { statedTuningOf, tuningWished } from '../readings/tunings';
import { unfolded } from '../readings/unfold';
import { type Clock, Clocks, endOf, type From, type Opening } from '../score/clock';
import type { PerformedEvent, PerformedPiece, SoundingPitch } from '../score/performance';
import type { Pass } from '../score/playing';
import type { Bar, Meter, Piece, PlacedProblem, Score } from '../score/score';
import { type Flow, flowOf } from '../score/unmeasured';
import { changesOf, placeOfEvent } from '../score/walk';
import { USUAL_PITCH } from '../tuning/standards';
import type { Tuning } from '../tuning/tuning';
import type { ExportOptions } from './formats';
import { Losses, NOWHERE } from './losses';
import { type Measure, measuresFor, problemsWithin } from './measures';
import { performedIn } from './ornaments';

/** A note with the time in which it sounds, in semibreves from the start of its piece as it is played. */
export interface SoundingNote {
  readonly pitch: SoundingPitch;
  readonly onset: Time;
  /** Until its key comes up. */
  readonly duration: Time;
  /** Index in `Environment.voices`. */
  readonly voice: number;
  readonly event: PerformedEvent;
}

export interface SoundingPiece {
  readonly piece: Piece;
  /** By onset. */
  readonly notes: readonly SoundingNote[];
  readonly passes: readonly Pass[];
  readonly duration: Time;
  /** By the moment of playing; the first holds from the beginning. */
  readonly tempi: readonly From<Clock>[];
  readonly meters: readonly From<Meter>[];
}

/** What sounds of a score, and how its instrument is tuned. */
export interface Heard {
  readonly pieces: readonly SoundingPiece[];
  readonly tuning: Tuning;
}

/**
 * What sounds; undefined where the score is refused, which a problem says. Repeats are played out unless bars are named.
 * @param performance as a rule what the reading plays
 */
export function soundingOf(
  score: Score,
  options: ExportOptions,
  performance = performedIn(score, options),
): { readonly heard: Heard | undefined; readonly problems: readonly PlacedProblem[] } {
  const losses = new Losses(score.pieces);
  const told = problemsWithin(performance.problems, score, options);
  const measures = measuresFor(score, options, losses);
  if (measures === undefined) return { heard: undefined, problems: [...told, ...losses.problems()] };
  const asWritten = options.bars !== undefined || options.repeats === 'written';
  const played = asWritten ? performance : unfolded(performance);
  const pieces = played.pieces.flatMap((one) => sounding(one, measures, openingOf(score, options), score) ?? []);
  const { tuning, isUnknown } = tuningWished(score.environment, score.choice.name, options.tuning);
  if (isUnknown) losses.add('export-unknown-tuning', { tuning: options.tuning ?? '' }, NOWHERE);
  tellAssumed(score, options, pieces, losses);
  return { heard: { pieces, tuning }, problems: [...told, ...losses.problems()] };
}

/** Names what nobody has stated. */
function tellAssumed(
  { environment, choice }: Score,
  { tuning }: ExportOptions,
  pieces: readonly SoundingPiece[],
  losses: Losses,
): void {
  const tempo = pieces.flatMap(({ tempi }) => tempi).find(({ what }) => what.assumed);
  const assumed = [
    ...(tempo === undefined ? [] : [tempo.what.words]),
    ...(environment.pitch === undefined ? [`a4 = ${USUAL_PITCH}`] : []),
    ...(tuning === undefined && statedTuningOf(environment, choice.name) === undefined ? ['equal temperament'] : []),
  ];
  if (assumed.length > 0) losses.add('export-sound-assumed', { assumed: assumed.join(', ') }, NOWHERE);
}

function sounding(
  performed: PerformedPiece,
  all: readonly Measure[],
  opening: Opening,
  { pieces: [firstPiece] }: Score,
): SoundingPiece | undefined {
  const { piece } = performed;
  const measures = all.filter((measure) => measure.piece === piece);
  const [first] = measures;
  if (first === undefined) return undefined;
  const passes = performed.passes ?? [passOver(measures)];
  const last = passes.at(-1);
  // Endings may be numbered so that none of them is ever reached.
  if (last === undefined) return undefined;
  const sound = new Set(measures.filter(({ broken }) => !broken).map(({ bar }) => bar));
  // In the order of the source, times count from the first bar wanted.
  const start = performed.passes === undefined ? first.bar.onset : ZERO;
  const flow = flowOf(piece, opening.pace);
  const clocks = new Clocks(piece, opening, piece === firstPiece, flow.clocks);
  return {
    piece,
    notes: performed.events.flatMap((event) => noteOf(event, start, sound, flow)),
    passes,
    duration: add(last.onset, lengthOf(last)),
    tempi: alongPasses(passes, {
      moments: clocks.tempi().map(({ onset }) => onset),
      at: (onset) => clocks.at(onset),
      key: ({ perSecond }) => format(perSecond),
    }),
    meters: alongPasses(passes, {
      moments: meterChangesIn(piece),
      at: meterAt,
      key: ({ sign, beats, beatValue }) => `${sign} ${beats}/${beatValue}`,
    }),
  };
}

/** Bars that are wanted, one after another as they stand. */
const passOver = ([first, ...others]: readonly Measure[]): Pass => ({
  section: undefined,
  time: 1,
  bars: [(first as Measure).bar, ...others.map(({ bar }) => bar)],
  onset: ZERO,
});

const lengthOf = ({ bars }: Pass): Time => subtract(endOf(bars.at(-1) ?? bars[0]), bars[0].onset);

const meterAt = (at: Time, { bars }: Pass): Meter | undefined => bars.find((bar) => compare(endOf(bar), at) > 0)?.meter;

const meterChangesIn = (piece: Piece): Time[] =>
  [...changesOf(piece)].filter(({ change }) => change.meter !== undefined).map(({ onset }) => onset);

function noteOf(event: PerformedEvent, start: Time, sound: ReadonlySet<Bar>, { held }: Flow): SoundingNote[] {
  const { pitch, voice, released = ZERO } = event;
  const [{ placed: first }] = event.from;
  // In unmeasured music a drawn tenue says how long a string sounds.
  const until = event.realised === undefined ? held.get(placeOfEvent(first)) : undefined;
  const duration = until === undefined ? event.duration : latest(event.duration, subtract(until, first.onset));
  const sounds = event.from.every(({ placed }) => sound.has(placed.bar));
  if (pitch === undefined || !sounds || compare(duration, released) <= 0) return [];
  return [{ pitch, voice, event, onset: subtract(event.onset, start), duration: subtract(duration, released) }];
}

interface Along<What> {
  /** Of the source: when it may change. */
  readonly moments: readonly Time[];
  /** What holds at a moment of the source. */
  readonly at: (onset: Time, pass: Pass) => What | undefined;
  /** Says whether two are the same. */
  readonly key: (what: What) => string;
}

/** What holds along the passes: at the beginning of each and wherever it changes within, told only where it becomes another. */
function alongPasses<What>(passes: readonly Pass[], along: Along<What>): readonly From<What>[] {
  const moments = [...along.moments].sort(compare);
  const found: From<What>[] = [];
  let last: string | undefined;
  for (const pass of passes) {
    const [{ onset: first }] = pass.bars;
    const end = add(first, lengthOf(pass));
    const within = moments.filter((onset) => compare(onset, first) > 0 && compare(onset, end) < 0);
    for (const onset of [first, ...within]) {
      const what = along.at(onset, pass);
      const key = what && along.key(what);
      if (what === undefined || key === last) continue;
      last = key;
      found.push({ onset: add(pass.onset, subtract(onset, first)), what });
    }
  }
  return found;
}
