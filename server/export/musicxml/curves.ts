/** Curves as slurs and lines as notations of their own: each from a note to a note, numbered so that no two of one number overlap. */
import { add, compare, type Time } from '../../../grammar/time';
import type { MarkForm } from '../../../grammar/tree';
import { type Bar, isSpecial, type Piece, type VoiceEvent } from '../../score/score';
import { curvesOf, type PlacedCurve, type PlacedEnd } from '../../score/walk';
import { absolute, type Chunk } from '../chunks';
import type { Losses, Where } from '../losses';
import { type XmlElement, xml } from '../xml';
import { NUMBER_LEVELS } from './tables';
import type { Written } from './written';

/** A slur's end at a member of a chord. */
export interface SlurEnd {
  readonly member: number;
  readonly element: XmlElement;
}

export type SlurEnds = ReadonlyMap<Chunk, readonly SlurEnd[]>;

interface Stop {
  readonly chunk: Chunk;
  readonly member: number;
}

interface Slur {
  readonly start: Stop;
  readonly stop: Stop;
  readonly kind: PlacedCurve['kind'];
  readonly forms: readonly MarkForm[];
  readonly where: Where;
}

/** All slurs of the pieces, numbered. */
export function slursOf(pieces: Iterable<Piece>, written: Written, losses: Losses): SlurEnds {
  const slurs: Slur[] = [];
  for (const piece of pieces) {
    for (const curve of curvesOf(piece)) {
      const slur = resolve(piece, curve, written, losses);
      if (slur !== undefined) slurs.push(slur);
    }
  }
  return numbered(slurs, written, losses);
}

function resolve(piece: Piece, curve: PlacedCurve, written: Written, losses: Losses): Slur | undefined {
  const known = curve.start ?? curve.end;
  if (known === undefined) return undefined;
  const where = whereIs(piece, known);
  if (![curve.start, curve.end].some((end) => end !== undefined && chunksAt(end, written).length > 0)) return undefined;
  if (curve.kind === 'line') losses.add('musicxml-line', { voice: voiceOf(known) }, where);
  const entered = endingEntered(piece, curve);
  if (entered !== undefined)
    losses.add('musicxml-curve-ending', { voice: voiceOf(known) }, whereIs(piece, curve.end ?? known));
  const start = startOf(curve, entered, written);
  const stop = curve.end === undefined ? openEnd(curve.start, written, 'stop') : nearest(curve.end, written, 'stop');
  const forms = [curve.form, ...[curve.start, curve.end].flatMap((end) => (end === undefined ? [] : [end.end.form]))];
  if (entered !== undefined && start !== undefined && start.chunk === stop?.chunk) return undefined;
  if (start === undefined || stop === undefined || !isBefore(start, stop, written)) {
    losses.add('musicxml-curve-left-out', { voice: voiceOf(known) }, where);
    return undefined;
  }
  tellPlace(piece, curve, losses);
  if (forms.some((form) => form.doubtful)) losses.add('musicxml-doubtful', { voice: voiceOf(known) }, where);
  return { start, stop, kind: curve.kind, forms, where };
}

function startOf(curve: PlacedCurve, entered: Bar | undefined, written: Written): Stop | undefined {
  if (curve.start === undefined) return openEnd(curve.end, written, 'start');
  if (entered === undefined || curve.end === undefined) return nearest(curve.start, written, 'start');
  const notes = chunksOfVoice(curve.end, written).filter((c) => c.event.kind === 'note' && c.measure.bar === entered);
  return notes[0] === undefined ? undefined : { chunk: notes[0], member: 0 };
}

/** The first bar of a further ending in which a curve ends that began before the first; such curves enter each ending. */
function endingEntered(piece: Piece, { start, end }: PlacedCurve): Bar | undefined {
  if (start === undefined || end === undefined) return undefined;
  const [from, to] = [whereIs(piece, start).bar, whereIs(piece, end).bar];
  if (from === undefined || to === undefined) return undefined;
  const ending = piece.bars.slice(from.index + 1, to.index + 1).findLast((bar) => bar.ending !== undefined);
  if (ending === undefined || ending.ending === 1) return undefined;
  const within = piece.bars.slice(ending.index, to.index).every(({ closing }) => !isSpecial(closing));
  return within ? ending : undefined;
}

