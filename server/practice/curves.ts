/** Curves over the notes of a voice, as inequality asks for them. */
import { compare } from '../../grammar/time';
import type { Piece } from '../score/score';
import { slursOf } from '../score/walk';
import type { Line, Stroke } from './lines';

export class Curves {
  /** Strokes to which a curve leads from the stroke before: over two notes, over more. */
  private readonly pairs = new Set<Stroke>();
  private readonly longer = new Set<Stroke>();

  constructor(piece: Piece, lines: readonly Line[]) {
    const byVoice = new Map(lines.map((line) => [line.voice, line]));
    for (const { voice, from, to } of slursOf(piece)) {
      const line = byVoice.get(voice);
      const last = line?.beginningAt(to);
      if (line === undefined || last === undefined || compare(from, to) >= 0) continue;
      const [, ...led] = [...line.beginningIn(from, to), last];
      for (const stroke of led) (led.length > 1 ? this.longer : this.pairs).add(stroke);
    }
  }

  /** A curve over this note and the one before, and no others. */
  pairTo(stroke: Stroke): boolean {
    return this.pairs.has(stroke);
  }

  /** A curve over more notes than this and the one before. */
  longTo(stroke: Stroke): boolean {
    return this.longer.has(stroke);
  }
}
