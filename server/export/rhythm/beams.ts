/** Beams after rhythm is written otherwise: one note alone has none. */
import type { Piece, SystemVoice } from '../../score/score';
import { eventLike } from '../ornaments/events';
import { withVoices } from './voices';

export const withoutLoneBeams = (piece: Piece): Piece => withVoices(piece, inVoice);

function inVoice(voice: SystemVoice): SystemVoice {
  const counts = new Map<number, number>();
  for (const { beam } of voice.events) if (beam !== undefined) counts.set(beam, (counts.get(beam) ?? 0) + 1);
  const isLone = (beam: number | undefined): boolean => beam !== undefined && counts.get(beam) === 1;
  if (!voice.events.some(({ beam }) => isLone(beam))) return voice;
  return {
    ...voice,
    events: voice.events.map((event) => (isLone(event.beam) ? eventLike(event, { beam: undefined }) : event)),
  };
}
