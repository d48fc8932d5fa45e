/** Declarations that nothing uses. */
import { firstOf } from '../../grammar/statements/read';
import type { Declared, Environment } from '../score/environment';
import type { PlacedProblem } from '../score/score';
import { check, problemAt } from './check';
import { type UseKind, type Uses, usesIn } from './uses';

interface Named {
  readonly what: string;
  readonly name: string;
  readonly declared: Declared;
}

const cites: readonly UseKind[] = ['option', 'limit', 'taken', 'witness'];

/** Whoever moves to another stave may reach any. */
const unusedStaves = ({ staves, voices }: Environment, uses: Uses): Named[] =>
  staves
    .filter((_, index) => !uses.moves && !voices.some((voice) => voice.stave === index))
    .map((stave) => ({ what: 'stave', name: stave.name, declared: stave }));

/** Layers of a source, each at its own statement. */
const handsOf = ({ statements }: Environment): Named[] =>
  statements.flatMap(({ statement, declared }) => {
    const name = statement.keyword === 'hand' ? firstOf(statement.args, 'name') : undefined;
    return name === undefined ? [] : [{ what: 'hand', name: name.text, declared }];
  });

export const unusedDeclarations = check('unused-declarations', ['tree', 'environment'], ({ tree, environment }) => {
  // Before any music is typed everything is unused.
  if (!tree.blocks.some((block) => block.lanes.length > 0)) return [];
  const uses = usesIn(tree);
  const used = (kinds: readonly UseKind[]): ReadonlySet<string> =>
    new Set(kinds.flatMap((kind) => [...(uses.names.get(kind) ?? [])]));
  const [labels, lanes, notes, editors] = [used(cites), used(['lane']), used(['note']), used(['editor'])];
  // Who cites a layer cites its source.
  const sources = new Set([...labels].map((label) => label.split('.')[0]));
  const unused: Named[] = [
    ...unusedStaves(environment, uses),
    ...environment.voices
      .filter(({ name }) => !lanes.has(name))
      .map((voice) => ({ what: 'voice', name: voice.name, declared: voice })),
    // The first source is the main text.
    ...environment.sources
      .slice(1)
      .filter(({ name }) => !sources.has(name))
      .map((source) => ({ what: 'source', name: source.name, declared: source })),
    ...handsOf(environment).filter(({ name }) => !labels.has(name)),
    ...[...environment.notes]
      .filter(([name]) => !notes.has(name))
      .map(([name, declared]) => ({ what: 'note', name, declared })),
    ...[...environment.editors]
      .filter(([name]) => !editors.has(name))
      .map(([name, declared]) => ({ what: 'editor', name, declared })),
  ];
  return unused.flatMap(({ what, name, declared: { file, pos, len, block, statement } }): PlacedProblem[] =>
    // What an include brings is for many files.
    file === undefined ? [problemAt('unused-declaration', { pos, len, block, statement }, { what, name })] : [],
  );
});
