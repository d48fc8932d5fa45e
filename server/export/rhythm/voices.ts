/** A piece whose voices are written otherwise, system by system. */
import type { Piece, SystemVoice } from '../../score/score';

export const withVoices = (piece: Piece, otherwise: (voice: SystemVoice) => SystemVoice): Piece => ({
  ...piece,
  systems: piece.systems.map((system) => ({
    ...system,
    score: { ...system.score, voices: system.score.voices.map(otherwise) },
  })),
});
