/**
 * The timeline: a performance as JSON, for programs that do not read notation.
 *
 * Times are exact, in semibreves from the start of the piece, written as fractions ("3/8"). Repeats are not unfolded, unless
 * the performance is played out: then bars and events come as often and as late as they are played.
 */
import { add, compare, format, subtract } from '../../grammar/time';
import { pitchText } from '../../grammar/vocabulary/pitches';
import { annotationsOf, annotationsOfBarline, annotationText } from '../score/annotations';
import type { Environment } from '../score/environment';
import {
  type Performance,
  type PerformedEvent,
  type PerformedPiece,
  performedOnset,
  type WrittenEvent,
  writtenTime,
} from '../score/performance';
import type { Pass } from '../score/playing';
import type { AppliedAnnotation, AppliedMark, Bar, EventKind, NoteMember, PlacedProblem, Score } from '../score/score';
import { addressOf, barlinesOf, marksAtNote, positionOf } from '../score/walk';
import { Losses } from './losses';
import { type BarsWanted, type Measure, measuresFor, problemsWithin } from './measures';
import { writtenAddress } from './ornaments/events';

export interface Timeline {
  readonly schema: 'bentside.timeline/1';
  readonly file: string;
  /** "" where the file has none. */
  readonly title: string;
  readonly reading: string;
  readonly pieces: readonly TimelinePiece[];
}

export interface TimelinePiece {
  readonly name: string;
  /** Of a performance that is played out: what follows what. */
  readonly passes?: readonly TimelinePass[];
  readonly bars: readonly TimelineBar[];
  /** Bars that go as three of two, by their numbers: accents one, three, five. */
  readonly hemiolas?: readonly { readonly from: string; readonly to: string }[];
  readonly events: readonly TimelineEvent[];
}

/** Bars that are played one after another. */
export interface TimelinePass {
  /** Null where no section has a name there. */
  readonly section: string | null;
  /** From 1: the first time, the second. */
  readonly time: number;
  readonly onset: string;
  /** The trade's numbers of the first and the last bar. */
  readonly from: string;
  readonly to: string;
}

export interface TimelineBar {
  readonly number: string;
  /** `PAGE/ORDINAL` of the system where the bar begins. */
  readonly system: string;
  readonly onset: string;
  readonly duration: string;
  /** What is said of its barlines. */
  readonly annotations?: readonly TimelineAnnotation[];
}

/** A note, rest, gap or lacuna; tied notes are one event, each note of a chord is its own, small notes last "0". */
export interface TimelineEvent {
  readonly address: string;
  readonly voice: string;
  readonly stave: string;
  readonly kind: EventKind;
  readonly onset: string;
  readonly duration: string;
  /** What the source draws: letter, accidental, octave. Null of what is no note, and of small notes that it does not draw. */
  readonly written: string | null;
  /** What sounds: letter, accidental, octave. Null of what is no note, as `midi`. */
  readonly pitch: string | null;
  readonly midi: number | null;
  readonly marks: readonly TimelineMark[];
  /** Of a note that is played for a sign or small note: the address of what it realises. */
  readonly realises?: string;
  /** The shapes of that sign, joined by `+`; `small` of small notes. */
  readonly sign?: string;
  /** The table by which it is realised. */
  readonly table?: string;
  /** How long before its end its key comes up, where it is struck again at once. */
  readonly released?: string;
  /** The practices of rhythm that play it at another time than is written, and that time. */
  readonly practices?: readonly string[];
  readonly writtenOnset?: string;
  readonly writtenDuration?: string;
  /** What is said of it, of its signs, and, at the first event of a span or place, of that. */
  readonly annotations?: readonly TimelineAnnotation[];
  /** From 1. */
  readonly line: number;
  /** From 1, in UTF-16 units. */
  readonly column: number;
}

export interface TimelineMark {
  readonly sign: string;
  readonly onset: string;
  readonly address: string;
}

/** What nothing is said of is "". */
export interface TimelineAnnotation {
  readonly text: string;
  readonly kind: string;
  /** Who says so, by the editor's letters. */
  readonly by: string;
  readonly certainty: string;
  readonly evidence: string;
}

/** A bar left empty has no events. */
export type TimelineOptions = BarsWanted;

/**
 * The timeline of a performance, or of the bars named: as data and as text. Both are empty where it is refused, which a
 * problem of level `error` says.
 */
export function exportTimeline(
  performance: Performance,
  options: TimelineOptions,
): { readonly timeline: Timeline | undefined; readonly text: string; readonly problems: readonly PlacedProblem[] } {
  const { score } = performance;
  const losses = new Losses(score.pieces);
  const measures = measuresFor(score, options, losses);
  const timeline = measures === undefined ? undefined : timelineOf(performance, measures, options.bars !== undefined);
  return {
    timeline,
    text: timeline === undefined ? '' : timelineText(timeline),
    problems: [...problemsWithin(performance.problems, score, options), ...losses.problems()],
  };
}

