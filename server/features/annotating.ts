/** Full annotations, declared in the head and cited where they belong. */
import { stretchIn } from '../../grammar/place';
import { quoted } from '../../grammar/quoted';
import type { FileTree, Placed, StatementTree } from '../../grammar/tree';
import type { TextChange } from '../document/edits';
import { declaredNames } from '../score/environment';
import type { Project } from '../workspace/project';

/** What is said, and perhaps what about and by whom. */
export interface Said {
  readonly text: string;
  readonly kind?: string;
  readonly by?: string;
}

/** A name by which an annotation can be cited, and what declares it; nothing where the file has this very annotation already. */
export function annotationSaying(
  { tree, environment }: Project,
  { text, kind, by }: Said,
): { readonly name: string; readonly changes: readonly TextChange[] } {
  const known = [...environment.notes].find(
    ([, { text: says, about, by: editor, certainty, evidence }]) =>
      says === text && about === kind && editor === by && certainty === undefined && evidence === undefined,
  );
  if (known !== undefined) return { name: known[0], changes: [] };
  const name = freeName('n', new Set(declaredNames(environment).notes));
  const clauses = [...(kind === undefined ? [] : [`kind ${kind} `]), ...(by === undefined ? [] : [`by ${by} `])];
  const statement = `note ${name} ${clauses.join('')}: ${quoted(text)}\n`;
  return { name, changes: [{ offset: lineAfterLast(tree, ['note']), length: 0, text: statement }] };
}

/** The first name of a kind, `v1`, `v2` …, that is not taken. */
export function freeName(stem: string, taken: ReadonlySet<string>): string {
  let number = 1;
  while (taken.has(`${stem}${number}`)) number++;
  return `${stem}${number}`;
}

/** With these a place in the source begins: what is declared stands before them. */
const PLACES: ReadonlySet<string> = new Set(['piece', 'page', 'section']);

/**
 * Where the line begins after the last statement of the head with one of these keywords; without one after what else is declared
 * there, so that a comment stays with what it leads.
 */
export function lineAfterLast(tree: FileTree, keywords: readonly string[]): number {
  const [head] = tree.blocks;
  const keywordOf = (placed: Placed<StatementTree>): string => placed.tree.statement.keyword;
  const last =
    head?.statements.findLast((placed) => keywords.includes(keywordOf(placed))) ??
    head?.statements.findLast((placed) => !PLACES.has(keywordOf(placed)));
  if (head?.kind !== 'head' || last === undefined) return head?.offset ?? tree.text.length;
  const { end } = stretchIn(head, last, { pos: 0, len: last.tree.text.length });
  return tree.lineStarts.find((start) => start > end) ?? tree.text.length;
}
