/** From statements to the environment: what is declared, and what the declarations say of one another. */
import { firstOf } from '../../grammar/statements/read';
import type { Argument, FileTree } from '../../grammar/tree';
import { Declarations, nameIn, practiceIn, statementsOf, stringIn } from './declare/declarations';
import { editorsOf, notesOf } from './declare/notes';
import { checkChoices, readingsOf, sourcesOf } from './declare/readings';
import { beamingOf, checkOnce, checkPractices, compassOf, tempoOf } from './declare/stated';
import { layoutOf } from './declare/staves';
import { tablesOf } from './declare/tables';
import { allChoices, type Environment } from './environment';

/** What an include brings: tables, people and sources. */
export const brought: ReadonlySet<string> = new Set(['source', 'hand', 'editor', 'table', 'temperament']);

/**
 * The environment of a file.
 * @param file its name, as the host calls it
 * @param included the files that it includes, directly or not, each after those that it includes itself. They bring
 *   tables, people and sources, and nothing else
 */
export function buildEnvironment(
  file: string,
  tree: FileTree,
  included: readonly { readonly file: string; readonly tree: FileTree }[],
): Environment {
  const own = statementsOf(tree, undefined);
  const others = included
    .filter((other) => other.file !== file)
    .flatMap((other) => statementsOf(other.tree, other.file))
    .filter(({ statement }) => brought.has(statement.keyword));
  const includes = own.filter(({ statement }) => statement.keyword === 'include');
  const declarations = new Declarations([...others, ...own], includes);

  const { staves, voices } = layoutOf(declarations);
  const sources = sourcesOf(declarations);
  const readings = readingsOf(declarations, sources);
  checkChoices(declarations, allChoices(readings, sources));
  const tables = tablesOf(declarations);
  const editors = editorsOf(declarations);
  const notes = notesOf(declarations, editors);
  checkOnce(declarations);
  checkPractices(declarations, voices);

  const stated = (keyword: string): readonly Argument[] => declarations.first(keyword)?.statement.args ?? [];
  return {
    title: stringIn(stated('title')),
    staves,
    voices,
    sources,
    readings,
    accidentals: practiceIn(stated('accidentals')) ?? 'note',
    beaming: beamingOf(declarations),
    tempo: tempoOf(declarations),
    pitch: firstOf(stated('pitch'), 'number')?.value,
    compass: compassOf(declarations),
    signs: nameIn(stated('signs'))?.text,
    tables,
    notes,
    editors,
    stated: new Set(own.map(({ statement }) => statement.keyword)),
    statements: declarations.all.map(({ statement, declared }) => ({ statement, declared })),
    problems: declarations.problems,
  };
}
