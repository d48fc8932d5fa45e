/** What a system's score is made from. */
import type { BlockContents } from '../../../grammar/tree';
import type { Carry } from '../carry';
import type { Choice } from '../choice';
import type { SystemEnvironment } from '../environment';

/** All that a system's score depends on; of the choice only what its options and limits come to in these lanes. */
export interface SystemTask {
  readonly block: BlockContents;
  readonly environment: SystemEnvironment;
  readonly choice: Choice;
  readonly carry: Carry;
}
