/** The notes of a recipe one by one, each with what is known of its length before the whole is laid out. */
import { keeping } from '../../grammar/keeping';
import { add, earliest, multiply, subtract, type Time, time, ZERO } from '../../grammar/time';
import type { Recipe, RecipePhrase, RecipeStep } from '../../grammar/tree';
import { onGrid, type Place, share, speedOf } from './place';

/** Steps from the written note, and an accidental that the recipe forces. */
export type Step = Pick<RecipeStep, 'step' | 'accidental'>;

/** A note of a sign with its length; a silence has no step. */
export interface Slice {
  readonly step: Step | undefined;
  readonly length: Time;
}

/** As a slice, whose length may be open: `quick` as short as such notes are, `lean` by rule, `open` what the others leave. */
export interface Atom {
  readonly step: Step | undefined;
  readonly length: Time | 'quick' | 'lean' | 'open';
}

export const MAIN: Step = { step: 0 };

export const isFixed = (atom: Atom): atom is Slice => typeof atom.length === 'object';
export const isMain = (step: Step | undefined): boolean => step?.step === 0 && step.accidental === undefined;
const isSame = (a: Step | undefined, b: Step | undefined): boolean =>
  a !== undefined && b !== undefined && a.step === b.step && a.accidental === b.accidental;

/** The atoms of phrases that are no repetition, notes of one pitch made one. */
export function atomsOf(phrases: readonly RecipePhrase[], place: Place): Atom[] {
  return joined(phrases.flatMap((phrase) => phraseAtoms(phrase, place)));
}

function phraseAtoms(phrase: RecipePhrase, place: Place): Atom[] {
  const { kind, steps, speed, leaned } = phrase;
  const whole = phrase.share && onGrid(place, share(place.length, phrase.share.n, phrase.share.d));
  if (kind !== 'steps') return [{ step: kind === 'hold' ? MAIN : undefined, length: whole ?? 'open' }];
  const length =
    whole !== undefined
      ? multiply(whole, time(1, steps.length))
      : speed !== undefined
        ? speedOf(speed, place.clock)
        : leaned
          ? 'lean'
          : 'quick';
  return steps.map((step) => ({ step, length }));
}

/** A note that is struck and then stands is one note; so is a quick one before one that stands. */
function joined(atoms: readonly Atom[]): Atom[] {
  const result: Atom[] = [];
  for (const atom of atoms) {
    const last = result.at(-1);
    const joins = last !== undefined && isSame(last.step, atom.step) && last.length === 'quick';
    if (joins && !isFixed(atom)) result[result.length - 1] = atom;
    else if (joins && isFixed(atom) && isMain(atom.step)) result[result.length - 1] = atom;
    else result.push(atom);
  }
  return result;
}

export const sumOf = (lengths: readonly Time[]): Time => lengths.reduce(add, ZERO);

/** Lengths that a recipe states may be more than there is: what comes later gives way. */
export function withinNote(atoms: readonly Atom[], place: Place): Atom[] {
  let left = place.length;
  return atoms.map((atom) => {
    if (!isFixed(atom)) return atom;
    const length = earliest(atom.length, left);
    left = subtract(left, length);
    return { step: atom.step, length };
  });
}

/** Slices of one pitch that follow one another made one, those of no length left out. */
export function merged(slices: readonly Slice[]): Slice[] {
  const result: Slice[] = [];
  for (const slice of slices) {
    if (slice.length.n === 0) continue;
    const last = result.at(-1);
    const goesOn = last !== undefined && (isSame(last.step, slice.step) || last.step === slice.step);
    if (goesOn) result[result.length - 1] = { step: last.step, length: add(last.length, slice.length) };
    else result.push(slice);
  }
  return result;
}

/** What a recipe is made of. */
export interface RecipeParts {
  readonly lead: readonly RecipePhrase[];
  /** The phrase that is repeated: only a trill has one. */
  readonly cycle: RecipePhrase | undefined;
  readonly tail: readonly RecipePhrase[];
}

/** The phrase that is repeated, with what stands before and after it. */
export const partsOf = keeping(({ phrases }: Pick<Recipe, 'phrases'>): RecipeParts => {
  const at = phrases.findIndex(({ repeated }) => repeated);
  if (at < 0) return { lead: phrases, cycle: undefined, tail: [] };
  return { lead: phrases.slice(0, at), cycle: phrases[at], tail: phrases.slice(at + 1) };
});

/** All notes that a recipe names, in their order. */
export const stepsIn = keeping(({ phrases }: Pick<Recipe, 'phrases'>): readonly RecipeStep[] =>
  phrases.flatMap(({ steps }) => steps),
);
