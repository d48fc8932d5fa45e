/** Notes for which the keyboard that the file declares has no key. */
import type { NoteMember } from '../score/score';
import { noteName } from './pitches';
import { membersWhere, surveyOf } from './sounding';
import { type Look, problemIn, type View } from './systems';

const LETTERS = ['c', 'c#', 'd', 'eb', 'e', 'f', 'f#', 'g', 'g#', 'a', 'bb', 'b'];
const keyName = (midi: number): string => `${LETTERS[midi % 12] ?? ''}${Math.floor(midi / 12) - 1}`;

/** What is struck, small notes too, and has a key of which something holds. */
const struckOn = ({ score, facts }: View, holds: (midi: number) => boolean): { voice: string; member: NoteMember }[] =>
  membersWhere(score, ({ midi, tiedFrom }) => !tiedFrom && holds(midi)).map(({ voice, member }) => ({
    voice: facts.voices[voice.voice] ?? '',
    member,
  }));

export const outsideCompass: Look = (view) => {
  const { keyboard } = view.facts;
  const { low: lowest, high: highest } = surveyOf(view.score);
  if (keyboard === undefined || (lowest >= keyboard.low && highest <= keyboard.high)) return [];
  const [low, high] = [keyName(keyboard.low), keyName(keyboard.high)];
  return struckOn(view, (midi) => midi < keyboard.low || midi > keyboard.high).map(({ voice, member }) =>
    // The sounding note by its written letter: `b#2` is not told as `c3`.
    problemIn({ code: 'outside-compass', at: member.source, slots: { voice, note: noteName(member), low, high } }),
  );
};

export const shortOctave: Look = (view) => {
  const { keyboard } = view.facts;
  if (keyboard?.shortOctave === undefined || surveyOf(view.score).low > Math.max(...keyboard.lacks)) return [];
  const kind = keyboard.shortOctave.toUpperCase();
  return struckOn(view, (midi) => keyboard.lacks.includes(midi)).map(({ voice, member }) =>
    problemIn({ code: 'short-octave-lacks', at: member.source, slots: { voice, note: noteName(member), kind } }),
  );
};
