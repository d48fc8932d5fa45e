/**
 * The performance: what is played, in exact time, each event knowing the written notes it comes from.
 *
 * The score says what the source draws; a reading turns it into a performance step by step. Every step takes and gives
 * a `Performance`: it may move, stretch or multiply events, while `from` stays, so that whatever is played can point back
 * to the page.
 */
import { add, compare, type Time, ZERO } from '../../grammar/time';
import type { Spelling } from '../../grammar/tree';
import { STEPS } from '../../grammar/vocabulary/pitches';
import type { Pass } from './playing';
import type { Bar, EventKind, NoteMember, Piece, PlacedProblem, Score } from './score';
import type { PlacedEvent } from './walk';

export interface Performance {
  readonly score: Score;
  /** `written`, or the name of the reading or witness performed. */
  readonly reading: string;
  readonly pieces: readonly PerformedPiece[];
  /** What realising could not do, and what it had to assume. */
  readonly problems: readonly PlacedProblem[];
}

export interface PerformedPiece {
  readonly piece: Piece;
  /** By onset, then voice, then the order of the source, then from the lowest pitch. */
  readonly events: readonly PerformedEvent[];
  /** Bars in which two of three, or one of six, go as three of two: from the first to the last. */
  readonly hemiolas?: readonly { readonly from: Bar; readonly to: Bar }[];
  /** Of a piece that is played out: what is played one after another. Times are then those of playing. */
  readonly passes?: readonly Pass[];
}

/** One note, rest, gap or lacuna. A chord is as many events as it has notes; a chain of tied notes is one. */
export interface PerformedEvent {
  readonly kind: EventKind;
  /** Index in `Environment.voices`. */
  readonly voice: number;
  /** Index in `Environment.staves`. */
  readonly stave: number;
  /** Performed, in semibreves from the start of the piece. */
  readonly onset: Time;
  /** Performed, in semibreves; zero of a small note that no step has given time. */
  readonly duration: Time;
  /** Of a note. */
  readonly pitch: SoundingPitch | undefined;
  /** Drawn as a small note: time stands still while it is written. */
  readonly small: boolean;
  /** What is drawn for it: the first gives its address, line and column. More than one: tied together. */
  readonly from: readonly [WrittenEvent, ...WrittenEvent[]];
  /** Of what is played for a sign or a small note, and of the note that makes room for it. */
  readonly realised?: Realised;
  /** How long before its end its key comes up, where the key is struck again at once: in semibreves, within the duration. */
  readonly released?: Time;
  /** Of what a practice of rhythm plays at another time, or for longer or shorter, than is written. */
  readonly altered?: Altered;
  /** Of a piece that is played out: the index in its passes. */
  readonly pass?: number;
}

/** How practices of rhythm have changed the time of an event; what is written is found again by `from`. */
export interface Altered {
  /** The words of the practices: `overdot`, `inegal` … */
  readonly by: readonly string[];
  /** Performed: when each of the written notes in `from` comes. */
  readonly at: readonly Time[];
}

/** By what a note is played that the source does not draw so. */
export interface Realised {
  /** Short names of the shapes, joined by `+`; `small` of small notes. */
  readonly sign: string;
  /** The sign table. */
  readonly table: string;
  /** The table's own name for the sign; "" of small notes. */
  readonly row: string;
}

export interface SoundingPitch {
  readonly letter: Spelling['letter'];
  /** Semitones by which the note differs from the natural: −2 to 2. */
  readonly alteration: number;
  /** Scientific octave, c4 the middle C. */
  readonly octave: number;
  /** MIDI key: c4 is 60. */
  readonly midi: number;
}

/** A written event, and of a chord the note meant. */
export interface WrittenEvent {
  readonly placed: PlacedEvent;
  /** Undefined of rests, gaps and lacunae. */
  readonly member: NoteMember | undefined;
}

/** The time that the source gives an event: that of all its tied notes. */
export const writtenTime = ({ from }: PerformedEvent): { readonly onset: Time; readonly duration: Time } => ({
  onset: from[0].placed.onset,
  duration: from.reduce((sum, { placed }) => add(sum, placed.event.duration), ZERO),
});

/** When a written note of an event comes in the performance. */
export const performedOnset = ({ from, altered }: PerformedEvent, index: number): Time =>
  altered?.at[index] ?? (from[index] ?? from[0]).placed.onset;

/** The time of the bars that it is written in is known. */
export const hasTime = ({ from }: PerformedEvent): boolean => from.every(({ placed }) => !placed.bar.broken);

/** By onset, voice, the order of the source (events of one voice at one moment: small notes first), pitch. */
export function inOrder(a: PerformedEvent, b: PerformedEvent): number {
  const from = a.from[0].placed;
  const other = b.from[0].placed;
  return (
    compare(a.onset, b.onset) ||
    a.voice - b.voice ||
    from.system.block - other.system.block ||
    from.index - other.index ||
    height(a.pitch) - height(b.pitch)
  );
}

/** Puts an event among others that are in order, after those that are equal to it. It mostly belongs at the end or near it. */
export function insertInOrder<Event extends PerformedEvent>(events: Event[], event: Event): void {
  let at = events.length;
  for (let before = events[at - 1]; before !== undefined && inOrder(before, event) > 0; before = events[at - 1]) {
    events[at] = before;
    at--;
  }
  events[at] = event;
}

/** Orders pitches by key and then, for two spellings of one key, by the higher degree. */
const height = (pitch: SoundingPitch | undefined): number =>
  pitch === undefined ? 0 : pitch.midi * 100 + pitch.octave * 7 + STEPS[pitch.letter];
