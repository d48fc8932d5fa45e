/**
 * Consecutive perfect fifths, octaves and unisons between two voices (common practice of counterpoint).
 *
 * Both voices go the same way from one perfect interval to the next of its kind, either at once or from beat to beat with
 * other notes between. A passage in octaves is doubling, not an oversight.
 */
import { compare, equal, latest, subtract, type Time, time } from '../../grammar/time';
import { beatIn, isParted, type Line, melodiesOver, noteName, positionOf, type Sounding } from './lines';
import { overSystems, problemIn, type SystemProblem, type View } from './systems';

/** Two voices at a moment at which one of them strikes. */
interface Pair {
  readonly upper: Sounding;
  readonly lower: Sounding;
  readonly onset: Time;
  /** Both are struck. */
  readonly common: boolean;
}

/** The moments of two voices, in runs that no silence of either interrupts. */
function runsOf(upper: Line, lower: Line): Pair[][] {
  const runs: Pair[][] = [];
  let [u, l] = [0, 0];
  for (let [high, low] = [upper[u], lower[l]]; high !== undefined && low !== undefined; ) {
    const onset = latest(high.onset, low.onset);
    if (compare(onset, high.end) < 0 && compare(onset, low.end) < 0) {
      const last = runs.at(-1)?.at(-1);
      const pair = { upper: high, lower: low, onset, common: equal(high.onset, low.onset) };
      if (last !== undefined && follows(last.upper, high) && follows(last.lower, low)) runs.at(-1)?.push(pair);
      else runs.push([pair]);
    }
    const [highEnd, lowEnd] = [high.end, low.end];
    if (compare(highEnd, lowEnd) <= 0) high = upper[++u];
    if (compare(lowEnd, highEnd) <= 0) low = lower[++l];
  }
  return runs;
}

const follows = (before: Sounding, note: Sounding): boolean => before === note || equal(before.end, note.onset);

type Kind = 'fifths' | 'octaves' | 'unisons';

/** The perfect interval of a pair: where the voices have crossed it counts from the other. */
function kindOf({ upper, lower }: Pair): Kind | undefined {
  const semitones = Math.abs(upper.member.midi - lower.member.midi);
  const steps = Math.abs(positionOf(upper.member) - positionOf(lower.member));
  if (semitones === 0 && steps === 0) return 'unisons';
  if (semitones % 12 === 0 && steps % 7 === 0) return 'octaves';
  return semitones % 12 === 7 && steps % 7 === 4 ? 'fifths' : undefined;
}

const direction = (from: Sounding, to: Sounding): number => Math.sign(to.member.midi - from.member.midi);
const isCrossed = ({ upper, lower }: Pair): boolean => upper.member.midi < lower.member.midi;

function isParallel(before: Pair, pair: Pair): boolean {
  const kind = kindOf(pair);
  const way = direction(before.upper, pair.upper);
  return (
    kind !== undefined &&
    kind === kindOf(before) &&
    way !== 0 &&
    way === direction(before.lower, pair.lower) &&
    isCrossed(before) === isCrossed(pair)
  );
}

const MINIM = time(1, 2);
/** With more notes between two beats the ear no longer joins them. */
const MOST_BETWEEN = 3;

interface Move {
  readonly from: Pair;
  readonly to: Pair;
}

/** From each moment to the next, and from each beat that both strike to the next such, a beat or a minim on at most. */
function movesOf(view: View, run: readonly Pair[]): Move[] {
  const moves: Move[] = [];
  let beat: { readonly pair: Pair; readonly index: number } | undefined;
  for (const [index, pair] of run.entries()) {
    const before = run[index - 1];
    if (!pair.common) continue;
    const place = beatIn(view, { onset: pair.onset, at: pair.upper.at });
    if (before !== undefined && isParallel(before, pair)) moves.push({ from: before, to: pair });
    else if (place?.on === true && beat !== undefined && isParallel(beat.pair, pair)) {
      const most = latest(place.length, MINIM);
      const isNear = compare(subtract(pair.onset, beat.pair.onset), most) <= 0;
      if (isNear && index - beat.index <= MOST_BETWEEN + 1) moves.push({ from: beat.pair, to: pair });
    }
    if (place?.on === true) beat = { pair, index };
  }
  return moves;
}

/** So many octaves one after another are meant. */
const DOUBLING = 4;

/** Without those that are links of a chain of octaves or unisons. */
function withoutDoubling(moves: readonly Move[]): Move[] {
  const chains: Move[][] = [];
  for (const move of moves) {
    const chain = chains.at(-1);
    if (chain !== undefined && chain.at(-1)?.to === move.from) chain.push(move);
    else chains.push([move]);
  }
  const isDoubling = (chain: readonly Move[]): boolean =>
    chain.length + 1 >= DOUBLING && chain.every(({ to }) => kindOf(to) !== 'fifths');
  return chains.filter((chain) => !isDoubling(chain)).flat();
}

function told(view: View, { from, to }: Move): SystemProblem {
  const name = ({ voice }: Sounding): string => view.facts.voices[voice] ?? '';
  const moved = (before: Sounding, after: Sounding): string => `${noteName(before.member)}-${noteName(after.member)}`;
  return problemIn({
    code: 'consecutive-perfects',
    at: to.upper.member.source,
    slots: {
      kind: kindOf(to) ?? '',
      upper: name(to.upper),
      lower: name(to.lower),
      above: moved(from.upper, to.upper),
      below: moved(from.lower, to.lower),
    },
    bars: [laterBar(from), to.upper.at],
    related: {
      message: `${noteName(to.lower.member)} in ${name(to.lower)}`,
      source: to.lower.member.source,
      system: 0,
    },
  });
}

/** The bar in which a pair sounds first. */
const laterBar = ({ upper, lower }: Pair): Sounding['at'] =>
  compare(upper.onset, lower.onset) >= 0 ? upper.at : lower.at;

export const consecutives = overSystems('consecutive-perfects', (view) => {
  const lines = melodiesOver(view);
  return lines.flatMap((upper, index) =>
    lines.slice(index + 1).flatMap((lower) =>
      runsOf(upper, lower)
        .flatMap((run) => withoutDoubling(movesOf(view, run)))
        // What lies in the system before was told there.
        .filter(({ from, to }) => to.upper.at.system === 0 && !isParted(view, laterBar(from), to.upper.at))
        .map((move) => told(view, move)),
    ),
  );
});
