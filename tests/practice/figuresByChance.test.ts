/**
 * Laws of performed time over passages made by chance of the figures that practices act on: dots, runs, snaps, triplets,
 * upbeats, hemiolas, in four meters and up to three voices.
 */
import { describe, expect, it } from 'vitest';
import { add, compare, equal, format, type Time, ZERO } from '../../grammar/time';
import { type PerformedEvent, type PerformedPiece, performedOnset, writtenTime } from '../../server/score/performance';
import { Chance, numbersOf } from '../helpers/chance';
import { passageByChance } from '../helpers/generateRhythm';
import { performedIn, type Timed } from '../helpers/rhythm';

const SEEDS = Array.from({ length: 150 }, (_, seed) => seed);

const passageOf = (seed: number, practices: number): Timed =>
  passageByChance(new Chance(numbersOf(seed + 1, 200)), practices);

const known = new Map<string, PerformedPiece>();

function pieceOf(passage: Timed): PerformedPiece {
  const text = asTyped(passage);
  const piece = known.get(text) ?? performedPiece(passage);
  known.set(text, piece);
  return piece;
}

function performedPiece(passage: Timed): PerformedPiece {
  const [piece] = performedIn(passage).pieces;
  if (piece === undefined) throw new Error('no music');
  return piece;
}

const endOf = ({ onset, duration }: PerformedEvent): Time => add(onset, duration);
const voicesOf = ({ events }: PerformedPiece): PerformedEvent[][] =>
  [...new Set(events.map(({ voice }) => voice))].map((voice) => events.filter((event) => event.voice === voice));

/** The passage as typed, so that a failure shows what failed. */
const asTyped = ({ lanes, practices = [], meter }: Timed): string => [meter, ...lanes, ...practices].join('\n');

/** What a test says of each passage: nothing where the law holds. */
function broken(law: (passage: Timed) => boolean, practices = 3): string[] {
  return SEEDS.map((seed) => passageOf(seed, practices))
    .filter((passage) => !law(passage))
    .map(asTyped);
}

const isMoved = (passage: Timed): boolean => pieceOf(passage).events.some(({ altered }) => altered !== undefined);
const asData = ({ events }: PerformedPiece): string[] =>
  events.map(({ voice, onset, duration, kind }) => `${voice} ${format(onset)} ${format(duration)} ${kind}`);

describe('figures by chance', () => {
  it('are moved in most passages, so that these laws are about something', () => {
    expect(broken(isMoved).length).toBeLessThan(SEEDS.length / 4);
  });

  it('fill the time of their voice without a hole, and each lasts', () => {
    const fills = (events: readonly PerformedEvent[]): boolean => {
      let at = ZERO;
      return events.every((event) => {
        const follows = equal(event.onset, at) && compare(event.duration, ZERO) > 0;
        at = endOf(event);
        return follows;
      });
    };
    expect(broken((passage) => voicesOf(pieceOf(passage)).every(fills))).toEqual([]);
  });

  it('leave every barline where it is, so that each bar has its time in each voice', () => {
    const keepsBars = (event: PerformedEvent): boolean =>
      event.from.every(
        ({ placed: { onset, bar } }, index) => !equal(onset, bar.onset) || equal(performedOnset(event, index), onset),
      );
    expect(broken((passage) => pieceOf(passage).events.every(keepsBars))).toEqual([]);
  });

  it('come in their written order', () => {
    const inOrder = (events: readonly PerformedEvent[]): boolean =>
      events.every((event, index) => {
        const next = events[index + 1];
        return next === undefined || compare(writtenTime(event).onset, writtenTime(next).onset) <= 0;
      });
    expect(broken((passage) => voicesOf(pieceOf(passage)).every(inOrder))).toEqual([]);
  });

  it('are struck together under one practice where they are written together', () => {
    const together = ({ events }: PerformedPiece): boolean => {
      const moments = new Map<string, Set<string>>();
      for (const event of events.filter(({ kind }) => kind === 'note')) {
        const at = format(event.from[0].placed.onset);
        moments.set(at, (moments.get(at) ?? new Set<string>()).add(format(performedOnset(event, 0))));
      }
      return [...moments.values()].every(({ size }) => size === 1);
    };
    expect(broken((passage) => together(pieceOf(passage)), 1)).toEqual([]);
  });

  it('have their written time where the reading is literal, or its ratio one', () => {
    const staysWith = (practices: readonly string[]) => (passage: Timed) =>
      asData(pieceOf({ ...passage, practices })).join() === asData(pieceOf({ ...passage, practices: [] })).join();
    expect(broken((passage) => staysWith([...(passage.practices ?? []), 'literal'])(passage))).toEqual([]);
    expect(broken(staysWith(['inegal 8 1:1', 'inegal 16 1:1']))).toEqual([]);
  });
});
