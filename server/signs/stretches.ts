/** The notes of a bar of very many, cut into stretches, so that who asks for a moment need not look at them all. */
import { compare, earliest, latest, type Time } from '../../grammar/time';
import { endOf } from '../score/clock';
import type { PerformedEvent } from '../score/performance';

/** So many notes are looked at one by one. */
export const STRETCH = 128;

interface Stretch {
  readonly notes: readonly PerformedEvent[];
  /** When the first of them begins, and when all are over. */
  readonly from: Time;
  readonly to: Time;
}

export class Stretches {
  private readonly all: Stretch[] = [];

  constructor(notes: readonly PerformedEvent[]) {
    for (let at = 0; at < notes.length; at += STRETCH) this.all.push(stretchOf(notes.slice(at, at + STRETCH)));
  }

  /** In their order all notes that sound or begin between two moments, and some that do not. */
  around(from: Time, to: Time): readonly PerformedEvent[] {
    return this.all.flatMap((stretch) =>
      compare(stretch.from, to) <= 0 && compare(stretch.to, from) >= 0 ? stretch.notes : [],
    );
  }
}

const stretchOf = (notes: readonly PerformedEvent[]): Stretch => ({
  notes,
  from: notes.map(({ onset }) => onset).reduce(earliest),
  to: notes.map(endOf).reduce(latest),
});