function timelineOf(performance: Performance, measures: readonly Measure[], inPart: boolean): Timeline {
  const { score } = performance;
  const pieces = performance.pieces.filter(
    ({ piece }) => !inPart || measures.some((measure) => measure.piece === piece),
  );
  return {
    schema: 'bentside.timeline/1',
    file: score.file,
    title: score.environment.title ?? '',
    reading: performance.reading,
    pieces: pieces.map((performed) => timelinePiece(performance, performed, measures)),
  };
}

function timelinePiece(
  performance: Performance,
  { piece, events, passes, hemiolas = [] }: PerformedPiece,
  all: readonly Measure[],
): TimelinePiece {
  const measures = all.filter((measure) => measure.piece === piece);
  const sound = new Set(measures.filter((measure) => !measure.broken).map((measure) => measure.bar));
  const opening = measures[0]?.bar;
  const { score } = performance;
  const said = sayingOnce(score);
  const soundsIn = (event: PerformedEvent): boolean => {
    const { bar } = event.from[0].placed;
    if (sound.has(bar)) return true;
    return opening !== undefined && event.pass === undefined && leadsInto(opening, bar, event);
  };
  return {
    name: piece.name,
    ...(passes === undefined ? {} : { passes: passes.map(timelinePass) }),
    bars:
      passes === undefined
        ? measures.map((measure) => timelineBar(measure, score))
        : passes.flatMap((pass) => barsPlayed(pass, measures, score)),
    ...(hemiolas.length === 0
      ? {}
      : { hemiolas: hemiolas.map(({ from, to }) => ({ from: from.number, to: to.number })) }),
    events: events
      .flatMap(soundParts)
      .filter(soundsIn)
      .map((event) => timelineEvent(performance, event, said)),
  };
}

/** What is said of an event, each thing at its first event. */
function sayingOnce({ environment }: Score): (event: PerformedEvent) => readonly TimelineAnnotation[] {
  const told = new Set<AppliedAnnotation>();
  return ({ from }) => {
    const fresh = from.flatMap(({ placed }) => annotationsOf(placed.event)).filter((applied) => !told.has(applied));
    for (const applied of fresh) told.add(applied);
    return fresh.map((applied) => timelineAnnotation(applied, environment));
  };
}

function timelineAnnotation({ annotation }: AppliedAnnotation, environment: Environment): TimelineAnnotation {
  const { about = '', by = '', certainty = '', evidence = '' } = environment.notes.get(annotation.ref ?? '') ?? {};
  return { text: annotationText(annotation, environment), kind: about, by, certainty, evidence };
}

/** An event, or of tied notes those runs of them that stand in bars whose time is sound. */
function soundParts(event: PerformedEvent): readonly PerformedEvent[] {
  if (event.from.every(({ placed }) => !placed.bar.broken)) return [event];
  if (event.pass !== undefined) return [];
  const runs: [WrittenEvent, ...WrittenEvent[]][] = [];
  let last: WrittenEvent | undefined;
  for (const written of event.from) {
    if (!written.placed.bar.broken) {
      if (last === undefined || last.placed.bar.broken) runs.push([written]);
      else runs.at(-1)?.push(written);
    }
    last = written;
  }
  return runs.map((from) => ({
    ...event,
    stave: from[0].member?.stave ?? event.stave,
    ...playedAt(event, from),
    from,
  }));
}

/** The performed time of some of the notes that are tied together. */
function playedAt(event: PerformedEvent, from: PerformedEvent['from']): Pick<PerformedEvent, 'onset' | 'duration'> {
  const first = event.from.indexOf(from[0]);
  const next = first + from.length;
  const onset = performedOnset(event, first);
  const end = next < event.from.length ? performedOnset(event, next) : add(event.onset, event.duration);
  return { onset, duration: subtract(end, onset) };
}

/** Whether what begins in an earlier bar still sounds when the first bar wanted begins. */
const leadsInto = (opening: Bar, begun: Bar, { onset, duration }: PerformedEvent): boolean =>
  begun.index < opening.index && compare(add(onset, duration), opening.onset) > 0;

const timelinePass = ({ section, time, bars, onset }: Pass): TimelinePass => ({
  section: section ?? null,
  time,
  onset: format(onset),
  from: bars[0].number,
  to: (bars.at(-1) ?? bars[0]).number,
});

