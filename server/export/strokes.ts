/** What is heard of a piece as strings that are plucked: one for each stop of a note's manual. */
import type { Environment } from '../score/environment';
import type { Piece } from '../score/score';
import type { Stroke } from '../sound/mix';
import { frequencyOf, type Tuning } from '../tuning/tuning';
import { Seconds } from './seconds';
import type { SoundingNote, SoundingPiece } from './sounding';
import { manualNamesIn, stopsIn } from './stops';
import { ONE_STROKE, touched } from './touch';

/** A stroke with the note for which it is; its seconds count from the beginning of the piece. */
export interface NoteStroke extends Stroke {
  readonly note: SoundingNote;
  /** Tells one string of one stop from all others. */
  readonly string: string;
}

/** Hertz of the strings of a note, one for each of its stops. */
export function stringsIn(environment: Environment, piece: Piece, tuning: Tuning): (note: SoundingNote) => number[] {
  const stopsOf = stopsIn(environment, piece);
  return (note) => {
    const frequency = frequencyOf(tuning, note.pitch);
    return stopsOf(note).map((feet) => frequency * (8 / feet));
  };
}

/** A stroke for each note and stop, also where voices meet on one key. */
export function strokesOf(environment: Environment, piece: SoundingPiece, tuning: Tuning): readonly NoteStroke[] {
  const stringsOf = stringsIn(environment, piece.piece, tuning);
  const manualOf = manualNamesIn(piece.piece);
  return touched(piece, new Seconds(piece.tempi)).flatMap(({ note, at, until }) => {
    const manual = manualOf(note) ?? '';
    return stringsOf(note).map(
      (frequency, stop): NoteStroke => ({ note, string: `${manual} ${stop} ${frequency}`, frequency, at, until }),
    );
  });
}

/** Voices that meet on one key pluck its string once; it sounds until the last of them lets go. */
export function pluckedOnce(strokes: readonly NoteStroke[]): readonly Stroke[] {
  const last = new Map<string, { at: number; until: number }>();
  return [...strokes]
    .sort((a, b) => a.at - b.at)
    .flatMap(({ string, frequency, at, until }) => {
      const before = last.get(string);
      if (before !== undefined && at - before.at <= ONE_STROKE) {
        before.until = Math.max(before.until, until);
        return [];
      }
      const stroke = { frequency, at, until };
      last.set(string, stroke);
      return [stroke];
    });
}
