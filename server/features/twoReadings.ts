/** Two readings one above the other: what is drawn of them, and where they differ. */
import { above, apart, areAlike, lowerName } from '../export/both';
import { inForm } from '../export/form';
import { idOfAddress } from '../export/mei/ids';
import { type Difference, type DifferenceKind, differencesOf, type Side } from '../readings/compare/differences';
import { comparedText } from '../readings/compare/symbols';
import type { Piece, Score, ScoreSystem } from '../score/score';
import type { ShownDifference, SignsShown } from './protocol';

/**
 * A piece in two readings, each in the rhythm in which it is played, so that what differs is seen: one score with a part for
 * each, its notes under one another. Where their bars are not the same they are two scores.
 */
export function twoReadings(
  upper: Score,
  lower: Score,
  piece: Piece,
  ornaments: SignsShown,
): readonly [Score] | readonly [Score, Score] {
  const form = { rhythm: 'played', ornaments: ornaments === 'full' ? 'full' : 'sign' } as const;
  const formed = (score: Score, one: Piece): Score => inForm({ ...score, pieces: [one] }, form).score;
  const other = lower.pieces[upper.pieces.indexOf(piece)];
  if (other === undefined) return [formed(upper, piece)];
  const both = [formed(upper, piece), formed(lower, other)] as const;
  const names = [upper.choice.name, lower.choice.name] as const;
  return areAlike(piece, other) ? [above(...both, names)] : apart(...both, names);
}

// ─── where they differ ───────────────────────────────────────────────────────────────────────────────────────────

/** In words, what kind of difference it is. */
const KINDS: Readonly<Record<DifferenceKind, string>> = {
  pitch: 'other pitch',
  rhythm: 'other rhythm',
  reading: 'other pitch and rhythm',
  sign: 'other signs',
  sounding: 'other accidentals sound',
  time: 'played at another time',
  omission: 'one has nothing',
  frame: 'the bar is marked otherwise',
};

/** What two readings have otherwise in some systems, by bar and voice. */
export function differencesOn(systems: readonly ScoreSystem[], upper: Score, lower: Score): ShownDifference[] {
  const [name, other] = [upper.choice.name, lower.choice.name];
  if (name === other) return [];
  const blocks = new Set(systems.map(({ block }) => block));
  const texts = [upper, lower].map((score) => ({ name: score.choice.name, text: comparedText(score, blocks) }));
  return differencesOf(texts).map((difference) => ({
    says: inWords(difference),
    ids: difference.sides.flatMap((side) => idsOf(side, name)),
  }));
}

const inWords = ({ bar, voice, kind, sides }: Difference): string => {
  const has = sides.map((side) => `${side.names.join(', ')} ${side.inWords}`);
  return `bar ${bar}${voice === '' ? '' : `, ${voice}`}: ${KINDS[kind]}: ${has.join('; ')}`;
};

/** The pictures of a side's symbols: in the upper part for the first reading, beneath for the other. */
const idsOf = ({ names, symbols }: Side, upper: string): string[] =>
  symbols.map(({ address }) => (names.includes(upper) ? idOfAddress(address) : idOfAddress(address, lowerName)));
