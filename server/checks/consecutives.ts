/**
 * Consecutive perfect fifths, octaves and unisons between two voices (common practice of counterpoint).
 *
 * Both voices go the same way from one perfect interval to the next of its kind, either at once or from beat to beat with
 * other notes between. A passage in octaves is doubling, not an oversight.
 */
import { beatIn, type Passage } from './lines';
import { noteName } from './pitches';
import type { Line, LineBar, Sounding } from './sounding';
import { alongPassages, type Facts, type Look, problemIn, type SystemProblem } from './systems';

/** Two voices at a moment. */
interface Pair {
  readonly upper: Sounding;
  readonly lower: Sounding;
}

interface Move {
  readonly from: Pair;
  readonly to: Pair;
}

type Kind = 'fifths' | 'octaves' | 'unisons';

/** The perfect interval of two notes: where the voices have crossed it counts from the other. */
function kindOf(upper: Sounding, lower: Sounding): Kind | undefined {
  const semitones = Math.abs(upper.midi - lower.midi);
  const steps = Math.abs(upper.step - lower.step);
  if (semitones === 0 && steps === 0) return 'unisons';
  if (semitones % 12 === 0 && steps % 7 === 0) return 'octaves';
  return semitones % 12 === 7 && steps % 7 === 4 ? 'fifths' : undefined;
}

/** Whether two voices go the same way between perfect intervals of one kind, uncrossed or crossed before and after. */
function isParallel(upperFrom: Sounding, lowerFrom: Sounding, upper: Sounding, lower: Sounding): boolean {
  const rise = upper.midi - upperFrom.midi;
  if (rise === 0 || Math.sign(rise) !== Math.sign(lower.midi - lowerFrom.midi)) return false;
  const kind = kindOf(upper, lower);
  return (
    kind !== undefined &&
    kind === kindOf(upperFrom, lowerFrom) &&
    upper.midi < lower.midi === upperFrom.midi < lowerFrom.midi
  );
}

const follows = (before: Sounding, note: Sounding): boolean => before === note || before.end === note.onset;

/** With more notes between two beats the ear no longer joins them. */
const MOST_BETWEEN = 3;
/** So many octaves one after another are meant. */
const DOUBLING = 4;

/** Goes along two voices from moment to moment; a silence of either begins a new run. */
class Duet {
  readonly moves: Move[] = [];
  /** The moment before in this run, and its number. */
  private upper: Sounding | undefined;
  private lower: Sounding | undefined;
  private index = 0;
  /** The last beat of this run that both strike. */
  private beat: (Pair & { readonly index: number }) | undefined;
  /** Moves each of which goes on from the one before. */
  private chain: Move[] = [];

  constructor(private readonly passage: Passage) {}

  /** The moves of two lines from each moment to the next, and from each beat that both strike to the next such. */
  movesOf(highs: Line, lows: Line): readonly Move[] {
    let [h, l] = [0, 0];
    while (h < highs.length && l < lows.length) {
      const [high, low] = [highs[h] as Sounding, lows[l] as Sounding];
      const onset = Math.max(high.onset, low.onset);
      if (onset < high.end && onset < low.end) this.moment(high, low);
      if (high.end <= low.end) h++;
      if (low.end <= high.end) l++;
    }
    this.endChain();
    return this.moves;
  }

  private moment(upper: Sounding, lower: Sounding): void {
    const { upper: upperBefore, lower: lowerBefore } = this;
    if (upperBefore === undefined || lowerBefore === undefined) this.index = 0;
    else if (follows(upperBefore, upper) && follows(lowerBefore, lower)) this.index++;
    else this.beginRun();
    if (upper.onset === lower.onset) this.stroke(upper, lower);
    this.upper = upper;
    this.lower = lower;
  }

  private beginRun(): void {
    this.endChain();
    this.index = 0;
    this.beat = undefined;
  }

  /** Both strike. */
  private stroke(upper: Sounding, lower: Sounding): void {
    const { beat, index } = this;
    const [upperBefore, lowerBefore] = [this.upper, this.lower];
    const place = beatIn(this.passage, upper);
    const isOnBeat = place !== undefined && Number.isInteger(place);
    if (index > 0 && upperBefore && lowerBefore && isParallel(upperBefore, lowerBefore, upper, lower))
      this.move({ upper: upperBefore, lower: lowerBefore }, { upper, lower });
    else if (isOnBeat && beat !== undefined && isParallel(beat.upper, beat.lower, upper, lower)) {
      // A beat or a minim on at most.
      const isNear = upper.onset - beat.upper.onset <= Math.max(upper.bar.beat, this.passage.unit / 2);
      if (isNear && index - beat.index <= MOST_BETWEEN + 1) this.move(beat, { upper, lower });
    }
    if (isOnBeat) this.beat = { upper, lower, index };
  }

  private move(from: Pair, to: Pair): void {
    const last = this.chain.at(-1)?.to;
    if (last !== undefined && (last.upper !== from.upper || last.lower !== from.lower)) this.endChain();
    this.chain.push({ from, to });
  }

  /** A chain of octaves or unisons is left out. */
  private endChain(): void {
    const { chain } = this;
    const isDoubling =
      chain.length + 1 >= DOUBLING && chain.every(({ to: { upper, lower } }) => kindOf(upper, lower) !== 'fifths');
    if (!isDoubling) for (const move of chain) this.moves.push(move);
    if (chain.length > 0) this.chain = [];
  }
}

const moved = (before: Sounding, after: Sounding): string => `${noteName(before.member)}-${noteName(after.member)}`;

function told({ voices }: Facts, { from, to }: Move): SystemProblem {
  return problemIn({
    code: 'consecutive-perfects',
    at: to.upper.member.source,
    slots: {
      kind: kindOf(to.upper, to.lower) ?? '',
      upper: voices[to.upper.voice] ?? '',
      lower: voices[to.lower.voice] ?? '',
      above: moved(from.upper, to.upper),
      below: moved(from.lower, to.lower),
    },
    bars: [laterBar(from), to.upper.bar],
    related: {
      message: `${noteName(to.lower.member)} in ${voices[to.lower.voice] ?? ''}`,
      source: to.lower.member.source,
      // In a bar that is too long the lower note may sound on from the system before.
      system: to.lower.bar.system,
    },
  });
}

/** The bar in which a pair sounds first. */
const laterBar = ({ upper, lower }: Pair): LineBar => (upper.onset >= lower.onset ? upper.bar : lower.bar);

/** What lies before the passage was told there. */
const isToldHere = ({ from, to }: Move): boolean => to.upper.bar.own && laterBar(from).strain === to.upper.bar.strain;

/** More voices than hands could play are no texture in which anyone hears two of them; each would be set beside all others. */
const MOST_VOICES = 24;

export const consecutives: Look = alongPassages((passage, facts) => {
  const problems: SystemProblem[] = [];
  if (passage.melodies.length > MOST_VOICES) return problems;
  for (const [index, upper] of passage.melodies.entries()) {
    for (const lower of passage.melodies.slice(index + 1)) {
      for (const move of new Duet(passage).movesOf(upper, lower))
        if (isToldHere(move)) problems.push(told(facts, move));
    }
  }
  return problems;
});