const barsPlayed = ({ bars, onset }: Pass, measures: readonly Measure[], score: Score): TimelineBar[] =>
  bars.flatMap((bar) => {
    const measure = measures.find((one) => one.bar === bar);
    if (measure === undefined) return [];
    return [{ ...timelineBar(measure, score), onset: format(add(onset, subtract(bar.onset, bars[0].onset))) }];
  });

function timelineBar({ bar, system }: Measure, { environment }: Score): TimelineBar {
  const annotations = barlinesOf(bar).flatMap(annotationsOfBarline);
  return {
    number: bar.number,
    system: `${system.page}/${system.ordinal}`,
    onset: format(bar.onset),
    duration: format(bar.duration),
    ...(annotations.length === 0
      ? {}
      : { annotations: annotations.map((applied) => timelineAnnotation(applied, environment)) }),
  };
}

function timelineEvent(
  { score }: Performance,
  event: PerformedEvent,
  said: ReturnType<typeof sayingOnce>,
): TimelineEvent {
  const [first] = event.from;
  const { line, column } = positionOf(
    score.tree,
    first.placed.system,
    first.member?.source ?? first.placed.event.source,
  );
  const address = addressOf(first.placed.system, first.placed.event);
  const { realised } = event;
  const annotations = said(event);
  return {
    address,
    voice: score.environment.voices[event.voice]?.name ?? '',
    stave: score.environment.staves[event.stave]?.name ?? '',
    kind: event.kind,
    onset: format(event.onset),
    duration: format(event.duration),
    written: first.member === undefined || first.member.realised !== undefined ? null : writtenPitch(first.member),
    pitch: event.pitch === undefined ? null : pitchText(event.pitch),
    midi: event.pitch?.midi ?? null,
    marks: event.from.flatMap(marksOf),
    ...(realised === undefined
      ? {}
      : { realises: writtenAddress(address), sign: realised.sign, table: realised.table }),
    ...(event.released === undefined ? {} : { released: format(event.released) }),
    ...(event.altered === undefined ? {} : alteredFields(event, event.altered.by)),
    ...(annotations.length === 0 ? {} : { annotations }),
    line,
    column,
  };
}

function alteredFields(
  event: PerformedEvent,
  practices: readonly string[],
): Pick<TimelineEvent, 'practices' | 'writtenOnset' | 'writtenDuration'> {
  const { onset, duration } = writtenTime(event);
  return { practices, writtenOnset: format(onset), writtenDuration: format(duration) };
}

/** The editor's own accidental is not in the source; a cautionary one is. */
const writtenPitch = ({ spelling, octave }: NoteMember): string =>
  `${spelling.letter}${spelling.accidental ?? spelling.cautionary ?? ''}${octave}`;

/** Curves have two ends and weights are the editor's: neither is a mark on one note. */
const LISTED: ReadonlySet<AppliedMark['form']['type']> = new Set(['sign', 'finger', 'accidental', 'other']);

function marksOf({ placed, member }: WrittenEvent): TimelineMark[] {
  return marksAtNote(placed.event, member)
    .filter((mark) => LISTED.has(mark.form.type))
    .map((mark) => ({
      sign: mark.shapes.length > 0 ? mark.shapes.join('+') : mark.form.name,
      onset: format(placed.onset),
      address: addressOf(placed.system, placed.event),
    }));
}

/** The timeline as text: indented by two spaces, each bar and each event on one line. The same input gives the same bytes. */
function timelineText(timeline: Timeline): string {
  const { pieces, ...head } = timeline;
  const lines = Object.entries(head).map(([key, value]) => `  ${JSON.stringify(key)}: ${JSON.stringify(value)},`);
  return `${['{', ...lines, `  "pieces": ${list(pieces.map(pieceText), '  ')}`, '}'].join('\n')}\n`;
}

const pieceText = (piece: TimelinePiece): string =>
  [
    '{',
    `      "name": ${JSON.stringify(piece.name)},`,
    ...(piece.passes === undefined ? [] : [`      "passes": ${list(piece.passes.map(oneLine), '      ')},`]),
    `      "bars": ${list(piece.bars.map(oneLine), '      ')},`,
    ...(piece.hemiolas === undefined ? [] : [`      "hemiolas": ${list(piece.hemiolas.map(oneLine), '      ')},`]),
    `      "events": ${list(piece.events.map(oneLine), '      ')}`,
    '    }',
  ].join('\n');

const list = (items: readonly string[], indent: string): string =>
  items.length === 0 ? '[]' : `[\n${items.map((item) => `${indent}  ${item}`).join(',\n')}\n${indent}]`;

/** JSON on one line, with a space after each comma and colon. */
function oneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(oneLine).join(', ')}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value);
  const fields = Object.entries(value).map(([key, item]) => `${JSON.stringify(key)}: ${oneLine(item)}`);
  return `{ ${fields.join(', ')} }`;
}
