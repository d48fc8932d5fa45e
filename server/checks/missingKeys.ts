/**
 * Sharps and flats that a tuning does not hold at once: where its circle does not close, g sharp and a flat are two notes, and
 * an undivided key has one of them (quarter-comma meantone: they are a diesis of 41 cents apart).
 */
import { barsInWords } from '../score/barsInWords';
import type { Environment } from '../score/environment';
import type { Piece, PlacedProblem, Source } from '../score/score';
import { noteInWords } from '../tuning/fifths';
import { isOpen, NOTES, octaved, placesFrom } from '../tuning/temperament';
import { centsFromC, sounding, type Tuning } from '../tuning/tuning';
import { check, problemAt } from './check';
import { usesOf } from './noteUses';
import { allTunings, tuningFor } from './tuningFacts';

/** Of a note in a whole piece. */
interface PieceUse {
  /** How often each bar strikes it, by the bar’s index in the piece. */
  readonly bars: Map<number, number>;
  /** Where it stands first, and in which block. */
  readonly first: Source;
  readonly block: number;
}

/** What a piece strikes, by places on the line of fifths. */
type Uses = ReadonlyMap<number, PieceUse>;

function usesIn({ systems }: Piece): Uses {
  const all = new Map<number, PieceUse>();
  for (const { score, firstBar, block } of systems) {
    for (const [place, { bars, first }] of usesOf(score)) {
      const use = all.get(place) ?? { bars: new Map<number, number>(), first, block };
      all.set(place, use);
      for (const [bar, count] of bars) use.bars.set(firstBar + bar, (use.bars.get(firstBar + bar) ?? 0) + count);
    }
  }
  return all;
}

const countOf = (use: PieceUse | undefined): number =>
  use === undefined ? 0 : [...use.bars.values()].reduce((sum, count) => sum + count, 0);

// ─── words ───────────────────────────────────────────────────────────────────────────────────────────────────────

const notes = (count: number): string => `${count} ${count === 1 ? 'note' : 'notes'}`;

// ─── what would serve ────────────────────────────────────────────────────────────────────────────────────────────

interface Missing {
  readonly tuning: Tuning;
  readonly piece: Piece;
  readonly uses: Uses;
  /** The note that has no key, and the one that sounds on its key. */
  readonly wanted: number;
  readonly given: number;
}

function range({ bars }: PieceUse): readonly [number, number] {
  let [first, last] = [Number.POSITIVE_INFINITY, 0];
  for (const bar of bars.keys()) [first, last] = [Math.min(first, bar), Math.max(last, bar)];
  return [first, last];
}

/** The bars from the first to the last that want a note, if none of them wants the other. */
function stretchOf(use: PieceUse | undefined, other: PieceUse | undefined): readonly [number, number] | undefined {
  if (use === undefined || other === undefined) return undefined;
  const [from, to] = range(use);
  return [...other.bars.keys()].some((bar) => bar >= from && bar <= to) ? undefined : [from, to];
}

const stretchInWords = ([from, to]: readonly [number, number], { bars }: Piece): string =>
  barsInWords(
    Array.from({ length: to - from + 1 }, (_, i) => from + i),
    bars,
  );

/** How many notes find no key of their own if the twelve notes begin elsewhere. */
const falseNotes = ({ more }: Tuning, uses: Uses, first: number): number => {
  const held = new Set([...placesFrom(first), ...more]);
  return [...uses].reduce((sum, [place, use]) => sum + (held.has(place) ? 0 : countOf(use)), 0);
};

/** The flattest note with which fewest notes find no key; the nearest to the one that is, of equals. */
function bestFirst(tuning: Tuning, uses: Uses): number {
  const { first } = tuning.temperament;
  const candidates = [...placesFrom(first - NOTES / 2)].sort((a, b) => Math.abs(a - first) - Math.abs(b - first));
  return candidates.reduce((best, one) =>
    falseNotes(tuning, uses, one) < falseNotes(tuning, uses, best) ? one : best,
  );
}

/** The retuning that serves best, in words. */
function advice({ tuning, piece, uses, wanted, given }: Missing): string {
  const want = noteInWords(wanted);
  const above = octaved(centsFromC(tuning, wanted) - centsFromC(tuning, given));
  const moved = above > 600 ? `${Math.round(1200 - above)} cents lower` : `${Math.round(above)} cents higher`;
  if (!uses.has(given)) return `the key can be tuned to ${want}, ${moved}`;
  const tuned = `tuned to ${want} (${moved})`;
  const within = stretchOf(uses.get(wanted), uses.get(given));
  if (within !== undefined) return `${tuned} for ${stretchInWords(within, piece)} alone, the key serves both`;
  const without = stretchOf(uses.get(given), uses.get(wanted));
  if (without !== undefined) return `${tuned} save for ${stretchInWords(without, piece)}, the key serves both`;
  const { first } = tuning.temperament;
  const [now, best] = [falseNotes(tuning, uses, first), bestFirst(tuning, uses)];
  const left = falseNotes(tuning, uses, best);
  if (best === first || left >= now) return `of all places for the wolf this one leaves fewest notes false, ${now}`;
  return `with its notes from ${noteInWords(best)} to ${noteInWords(best + NOTES - 1)} the tuning leaves ${notes(left)} false instead of ${now}`;
}

// ─── the check ───────────────────────────────────────────────────────────────────────────────────────────────────

function missingIn(tuning: Tuning, piece: Piece): PlacedProblem[] {
  const uses = usesIn(piece);
  return [...uses].flatMap(([wanted, use]) => {
    const given = sounding(tuning, wanted);
    if (given === wanted) return [];
    const other = uses.get(given);
    const slots = {
      note: noteInWords(wanted),
      other: noteInWords(given),
      bars: barsInWords(use.bars.keys(), piece.bars),
      count: notes(countOf(use)),
      against:
        other === undefined ? 'no bar' : `${barsInWords(other.bars.keys(), piece.bars)} (${notes(countOf(other))})`,
      advice: advice({ tuning, piece, uses, wanted, given }),
    };
    return [problemAt('note-without-string', { ...use.first, block: use.block }, slots)];
  });
}

const isOpenTuning = ({ temperament }: Tuning): boolean => isOpen(temperament);

/** Whether any reading has a tuning in which some notes have no key of their own: else nobody need count notes. */
export const countsNotes = (environment: Environment): boolean => allTunings(environment).some(isOpenTuning);

export const missingKeys = check('missing-keys', ['environment', 'score'], ({ environment, score }) => {
  const tuning = tuningFor(environment, score.choice.name);
  return tuning === undefined || !isOpenTuning(tuning) ? [] : score.pieces.flatMap((piece) => missingIn(tuning, piece));
});
