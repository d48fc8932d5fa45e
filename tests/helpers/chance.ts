/** Decisions drawn from a list of numbers: the same list, the same decisions; when it is used up, always the plainest. */
export class Chance {
  private index = 0;

  constructor(private readonly numbers: readonly number[]) {}

  /** A whole number from 0 to `count` − 1. */
  below(count: number): number {
    const number = this.numbers[this.index++] ?? 0;
    return number % count;
  }

  /** Whether something happens that happens so often in a hundred times. */
  happens(percent: number): boolean {
    return this.below(100) >= 100 - percent;
  }

  /** One of a list; the first is the plainest. */
  pick<Thing>(things: readonly [Thing, ...Thing[]]): Thing {
    return things[this.below(things.length)] ?? things[0];
  }

  /** From `low` to `high`, both included. */
  between(low: number, high: number): number {
    return low + this.below(high - low + 1);
  }
}

/** A list of numbers for {@link Chance} that follows from a seed. */
export function numbersOf(seed: number, count: number): number[] {
  let state = seed >>> 0;
  return Array.from({ length: count }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state >>> 16;
  });
}
