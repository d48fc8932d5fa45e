/** What stands above or below the staves: words, tempi, section names, titles. */
import { putUnder } from '../../../grammar/lists';
import { latest, multiply, subtract, type Time, time, toNumber, ZERO } from '../../../grammar/time';
import { endOf } from '../../score/clock';
import type { AppliedMark, Bar, Piece, Score, Tempo, VoiceEvent, Words } from '../../score/score';
import { changesOf, marksOfEvent } from '../../score/walk';
import type { Chunk } from '../chunks';
import type { Measure } from '../measures';
import { tempiOf } from '../tempi';
import { decimal, writtenValue } from '../values';
import { leaf, type XmlAttributes, type XmlElement, xml } from '../xml';
import { editorialElements } from './editorial';
import { hiddenForwards, type Jump, orderOf, playedOrder } from './order';
import { NUMBER_LEVELS } from './tables';

export interface PlacedDirection {
  readonly offset: Time;
  readonly element: XmlElement;
}

interface DirectionPlace {
  readonly placement?: 'above' | 'below' | undefined;
  readonly voice?: number;
  readonly stave?: number;
  readonly sound?: XmlElement | undefined;
  /** Whose the direction is, if not the source's. */
  readonly level?: string;
}

function direction(type: XmlElement, place: DirectionPlace): XmlElement {
  const { placement, voice, stave, sound, level } = place;
  return xml('direction', { placement }, [
    xml('direction-type', {}, [type]),
    ...editorialElements({ footnote: undefined, level, bracket: false }),
    voice === undefined ? undefined : leaf('voice', voice + 1),
    stave === undefined ? undefined : leaf('staff', stave + 1),
    sound,
  ]);
}

// ─── at an event ─────────────────────────────────────────────────────────────────────────────────────────────────

/** Words, and the marks that are directions, of an event. */
export function eventDirections(chunk: Chunk): readonly XmlElement[] {
  if (!chunk.first) return [];
  const { event } = chunk;
  const place = { voice: event.voice, stave: event.stave };
  return [
    ...event.words.map((words) => wordsElement(words, place)),
    ...marksOfEvent(event).flatMap((mark) => markDirections(mark, place)),
  ];
}

const wordsElement = ({ text, place: placement }: Words, place: DirectionPlace): XmlElement =>
  direction(leaf('words', text), { ...place, placement: placement ?? 'above' });

const markDirections = ({ form }: AppliedMark, place: DirectionPlace): readonly XmlElement[] =>
  form.type === 'other' ? (MARKS[form.name]?.(place) ?? []) : [];

/** Marks that MusicXML has as directions. */
const MARKS: Readonly<Record<string, (place: DirectionPlace) => readonly XmlElement[]>> = {
  renvoi: (place) => [direction(xml('segno'), { ...place, placement: 'above' })],
  fin: (place) => [direction(leaf('words', 'Fin'), { ...place, placement: 'above' })],
};

/** Ends of the bracket over a ligature, as editions draw it; the voice numbers it. */
export const bracketElement = (type: 'start' | 'stop', { voice, stave }: VoiceEvent): XmlElement =>
  direction(xml('bracket', { type, number: 1 + (voice % NUMBER_LEVELS), 'line-end': 'down' }), {
    ...ABOVE,
    voice,
    stave,
  });

/**
 * A custos after the last note of its line. Programs that draw glyphs by their names in SMuFL show one; no program takes it
 * for a note.
 */
export function custosElements({ event, last }: Chunk): readonly XmlElement[] {
  if (event.custos === undefined || !last) return [];
  const custos = xml('other-direction', { smufl: 'mensuralCustosUp' }, `custos ${event.custos.text}`);
  return [direction(custos, { voice: event.voice, stave: event.stave })];
}

// ─── in a measure ────────────────────────────────────────────────────────────────────────────────────────────────

/** Titles, section names, tempi and manuals, by the index of their bar. */
export type PieceDirections = ReadonlyMap<number, readonly PlacedDirection[]>;

