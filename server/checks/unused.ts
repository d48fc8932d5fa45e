/** Declarations that nothing uses. Needs the tree and the declarations. */
import type { Declared } from '../score/environment';
import type { PlacedProblem } from '../score/score';
import type { Check } from './check';
import { type UseKind, usesIn } from './uses';

function problemOf(what: string, name: string, declared: Declared): PlacedProblem[] {
  // What an include brings is for many files.
  if (declared.file !== undefined) return [];
  return [
    {
      problem: { code: 'unused-declaration', pos: declared.pos, len: declared.len, slots: { what, name } },
      block: declared.block,
      lane: undefined,
      statement: declared.statement,
    },
  ];
}

export const unusedDeclarations: Check = ({ tree, environment }) => {
  const { all } = usesIn(tree, environment);
  const used = (kind: UseKind, name: string): boolean =>
    all.some((use) => use.kind === kind && (use.name === name || use.name.startsWith(`${name}.`)));
  const staves = environment.staves.filter((_, index) => !environment.voices.some((voice) => voice.stave === index));
  const hasMusic = tree.blocks.some((block) => block.lanes.length > 0);
  const voices = hasMusic ? environment.voices.filter((voice) => !used('voice', voice.name)) : [];
  const sources = environment.sources.slice(1).filter((source) => !used('label', source.name));
  const notes = [...environment.notes].filter(([name]) => !used('note', name));
  const editors = [...environment.editors].filter(([name]) => !used('editor', name));
  return [
    ...staves.flatMap((stave) => problemOf('stave', stave.name, stave)),
    ...voices.flatMap((voice) => problemOf('voice', voice.name, voice)),
    ...sources.flatMap((source) => problemOf('source', source.name, source)),
    ...notes.flatMap(([name, note]) => problemOf('note', name, note)),
    ...editors.flatMap(([name, editor]) => problemOf('editor', name, editor)),
  ];
};
