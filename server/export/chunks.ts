/** Events cut at the barlines that they cross, since a note of MusicXML or MEI ends with its measure. */
import {
  add,
  compare,
  divide,
  earliest,
  isNegative,
  isZero,
  multiply,
  subtract,
  type Time,
  time,
  ZERO,
} from '../../grammar/time';
import { endOf } from '../score/clock';
import type { Bar, Piece, ScoreSystem, SystemVoice, VoiceEvent } from '../score/score';
import type { Measure } from './measures';
import { decompose, inRatio, type NoteValue, nominal, type Ratio, ratioOf, writtenValue } from './values';

/** An event, or the part of one that one drawn value fills. */
export interface Chunk {
  readonly event: VoiceEvent;
  readonly system: ScoreSystem;
  readonly systemVoice: SystemVoice;
  readonly measure: Measure;
  /** From the start of its bar. */
  readonly offset: Time;
  /** Zero of a small note. */
  readonly duration: Time;
  readonly value: NoteValue | undefined;
  readonly ratio: Ratio | undefined;
  /** First and last chunk of the event; the chunks between are tied. */
  readonly first: boolean;
  readonly last: boolean;
}

/** The chunks of one voice in the order of the source, those of other bars than the measures given left out. */
export function chunksOf(piece: Piece, voice: number, measures: ReadonlyMap<number, Measure>): readonly Chunk[] {
  const chunks: Chunk[] = [];
  for (const system of systemsReaching(piece, measures)) {
    for (const systemVoice of system.score.voices) {
      if (systemVoice.voice !== voice) continue;
      for (const event of systemVoice.events) {
        // What is too much in a bar left empty does not stand in the next one instead.
        if (piece.bars[system.firstBar + event.bar]?.broken === true) continue;
        for (const cut of cutEvent(piece, system, event)) {
          const measure = measures.get(cut.bar.index);
          if (measure !== undefined && !measure.broken) chunks.push({ ...cut, event, system, systemVoice, measure });
        }
      }
    }
  }
  return chunks;
}

/** Systems with events that can reach into the bars: a note that runs on over the end of its system ends in the next. */
function systemsReaching(piece: Piece, measures: ReadonlyMap<number, Measure>): readonly ScoreSystem[] {
  const bars = [...measures.keys()];
  const first = bars.reduce((least, bar) => Math.min(least, bar), Number.POSITIVE_INFINITY);
  const last = bars.reduce((most, bar) => Math.max(most, bar), -1);
  const reach = (index: number): number => piece.systems[index + 2]?.firstBar ?? Number.POSITIVE_INFINITY;
  return piece.systems.filter(({ firstBar }, i) => firstBar <= last && reach(i) >= first);
}

type Cut = Pick<Chunk, 'offset' | 'duration' | 'value' | 'ratio' | 'first' | 'last'> & { readonly bar: Bar };

function cutEvent(piece: Piece, system: ScoreSystem, event: VoiceEvent): readonly Cut[] {
  const parts = partsByBar(piece, system, event);
  const whole = writtenValue(event.value) ?? unwritten(event);
  const ratio = ratioOf(whole, event.duration);
  const cuts = parts.flatMap((part) =>
    parts.length === 1 || event.kind === 'gap' || event.kind === 'lost' || event.wholeBar
      ? [{ ...part, value: event.wholeBar ? undefined : whole, ratio: event.wholeBar ? undefined : ratio }]
      : drawnParts(part, ratio),
  );
  return cuts.map((cut, i) => ({ ...cut, first: i === 0, last: i === cuts.length - 1 }));
}

/** A note or rest typed without a value: the one that fits its length. */
function unwritten(event: VoiceEvent): NoteValue | undefined {
  const values = event.wholeBar ? undefined : decompose(event.duration);
  return values?.length === 1 ? values[0] : undefined;
}

interface Part {
  readonly bar: Bar;
  readonly offset: Time;
  readonly duration: Time;
}

function partsByBar(piece: Piece, system: ScoreSystem, event: VoiceEvent): readonly Part[] {
  const parts: Part[] = [];
  const onset = add(system.onset, event.onset);
  const end = add(onset, event.duration);
  let from = onset;
  for (let i = system.firstBar + event.bar; ; i++) {
    const bar = piece.bars[i];
    if (bar === undefined) break;
    const barEnd = endOf(bar);
    const isLast = event.small !== undefined || piece.bars[i + 1] === undefined || compare(end, barEnd) <= 0;
    const to = isLast ? end : earliest(end, barEnd);
    const offset = subtract(from, bar.onset);
    const duration = subtract(to, from);
    if (isLast || !isZero(duration)) parts.push({ bar, offset: isNegative(offset) ? ZERO : offset, duration });
    if (isLast) break;
    from = to;
  }
  return parts;
}

/** One cut for each value that a part of an event needs; a single one without a value where none fits. */
function drawnParts(part: Part, ratio: Ratio | undefined): readonly Omit<Cut, 'first' | 'last'>[] {
  const unaltered = ratio === undefined ? part.duration : multiply(part.duration, time(ratio.actual, ratio.normal));
  const values = decompose(unaltered);
  if (values === undefined) return [{ ...part, value: undefined, ratio: undefined }];
  let { offset } = part;
  return values.map((value) => {
    const duration = ratio === undefined ? nominal(value) : inRatio(nominal(value), ratio);
    const cut = { bar: part.bar, offset, duration, value, ratio };
    offset = add(offset, duration);
    return cut;
  });
}

/** Time of a chunk from the start of its piece. */
export const absolute = (chunk: Chunk): Time => add(chunk.measure.bar.onset, chunk.offset);

/** How long each of several figures within one note lasts: equal parts of it. */
export function figureTime({ event }: Chunk): Time {
  const columns = event.figures?.columns.length ?? 0;
  return columns > 1 ? divide(event.duration, time(columns)) : event.duration;
}
