/** What practices look at: a piece with its voices, its grids and what acts where. */
import type { Clocks } from '../score/clock';
import type { Piece } from '../score/score';
import type { Curves } from './curves';
import type { Grid } from './grid';
import type { Hemiola } from './hemiola';
import type { Line } from './lines';
import type { Meeting } from './meetings';
import type { Remarks } from './remarks';
import type { Ruling } from './ruling';
import type { RhythmWords } from './words';

export interface View {
  readonly piece: Piece;
  readonly lines: readonly Line[];
  readonly hemiolas: readonly Hemiola[];
  readonly grids: readonly Grid[];
  /** Of triplets and duple figures. */
  readonly meetings: readonly Meeting[];
  readonly curves: Curves;
  readonly words: RhythmWords;
  readonly clocks: Clocks;
  readonly ruling: Ruling;
  readonly remarks: Remarks;
}
