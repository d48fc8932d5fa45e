/** What is kept from one version of a document to the next. */

/** Counts the versions of a document that were analysed to their end. */
export interface Generation {
  now: number;
}

/** Whether something last asked for then may go. What the version before has stays, so that undoing costs nothing. */
export const isStale = (used: number, generation: Generation): boolean => used < generation.now - 1;

interface Entry<Value> {
  readonly value: Value;
  used: number;
}

/** Values by key. What neither the current version nor the one before has asked for is dropped when it is swept. */
export class Kept<Key, Value> {
  private readonly entries = new Map<Key, Entry<Value>>();

  constructor(private readonly generation: Generation) {}

  get(key: Key): Value | undefined {
    const entry = this.entries.get(key);
    if (entry === undefined) return undefined;
    entry.used = this.generation.now;
    return entry.value;
  }

  set(key: Key, value: Value): Value {
    this.entries.set(key, { value, used: this.generation.now });
    return value;
  }

  *values(): Generator<Value> {
    for (const { value } of this.entries.values()) yield value;
  }

  get size(): number {
    return this.entries.size;
  }

  sweep(): void {
    for (const [key, { used }] of this.entries) if (isStale(used, this.generation)) this.entries.delete(key);
  }
}

/**
 * Data as text: equal texts, equal data. Fields come in the order in which they were set, so that data made in one place
 * has one text; maps and sets are told as lists.
 */
export const canonical = (value: unknown): string => JSON.stringify(value, plain);

/** The same of data without maps and sets, several times as fast; a whole number beyond the safe ones takes the slow way. */
export function canonicalPlain(value: unknown): string {
  try {
    return JSON.stringify(value);
  } catch {
    return canonical(value);
  }
}

const plain = (_: string, value: unknown): unknown => {
  if (typeof value === 'bigint') return `${value}n`;
  return value instanceof Map || value instanceof Set ? [...value] : value;
};
