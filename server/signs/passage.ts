/**
 * A piece as it sounds around each of its notes: what stands before and after a note in its voice, what sounds with it, which
 * curves lead to it and which signature is in force.
 */
import { putUnder } from '../../grammar/lists';
import { add, compare, equal, latest, type Time, time } from '../../grammar/time';
import { ALTERATIONS, STEPS } from '../../grammar/vocabulary/pitches';
import { endOf, type From, inForce } from '../score/clock';
import type { PerformedEvent, PerformedPiece, SoundingPitch } from '../score/performance';
import type { Bar, KeySign } from '../score/score';
import { changesOf, slursOf } from '../score/walk';
import { STRETCH, Stretches } from './stretches';

/**
 * What one voice does at one moment: the notes of a chord together, or a rest, gap or lacuna. Where a practice of rhythm
 * makes a silence of a dot, that stands with its note, as the last: the moment after is what the page has next.
 */
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
  private readonly moments = new Map<PerformedEvent, PlacedMoment>();
  /** By bar and letter. */
  private readonly drawn: DrawnPitch[][] = [];
  /** By bar. */
  private readonly sounding: PerformedEvent[][] = [];
  /** Of bars of very many notes. */
  private readonly stretches = new Map<number, Stretches>();
  /** By voice how far the curves lead that have begun at a moment. */
  private readonly slurs = new Map<number, From<Time>[]>();
  private readonly manuals = new Map<number, From<string>[]>();
  private readonly keys = new Map<number, From<readonly KeySign[]>[]>();

  /** By voice when each rest begins, and where it ends. */
  private readonly rests = new Map<number, From<Time>[]>();

  constructor(readonly performed: PerformedPiece) {
    this.takeMoments();
    this.takeRests();
    for (const event of performed.events) this.take(event);
    this.takeSlurs();
    this.takeChanges();
  }

  // ── gathering ──

  private take(event: PerformedEvent): void {
    const { pitch, voice, small, from } = event;
    if (event.kind !== 'note' || pitch === undefined) return;
    for (const { placed } of from) {
      const { index } = placed.bar;
      listAt(this.drawn, placeOfLetter(index, pitch.letter)).push({ voice, onset: placed.onset, pitch });
      if (!small) listAt(this.sounding, index).push(event);
    }
  }

  /** Notes of a chord are one moment of their voice, with the silence of their dot. */
  private takeMoments(): void {
    const lastOf: (PlacedMoment | undefined)[] = [];
    for (const event of this.performed.events) {
      if (event.small) continue;
      const last = lastOf[event.voice];
      if (last !== undefined && isOfMoment(event, last)) {
        last.events.push(event);
        this.moments.set(event, last);
      } else {
        const moment = { onset: event.onset, events: [event], before: last, after: undefined };
        if (last !== undefined) last.after = moment;
        lastOf[event.voice] = moment;
        this.moments.set(event, moment);
      }
    }
  }

  private takeSlurs(): void {
    const inOrder = slursOf(this.performed.piece).sort((a, b) => compare(a.from, b.from));
    for (const { voice, from, to } of inOrder) {
      const before = this.slurs.get(voice)?.at(-1)?.what ?? to;
      putUnder(this.slurs, voice, { onset: from, what: latest(before, to) });
    }
  }

  private takeRests(): void {
    for (const event of this.performed.events) {
      if (event.kind === 'rest') putUnder(this.rests, event.voice, { onset: event.onset, what: endOf(event) });
    }
    for (const rests of this.rests.values()) rests.sort((a, b) => compare(a.onset, b.onset));
  }

  private takeChanges(): void {
    const staves = [...new Set(this.performed.events.map(({ stave }) => stave))];
    for (const { change, onset } of changesOf(this.performed.piece)) {
      if (change.manual !== undefined) putUnder(this.manuals, change.manual.voice, { onset, what: change.manual.name });
      if (change.key === undefined) continue;
      for (const stave of change.stave === undefined ? staves : [change.stave]) {
        putUnder(this.keys, stave, { onset, what: change.key });
      }
    }
  }

  // ── asking ──

  /** The chord or note of an event, with all its notes. */
  momentOf(event: PerformedEvent): Moment {
    return this.moments.get(event) ?? { onset: event.onset, events: [event] };
  }

  before(event: PerformedEvent): Moment | undefined {
    return this.moments.get(event)?.before;
  }

  after(event: PerformedEvent): Moment | undefined {
    return this.moments.get(event)?.after;
  }

  /** Whether a curve leads from the moment before to this note. */
  isSlurredTo(event: PerformedEvent): boolean {
    const before = this.before(event)?.events[0];
    if (before === undefined) return false;
    // Curves are drawn: the time of what they join is that of the page.
    const [begins, ends] = [before.from[0].placed.onset, event.from[0].placed.onset];
    const leads = inForce(this.slurs.get(event.voice) ?? [], begins);
    return leads !== undefined && compare(leads, ends) >= 0;
  }

  /** The signature of a stave at a moment. */
  keyAt(stave: number, onset: Time): readonly KeySign[] {
    return inForce(this.keys.get(stave) ?? [], onset) ?? [];
  }

  /** The manual on which a voice is played; undefined where none is named. */
  manualAt(voice: number, onset: Time): string | undefined {
    return inForce(this.manuals.get(voice) ?? [], onset);
  }

  /** All notes on a letter drawn in a bar, tied ones too. */
  drawnIn(bar: number, letter: SoundingPitch['letter']): readonly DrawnPitch[] {
    return this.drawn[placeOfLetter(bar, letter)] ?? NOTHING;
  }

  /** The notes of such a kind that sound between two moments that lie in a bar or begin in it. */
  soundingIn(bar: Bar, from: Time, to: Time, isMeant: (event: PerformedEvent) => boolean): readonly PerformedEvent[] {
    return this.notesIn(bar.index, from, to).filter((event) => isMeant(event) && sounds(event, from, to));
  }

  /** The notes of a bar; of very many only those around a time. */
  private notesIn(bar: number, from: Time, to: Time): readonly PerformedEvent[] {
    const notes = this.sounding[bar] ?? NOTHING;
    if (notes.length <= STRETCH) return notes;
    const stretches = this.stretches.get(bar) ?? new Stretches(notes);
    this.stretches.set(bar, stretches);
    return stretches.around(from, to);
  }

  /** The other notes on some keys, in the bars of an event and in those beside them where the time goes over a barline. */
  onKeysNear(event: PerformedEvent, keys: readonly number[], from: Time, to: Time): readonly PerformedEvent[] {
    const found: PerformedEvent[] = [];
    for (const bar of barsNear(event, from, to)) {
      for (const other of this.notesIn(bar, from, to)) {
        if (other === event || other.pitch === undefined || !keys.includes(other.pitch.midi)) continue;
        if (sounds(other, from, to) && !found.includes(other)) found.push(other);
      }
    }
    return found;
  }

  /** The lowest note of the other voices that sounds at a moment, in the bar where an event begins or another. */
  bassUnder(event: PerformedEvent, at: Time, bar: Bar = event.from[0].placed.bar): PerformedEvent | undefined {
    const others = this.soundingIn(bar, at, add(at, MOMENT), ({ voice }) => voice !== event.voice);
    return extreme({ onset: at, events: others }, 'lowest');
  }

  /** Whether another voice rests when a note begins. */
  isOverRest({ voice, onset }: PerformedEvent): boolean {
    for (const [other, rests] of this.rests) {
      const end = other === voice ? undefined : inForce(rests, onset);
      if (end !== undefined && compare(end, onset) > 0) return true;
    }
    return false;
  }

  /** The notes that begin at a moment, in all voices. */
  beginningAt(bar: Bar, onset: Time): readonly PerformedEvent[] {
    return this.notesIn(bar.index, onset, onset).filter((event) => equal(event.onset, onset));
  }
}

