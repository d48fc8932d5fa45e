/**
 * The performance: what is played, in exact time, each event knowing the written notes it comes from.
 *
 * The score says what the source draws; a reading turns it into a performance step by step. Every step takes and gives
 * a `Performance`: it may move, stretch or multiply events, while `from` stays, so that whatever is played can point back
 * to the page.
 */
import type { Time } from '../../grammar/time';
import type { Spelling } from '../../grammar/tree';
import type { EventKind, NoteMember, Piece, Score } from './score';
import type { PlacedEvent } from './walk';

export interface Performance {
  readonly score: Score;
  /** `written`, or the name of the reading or witness performed. */
  readonly reading: string;
  readonly pieces: readonly PerformedPiece[];
}

export interface PerformedPiece {
  readonly piece: Piece;
  /** By onset, then voice, then the order of the source, then from the lowest pitch. */
  readonly events: readonly PerformedEvent[];
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
