/** Notes beyond the compass that the file declares. */
import type { NoteMember } from '../score/score';
import { eventsOf } from '../score/walk';
import { check, problemAt } from './check';

const letters = ['c', 'c#', 'd', 'eb', 'e', 'f', 'f#', 'g', 'g#', 'a', 'bb', 'b'];
const keyName = (midi: number): string => `${letters[midi % 12] ?? ''}${Math.floor(midi / 12) - 1}`;

const signs = ['bb', 'b', '', '#', '##'];
/** The sounding note by its written letter: `b#2` is not told as `c3`. */
const noteName = ({ spelling, alteration, octave }: NoteMember): string =>
  `${spelling.letter}${signs[alteration + 2] ?? ''}${octave}`;

export const outsideCompass = check('outside-compass', ['environment', 'score'], ({ environment, score }) => {
  const { compass } = environment;
  if (compass === undefined) return [];
  const [low, high] = [keyName(compass.low), keyName(compass.high)];
  const isBeyond = ({ midi, tiedFrom }: NoteMember): boolean =>
    !tiedFrom && (midi < compass.low || midi > compass.high);
  return score.pieces.flatMap((piece) =>
    [...eventsOf(piece)].flatMap(({ event, system }) =>
      event.members.filter(isBeyond).map((member) => {
        const voice = environment.voices[event.voice]?.name ?? '';
        const spot = { ...member.source, block: system.block };
        return problemAt('outside-compass', spot, { voice, note: noteName(member), low, high });
      }),
    ),
  );
});
