/** Notes beyond the compass that the file declares. Needs the score. */
import type { PlacedProblem } from '../score/score';
import { eventsOf } from '../score/walk';
import type { Check } from './check';

const letters = ['c', 'c#', 'd', 'eb', 'e', 'f', 'f#', 'g', 'g#', 'a', 'bb', 'b'];
const keyName = (midi: number): string => `${letters[midi % 12] ?? ''}${Math.floor(midi / 12) - 1}`;

export const outsideCompass: Check = ({ environment, score }) => {
  const { compass } = environment;
  if (compass === undefined) return [];
  const found: PlacedProblem[] = [];
  for (const piece of score.pieces) {
    for (const { event, system } of eventsOf(piece)) {
      for (const member of event.members) {
        if (member.tiedFrom || (member.midi >= compass.low && member.midi <= compass.high)) continue;
        const { pos, len, lane } = member.source;
        const slots = {
          voice: environment.voices[event.voice]?.name ?? '',
          note: keyName(member.midi),
          low: keyName(compass.low),
          high: keyName(compass.high),
        };
        found.push({ problem: { code: 'outside-compass', pos, len, slots }, block: system.block, lane });
      }
    }
  }
  return found;
};
