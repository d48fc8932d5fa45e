/** Where something stands, as reports name it: bar, voice, symbol. */
import type { Piece, Score } from '../../score/score';
import { eventsOf, type PlacedEnd, type PlacedEvent, placeOfEvent } from '../../score/walk';

/** A written event with its place in the trade's form. */
export interface NamedEvent {
  readonly placed: PlacedEvent;
  /** `12, dessus, 3`, with the piece before it where there are several. */
  readonly place: string;
  /** The name of its piece; "" of the only one. */
  readonly piece: string;
}

export function placeName(piece: string, bar: string, voice: string, symbol: number): string {
  const inPiece = piece === '' ? '' : `“${piece}”`;
  return [inPiece, bar, voice, symbol > 0 ? `${symbol}` : ''].filter((part) => part !== '').join(', ');
}

/** All events of a score with their places, in the order of bars, then of voices. */
export const namedEvents = (score: Score): readonly NamedEvent[] =>
  score.pieces.flatMap((piece) => namedIn(score, piece)).sort((a, b) => byBar(inBar(a), inBar(b)));

/** A bar of one of the texts of a report, by its system's block and its index in its piece. */
interface InBar {
  readonly block: number;
  readonly bar: number;
}

/** The order of bars, whichever text they are of. */
export const byBar = (a: InBar, b: InBar): number => a.block - b.block || a.bar - b.bar;

/** What a report tells of a place. */
export interface Told extends InBar {
  readonly row: readonly string[];
}

const inBar = ({ placed }: NamedEvent): InBar => ({ block: placed.system.block, bar: placed.bar.index });

export const toldAt = (event: NamedEvent, row: readonly string[]): Told => ({ row, ...inBar(event) });

/** Rows in the order of bars. */
export const inBarOrder = (all: readonly Told[]): readonly (readonly string[])[] =>
  [...all].sort(byBar).map(({ row }) => row);

function namedIn({ environment }: Score, piece: Piece): NamedEvent[] {
  const counts = new Map<string, number>();
  return [...eventsOf(piece)].map((placed) => {
    const voice = environment.voices[placed.event.voice]?.name ?? '';
    const key = `${placed.bar.index} ${voice}`;
    const count = (counts.get(key) ?? 0) + (placed.event.kind === 'gap' ? 0 : 1);
    counts.set(key, count);
    return { placed, piece: piece.name, place: placeName(piece.name, placed.bar.number, voice, count) };
  });
}

/** The events of a score by where they stand, for what is told of ends of curves. */
export function eventsByPlace(events: readonly NamedEvent[]): (end: PlacedEnd) => NamedEvent | undefined {
  const byPlace = new Map(events.map((event) => [placeOfEvent(event.placed), event]));
  return ({ end, system, voice }) => byPlace.get(placeOfEvent({ system, voice, index: end.event }));
}
