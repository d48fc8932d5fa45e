/** What is built on another of its kind by a clause `from`. */
import type { Problem } from '../../../grammar/findings/finding';
import { clauseOf } from '../../../grammar/statements/read';
import { circlesOf, waysRound } from '../ways';
import { type Declarations, type Found, type NameLike, nameIn } from './declarations';

interface Derived {
  readonly found: Found;
  readonly name: string;
}

interface Ways {
  readonly known: readonly string[];
  readonly unknown: Problem['code'];
  readonly circle: Problem['code'];
}

export const fromIn = (found: Found): NameLike | undefined => nameIn(clauseOf(found.statement, 'from')?.args ?? []);

/** Follows every `from`: it must lead to something known and come to an end. */
export function checkWays(declarations: Declarations, derived: readonly Derived[], ways: Ways): void {
  const circles = circlesOf(new Map(derived.map(({ found, name }) => [name, fromIn(found)?.text])));
  // A circle is told once, where this file has the first of it.
  const own = derived.filter(({ found }) => found.declared.file === undefined);
  const round = waysRound(
    circles,
    own.map(({ name }) => name),
  );
  const known = new Set(ways.known);
  for (const { found, name } of derived) {
    const from = fromIn(found);
    if (from === undefined) continue;
    if (!known.has(from.text)) declarations.unknown(found, from, ways.unknown, ways.known);
    const way = round.get(name);
    if (way !== undefined) declarations.report(found, from, ways.circle, { name, way });
  }
}
