/**
 * Which hand plays which key. Of the divisions that strain the hands least (`checks/hands`) that is taken in which keys that are
 * held change no hand and notes are played by the hand of their stave (common practice).
 */
import { lieOf, strainOf } from '../checks/hands';
import type { Limb } from './protocol';

/** A key from its stroke until it comes up. */
export interface Struck {
  readonly at: number;
  readonly until: number;
  /** Where the key lies, as the key of this MIDI number does. */
  readonly lies: number;
  /** The hand of its stave; `feet` of what is played on the pedal, which no hand plays. */
  readonly of: Limb;
}

/** A key that changes hands costs more than one played by the hand of the other stave. */
const CHANGED = 3;

/** The hand of each, in the order given: that of their strokes. */
export function handsOf(notes: readonly Struck[]): Limb[] {
  const limbs: Limb[] = notes.map(({ of }) => of);
  let held: number[] = [];
  for (let first = 0; first < notes.length; ) {
    const { at } = notes[first] as Struck;
    let next = first;
    while (notes[next]?.at === at) next++;
    const struck = Array.from({ length: next - first }, (_, index) => first + index);
    held = [...held.filter((index) => (notes[index] as Struck).until > at), ...struck].filter(
      (index) => notes[index]?.of !== 'feet',
    );
    const hands = divided(held, notes, (index) => (index < first ? limbs[index] : undefined));
    for (const index of struck) limbs[index] = hands.get(index) ?? (limbs[index] as Limb);
    first = next;
  }
  return limbs;
}

/** @param before the hand that already holds a key */
function divided(
  sounding: readonly number[],
  notes: readonly Struck[],
  before: (index: number) => Limb | undefined,
): ReadonlyMap<number, Limb> {
  const fromLeft = [...sounding].sort((a, b) => liesOf(notes, a) - liesOf(notes, b));
  let best: { readonly cost: number; readonly strain: number; readonly lower: number } | undefined;
  for (let lower = 0; lower <= fromLeft.length; lower++) {
    const limb = (place: number): Limb => (place < lower ? 'left' : 'right');
    const cost = fromLeft.reduce((sum, index, place) => {
      const held = before(index);
      return (
        sum + (held !== undefined && held !== limb(place) ? CHANGED : 0) + (notes[index]?.of === limb(place) ? 0 : 1)
      );
    }, 0);
    const strain = strainOfBoth(fromLeft.slice(0, lower), fromLeft.slice(lower), notes);
    if (best === undefined || strain < best.strain || (strain === best.strain && cost < best.cost))
      best = { cost, strain, lower };
  }
  return new Map(fromLeft.map((index, place) => [index, place < (best?.lower ?? 0) ? 'left' : 'right']));
}

const liesOf = (notes: readonly Struck[], index: number): number => notes[index]?.lies ?? 0;

const strainOfBoth = (left: readonly number[], right: readonly number[], notes: readonly Struck[]): number =>
  Math.max(...[left, right].map((hand) => strainOf({ notes: fingers(hand, notes) })));

/** Two voices on one key are one finger. */
const fingers = (hand: readonly number[], notes: readonly Struck[]): { readonly lies: number }[] =>
  [...new Set(hand.map((index) => liesOf(notes, index)))].map((midi) => ({ lies: lieOf(midi) }));
