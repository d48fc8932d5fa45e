/** What is written together stays together: a moved note takes along what other voices strike with it, or stays itself. */
import { compare, equal, latest, type Time } from '../../grammar/time';
import { isNote, type Line, type Stroke } from './lines';
import type { PracticeWord } from './practice';
import type { Acting } from './ruling';
import { fixed, type Stretch, type Together } from './stretch';
import type { View } from './view';

/** A moment that moves between two that stay. */
export interface Move {
  readonly from: Time;
  readonly written: Time;
  readonly performed: Time;
  readonly to: Time;
  /** What comes after the moment is a figure that is pressed to its end; else it is one note, and what others have there stays. */
  readonly pressed: boolean;
}

/** A voice in which the figure itself stands. */
export interface Own {
  readonly line: Line;
  readonly acting: Acting;
  /** Where it is told. */
  readonly stroke: Stroke;
  /** Where its figure begins, if not with the move. */
  readonly from?: Time;
  readonly silentFrom?: Time;
}

/**
 * The stretches of all voices that strike at the moment. None, and a remark, where a voice strikes there a note of its own
 * even motion: the move would part the two, and the figure is played as it is written. A mark in the lane moves it
 * nevertheless.
 */
export function movedTogether(view: View, word: PracticeWord, move: Move, owns: readonly Own[]): Together {
  const [first] = owns;
  if (first === undefined) return [];
  const own = owns.map((one) => stretchOf(move, one.line.voice, one.acting, one.stroke, one));
  const others = view.lines.filter(({ voice }) => owns.every(({ line }) => line.voice !== voice));
  const marked = owns.some(({ acting }) => acting.span !== undefined);
  const even = marked ? undefined : others.find((line) => isEven(line, move));
  if (even !== undefined) {
    const other = view.remarks.voiceName(even.voice);
    view.remarks.atStroke(first.stroke, 'practice-against', { practice: word, other });
    for (const { acting } of owns) if (acting.practice !== undefined) view.remarks.met.add(acting.practice);
    return [];
  }
  return [...own, ...others.flatMap((line) => along(view, word, move, line))];
}

/**
 * Whether a voice strikes at the moment one of even notes: the note before it was struck since the move began, or others
 * follow while one note sounds.
 */
function isEven(line: Line, { from, written, to, pressed }: Move): boolean {
  const stroke = line.beginningAt(written);
  const before = stroke && line.before(stroke);
  if (stroke === undefined || before === undefined || !isNote(stroke)) return false;
  if (isNote(before) && compare(before.onset, from) > 0) return true;
  return !pressed && line.beginningIn(written, to).length > 1;
}

/** The same move in another voice on which the practice acts, if it strikes then, or anything until the figure is over. */
function along(view: View, word: PracticeWord, move: Move, line: Line): Stretch[] {
  const [stroke] = line.beginningIn(move.written, move.to);
  const acting = stroke && view.ruling.at(word, stroke);
  if (stroke === undefined || acting === undefined) return [];
  if (!move.pressed && !equal(stroke.onset, move.written)) return [];
  const before = line.before(stroke);
  return [stretchOf(move, line.voice, acting, stroke, { from: latest(move.from, before?.onset ?? move.from) })];
}

const stretchOf = (
  move: Move,
  voice: number,
  acting: Acting,
  stroke: Stroke,
  { from = move.from, silentFrom }: Pick<Own, 'from' | 'silentFrom'>,
): Stretch => ({
  voice,
  acting,
  stroke,
  knots: [fixed(from), { written: move.written, performed: move.performed }, fixed(move.to)],
  ...(silentFrom === undefined ? {} : { silentFrom }),
});