/** The directions of a piece of which `first` is the first measure exported; `titled`: its name is written. */
export function directionsOf(first: Measure, score: Score, titled: boolean): PieceDirections {
  const { piece } = first;
  const directions = new Map<number, PlacedDirection[]>();
  const put = (bar: Bar, onset: Time, element: XmlElement): void => {
    const offset = latest(ZERO, subtract(onset, bar.onset));
    putUnder(directions, bar.index, { offset, element });
  };
  if (titled && piece.name !== '') {
    put(first.bar, first.bar.onset, direction(xml('words', { 'font-weight': 'bold' }, piece.name), ABOVE));
  }
  for (const bar of piece.bars) {
    for (const { form } of bar.closing?.marks ?? []) if (form.name === 'fin') put(bar, endOf(bar), finElement);
  }
  for (const { bar: index, atEnd, element } of orderElements(first)) {
    const bar = piece.bars[index];
    if (bar !== undefined) put(bar, atEnd ? endOf(bar) : bar.onset, element);
  }
  for (const section of piece.sections) {
    const bar = piece.bars[section.firstBar];
    if (bar !== undefined) put(bar, section.onset, direction(leaf('rehearsal', section.name), ABOVE));
  }
  for (const { tempo, bar, onset } of tempiOf(first, score)) put(bar, onset, tempoElement(tempo));
  for (const { change, onset, bar } of changesOf(piece)) {
    if (change.manual !== undefined) put(bar, onset, manualElement(change.manual, score));
  }
  return directions;
}

const ABOVE: DirectionPlace = { placement: 'above' };

/** `'fin` on a barline. */
const finElement = direction(leaf('words', 'Fin'), ABOVE);

/** An editor's tempo, in brackets as no source draws it; `sound` counts crotchets a minute. */
function tempoElement({ value, perMinute }: Tempo): XmlElement {
  const written = writtenValue(value);
  const quarters = perMinute * toNumber(multiply(value.duration ?? value.base, time(4)));
  const sound = xml('sound', { tempo: decimal(quarters) });
  const metronome = xml('metronome', { parentheses: 'yes' }, [
    leaf('beat-unit', written?.type ?? 'quarter'),
    ...Array.from({ length: written?.dots ?? 0 }, () => xml('beat-unit-dot')),
    leaf('per-minute', decimal(perMinute)),
  ]);
  return direction(metronome, { ...ABOVE, sound });
}

/** MusicXML has no manuals: the name stands in its element for what it does not foresee, and is not drawn. */
const manualElement = ({ voice, name }: { readonly voice: number; readonly name: string }, score: Score): XmlElement =>
  direction(xml('other-direction', { 'print-object': 'no' }, `manual ${name}`), {
    voice,
    stave: score.environment.voices[voice]?.stave ?? 0,
  });

// ─── the order of playing ────────────────────────────────────────────────────────────────────────────────────────

interface OrderElement {
  readonly bar: number;
  readonly atEnd: boolean;
  readonly element: XmlElement;
}

const sound = (bar: number, atEnd: boolean, attributes: XmlAttributes): OrderElement => ({
  bar,
  atEnd,
  element: xml('sound', attributes),
});

/** What tells player and program in which order the bars are played, beside the repeats that are drawn. */
function orderElements({ piece, index, bar }: Measure): readonly OrderElement[] {
  const order = orderOf(piece);
  const hidden = [...hiddenForwards(piece)]
    .filter((start) => start > 0 || index > 0)
    .map((start) => sound(start, false, { 'forward-repeat': 'yes' }));
  if (order === undefined || bar.index > 0) return hidden;
  const words = direction(leaf('words', `[${order.join(' ')}]`), { ...ABOVE, level: "editor's" });
  const jump = playedOrder(piece)?.jump;
  return [
    ...hidden,
    { bar: 0, atEnd: false, element: words },
    ...(jump === undefined ? [] : jumpElements(jump, piece)),
  ];
}

/** A jump from the last bar to the beginning of a section, whose end is the end. */
function jumpElements({ to, reached }: Jump, { bars }: Piece): readonly OrderElement[] {
  const last = bars.length - 1;
  const time = { 'time-only': reached > 1 ? reached : undefined };
  const end = to.endBar - 1;
  return [
    ...(to.firstBar === 0 ? [] : [sound(to.firstBar, false, { segno: to.name })]),
    ...(end === last ? [] : [sound(end, true, { fine: 'yes' })]),
    sound(last, true, to.firstBar === 0 ? { dacapo: 'yes', ...time } : { dalsegno: to.name, ...time }),
  ];
}
