/** A temperament: twelve fifths that make a circle, and which twelve notes they join. */
import { modulo } from '../../grammar/modulo';
import type { Spelling } from '../../grammar/tree';
import { placeOfSpelling } from './fifths';
import { AS_GOOD_AS_NOTHING, CIRCLE, minus, PURE_FIFTH, size, sumOf, type Tempering, times } from './tempering';

export interface Temperament {
  /** As it is typed after `tuning`. */
  readonly name: string;
  /** Author and year, or what it is, in words. */
  readonly title: string;
  /** The flattest of its twelve notes, on the line of fifths: −3 where they go from eb to g#. */
  readonly first: number;
  /** Twelve temperings: of the fifth from the first note upwards, and so on; the last closes the circle. */
  readonly fifths: readonly Tempering[];
  /** What is doubtful in it. */
  readonly note?: string;
}

export const NOTES = 12;

/** Where nothing else is said the circle closes between g# and eb. */
export const USUAL_FIRST = -3;

/** The flattest note where this fifth closes the circle: its upper one, as it is spelled. */
export const firstAfter = (closing: { readonly second: Spelling }): number => placeOfSpelling(closing.second);

/** Whether no ear tells one from the other, whatever they are called. */
export const isSame = (one: Temperament, other: Temperament): boolean =>
  one.first === other.first &&
  one.fifths.every((fifth, i) => Math.abs(size(fifth) - size(other.fifths[i] ?? fifth)) < AS_GOOD_AS_NOTHING);

/** The place of the lower note of each of the twelve fifths, in their order. */
export const placesFrom = (first: number): readonly number[] => Array.from({ length: NOTES }, (_, i) => first + i);

/** What is left for the twelfth fifth. */
export const restOf = (eleven: readonly Tempering[]): Tempering => minus(CIRCLE, sumOf(eleven));

/** Eleven equal fifths from a note upwards, and what is left. */
export const regular = (tempering: Tempering, first: number): readonly Tempering[] => [
  ...placesFrom(first)
    .slice(1)
    .map(() => tempering),
  restOf(Array.from({ length: NOTES - 1 }, () => tempering)),
];

/** Cents by which a fifth is a wolf: no scheme that is meant to be played in all keys has one so far from pure. */
const WOLF = 10;

/** Whether the last fifth is none: then its upper note is not what the next on the line would be, and other notes have no key. */
export const isOpen = ({ fifths }: Temperament): boolean => Math.abs(size(fifths[NOTES - 1] as Tempering)) > WOLF;

/**
 * Cents above the first note, less whole octaves. Beyond the twelve an open temperament goes on by fifths like the nearest
 * of its own; in one that closes they are those of the twelve again.
 */
export function centsAbove(temperament: Temperament, place: number): number {
  const { first, fifths } = temperament;
  const steps = place - first;
  if (steps >= 0 && steps < NOTES) return octaved(steps * PURE_FIFTH + size(sumOf(fifths.slice(0, steps))));
  if (!isOpen(temperament)) return centsAbove(temperament, first + modulo(steps, NOTES));
  if (steps < 0) return octaved(steps * PURE_FIFTH + size(times(steps, fifths[0] as Tempering)));
  const beyond = steps - (NOTES - 1);
  const last = centsAbove(temperament, first + NOTES - 1);
  return octaved(last + beyond * PURE_FIFTH + size(times(beyond, fifths[NOTES - 2] as Tempering)));
}

/** Within one octave, from 0; what is all but an octave is nothing. */
export function octaved(cents: number): number {
  const within = modulo(cents, 1200);
  return 1200 - within < 1e-6 ? 0 : within;
}
