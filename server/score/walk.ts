/** Ways through a score: what exporters, checks and readers of positions ask for. */
import type { Position } from '../../grammar/findings/finding';
import { offsetIn, positionAt } from '../../grammar/place';
import { add, type Time } from '../../grammar/time';
import type { FileTree, MarkForm } from '../../grammar/tree';
import type {
  AppliedMark,
  Bar,
  Curve,
  CurveEnd,
  DrawnBarline,
  NoteMember,
  Piece,
  ScoreSystem,
  Source,
  StateChange,
  SystemVoice,
  VoiceEvent,
} from './score';

/** An event with its absolute place. */
export interface PlacedEvent {
  readonly event: VoiceEvent;
  readonly system: ScoreSystem;
  readonly voice: SystemVoice;
  /** Index in the voice's events of this system. */
  readonly index: number;
  /** From the piece's start. */
  readonly onset: Time;
  readonly bar: Bar;
}

/** All barlines of a bar. */
export const barlinesOf = ({ opening, closing, inner }: Bar): readonly DrawnBarline[] =>
  [opening, closing, ...inner].filter((line) => line !== undefined);

const barOf = (piece: Piece, system: ScoreSystem, bar: number): Bar => {
  const found = piece.bars[system.firstBar + bar];
  if (found === undefined) throw new RangeError(`no bar ${bar} in system ${system.ordinal}`);
  return found;
};

/** An event by its place: events may be built anew each time they are asked for. */
export const placeOfEvent = ({ system, voice, index }: Pick<PlacedEvent, 'system' | 'voice' | 'index'>): string =>
  `${system.block} ${voice.voice} ${index}`;

/** All events of a piece: systems in order, in each its voices, in each voice the order of the source. */
export function* eventsOf(piece: Piece): Generator<PlacedEvent> {
  for (const system of piece.systems) {
    for (const voice of system.score.voices) {
      for (let index = 0; index < voice.events.length; index++) {
        const event = voice.events[index] as VoiceEvent;
        yield {
          event,
          system,
          voice,
          index,
          onset: add(system.onset, event.onset),
          bar: barOf(piece, system, event.bar),
        };
      }
    }
  }
}

/** All marks of an event in the order in which they are typed: those of its notes, then those of the whole. */
export function marksOfEvent({ members, marks }: Pick<VoiceEvent, 'members' | 'marks'>): readonly AppliedMark[] {
  // Most notes have none: for them no list is made.
  return members.every(isUnmarked) ? marks : [...members.flatMap((member) => member.marks), ...marks];
}

const isUnmarked = (member: NoteMember): boolean => member.marks.length === 0;

/** The marks that are told at a note, or at what has none: its own, and at the first note of an event those of the whole. */
export const marksAtNote = (
  { members, marks }: Pick<VoiceEvent, 'members' | 'marks'>,
  note: NoteMember | undefined,
): readonly AppliedMark[] =>
  note === undefined ? marks : note === members[0] ? [...note.marks, ...marks] : note.marks;

/** The marks that say something of a note: its own and those of its whole event. */
export const marksUpon = (
  { marks }: Pick<VoiceEvent, 'marks'>,
  note: NoteMember | undefined,
): readonly AppliedMark[] => [...(note?.marks ?? []), ...marks];

/** Clefs, signatures and the like with their absolute onset and bar. Those after which no music comes are left out. */
export function* changesOf(
  piece: Piece,
): Generator<{ change: StateChange; onset: Time; bar: Bar; system: ScoreSystem }> {
  for (const system of piece.systems) {
    for (const change of system.score.changes) {
      const bar = piece.bars[system.firstBar + change.bar];
      if (bar !== undefined) yield { change, onset: add(system.onset, change.onset), bar, system };
    }
  }
}

export interface PlacedEnd {
  readonly end: CurveEnd;
  readonly system: ScoreSystem;
  readonly voice: SystemVoice;
}

/** A curve with both ends found across system ends; an end that the source does not show is undefined. */
export interface PlacedCurve {
  readonly kind: Curve['kind'];
  readonly form: MarkForm;
  readonly start: PlacedEnd | undefined;
  readonly end: PlacedEnd | undefined;
}

/** All curves of a piece, by their order of ending. */
export function curvesOf(piece: Piece): PlacedCurve[] {
  const found: PlacedCurve[] = [];
  /** By voice: the curves open at the end of the system just walked, in the order of the carry. */
  let open: OpenCurves = new Map();
  for (const system of piece.systems) {
    const next: OpenCurves = new Map();
    for (const curve of system.score.curves) {
      const begun = curve.incoming === undefined ? undefined : open.get(curve.voice)?.[curve.incoming];
      const whole: PlacedCurve = {
        kind: curve.kind,
        form: begun?.form ?? curve.form,
        start: curve.start === undefined ? begun?.start : placedEnd(curve.start, system),
        end: curve.end === undefined ? undefined : placedEnd(curve.end, system),
      };
      if (curve.outgoing !== undefined) entryOf(next, curve.voice)[curve.outgoing] = { ...whole, waits: curve.waits };
      else if (!curve.waits) found.push(whole);
    }
    open = next;
  }
  // What waits for a further ending that does not come has ended in the ones before.
  for (const curves of open.values()) for (const curve of curves) if (!curve.waits) found.push(curve);
  return found;
}

/** A curve over notes of one voice whose ends are shown, by the onsets of its ends. */
export interface Slur {
  readonly voice: number;
  readonly from: Time;
  readonly to: Time;
}

/** The curves of a piece, lines left out, by the voice in which they begin. */
export const slursOf = (piece: Piece): Slur[] =>
  curvesOf(piece).flatMap(({ kind, start, end }) => {
    const [from, to] = [start && onsetOfEnd(start), end && onsetOfEnd(end)];
    if (kind !== 'u' || start === undefined || from === undefined || to === undefined) return [];
    return [{ voice: start.end.voice, from, to }];
  });

function onsetOfEnd({ end, system, voice }: PlacedEnd): Time | undefined {
  const event = voice.events[end.event];
  return event && add(system.onset, event.onset);
}

type OpenCurves = Map<number, (PlacedCurve & { readonly waits: boolean })[]>;

function placedEnd(end: CurveEnd, system: ScoreSystem): PlacedEnd | undefined {
  const voice = system.score.voices.find((one) => one.voice === end.voice);
  return voice && { end, system, voice };
}

function entryOf(lists: OpenCurves, voice: number): (PlacedCurve & { waits: boolean })[] {
  const list = lists.get(voice) ?? [];
  lists.set(voice, list);
  return list;
}

/** `PAGE/SYSTEM/VOICE/BAR.EVENT`, exact for one version of the text. */
export const addressOf = (system: ScoreSystem, event: VoiceEvent): string =>
  `${system.page}/${system.ordinal}/${event.laneName}/${event.address}`;

/** Where a source in a system stands in the file: its offset. */
export function offsetOf(tree: FileTree, system: Pick<ScoreSystem, 'block'>, source: Source): number {
  const block = tree.blocks[system.block];
  const holder = source.statement === undefined ? block?.lanes[source.lane] : block?.statements[source.statement];
  return block === undefined || holder === undefined ? 0 : offsetIn(block, holder, source.pos);
}

/** Where a source in a system stands in the file: line and column from 1. */
export const positionOf = (tree: FileTree, system: Pick<ScoreSystem, 'block'>, source: Source): Position =>
  positionAt(tree, offsetOf(tree, system, source));
