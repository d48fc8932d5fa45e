/**
 * A piece as it sounds around each of its notes: what stands before and after a note in its voice, what sounds with it, which
 * curves lead to it and which signature is in force.
 */
import { add, compare, equal, type Time, time } from '../../grammar/time';
import { ALTERATIONS } from '../../grammar/vocabulary/pitches';
import { endOf, inForce } from '../score/clock';
import type { PerformedEvent, PerformedPiece, SoundingPitch } from '../score/performance';
import type { Bar, KeySign } from '../score/score';
import { changesOf, type Slur, slursOf } from '../score/walk';

/** What one voice does at one moment: the notes of a chord together, or a rest, gap or lacuna. */
export interface Moment {
  readonly onset: Time;
  readonly events: readonly PerformedEvent[];
}

/** A note that is drawn in a bar, for what it tells of sharps and flats. */
export interface DrawnPitch {
  readonly voice: number;
  readonly onset: Time;
  readonly pitch: SoundingPitch;
}

/** Shorter than any value. */
export const MOMENT = time(1, 4096);

const sounds = (event: PerformedEvent, from: Time, to: Time): boolean =>
  compare(event.onset, to) < 0 && compare(endOf(event), from) > 0;

const isNote = (event: PerformedEvent): boolean => event.kind === 'note' && event.pitch !== undefined;

export class Passage {
  private readonly voices = new Map<number, Moment[]>();
  private readonly places = new Map<PerformedEvent, { readonly moments: readonly Moment[]; readonly index: number }>();
  private readonly drawn = new Map<number, DrawnPitch[]>();
  private readonly sounding = new Map<number, PerformedEvent[]>();
  private readonly slurs = new Map<number, Slur[]>();
  private readonly manuals = new Map<number, { readonly onset: Time; readonly what: string }[]>();
  private readonly keys = new Map<number, { readonly onset: Time; readonly what: readonly KeySign[] }[]>();

  private readonly rests: readonly PerformedEvent[];

  constructor(readonly performed: PerformedPiece) {
    this.rests = performed.events.filter(({ kind }) => kind === 'rest');
    for (const event of performed.events) this.take(event);
    for (const moments of this.voices.values()) {
      moments.forEach((moment, index) => {
        for (const event of moment.events) this.places.set(event, { moments, index });
      });
    }
    this.takeSlurs();
    this.takeChanges();
  }

  // ── gathering ──

  private take(event: PerformedEvent): void {
    if (!event.small) this.join(event);
    if (!isNote(event) || event.pitch === undefined) return;
    for (const { placed } of event.from) {
      push(this.drawn, placed.bar.index, { voice: event.voice, onset: placed.onset, pitch: event.pitch });
      if (!event.small) push(this.sounding, placed.bar.index, event);
    }
  }

  /** Notes of a chord are one moment of their voice. */
  private join(event: PerformedEvent): void {
    const moments = this.voices.get(event.voice) ?? [];
    this.voices.set(event.voice, moments);
    const last = moments.at(-1);
    const own = last?.events[0]?.from[0].placed.event === event.from[0].placed.event;
    if (own && last !== undefined && equal(last.onset, event.onset))
      moments[moments.length - 1] = { ...last, events: [...last.events, event] };
    else moments.push({ onset: event.onset, events: [event] });
  }

  private takeSlurs(): void {
    for (const slur of slursOf(this.performed.piece)) push(this.slurs, slur.voice, slur);
  }

  private takeChanges(): void {
    const staves = [...new Set(this.performed.events.map(({ stave }) => stave))];
    for (const { change, onset } of changesOf(this.performed.piece)) {
      if (change.manual !== undefined) push(this.manuals, change.manual.voice, { onset, what: change.manual.name });
      if (change.key === undefined) continue;
      for (const stave of change.stave === undefined ? staves : [change.stave]) {
        push(this.keys, stave, { onset, what: change.key });
      }
    }
  }

  // ── asking ──

  /** The chord or note of an event, with all its notes. */
  momentOf(event: PerformedEvent): Moment {
    return this.beside(event, 0) ?? { onset: event.onset, events: [event] };
  }

  before(event: PerformedEvent): Moment | undefined {
    return this.beside(event, -1);
  }

  after(event: PerformedEvent): Moment | undefined {
    return this.beside(event, 1);
  }

  private beside(event: PerformedEvent, step: number): Moment | undefined {
    const place = this.places.get(event);
    return place?.moments[place.index + step];
  }

