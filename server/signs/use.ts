/** Where and how often signs stand in a performance: by that an editor decides what a sign means in a book. */
import type { Performance } from '../score/performance';
import { signsOf } from './bearing';
import { conditionNames, holds } from './conditions';
import { Passage } from './passage';

export interface SignUse {
  /** Short names of its shapes, joined by `+`. */
  readonly sign: string;
  readonly times: number;
  /** How many of these stand where a table's row could ask for: `dotted`, `rising`. */
  readonly where: Readonly<Record<string, number>>;
}

/** The signs of a performance in which nothing is realised, the most frequent first. */
export function signUses({ pieces }: Performance): SignUse[] {
  const found = new Map<string, { times: number; where: Record<string, number> }>();
  for (const piece of pieces) {
    const passage = new Passage(piece);
    for (const event of piece.events) {
      for (const sign of signsOf(event)) {
        const key = sign.shapes.join('+');
        const use = found.get(key) ?? { times: 0, where: {} };
        use.times++;
        for (const condition of conditionNames) {
          if (holds(condition, { passage, event, sign })) use.where[condition] = (use.where[condition] ?? 0) + 1;
        }
        found.set(key, use);
      }
    }
  }
  return [...found].map(([sign, use]) => ({ sign, ...use })).sort(byFrequency);
}

/** The uses of several scores together. */
export function together(all: readonly (readonly SignUse[])[]): SignUse[] {
  const found = new Map<string, SignUse>();
  for (const { sign, times, where } of all.flat()) {
    const use = found.get(sign) ?? { sign, times: 0, where: {} };
    const places = { ...use.where };
    for (const [condition, count] of Object.entries(where)) places[condition] = (places[condition] ?? 0) + count;
    found.set(sign, { sign, times: use.times + times, where: places });
  }
  return [...found.values()].sort(byFrequency);
}

const byFrequency = (a: SignUse, b: SignUse): number => b.times - a.times || (a.sign < b.sign ? -1 : 1);
