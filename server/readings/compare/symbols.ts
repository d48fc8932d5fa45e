/** What stands in each bar of each voice of one text, symbol by symbol, as it is compared. */
import { putUnder } from '../../../grammar/lists';
import { format, subtract, type Time } from '../../../grammar/time';
import { pitchText } from '../../../grammar/vocabulary/pitches';
import { endOf } from '../../score/clock';
import { type PerformedEvent, performedOnset } from '../../score/performance';
import type {
  AppliedAnnotation,
  AppliedMark,
  Bar,
  NoteMember,
  Piece,
  Score,
  ScoreSystem,
  VoiceEvent,
} from '../../score/score';
import {
  addressOf,
  changesOf,
  curvesOf,
  eventsOf,
  type PlacedEnd,
  type PlacedEvent,
  placeOfEvent,
  positionOf,
} from '../../score/walk';
import { perform } from '../perform';
import { symbolInTrade } from './inTrade';

/** A note or chord, rest, gap or lacuna, or what a bar says of itself. */
export interface DrawnSymbol {
  /** Its value, as typed; "" where it has none. */
  readonly value: string;
  /** Its notes, as typed, or `r`, `_`, `lost`. */
  readonly notes: string;
  /** Ties, signs, fingers, words, curves, as typed. */
  readonly marks: string;
  /** The keys that sound. */
  readonly sounding: string;
  /** What sounds, as it would be typed with every sharp and flat. */
  readonly pitches: string;
  /** Where it is played at another time than it is written. */
  readonly played: TimeInBar | undefined;
  /** The written time, to set beside that. */
  readonly written: TimeInBar;
  /** When it begins in its bar as written. */
  readonly onset: Time;
  /** In the form of reports: `q d″`, with its marks as typed. */
  readonly inTrade: string;
  /** Drawn, so that it is counted: a gap is not. */
  readonly drawn: boolean;
  /** It stands in an option whose label is doubtful: it may not be this source's. */
  readonly doubtful: boolean;
  /** What is said of the places in which it stands. */
  readonly reasons: readonly AppliedAnnotation[];
  readonly address: string;
  readonly line: number;
  readonly column: number;
}

/** When something comes in its bar and how long it lasts, in semibreves. */
export interface TimeInBar {
  readonly at: string;
  readonly lasts: string;
}

/** A bar as one text has it. */
export interface ComparedBar {
  readonly number: string;
  readonly piece: string;
  /** By name of the voice. */
  readonly voices: ReadonlyMap<string, readonly DrawnSymbol[]>;
  /** Clefs, signatures, meters, tempi, barlines: what concerns the bar as a whole. */
  readonly frame: string;
}

/** The bars of a text by their place in the source, in its order. What a source leaves out is not among its bars. */
export type ComparedText = ReadonlyMap<string, ComparedBar>;

interface Draft extends ComparedBar {
  readonly voices: Map<string, DrawnSymbol[]>;
  frame: string;
}

/** @param blocks of the systems that are compared; as a rule all */
export function comparedText(score: Score, blocks?: ReadonlySet<number>): ComparedText {
  const played = playedTimes(score);
  const bars = new Map<string, Draft>();
  for (const piece of score.pieces) {
    const curves = curveMarks(piece);
    const frames = framesOf(piece);
    const keyOf = barKeys(piece);
    for (const placed of eventsOf(piece)) {
      if (blocks?.has(placed.system.block) === false) continue;
      const voice = score.environment.voices[placed.event.voice]?.name ?? '';
      const bar = barOf(bars, keyOf(placed), piece, placed.bar, frames);
      const own = bar.voices.get(voice) ?? [];
      bar.voices.set(voice, own);
      own.push(symbolOf(score, placed, curves.get(placeOfEvent(placed)) ?? [], played.get(placeOfEvent(placed))));
    }
  }
  return bars;
}

function barOf(
  bars: Map<string, Draft>,
  key: string,
  piece: Piece,
  { number, index }: Bar,
  frames: ReadonlyMap<number, string>,
): Draft {
  const known = bars.get(key);
  if (known !== undefined) return known;
  const made = { number, piece: piece.name, voices: new Map(), frame: frames.get(index) ?? '' };
  bars.set(key, made);
  return made;
}

/**
 * By what a bar is found again in another text: its count in the lanes of its system, the bars that a source leaves out
 * included. Addresses tell it, save those in an option that goes over a barline: these count from the bar where it begins.
 */
function barKeys(piece: Piece): (placed: PlacedEvent) => string {
  const counts = new Map<ScoreSystem, Map<number, number>>();
  for (const { event, system, bar } of eventsOf(piece)) {
    const own = counts.get(system) ?? new Map<number, number>();
    counts.set(system, own.set(bar.index, Math.max(own.get(bar.index) ?? 0, Number(event.address.split('.')[0]))));
  }
  for (const own of counts.values()) {
    let before = 0;
    for (const [bar, count] of [...own].sort(([a], [b]) => a - b)) {
      before = Math.max(count, before + 1);
      own.set(bar, before);
    }
  }
  return ({ system, bar }) => `${system.block} ${counts.get(system)?.get(bar.index)}`;
}

// ─── what stands around bars ─────────────────────────────────────────────────────────────────────────────────────

