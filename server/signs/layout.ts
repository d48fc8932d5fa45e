/** A recipe laid out on a note: every note of the sign with its length. */
import { add, divide, earliest, isNegative, subtract, type Time, time, ZERO } from '../../grammar/time';
import type { Recipe, RecipePhrase } from '../../grammar/tree';
import { lasting } from '../score/clock';
import { type Atom, atomsOf, isFixed, isMain, MAIN, merged, partsOf, type Slice } from './atoms';
import { figure, STROKE } from './figures';
import { isTooQuick, type Place, share } from './place';
import { trill } from './trills';

export interface Layout {
  /** What is played in the time of the note before. */
  readonly before: readonly Slice[];
  /** What fills the note. */
  readonly slices: readonly Slice[];
}

/** The notes of a sign; undefined where its note is too short for them. */
export function layOut(recipe: Recipe, place: Place, drawnAfter: boolean): Layout | undefined {
  const { lead, cycle, tail } = partsOf(recipe);
  const begins = atomsOf(lead, place);
  const first = recipe.start === 'before beat' ? begins.findIndex(({ step }) => isMain(step)) : 0;
  const early = first < 0 ? begins : begins.slice(0, first);
  const own = begins.slice(early.length);
  const slices =
    cycle === undefined
      ? figure(drawnAfter ? afterNote(own, place) : own, place)
      : trill({ lead: own, cycle, tail: endOfTrill(cycle, atomsOf(tail, place), place) }, place);
  if (slices === undefined) return undefined;
  const filling = merged(fitted(slices, place.length));
  if (filling.length > 1 && filling.some(({ step, length }) => step !== undefined && isTooQuick(place, length)))
    return undefined;
  return { before: merged(early.map((atom) => sized(atom, place))), slices: filling };
}

/**
 * A trill stops on the dot of a dotted note, and before the anticipation of the next, unless it says for how long; then it has
 * no suffix. Common practice.
 */
function endOfTrill({ share: said }: RecipePhrase, tail: readonly Atom[], place: Place): readonly Atom[] {
  const { dots, anticipated } = place;
  const stops = tail.length === 0 ? dots > 0 || anticipated : anticipated && isSuffix(tail);
  return stops && said === undefined ? [{ step: MAIN, length: 'open' }] : tail;
}

const isSuffix = (tail: readonly Atom[]): boolean =>
  tail.length > 1 && isMain(tail.at(-1)?.step) && tail.every(({ length }) => length === 'quick');

/** Whatever a recipe says, its notes fill the note: what comes too late is left out, and the last lasts to the end. */
function fitted(slices: readonly Slice[], length: Time): readonly Slice[] {
  let left = length;
  const inside = slices.map((slice) => {
    const kept = isNegative(slice.length) ? ZERO : earliest(slice.length, left);
    left = subtract(left, kept);
    return { step: slice.step, length: kept };
  });
  const last = inside.at(-1) ?? { step: MAIN, length: ZERO };
  return [...inside.slice(0, -1), { step: last.step, length: add(last.length, left) }];
}

function sized(atom: Atom, place: Place): Slice {
  if (isFixed(atom)) return atom;
  return { step: atom.step, length: place.grid ?? lasting(place.clock, STROKE) };
}

/**
 * A turn drawn after its note: the note has half of the time and the turn the other; a dotted note has a third, the turn
 * without its end the second third, and the note stands again on the dot. Common practice.
 */
function afterNote(atoms: readonly Atom[], { length, dots }: Place): readonly Atom[] {
  if (atoms.length < 3 || !atoms.every((atom) => atom.length === 'quick')) return atoms;
  const each = (among: number, of: Time): Time => divide(of, time(among));
  const third = share(length, 1, 3);
  if (dots === 0) {
    const half = share(length, 1, 2);
    return [{ step: MAIN, length: half }, ...atoms.map(({ step }) => ({ step, length: each(atoms.length, half) }))];
  }
  const turning = atoms.slice(0, -1).map(({ step }) => ({ step, length: each(atoms.length - 1, third) }));
  return [{ step: MAIN, length: third }, ...turning, { step: atoms.at(-1)?.step, length: third }];
}
