/** What is kept as long as that is the same from which it was made. */

/** Keeps what was made for an object as long as it lives; trees and contents of unchanged text are shared by all versions. */
export function keeping<Of extends object, Made extends object | string>(make: (of: Of) => Made): (of: Of) => Made {
  const kept = new WeakMap<Of, Made>();
  return (of) => {
    const known = kept.get(of);
    if (known !== undefined) return known;
    const made = make(of);
    kept.set(of, made);
    return made;
  };
}

/** Keeps what was made for the two objects last asked for: what is large, and needed for one thing and its neighbour only. */
export function keepingLast<Of extends object, Made>(make: (of: Of) => Made): (of: Of) => Made {
  let [before, last]: ({ readonly of: Of; readonly made: Made } | undefined)[] = [];
  return (of) => {
    if (last?.of === of) return last.made;
    if (before?.of === of) return before.made;
    before = last;
    last = { of, made: make(of) };
    return last.made;
  };
}

/** Whether two lists hold the very same things: what was made from one is good for the other. */
export const areSame = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, index) => one === b[index]);

/** Whether two things say the same, field by field. */
export function isAlike(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const fields = Object.entries(a);
  const others = b as Readonly<Record<string, unknown>>;
  return fields.length === Object.keys(b).length && fields.every(([name, one]) => isAlike(one, others[name]));
}
