/** Keys that an ornament needs and another voice holds: the held note is released, and that is told. */
import { compare, subtract } from '../../grammar/time';
import { pitchText } from '../../grammar/vocabulary/pitches';
import { endOf } from '../score/clock';
import type { PerformedEvent } from '../score/performance';
import type { BorneSign } from './bearing';
import type { Passage } from './passage';
import type { Piece, Pieces } from './pieces';
import type { Remarks } from './remarks';

/** Releases every note whose key is struck for a sign of another voice on its manual. */
export function releaseHeld(
  passage: Passage,
  pieces: Pieces,
  signs: ReadonlyMap<PerformedEvent, readonly BorneSign[]>,
  remarks: Remarks,
  voiceName: (voice: number) => string,
): void {
  for (const [event, own] of [...pieces.realised]) {
    const [sign] = signs.get(event) ?? [];
    if (sign === undefined) continue;
    for (const piece of own.filter((one) => isAuxiliary(one, event))) {
      for (const held of holding(passage, pieces, event, piece)) {
        release(pieces, held, piece);
        const pitch = piece.pitch === undefined ? '' : pitchText(piece.pitch);
        remarks.ofSign(sign, 'key-held', { pitch, voice: voiceName(held.voice) });
      }
    }
  }
}

const isAuxiliary = ({ pitch }: Piece, event: PerformedEvent): boolean =>
  pitch !== undefined && pitch.midi !== event.pitch?.midi;

/** Notes of other voices that were struck before an auxiliary on its key and still sound. */
function holding(passage: Passage, pieces: Pieces, event: PerformedEvent, piece: Piece): PerformedEvent[] {
  const { bar } = event.from[0].placed;
  const manual = passage.manualAt(event.voice, event.onset);
  return passage.soundingIn(bar, piece.onset, endOf(piece)).filter((other) => {
    const last = pieces.of(other).at(-1);
    return (
      other.voice !== event.voice &&
      passage.manualAt(other.voice, piece.onset) === manual &&
      last?.pitch?.midi === piece.pitch?.midi &&
      compare(last?.onset ?? piece.onset, piece.onset) < 0 &&
      compare(last === undefined ? piece.onset : endOf(last), piece.onset) > 0
    );
  });
}

/** It ends where the ornament strikes its key; what is left of its time is silent. */
function release(pieces: Pieces, held: PerformedEvent, by: Piece): void {
  const all = pieces.of(held);
  const last = all.at(-1);
  if (last === undefined) return;
  const silence = {
    pitch: undefined,
    onset: by.onset,
    duration: subtract(endOf(last), by.onset),
    realised: by.realised,
  };
  pieces.set(held, [...all.slice(0, -1), { ...last, duration: subtract(by.onset, last.onset) }, silence]);
}
