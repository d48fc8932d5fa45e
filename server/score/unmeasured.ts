/**
 * How music without measure flows when it is played: one possibility, never an authority (common practice).
 *
 * From note to note it takes a base time; longer after a bass note, before the bass changes and at the end, shorter by step and
 * in ornaments of two slurred notes; an editor's weight (`'w2`) multiplies it. A tenue holds its note to its end, or, where that is
 * not drawn, until the next bass.
 */
import { add, divide, isZero, type Time, time, toNumber } from '../../grammar/time';
import type { Clock, FlowingNote } from './clock';
import type { AppliedMark, Piece, VoiceEvent } from './score';
import { curvesOf, eventsOf, marksOfEvent, type PlacedEnd, type PlacedEvent, placeOfEvent } from './walk';

/** Seconds from a note to the next. */
const GAP = 0.45;
const AFTER_BASS = 1.6;
const BEFORE_BASS = 1.8;
const BY_STEP = 0.7;
const ORNAMENT = 0.4;
/** The last note or chord of a piece rings. */
const LAST = 4;
/** A bass lies at least an octave below what goes before; in semitones. */
const BASS_LEAP = 12;
const STEP = 2;

const ONE = time(1);

export interface Flow {
  /** Of each note of unmeasured systems, in the order of time. */
  readonly clocks: readonly FlowingNote[];
  /** Until when a tenue holds a note, by the place of the event on which it begins. */
  readonly held: ReadonlyMap<string, Time>;
}

const MEASURED: Flow = { clocks: [], held: new Map() };

const placeOfEnd = ({ system, voice, end }: PlacedEnd): string => placeOfEvent({ system, voice, index: end.event });

/** @param pace by how much it is quicker */
export function flowOf(piece: Piece, pace: Time = ONE): Flow {
  if (!piece.systems.some(({ score }) => score.kind === 'free')) return MEASURED;
  const free = [...eventsOf(piece)].filter(({ system }) => system.score.kind === 'free');
  const curves = curvesOf(piece).flatMap(({ start, end }) =>
    start === undefined || end === undefined ? [] : [[placeOfEnd(start), placeOfEnd(end)] as const],
  );
  const timed = free.filter(({ event }) => event.small === undefined && !isZero(event.duration));
  const ornaments = shortSlurs(curves, timed);
  const lastNote = timed.findLastIndex(({ event }) => event.kind === 'note');
  const isLast = ({ system }: PlacedEvent, index: number): boolean =>
    index === lastNote && system === piece.systems.at(-1);
  const clocks = timed.map((placed, index) => {
    const gap = isLast(placed, index) ? GAP * LAST : gapOf(placed, timed[index - 1], timed[index + 1], ornaments);
    const seconds = gap * weightOf(placed.event);
    const { onset, event } = placed;
    return { onset, end: add(onset, event.duration), clock: lasting(event.duration, seconds / toNumber(pace)) };
  });
  return { clocks, held: new Map([...openedIn(piece, timed), ...heldBy(free, curves)]) };
}

/** A tenue of which the source draws no end holds its note until the bass changes. */
function openedIn(piece: Piece, timed: readonly PlacedEvent[]): (readonly [string, Time])[] {
  const open = curvesOf(piece).flatMap(({ kind, start, end }) =>
    kind === 'u' && start !== undefined && end === undefined ? [placeOfEnd(start)] : [],
  );
  if (open.length === 0) return [];
  const nextBass = nextBasses(timed);
  return open.flatMap((place) => {
    const until = nextBass.get(place);
    return until === undefined ? [] : [[place, until] as const];
  });
}

/** By the place of an event when the bass changes after it, or, where it does not, when all is over. */
function nextBasses(timed: readonly PlacedEvent[]): ReadonlyMap<string, Time> {
  const found = new Map<string, Time>();
  let next: Time | undefined;
  for (const [index, placed] of [...timed.entries()].reverse()) {
    next ??= add(placed.onset, placed.event.duration);
    found.set(placeOfEvent(placed), next);
    if (fallsTo(timed[index - 1], placed)) next = placed.onset;
  }
  return found;
}

/** A value that lasts so many seconds. */
const lasting = (value: Time, seconds: number): Clock => ({
  perSecond: divide(value, time(Math.max(1, Math.round(seconds * 1000)), 1000)),
  assumed: false,
  words: 'the pace of music without measure',
  unmeasured: true,
});

const lowest = (placed: PlacedEvent | undefined): number | undefined => {
  const keys = placed?.event.members.map(({ midi }) => midi) ?? [];
  return keys.length === 0 ? undefined : Math.min(...keys);
};

const fallsTo = (before: PlacedEvent | undefined, placed: PlacedEvent | undefined): boolean => {
  const [above, below] = [lowest(before), lowest(placed)];
  return below !== undefined && (above === undefined || above - below >= BASS_LEAP);
};

function gapOf(
  placed: PlacedEvent,
  before: PlacedEvent | undefined,
  after: PlacedEvent | undefined,
  ornaments: ReadonlySet<string>,
): number {
  if (fallsTo(before, placed)) return GAP * AFTER_BASS;
  if (after !== undefined && fallsTo(placed, after)) return GAP * BEFORE_BASS;
  if (ornaments.has(placeOfEvent(placed))) return GAP * ORNAMENT;
  const [here, next] = [lowest(placed), lowest(after)];
  return here !== undefined && next !== undefined && Math.abs(next - here) <= STEP ? GAP * BY_STEP : GAP;
}

type Ends = readonly (readonly [string, string])[];

/** The first notes of slurs over two neighbours. */
function shortSlurs(curves: Ends, timed: readonly PlacedEvent[]): ReadonlySet<string> {
  const places = timed.map(placeOfEvent);
  const next = new Map(places.map((place, index) => [place, places[index + 1]]));
  return new Set(curves.filter(([from, to]) => next.get(from) === to).map(([from]) => from));
}

/** Through the event on which a curve ends. */
function heldBy(free: readonly PlacedEvent[], curves: Ends): ReadonlyMap<string, Time> {
  const placed = new Map(free.map((one) => [placeOfEvent(one), one]));
  return new Map(
    curves.flatMap(([from, to]) => {
      const ends = placed.get(to);
      return ends === undefined || !placed.has(from) ? [] : [[from, add(ends.onset, ends.event.duration)] as const];
    }),
  );
}

/** The mark of an editor's weight. */
export const weightMarkOf = (event: VoiceEvent): AppliedMark | undefined =>
  marksOfEvent(event).findLast(({ form }) => form.type === 'weight');

/** An editor's weight; 1 where nothing is said. */
export const weightOf = (event: VoiceEvent): number => weightMarkOf(event)?.form.weight ?? 1;
