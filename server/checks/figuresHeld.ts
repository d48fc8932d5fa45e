/** Figures of a bass that are said to hold on where none are before. */
import type { SystemScore, VoiceEvent } from '../score/score';
import { type Look, problemIn } from './systems';

const isDrawn = ({ figures }: VoiceEvent): boolean => figures !== undefined && figures.what !== 'none';

const hasFigures = (system: SystemScore | undefined, voice: number): boolean =>
  system?.voices.some((one) => one.voice === voice && one.events.some(isDrawn)) === true;

/** Those of the system before go on; where it has but signs that figures hold on, these are told there. */
export const figuresHeld: Look = ({ score, before, facts }) =>
  score.voices.flatMap(({ voice, events }) => {
    const first = events.find(isDrawn);
    if (first?.figures?.what !== 'hold' || hasFigures(before, voice)) return [];
    const slots = { voice: facts.voices[voice] ?? '' };
    return [problemIn({ code: 'figures-hold-nothing', at: first.source, slots })];
  });
