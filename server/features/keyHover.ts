/** On which key a note is played, where it is another than its name says: on a short or broken octave. */
import { keyName } from '../checks/compass';
import { instrumentOf, keyFor } from '../instrument/instrument';
import type { NoteMember } from '../score/score';
import type { EventHere } from './events';

/** "Short octave C/E: on the key of g#2". Nothing where the key lies where it always does, or where there is none. */
export function keyInWords({ score }: EventHere, { midi }: NoteMember): readonly string[] {
  const instrument = instrumentOf(score.environment);
  const key = instrument && keyFor(instrument, midi);
  if (instrument === undefined || key === undefined || (key.lies === key.sounds && key.half === undefined)) return [];
  const half = key.half === undefined ? '' : `the ${key.half} half of `;
  return [`Short octave ${instrument.shortOctave?.toUpperCase()}: on ${half}the key of ${keyName(key.lies)}`];
}
