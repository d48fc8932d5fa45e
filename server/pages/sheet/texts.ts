/** A reading as a teaching sheet shows it: as it is written, as it is played, and how each of them sounds. */
import { add, compare, type Time } from '../../../grammar/time';
import { inForm, isOfExport } from '../../export/form';
import type { ExportOptions } from '../../export/formats';
import { type BarsChosen, problemsWithin } from '../../export/measures';
import { tableOf } from '../../export/ornaments';
import { Seconds } from '../../export/seconds';
import { type SoundingPiece, soundingOf } from '../../export/sounding';
import { type NoteStroke, pluckedOnce, strokesOf } from '../../export/strokes';
import { perform } from '../../readings/perform';
import { tuningWished } from '../../readings/tunings';
import type { Bar, PlacedProblem, Score } from '../../score/score';
import type { Stroke } from '../../sound/mix';
import type { Tuning } from '../../tuning/tuning';
import type { Heard } from './figures';
import { PACES } from './sounds';

/** What of a sheet's wishes concerns what is played. */
export type PlayedAs = Pick<ExportOptions, 'table' | 'tuning'>;

export interface SheetText {
  readonly name: string;
  readonly score: Score;
  /** The score with the rhythm and the signs that its reading plays. */
  readonly performed: Score;
  /** The table by which its signs are played, if it has one. */
  readonly table: string | undefined;
  readonly tuning: Tuning;
  readonly literally: Sounding;
  readonly asPlayed: Sounding;
  readonly problems: readonly PlacedProblem[];
}

/** @param chosen the bars of the sheet: only what concerns these is told */
export function sheetText(score: Score, wished: PlayedAs, chosen: BarsChosen): SheetText {
  const { environment, choice } = score;
  // Drawn, explained and heard by one table, also of the text as written.
  const { table = tableOf(score) } = wished;
  const wish: PlayedAs = table === undefined ? wished : { ...wished, table };
  const { score: performed, problems } = inForm(score, { ...wish, ...chosen, rhythm: 'played', ornaments: 'full' });
  const asPlayed = new Sounding(score, wish, 'played');
  return {
    name: choice.name,
    score,
    performed,
    table,
    tuning: tuningWished(environment, choice.name, wish.tuning).tuning,
    literally: new Sounding(score, wish, 'written'),
    asPlayed,
    problems: [...problems, ...problemsWithin(asPlayed.problems, score, chosen)],
  };
}

/** One form of a text at each pace. */
interface AtPace {
  readonly piece: SoundingPiece;
  readonly seconds: Seconds;
  readonly strokes: readonly NoteStroke[];
}

/** How a text sounds: `written` without its signs and practices. */
export class Sounding {
  private readonly atPaces: readonly (readonly AtPace[])[];
  readonly problems: readonly PlacedProblem[];

  constructor(
    private readonly score: Score,
    wish: PlayedAs,
    form: 'written' | 'played',
  ) {
    const given = form === 'played' ? undefined : perform(score, { ornaments: 'sign', rhythm: 'written' });
    const sounding = PACES.map(({ pace }) =>
      soundingOf(score, { ...wish, clefs: 'source', leaveGaps: true, repeats: 'written', pace }, given),
    );
    this.problems = (sounding[0]?.problems ?? []).filter(isOfExport);
    this.atPaces = sounding.map(({ heard }) =>
      heard === undefined
        ? []
        : heard.pieces.map((piece) => ({
            piece,
            seconds: new Seconds(piece.tempi),
            strokes: strokesOf(score.environment, piece, heard.tuning),
          })),
    );
  }

  /**
   * What sounds in some bars; a note that is held into them is struck as they begin, so that their harmony is whole.
   * @param voice index in `Environment.voices`: it alone
   */
  in(pieceIndex: number, [first, last]: Passage, voice?: number): Heard {
    const piece = this.score.pieces[pieceIndex];
    return this.atPaces.map((pieces) => {
      const found = pieces.find((one) => one.piece.piece === piece);
      return found === undefined ? [] : strokesIn(found, first.onset, add(last.onset, last.duration), voice);
    });
  }
}

/** Bars that follow one another: the first and the last. */
export type Passage = readonly [Bar, Bar];

function strokesIn({ seconds, strokes }: AtPace, from: Time, to: Time, voice: number | undefined): readonly Stroke[] {
  const [begins, ends] = [seconds.at(from), seconds.at(to)];
  const within = strokes.flatMap((stroke): NoteStroke[] => {
    const { note, at, until } = stroke;
    const isOver = compare(add(note.onset, note.duration), from) <= 0;
    if (isOver || compare(note.onset, to) >= 0 || (voice !== undefined && note.voice !== voice)) return [];
    const start = Math.max(0, at - begins);
    return [{ ...stroke, at: start, until: Math.max(start, Math.min(until, ends) - begins) }];
  });
  return pluckedOnce(within);
}

/** The bars that a sheet has, by the index of their piece. */
export type BarsByPiece = ReadonlyMap<number, readonly Bar[]>;
