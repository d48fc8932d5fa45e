/** Figures of a bass that are said to hold on where none are before. */
import type { FiguresItem } from '../../grammar/tree';
import type { SystemScore, VoiceEvent } from '../score/score';
import { type Look, problemIn } from './systems';

const isDrawn = ({ figures }: VoiceEvent): boolean => figures !== undefined && figures.what !== 'none';

const hasFigures = (system: SystemScore | undefined, voice: number): boolean =>
  system?.voices.some((one) => one.voice === voice && one.events.some(isDrawn)) === true;

/** What the system before draws last goes on: if that is a sign that figures hold on, it is told there. */
export const figuresHeld: Look = ({ score, before, facts }) =>
  score.voices.flatMap(({ voice, events }) => {
    const first = events.find(isDrawn);
    const figures: FiguresItem | undefined = first?.figures;
    if (first === undefined || figures?.what !== 'hold' || hasFigures(before, voice)) return [];
    const slots = { voice: facts.voices[voice] ?? '' };
    return [problemIn({ code: 'figures-hold-nothing', at: first.source, slots })];
  });
