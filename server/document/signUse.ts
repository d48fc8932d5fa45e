/** The signs of a version: where its main text has them, and how often. */
import { perform } from '../readings/perform';
import { signUses, together, type Uses } from '../signs/use';
import type { Analysis } from './analysis';

export function signUseIn({ score }: Analysis): Uses {
  const main = score('written');
  return main === undefined ? together([]) : signUses(perform(main));
}