/** A moment among those of its voice. */
interface PlacedMoment extends Moment {
  readonly events: PerformedEvent[];
  readonly before: PlacedMoment | undefined;
  after: PlacedMoment | undefined;
}

/** The event is of the chord of a moment. */
const isOfMoment = (event: PerformedEvent, { onset, events: [first] }: PlacedMoment): boolean =>
  first?.from[0].placed.event === event.from[0].placed.event &&
  (equal(onset, event.onset) || (event.kind === 'rest' && first?.kind === 'note'));

const placeOfLetter = (bar: number, letter: SoundingPitch['letter']): number => bar * 7 + STEPS[letter];

/** The bars of an event, and those beside them into which a time goes over a barline. */
function barsNear({ from: written }: PerformedEvent, from: Time, to: Time): readonly number[] {
  const bars: number[] = [];
  for (const { placed } of written) if (placed.bar.index !== bars.at(-1)) bars.push(placed.bar.index);
  const [first, last] = [written[0].placed.bar, (written.at(-1) ?? written[0]).placed.bar];
  if (compare(from, first.onset) < 0) bars.push(first.index - 1);
  if (compare(to, endOf(last)) > 0) bars.push(last.index + 1);
  return bars;
}

const NOTHING: readonly never[] = [];

function listAt<Item>(lists: Item[][], index: number): Item[] {
  const list = lists[index] ?? [];
  lists[index] = list;
  return list;
}

/** What a signature does to a letter in an octave. */
export function alterationIn(key: readonly KeySign[], letter: string, octave: number): number {
  const sign = key.find((one) => one.letter === letter && (one.octave === undefined || one.octave === octave));
  // A sign drawn for one octave acts in all of them.
  const any = sign ?? key.find((one) => one.letter === letter);
  return any === undefined ? 0 : ALTERATIONS[any.accidental];
}

/** The highest or lowest note of a moment; undefined of a rest. */
export function extreme(moment: Moment | undefined, which: 'highest' | 'lowest'): PerformedEvent | undefined {
  const notes = (moment?.events ?? []).filter(isNote);
  return notes.reduce<PerformedEvent | undefined>((best, note) => {
    if (best === undefined) return note;
    const higher = (note.pitch?.midi ?? 0) > (best.pitch?.midi ?? 0);
    return higher === (which === 'highest') ? note : best;
  }, undefined);
}