/** Says where a curve had to be moved to a note. */
function tellPlace(piece: Piece, curve: PlacedCurve, losses: Losses): void {
  for (const end of [curve.start, curve.end]) {
    const kind = end === undefined ? undefined : eventAt(end)?.kind;
    if (end !== undefined && (end.end.onBarline || kind === 'gap' || kind === 'lost')) {
      losses.add('musicxml-curve-moved', { voice: voiceOf(end) }, whereIs(piece, end));
    }
  }
  const open = curve.start === undefined ? curve.end : curve.end === undefined ? curve.start : undefined;
  if (open !== undefined) losses.add('musicxml-curve-open', { voice: voiceOf(open) }, whereIs(piece, open));
}

const eventAt = ({ end, voice }: PlacedEnd): VoiceEvent | undefined => voice.events[end.event];
/** Of an end on the last barline the voice of the note before it. */
const voiceOf = (end: PlacedEnd): string => nearEvent(end)?.laneName ?? '';
const nearEvent = (end: PlacedEnd): VoiceEvent | undefined => eventAt(end) ?? end.voice.events.at(-1);

function whereIs(piece: Piece, end: PlacedEnd): Where {
  const bar = piece.bars[end.system.firstBar + (nearEvent(end)?.bar ?? 0)];
  return { source: end.end.source, system: end.system, bar };
}

const chunksOfVoice = (end: PlacedEnd, written: Written): readonly Chunk[] =>
  written.byVoice.get(end.voice.voice) ?? [];

function chunksAt(end: PlacedEnd, written: Written): readonly Chunk[] {
  const event = eventAt(end);
  return event === undefined ? [] : written.chunksAt(end.system, event);
}

const bearsNotations = (chunk: Chunk): boolean => chunk.event.kind === 'note' || chunk.event.kind === 'rest';

/** The chunk of an end; where it bears no notations or is not exported, the next note (of a start) or the one before. */
function nearest(end: PlacedEnd, written: Written, side: 'start' | 'stop'): Stop | undefined {
  const own = chunksAt(end, written).filter(bearsNotations);
  const chunk = side === 'start' ? own[0] : own.at(-1);
  if (chunk !== undefined && !(side === 'stop' && end.end.onBarline)) return { chunk, member: end.end.member ?? 0 };
  const event = eventAt(end);
  const notes = chunksOfVoice(end, written).filter((c) => c.event.kind === 'note');
  const onset = add(end.system.onset, event?.onset ?? end.system.score.duration);
  const moved =
    side === 'start'
      ? notes.find((c) => compare(absolute(c), onset) >= 0)
      : notes.findLast((c) => compare(absolute(c), onset) < (end.end.onBarline ? 0 : 1));
  return moved === undefined ? undefined : { chunk: moved, member: 0 };
}

/** The first or last note of the bar in which the other end stands. */
function openEnd(other: PlacedEnd | undefined, written: Written, side: 'start' | 'stop'): Stop | undefined {
  if (other === undefined) return undefined;
  const measure = chunksAt(other, written)[0]?.measure;
  const voice = measure === undefined ? undefined : written.byMeasure.get(measure)?.get(other.voice.voice);
  const notes = (voice ?? []).filter((c) => c.event.kind === 'note');
  const chunk = side === 'start' ? notes[0] : notes.at(-1);
  return chunk === undefined ? undefined : { chunk, member: 0 };
}

const place = (stop: Stop, written: Written): number => written.order.get(stop.chunk) ?? 0;

