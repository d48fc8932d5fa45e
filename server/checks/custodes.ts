/** The sign at the end of a line against the note with which the next line begins. */
import type { Spelling } from '../../grammar/tree';
import type { NoteMember, SystemVoice, VoiceEvent } from '../score/score';
import { type Look, problemIn } from './systems';

/** What a voice's last event promises. */
const promised = (voice: SystemVoice): { readonly event: VoiceEvent; readonly custos: Spelling } | undefined => {
  const event = voice.events.at(-1);
  return event?.custos === undefined ? undefined : { event, custos: event.custos };
};

/** The notes that a custos may mean: those of the first note or chord, and of the small notes before it. */
function firstNotes({ events }: SystemVoice): readonly NoteMember[] {
  const notes = events.filter(({ kind }) => kind === 'note');
  const main = notes.findIndex(({ small }) => small === undefined);
  return notes.slice(0, main + 1).flatMap(({ members }) => members);
}

/** A custos stands on a line or in a space: no sign of its own is asked for. */
const isOn = (custos: Spelling, note: NoteMember): boolean =>
  custos.letter === note.spelling.letter && (custos.octave === undefined || custos.octave === note.octave);

export const custodes: Look = ({ score, before, facts }) =>
  score.voices.flatMap((voice) => {
    const earlier = before?.voices.find((one) => one.voice === voice.voice);
    const promise = earlier && promised(earlier);
    if (promise === undefined) return [];
    const notes = firstNotes(voice);
    const main = notes.at(-1);
    if (main === undefined || notes.some((note) => isOn(promise.custos, note))) return [];
    const slots = {
      voice: facts.voices[voice.voice] ?? '',
      promised: `${promise.custos.letter}${promise.custos.octave ?? ''}`,
      note: notes.map(({ spelling, octave }) => `${spelling.letter}${octave}`).at(-1) ?? '',
    };
    const related = { message: 'the custos stands here', source: promise.event.source, system: -1 } as const;
    return [problemIn({ code: 'custos-mismatch', at: main.source, slots, related })];
  });
