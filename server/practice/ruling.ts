/** Which practice acts where: a mark in the lane before what is stated, the narrower before the wider, the reading before the file. */
import { type Choice, holdsIn } from '../score/choice';
import type { AppliedSpan, Piece } from '../score/score';
import type { Stroke } from './lines';
import { type How, type Practice, type PracticeWord, USUAL } from './practice';

/** What acts at a place, and what says so. */
export interface Acting<One extends How = How> {
  readonly how: One;
  /** Undefined where only a mark in the lane says so. */
  readonly practice: Practice | undefined;
  /** The mark in the lane, if one says so. */
  readonly span: AppliedSpan | undefined;
}

type HowOf<Word extends PracticeWord> = How & { readonly word: Word };

export class Ruling {
  private readonly byWord = new Map<PracticeWord, readonly Practice[]>();

  constructor(
    practices: readonly Practice[],
    private readonly piece: Piece,
    private readonly choice: Choice,
    private readonly voiceName: (voice: number) => string,
  ) {
    const ordered = [...standing(practices)].sort(
      (a, b) => narrowness(b) - narrowness(a) || a.distance - b.distance || literalFirst(a) - literalFirst(b),
    );
    for (const word of Object.keys(USUAL) as PracticeWord[]) {
      const all = ordered.filter(({ how }) => how.word === word || how.word === 'literal');
      this.byWord.set(word, all);
    }
  }

  /** What a practice of this kind does at a stroke; undefined where none acts or what is written is protected. */
  at<Word extends PracticeWord>(word: Word, stroke: Stroke): Acting<HowOf<Word>> | undefined {
    const span = this.markAt(word, stroke);
    if (span?.head.word === 'literal') return undefined;
    const practice = this.statedAt(word, stroke);
    const stated = practice?.how.word === word ? (practice.how as HowOf<Word>) : undefined;
    if (span === undefined) return stated && { how: stated, practice, span: undefined };
    const how = (stated ?? USUAL[word]) as HowOf<Word>;
    return { how: asMarked(how, span), practice: stated && practice, span };
  }

  /** Whether anything is said of this kind at a stroke, were it that what is written stands. */
  says(word: PracticeWord, stroke: Stroke): boolean {
    return this.markAt(word, stroke) !== undefined || this.statedAt(word, stroke) !== undefined;
  }

  /** The innermost mark that holds in this reading and speaks of this kind or protects what is written. */
  private markAt(word: PracticeWord, { placed }: Stroke): AppliedSpan | undefined {
    return placed.event.spans.findLast(
      ({ head }) => (head.word === word || head.word === 'literal') && holdsIn(head.readings, this.choice),
    );
  }

  private statedAt(word: PracticeWord, { placed: { bar, event } }: Stroke): Practice | undefined {
    return this.byWord
      .get(word)
      ?.find(
        ({ section, voice }) =>
          (voice === undefined || voice === this.voiceName(event.voice)) &&
          (section === undefined || this.isIn(section, bar.index)),
      );
  }

  private isIn(name: string, bar: number): boolean {
    return this.piece.sections.some(
      (section) => section.name === name && section.firstBar <= bar && bar < section.endBar,
    );
  }
}

/** Without those that `literal`, said of the same or more by a reading that is nearer, takes back. */
export const standing = (practices: readonly Practice[]): readonly Practice[] =>
  practices.filter(
    (one) =>
      !practices.some((other) => other.how.word === 'literal' && other.distance < one.distance && isWithin(one, other)),
  );

/** Whether a practice is told of nothing that another is not told of. */
const isWithin = ({ section, voice }: Practice, wider: Practice): boolean =>
  (wider.section === undefined || wider.section === section) && (wider.voice === undefined || wider.voice === voice);

const narrowness = ({ section, voice }: Practice): number =>
  (section === undefined ? 0 : 1) + (voice === undefined ? 0 : 1);
const literalFirst = ({ how }: Practice): number => (how.word === 'literal' ? 0 : 1);

/** What a mark in the lane says more: the ratio itself; and whoever marks a passage to be assimilated does not mean it literally. */
function asMarked<One extends How>(how: One, { head: { ratio } }: AppliedSpan): One {
  if (how.word === 'inegal' && ratio !== undefined) return { ...how, ratio };
  return how.word === 'assimilate' && how.to === 'literal' ? { ...how, to: USUAL.assimilate.to } : how;
}
