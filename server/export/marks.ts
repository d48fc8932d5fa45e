/** What every format of notation asks of a mark. */
import { type Shape, shapeByName } from '../../grammar/vocabulary/shapes';
import type { AppliedMark } from '../score/score';

/** The shape that the source draws; undefined of a name that no shape bears. */
export const shapeOf = ({ shapes, form }: AppliedMark): Shape | undefined => shapeByName(shapes[0] ?? form.name);

/** Where the editor has put it; undefined where that is left to who draws it. */
export const placementOf = ({ form }: AppliedMark): 'above' | 'below' | undefined =>
  form.parameters.find((parameter) => parameter === 'above' || parameter === 'below');
