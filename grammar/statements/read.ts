/** Ways to ask a statement, clause or row what it says. */
import type { Argument, Clause } from '../tree';

export type ArgumentOf<Kind extends Argument['kind']> = Argument & { readonly kind: Kind };

const isOf =
  <Kind extends Argument['kind']>(kind: Kind) =>
  (arg: Argument): arg is ArgumentOf<Kind> =>
    arg.kind === kind;

/** All arguments of a kind, in order. */
export const allOf = <Kind extends Argument['kind']>(args: readonly Argument[], kind: Kind): ArgumentOf<Kind>[] =>
  args.filter(isOf(kind));

/** The first argument of a kind. */
export const firstOf = <Kind extends Argument['kind']>(
  args: readonly Argument[],
  kind: Kind,
): ArgumentOf<Kind> | undefined => args.find(isOf(kind));

/** The argument after a word: of `short-long in B` after `in` the name B. */
export function afterWord(args: readonly Argument[], word: string): Argument | undefined {
  const index = args.findIndex((arg) => arg.kind === 'word' && arg.text === word);
  return index < 0 ? undefined : args[index + 1];
}

/** The first clause of a name: where one stands twice, the first counts. */
export const clauseOf = (holder: { readonly clauses: readonly Clause[] }, name: string): Clause | undefined =>
  holder.clauses.find((clause) => clause.name === name);

/** All clauses of a name. */
export const clausesOf = (holder: { readonly clauses: readonly Clause[] }, name: string): Clause[] =>
  holder.clauses.filter((clause) => clause.name === name);
