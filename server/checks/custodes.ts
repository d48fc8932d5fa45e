/** The sign at the end of a line against the note with which the next line begins. */
import type { Spelling } from '../../grammar/tree';
import type { NoteMember, SystemVoice, VoiceEvent } from '../score/score';
import { type Look, problemIn, type SystemProblem } from './systems';

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

export const custodes: Look = ({ score, before, facts }) => {
  const problems: SystemProblem[] = [];
  for (const earlier of before?.voices ?? []) {
    const promise = promised(earlier);
    const voice = promise && score.voices.find((one) => one.voice === earlier.voice);
    if (promise === undefined || voice === undefined) continue;
    const notes = firstNotes(voice);
    const main = notes.at(-1);
    if (main === undefined || notes.some((note) => isOn(promise.custos, note))) continue;
    const slots = {
      voice: facts.voices[voice.voice] ?? '',
      promised: `${promise.custos.letter}${promise.custos.octave ?? ''}`,
      note: `${main.spelling.letter}${main.octave}`,
    };
    const related = { message: 'the custos stands here', source: promise.event.source, system: -1 } as const;
    problems.push(problemIn({ code: 'custos-mismatch', at: main.source, slots, related }));
  }
  return problems;
};
