/** What is written of a passage whose signs are notes, as text. */
import { type OrnamentOptions, withOrnaments } from '../../server/export/ornaments';
import type { NoteMember, VoiceEvent } from '../../server/score/score';
import { eventsOf } from '../../server/score/walk';
import { type Passage, scoreOfPassage } from './realised';

const RESTS = { note: '', rest: 'r', gap: '_', lost: 'lost' } as const;

/** `c#5`, the editor's accidental in brackets, with its marks, tied on: `c#5'ca=`. */
const noteText = ({ spelling, octave, marks, tie }: NoteMember): string => {
  const { letter, accidental = '', editors } = spelling;
  const drawn = editors === undefined ? accidental : `[${editors}]`;
  return `${letter}${drawn}${octave}${marks.map(({ form }) => form.text).join('')}${tie === undefined ? '' : '='}`;
};

/** `16.:d5`; small notes in round brackets, those that end a note after a point: `(32:e5)`, `(.32:e5)`; `3:2` before what is in a tuplet. */
const eventText = ({ kind, value, members, small, tuplets, marks }: VoiceEvent): string => {
  const whole = marks.map(({ form }) => form.text).join('');
  const notes = `${kind === 'note' ? members.map(noteText).join('-') : RESTS[kind]}${whole}`;
  const tuplet = tuplets.map(({ n, m }) => `${n}:${m} `).join('');
  const text = `${tuplet}${value?.text ?? ''}:${notes}`;
  return small === undefined ? text : small.to === 'next' ? `(${text})` : `(.${text})`;
};

/** The events of one voice of a passage. */
export const written = (passage: Passage, options: OrnamentOptions, voice = 0): string =>
  withOrnaments(scoreOfPassage(passage), options)
    .score.pieces.flatMap((piece) => [...eventsOf(piece)])
    .filter((placed) => placed.voice.voice === voice)
    .map(({ event }) => eventText(event))
    .join(' ');
