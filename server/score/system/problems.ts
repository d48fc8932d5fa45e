/** The problems of a system, each where it lies. */
import type { FindingCode } from '../../../grammar/findings/catalogue';
import { type Fix, problemOf, type Slots } from '../../../grammar/findings/finding';
import type { PlacedLane, Span } from '../../../grammar/tree';
import type { PlacedProblem, Source } from '../score';

/** In which lane or statement of the block; in neither: at the names of lanes. */
export type Place = Pick<PlacedProblem, 'lane' | 'statement'>;

/** The statement that begins the system. */
export const HEAD: Place = { lane: undefined, statement: 0 };

interface More {
  readonly bar?: number;
  readonly fixes?: readonly Fix[];
}

export class SystemProblems {
  readonly found: PlacedProblem[] = [];

  add(place: Place, code: FindingCode, at: Span, slots: Slots, more: More = {}): void {
    const { fixes, ...rest } = more;
    this.found.push({
      problem: problemOf(code, at, slots, fixes),
      block: 0,
      ...place,
      ...rest,
    });
  }

  readonly inLane = (lane: number, code: FindingCode, at: Span, slots: Slots, more: More = {}): void =>
    this.add({ lane }, code, at, slots, more);

  readonly at = (code: FindingCode, at: Source, slots: Slots): void => this.add({ lane: at.lane }, code, at, slots);

  /** At the name of a lane. */
  atName({ name }: PlacedLane, code: FindingCode, slots: Slots): void {
    this.add({ lane: undefined }, code, { pos: name.pos, len: name.text.length }, slots);
  }

  /** At the first word of the head. */
  atHead(code: FindingCode, slots: Slots): void {
    this.add(HEAD, code, { pos: 0, len: 'system'.length }, slots);
  }
}
