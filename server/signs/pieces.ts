/** What is played for each event while its signs are realised: at first the event itself, in the end perhaps many notes. */
import { putUnder } from '../../grammar/lists';
import { add, compare, divide, subtract, type Time, time } from '../../grammar/time';
import { endOf } from '../score/clock';
import { insertInOrder, type PerformedEvent, type Realised, type SoundingPitch } from '../score/performance';

/** A note that is played, or, without a pitch, a silence. */
export interface Piece {
  readonly pitch: SoundingPitch | undefined;
  readonly onset: Time;
  readonly duration: Time;
  readonly realised: Realised | undefined;
  /** The time before its end at which its key comes up, for it is struck again. */
  readonly released?: Time;
}

export class Pieces {
  private readonly changed = new Map<PerformedEvent, readonly Piece[]>();
  /** Notes between those of a chord, by the note from which they come. */
  private readonly beside = new Map<PerformedEvent, Piece[]>();

  of(event: PerformedEvent): readonly Piece[] {
    return this.changed.get(event) ?? [whole(event)];
  }

  set(event: PerformedEvent, pieces: readonly Piece[]): void {
    this.changed.set(event, pieces);
  }

  /** Other notes in the place of the one at an index. */
  replace(event: PerformedEvent, index: number, others: readonly Piece[]): void {
    const pieces = this.of(event);
    const isAll = pieces.length === 1 && index === 0;
    this.set(event, isAll ? others : [...pieces.slice(0, index), ...others, ...pieces.slice(index + 1)]);
  }

  addBeside(event: PerformedEvent, piece: Piece): void {
    putUnder(this.beside, event, piece);
  }

  /** Lets the last note of an event sound on until a moment. */
  lengthen(event: PerformedEvent, until: Time): void {
    const pieces = this.of(event);
    const last = pieces.at(-1);
    if (last !== undefined)
      this.set(event, [...pieces.slice(0, -1), { ...last, duration: subtract(until, last.onset) }]);
  }

  /** Lets the first note of an event begin later, after what has taken its time. */
  begin(event: PerformedEvent, onset: Time, realised: Realised | undefined): void {
    const [first, ...rest] = this.of(event);
    if (first !== undefined)
      this.set(event, [{ ...first, onset, duration: subtract(endOf(first), onset), realised }, ...rest]);
  }

  /** Strikes the last note of an event later; it ends when it did. A voice in which nothing sounds till then is `silent`. */
  delay(event: PerformedEvent, by: Time, realised: Realised, silent: boolean): void {
    const pieces = this.of(event);
    const last = pieces.at(-1);
    if (last === undefined || compare(by, last.duration) >= 0) return;
    const late = { ...last, onset: add(last.onset, by), duration: subtract(last.duration, by), realised };
    const silence = { pitch: undefined, onset: last.onset, duration: by, realised };
    this.set(event, [...pieces.slice(0, -1), ...(silent && by.n !== 0 ? [silence] : []), late]);
  }

  /** Takes time from the end of an event, but not more than half of its last note; false if there is not enough. */
  shorten(event: PerformedEvent, by: Time): boolean {
    const pieces = this.of(event);
    const last = pieces.at(-1);
    if (last === undefined || compare(by, divide(last.duration, time(2))) > 0) return false;
    this.set(event, [...pieces.slice(0, -1), { ...last, duration: subtract(last.duration, by) }]);
    return true;
  }

  /** The events as they are played, in their order, some at a time. */
  *performing(events: readonly PerformedEvent[]): Generator<undefined, PerformedEvent[]> {
    const all: PerformedEvent[] = [];
    let waiting = EVENTS_IN_TURN;
    for (const event of events) {
      if (waiting-- === 0) {
        waiting = EVENTS_IN_TURN;
        yield;
      }
      const between = this.beside.get(event);
      if (between === undefined && !this.changed.has(event)) insertInOrder(all, event);
      else {
        for (const piece of this.of(event)) insertInOrder(all, played(event, piece));
        for (const piece of between ?? []) insertInOrder(all, played(event, piece));
      }
    }
    return all;
  }

  /** The first note that is played for an event. */
  firstOf(event: PerformedEvent): Pick<Piece, 'pitch' | 'onset'> | undefined {
    const own = this.changed.get(event);
    return own === undefined ? event : own[0];
  }

  /** Every event whose pieces are not the event alone. */
  get realised(): Iterable<readonly [PerformedEvent, readonly Piece[]]> {
    return this.changed;
  }
}

/** A turn that others may take comes after so many events. */
const EVENTS_IN_TURN = 200;

/** An event that is being made. */
type Made = { -readonly [Part in keyof PerformedEvent]: PerformedEvent[Part] };

const whole = ({ pitch, onset, duration, realised }: PerformedEvent): Piece => ({ pitch, onset, duration, realised });

function played(event: PerformedEvent, { pitch, onset, duration, realised, released }: Piece): PerformedEvent {
  const { kind, voice, stave, small, from, altered } = event;
  const sounds = pitch === undefined && kind === 'note' ? 'rest' : kind;
  const made: Made = { kind: sounds, voice, stave, onset, duration, pitch, small, from };
  if (realised !== undefined) made.realised = realised;
  if (altered !== undefined) made.altered = altered;
  if (released !== undefined) made.released = released;
  return made;
}
