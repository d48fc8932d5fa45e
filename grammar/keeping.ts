/** Keeps what was made for an object as long as it lives; trees and contents of unchanged text are shared by all versions. */
export function keeping<Of extends object, Made extends object>(make: (of: Of) => Made): (of: Of) => Made {
  const kept = new WeakMap<Of, Made>();
  return (of) => {
    const known = kept.get(of);
    if (known !== undefined) return known;
    const made = make(of);
    kept.set(of, made);
    return made;
  };
}
