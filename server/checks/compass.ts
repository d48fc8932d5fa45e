/** Notes for which the keyboard that the file declares has no key. */
import type { NoteMember } from '../score/score';
import { membersWhere, noteName } from './lines';
import { overSystems, problemIn, type View } from './systems';

const LETTERS = ['c', 'c#', 'd', 'eb', 'e', 'f', 'f#', 'g', 'g#', 'a', 'bb', 'b'];
const keyName = (midi: number): string => `${LETTERS[midi % 12] ?? ''}${Math.floor(midi / 12) - 1}`;

/** What is struck, small notes too, and has a key of which something holds. */
const struckOn = ({ score, facts }: View, holds: (midi: number) => boolean): { voice: string; member: NoteMember }[] =>
  membersWhere(score, ({ midi, tiedFrom }) => !tiedFrom && holds(midi)).map(({ voice, member }) => ({
    voice: facts.voices[voice.voice] ?? '',
    member,
  }));

export const outsideCompass = overSystems('outside-compass', (view) => {
  const { keyboard } = view.facts;
  if (keyboard === undefined) return [];
  const [low, high] = [keyName(keyboard.low), keyName(keyboard.high)];
  return struckOn(view, (midi) => midi < keyboard.low || midi > keyboard.high).map(({ voice, member }) =>
    // The sounding note by its written letter: `b#2` is not told as `c3`.
    problemIn({ code: 'outside-compass', at: member.source, slots: { voice, note: noteName(member), low, high } }),
  );
});

export const shortOctave = overSystems('short-octave-lacks', (view) => {
  const { keyboard } = view.facts;
  if (keyboard?.shortOctave === undefined) return [];
  const kind = keyboard.shortOctave.toUpperCase();
  return struckOn(view, (midi) => keyboard.lacks.includes(midi)).map(({ voice, member }) =>
    problemIn({ code: 'short-octave-lacks', at: member.source, slots: { voice, note: noteName(member), kind } }),
  );
});