/** In one voice the order of writing tells which is first, in two only time. */
function isBefore(a: Stop, b: Stop, written: Written): boolean {
  if (a.chunk.event.voice === b.chunk.event.voice) return place(a, written) < place(b, written);
  return compare(absolute(a.chunk), absolute(b.chunk)) <= 0;
}

// ─── numbers ─────────────────────────────────────────────────────────────────────────────────────────────────────

interface Taken {
  readonly from: number;
  readonly to: number;
  readonly onset: Time;
  readonly end: Time;
  readonly piece: Piece;
  /** Index of the measure where it ends. */
  readonly measure: number;
}

/** Overlap in the order of writing and in time both count, since readers go by either. */
const overlap = (a: Taken, b: Taken): boolean =>
  (a.from < b.to && b.from < a.to) ||
  (a.piece === b.piece && compare(a.onset, b.end) < 0 && compare(b.onset, a.end) < 0);

const unused = (): Taken[][] => Array.from({ length: NUMBER_LEVELS }, () => []);

function numbered(slurs: readonly Slur[], written: Written, losses: Losses): SlurEnds {
  const ends = new Map<Chunk, SlurEnd[]>();
  const numbers = { u: unused(), line: unused() };
  const first = ({ start, stop }: Slur): number => Math.min(place(start, written), place(stop, written));
  const sorted = [...slurs].sort((a, b) => first(a) - first(b));
  for (const slur of sorted) {
    const span: Taken = {
      from: first(slur),
      to: Math.max(place(slur.start, written), place(slur.stop, written)),
      onset: absolute(slur.start.chunk),
      end: absolute(slur.stop.chunk),
      piece: slur.start.chunk.measure.piece,
      measure: Math.max(slur.start.chunk.measure.index, slur.stop.chunk.measure.index),
    };
    const taken = numbers[slur.kind];
    forget(taken, Math.min(slur.start.chunk.measure.index, slur.stop.chunk.measure.index));
    const number = taken.findIndex((spans) => !spans.some((other) => overlap(span, other)));
    if (number < 0) {
      losses.add('musicxml-curves-many', {}, slur.where);
      continue;
    }
    taken[number]?.push(span);
    push(ends, slur.start, ELEMENTS[slur.kind]('start', number + 1, slur.forms));
    push(ends, slur.stop, ELEMENTS[slur.kind]('stop', number + 1, []));
  }
  for (const found of ends.values()) found.sort((a, b) => rank(a) - rank(b));
  return ends;
}

/** What ended in an earlier measure overlaps nothing more. */
function forget(taken: Taken[][], measure: number): void {
  for (const [i, spans] of taken.entries()) taken[i] = spans.filter((span) => span.measure >= measure);
}

/** A slur that ends on a note stands before one that begins there. */
const rank = (end: SlurEnd): number => (end.element.attributes.type === 'stop' ? 0 : 1);

function push(ends: Map<Chunk, SlurEnd[]>, { chunk, member }: Stop, element: XmlElement): void {
  const found = ends.get(chunk);
  if (found === undefined) ends.set(chunk, [{ member, element }]);
  else found.push({ member, element });
}

const slurElement: ElementMaker = (type, number, forms) =>
  xml('slur', {
    type,
    number,
    'line-type': forms.some((form) => form.editors)
      ? 'dashed'
      : forms.some((form) => form.doubtful)
        ? 'dotted'
        : undefined,
    placement: placementOf(forms),
  });

/** A line of MusicXML's own between two notes would be a slide. */
const lineElement: ElementMaker = (type, number, forms) =>
  xml('other-notation', { type, number, placement: placementOf(forms) }, 'line');

type ElementMaker = (type: 'start' | 'stop', number: number, forms: readonly MarkForm[]) => XmlElement;

const placementOf = (forms: readonly MarkForm[]): string | undefined =>
  forms.flatMap((form) => form.parameters).find((p) => p === 'above' || p === 'below');

const ELEMENTS: Readonly<Record<PlacedCurve['kind'], ElementMaker>> = { u: slurElement, line: lineElement };
