/** What the reader of a lane is given. */
import type { FindingCode } from '../../../grammar/findings/catalogue';
import type { Fix, Slots } from '../../../grammar/findings/finding';
import type { PlacedLane, Span } from '../../../grammar/tree';
import type { Choice } from '../choice';
import type { SystemEnvironment } from '../environment';

/** A problem of a lane: its place counts in the lane's joined text. */
export type Report = (
  code: FindingCode,
  at: Span,
  slots: Slots,
  more: { readonly bar: number; readonly fixes: readonly Fix[] },
) => void;

export interface LaneTask {
  readonly lane: PlacedLane;
  /** Index in the block's lanes. */
  readonly index: number;
  /** Index in the environment's voices. */
  readonly voice: number;
  readonly name: string;
  readonly stave: number;
  readonly stems: 'up' | 'down' | undefined;
  readonly kind: 'measured' | 'loose' | 'free';
  /** In a witness lane an empty bar is as in the lane above. */
  readonly witness: boolean;
  /** Its first bar goes on from the system before. */
  readonly continues: boolean;
  readonly environment: SystemEnvironment;
  readonly choice: Choice;
  readonly report: Report;
}
