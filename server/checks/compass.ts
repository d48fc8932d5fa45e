/** Notes for which the keyboard that the file declares has no key. */
import { keeping } from '../../grammar/keeping';
import { HIGHEST_OCTAVE, pitchText } from '../../grammar/vocabulary/pitches';
import { type Instrument, octavesAway } from '../instrument/instrument';
import type { NoteMember } from '../score/score';
import { noteName } from './pitches';
import { membersWhere, surveyOf } from './sounding';
import { type Look, problemIn, type View } from './systems';

const LETTERS = ['c', 'c#', 'd', 'eb', 'e', 'f', 'f#', 'g', 'g#', 'a', 'bb', 'b'];
/** What a key sounds, as typed; of its two names the more usual. */
export const keyName = (midi: number): string => `${LETTERS[midi % 12] ?? ''}${Math.floor(midi / 12) - 1}`;

/** What is struck, small notes too, and has a key of which something holds; an octave that no keyboard has is told where it is typed. */
const struckOn = ({ score, facts }: View, holds: (midi: number) => boolean): { voice: string; member: NoteMember }[] =>
  membersWhere(score, ({ midi, octave, tiedFrom }) => !tiedFrom && octave <= HIGHEST_OCTAVE && holds(midi)).map(
    ({ voice, member }) => ({
      voice: facts.voices[voice.voice] ?? '',
      member,
    }),
  );

/** What a player may do: "; an octave higher, f#3, there is a key". */
function instead(instrument: Instrument, { spelling, alteration, octave, midi }: NoteMember): string {
  const octaves = octavesAway(instrument, midi);
  if (octaves === 0) return '';
  const other = pitchText({ letter: spelling.letter, alteration, octave: octave + octaves });
  const away = Math.abs(octaves) === 1 ? 'an octave' : 'two octaves';
  return `; ${away} ${octaves > 0 ? 'higher' : 'lower'}, ${other}, there is a key`;
}

export const outsideCompass: Look = (view) => {
  const { instrument } = view.facts.keyboard;
  const { low: lowest, high: highest } = surveyOf(view.score);
  if (instrument === undefined || (lowest >= instrument.low && highest <= instrument.high)) return [];
  const [low, high] = [keyName(instrument.low), keyName(instrument.high)];
  return struckOn(view, (midi) => midi < instrument.low || midi > instrument.high).map(({ voice, member }) => {
    // The sounding note by its written letter: `b#2` is not told as `c3`.
    const slots = { voice, note: noteName(member), low, high, instead: instead(instrument, member) };
    return problemIn({ code: 'outside-compass', at: member.source, slots });
  });
};

/** The notes within the compass that have no key, from the lowest. */
const gapsOf = keeping(({ keys, low, high }: Instrument): readonly number[] => {
  const sounding = new Set(keys.map(({ sounds }) => sounds));
  return Array.from({ length: high - low + 1 }, (_, i) => low + i).filter((midi) => !sounding.has(midi));
});

export const shortOctave: Look = (view) => {
  const { instrument } = view.facts.keyboard;
  const gaps = instrument === undefined ? [] : gapsOf(instrument);
  if (instrument === undefined || surveyOf(view.score).low > (gaps.at(-1) ?? 0)) return [];
  const { shortOctave: kind } = instrument;
  const why = kind === undefined ? 'the instrument' : `the short octave ${kind.toUpperCase()}`;
  return struckOn(view, (midi) => gaps.includes(midi)).map(({ voice, member }) => {
    const slots = { voice, note: noteName(member), why, instead: instead(instrument, member) };
    return problemIn({ code: 'short-octave-lacks', at: member.source, slots });
  });
};