  /** Whether a curve leads from the moment before to this note. */
  isSlurredTo(event: PerformedEvent): boolean {
    const before = this.before(event)?.events[0];
    if (before === undefined) return false;
    // Curves are drawn: the time of what they join is that of the page.
    const [begins, ends] = [before.from[0].placed.onset, event.from[0].placed.onset];
    return (this.slurs.get(event.voice) ?? []).some(
      ({ from, to }) => compare(from, begins) <= 0 && compare(to, ends) >= 0,
    );
  }

  /** The signature of a stave at a moment. */
  keyAt(stave: number, onset: Time): readonly KeySign[] {
    return inForce(this.keys.get(stave) ?? [], onset) ?? [];
  }

  /** The manual on which a voice is played; undefined where none is named. */
  manualAt(voice: number, onset: Time): string | undefined {
    return inForce(this.manuals.get(voice) ?? [], onset);
  }

  /** All notes drawn in a bar, tied ones too. */
  drawnIn(bar: number): readonly DrawnPitch[] {
    return this.drawn.get(bar) ?? [];
  }

  /** The notes that sound between two moments that lie in a bar or begin in it. */
  soundingIn(bar: Bar, from: Time, to: Time): readonly PerformedEvent[] {
    return (this.sounding.get(bar.index) ?? []).filter((event) => sounds(event, from, to));
  }

  /** The notes on some keys, in the bars of an event and in those beside them where the time goes over a barline. */
  onKeysNear(event: PerformedEvent, keys: ReadonlySet<number>, from: Time, to: Time): ReadonlySet<PerformedEvent> {
    const bars = event.from.map(({ placed }) => placed.bar);
    const [first, last] = [bars[0], bars.at(-1)];
    const near = new Set(bars.map(({ index }) => index));
    if (first !== undefined && compare(from, first.onset) < 0) near.add(first.index - 1);
    if (last !== undefined && compare(to, endOfBar(last)) > 0) near.add(last.index + 1);
    const found = new Set<PerformedEvent>();
    for (const bar of near) {
      for (const other of this.sounding.get(bar) ?? []) {
        if (other.pitch !== undefined && keys.has(other.pitch.midi) && sounds(other, from, to)) found.add(other);
      }
    }
    return found;
  }

  /** The lowest note of the other voices that sounds at a moment, in the bar where an event begins or another. */
  bassUnder(event: PerformedEvent, at: Time, bar: Bar = event.from[0].placed.bar): PerformedEvent | undefined {
    const others = this.soundingIn(bar, at, add(at, MOMENT)).filter(({ voice }) => voice !== event.voice);
    return extreme({ onset: at, events: others }, 'lowest');
  }

  /** Whether another voice rests when a note begins. */
  isOverRest({ voice, onset }: PerformedEvent): boolean {
    return this.rests.some(
      (rest) => rest.voice !== voice && compare(rest.onset, onset) <= 0 && compare(endOf(rest), onset) > 0,
    );
  }

  /** The notes that begin at a moment, in all voices. */
  beginningAt(bar: Bar, onset: Time): readonly PerformedEvent[] {
    return (this.sounding.get(bar.index) ?? []).filter((event) => compare(event.onset, onset) === 0);
  }
}

function push<Key, Item>(lists: Map<Key, Item[]>, key: Key, item: Item): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [item]);
  else list.push(item);
}

/** What a signature does to a letter in an octave. */
export function alterationIn(key: readonly KeySign[], letter: string, octave: number): number {
  const sign = key.find((one) => one.letter === letter && (one.octave === undefined || one.octave === octave));
  // A sign drawn for one octave acts in all of them.
  const any = sign ?? key.find((one) => one.letter === letter);
  return any === undefined ? 0 : ALTERATIONS[any.accidental];
}

/** When a bar ends. */
export const endOfBar = (bar: Bar): Time => add(bar.onset, bar.duration);

/** The highest or lowest note of a moment; undefined of a rest. */
export function extreme(moment: Moment | undefined, which: 'highest' | 'lowest'): PerformedEvent | undefined {
  const notes = (moment?.events ?? []).filter(isNote);
  return notes.reduce<PerformedEvent | undefined>((best, note) => {
    if (best === undefined) return note;
    const higher = (note.pitch?.midi ?? 0) > (best.pitch?.midi ?? 0);
    return higher === (which === 'highest') ? note : best;
  }, undefined);
}
