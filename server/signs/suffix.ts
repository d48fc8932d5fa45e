/** A trill whose suffix is written out in small notes: they have its speed, and it does not stop before them. Common practice. */
import type { Recipe, RecipePhrase } from '../../grammar/tree';
import type { PerformedEvent, SoundingPitch } from '../score/performance';
import { partsOf } from './atoms';
import { degreeOf } from './degrees';
import { type Layout, layOut } from './layout';
import type { Place } from './place';

/** How far small notes lie from the note that they follow. */
export const stepsOf = (notes: readonly PerformedEvent[], main: SoundingPitch): number[] =>
  notes.flatMap(({ pitch }) => (pitch === undefined ? [] : [degreeOf(pitch) - degreeOf(main)]));

/**
 * The notes of a trill and its suffix on the time of both, the suffix last, one slice for each of its notes; undefined of
 * what is no trill, and where there is no time for the suffix.
 */
export function layOutSuffixed(recipe: Recipe, suffix: readonly number[], place: Place): Layout | undefined {
  const { lead, cycle } = partsOf(recipe);
  if (cycle === undefined) return undefined;
  const layout = layOut({ ...recipe, phrases: [...lead, cycle, written(cycle, suffix)] }, place, false);
  const last = layout?.slices.slice(-suffix.length).map(({ step }) => step?.step);
  const isWhole = last?.length === suffix.length && suffix.every((step, index) => step === last[index]);
  return isWhole ? layout : undefined;
}

const written = ({ pos, len }: RecipePhrase, suffix: readonly number[]): RecipePhrase => ({
  kind: 'steps',
  steps: suffix.map((step) => ({ step, pos, len })),
  repeated: false,
  pos,
  len,
});
