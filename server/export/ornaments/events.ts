/** Events and notes that stand for a written one whose sign is written out: like it, but for what is given. */
import { valueText } from '../../../grammar/lanes/forms';
import type { TieForm, ValueForm } from '../../../grammar/tree';
import type { Realised, SoundingPitch } from '../../score/performance';
import type { NoteMember, VoiceEvent } from '../../score/score';
import type { PrintedValue } from './printed';

/** The events of a lane tell part of what they hold when they are asked, so a copy names all of it. */
export const eventLike = (event: VoiceEvent, changed: Partial<VoiceEvent>): VoiceEvent => ({
  kind: event.kind,
  voice: event.voice,
  stave: event.stave,
  bar: event.bar,
  onset: event.onset,
  duration: event.duration,
  value: event.value,
  wholeBar: event.wholeBar,
  small: event.small,
  members: event.members,
  marks: event.marks,
  annotations: event.annotations,
  words: event.words,
  tuplets: event.tuplets,
  beam: event.beam,
  stems: event.stems,
  spans: event.spans,
  chosen: event.chosen,
  custos: event.custos,
  figures: event.figures,
  syllables: event.syllables,
  address: event.address,
  laneName: event.laneName,
  source: event.source,
  ...changed,
});

export const noteLike = (note: NoteMember, changed: Partial<NoteMember>): NoteMember => ({
  spelling: note.spelling,
  octave: note.octave,
  alteration: note.alteration,
  midi: note.midi,
  stave: note.stave,
  tiedFrom: note.tiedFrom,
  tie: note.tie,
  marks: note.marks,
  annotations: note.annotations,
  source: note.source,
  ...(note.realised === undefined ? {} : { realised: note.realised }),
  ...changed,
});

/** What belongs to the whole of a written event and stands at one of the events that stand for it. */
export const BARE: Pick<VoiceEvent, 'marks' | 'annotations' | 'words' | 'custos' | 'figures' | 'syllables'> = {
  marks: [],
  annotations: [],
  words: [],
  custos: undefined,
  figures: undefined,
  syllables: [],
};

/** A note that is played for a sign, without accidental as yet and with nothing at it; it comes from the text of another. */
export const noteOn = (
  { letter, alteration, octave, midi }: SoundingPitch,
  from: NoteMember,
  realised: Realised | undefined,
): NoteMember =>
  noteLike(from, {
    ...(realised === undefined ? {} : { realised }),
    spelling: { text: letter, letter, doubtful: false },
    octave,
    alteration,
    midi,
    tiedFrom: false,
    tie: undefined,
    marks: [],
    annotations: [],
  });

/** The tie between the parts of a note. */
export const PLAIN_TIE: TieForm = { text: '=', editors: false, doubtful: false };

/** A drawn value as the text would have it. */
export const valueForm = ({ value, length }: Pick<PrintedValue, 'value' | 'length'>): ValueForm => ({
  text: valueText(value),
  base: value.base,
  dots: value.dots,
  doubtful: false,
  duration: length,
});

/**
 * The address of one of the events that stand for a written one: the first has that one's own, so that whatever points
 * there finds it.
 */
export const addressOfPart = (event: VoiceEvent, number: number): string =>
  number === 1 ? event.address : `${event.address}-r${number}`;

/** The address of the written event for which one of that address stands. */
export const writtenAddress = (address: string): string => address.replace(/(-r\d+)+$/, '');
