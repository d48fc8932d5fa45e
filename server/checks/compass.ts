/** Notes for which the keyboard that the file declares has no key. */
import type { NoteMember } from '../score/score';
import { noteName } from './lines';
import { overSystems, problemIn, type View } from './systems';

const LETTERS = ['c', 'c#', 'd', 'eb', 'e', 'f', 'f#', 'g', 'g#', 'a', 'bb', 'b'];
const keyName = (midi: number): string => `${LETTERS[midi % 12] ?? ''}${Math.floor(midi / 12) - 1}`;

/** All notes that are struck, small ones too. */
const struck = (view: View): { readonly voice: string; readonly member: NoteMember }[] =>
  view.score.voices.flatMap(({ voice, events }) =>
    events.flatMap(({ members }) =>
      members.filter(({ tiedFrom }) => !tiedFrom).map((member) => ({ voice: view.facts.voices[voice] ?? '', member })),
    ),
  );

export const outsideCompass = overSystems('outside-compass', (view) => {
  const { keyboard } = view.facts;
  if (keyboard === undefined) return [];
  const [low, high] = [keyName(keyboard.low), keyName(keyboard.high)];
  return struck(view)
    .filter(({ member: { midi } }) => midi < keyboard.low || midi > keyboard.high)
    .map(({ voice, member }) =>
      // The sounding note by its written letter: `b#2` is not told as `c3`.
      problemIn({ code: 'outside-compass', at: member.source, slots: { voice, note: noteName(member), low, high } }),
    );
});

export const shortOctave = overSystems('short-octave-lacks', (view) => {
  const { keyboard } = view.facts;
  if (keyboard?.shortOctave === undefined) return [];
  const kind = keyboard.shortOctave.toUpperCase();
  return struck(view)
    .filter(({ member }) => keyboard.lacks.includes(member.midi))
    .map(({ voice, member }) =>
      problemIn({ code: 'short-octave-lacks', at: member.source, slots: { voice, note: noteName(member), kind } }),
    );
});