function framesOf(piece: Piece): ReadonlyMap<number, string> {
  const frames = new Map<number, string[]>();
  const add = (bar: number, text: string): void => {
    putUnder(frames, bar, text);
  };
  for (const { change, bar } of changesOf(piece)) {
    const { clefs, key, meter, tempo, manual, stave } = change;
    const where = stave === undefined ? '' : `${stave} `;
    if (clefs !== undefined)
      add(bar.index, `clef ${where}${clefs.map(({ letter, line }) => `${letter}${line}`).join('+')}`);
    if (key !== undefined)
      add(bar.index, `key ${where}${key.map(({ letter, accidental }) => letter + accidental).join(' ')}`);
    if (meter !== undefined) add(bar.index, `meter ${meter.sign}`);
    if (tempo !== undefined) add(bar.index, `tempo ${tempo.value.text} at ${tempo.perMinute}`);
    if (manual !== undefined) add(bar.index, `manual ${manual.name}`);
  }
  for (const bar of piece.bars) {
    add(bar.index, [bar.opening?.shape, bar.closing?.shape].filter((shape) => shape !== undefined).join(' '));
  }
  return new Map([...frames].map(([bar, texts]) => [bar, texts.join(', ')]));
}

/** By event: the ends of curves that stand there, `'u` and `'.`. */
function curveMarks(piece: Piece): ReadonlyMap<string, readonly string[]> {
  const marks = new Map<string, string[]>();
  const add = (at: PlacedEnd | undefined, text: string): void => {
    if (at === undefined) return;
    const place = placeOfEvent({ system: at.system, voice: at.voice, index: at.end.event });
    putUnder(marks, place, text);
  };
  for (const { kind, start, end } of curvesOf(piece)) {
    add(start, kind === 'u' ? "'u" : "'line");
    add(end, "'.");
  }
  return marks;
}

// ─── symbols ─────────────────────────────────────────────────────────────────────────────────────────────────────

function symbolOf(
  score: Score,
  placed: PlacedEvent,
  curves: readonly string[],
  played: TimeInBar | undefined,
): DrawnSymbol {
  const { event, system, onset, bar } = placed;
  const { line, column } = positionOf(score.tree, system, event.source);
  const marks = [...event.members.flatMap(marksOfNote), ...marksOf(event.marks), ...wordsOf(event), ...curves].join('');
  return {
    value: valueText(event),
    notes: event.kind === 'note' ? event.members.map(noteText).join('-') : SILENT[event.kind],
    marks,
    inTrade: `${symbolInTrade(event)}${marks === '' ? '' : ` ${marks}`}`,
    drawn: event.kind !== 'gap',
    doubtful: event.chosen.some(({ doubtful }) => doubtful.some((label) => score.choice.labels.includes(label))),
    reasons: event.chosen.flatMap(({ annotations }) => annotations),
    sounding: event.members.map(({ midi }) => midi).join('-'),
    pitches: event.members.map(soundingText).join('-'),
    played,
    written: timeInBar(subtract(onset, bar.onset), event.duration),
    onset: subtract(onset, bar.onset),
    address: addressOf(system, event),
    line,
    column,
  };
}

const valueText = ({ small, tuplets, value }: VoiceEvent): string =>
  [
    ...(small === undefined ? [] : ['small']),
    ...tuplets.filter(({ drawn }) => drawn).map(({ n, m }) => `${n}in${m}`),
    value?.text ?? '',
  ].join(' ');

const SILENT = { rest: 'r', gap: '_', lost: 'lost' } as const;

const noteText = ({ spelling, octave }: NoteMember): string =>
  `${spelling.letter}${spelling.accidental ?? ''}${spelling.cautionary === undefined ? '' : `(${spelling.cautionary})`}${octave}`;

const soundingText = ({ spelling: { letter }, alteration, octave }: NoteMember): string =>
  pitchText({ letter, alteration, octave });

const marksOfNote = ({ tie, marks }: NoteMember): string[] => [...(tie === undefined ? [] : ['=']), ...marksOf(marks)];

const marksOf = (marks: readonly AppliedMark[]): string[] =>
  marks
    .filter(({ form }) => form.type !== 'curveStart' && form.type !== 'curveEnd')
    .flatMap((mark) => [markText(mark), ...marksOf(mark.accidentals)]);

/** The sign, without the readings to which it is limited: it is there. */
const markText = ({ form, shapes }: AppliedMark): string => {
  const name = signName({ form, shapes });
  return `'${form.editors ? `[${name}]` : name}${form.doubtful ? '?' : ''}`;
};

/** By its shapes, whatever name it was typed by; other marks have names only. */
export const signName = ({ form, shapes }: Pick<AppliedMark, 'form' | 'shapes'>): string =>
  shapes.length > 0 ? shapes.join('+') : form.name;

const wordsOf = ({ words }: VoiceEvent): string[] => words.map(({ text }) => ` “${text}”`);

const timeInBar = (at: Time, lasts: Time): TimeInBar => ({ at: format(at), lasts: format(lasts) });

/** By event: when it is played, where that is otherwise than it is written. */
function playedTimes(score: Score): ReadonlyMap<string, TimeInBar> {
  const times = new Map<string, TimeInBar>();
  for (const { events } of perform(score, { ornaments: 'sign' }).pieces) {
    for (const event of events) {
      if (event.altered === undefined) continue;
      for (const [index, { placed }] of event.from.entries()) {
        const onset = performedOnset(event, index);
        const end = endWithin(event, index);
        const place = placeOfEvent(placed);
        if (!times.has(place)) times.set(place, timeInBar(subtract(onset, placed.bar.onset), subtract(end, onset)));
      }
    }
  }
  return times;
}

/** When a written note of an event gives way to the next of it, or the event ends. */
function endWithin(event: PerformedEvent, index: number): Time {
  if (index + 1 < event.from.length) return performedOnset(event, index + 1);
  return endOf(event);
}
