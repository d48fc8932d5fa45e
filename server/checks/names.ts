/** Names that a file cites but nothing gives. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import { nameInstead, namesListed } from '../../grammar/nearest';
import { firstOf } from '../../grammar/statements/read';
import { declaredNames, type Environment } from '../score/environment';
import type { PlacedProblem } from '../score/score';
import { check, problemAt } from './check';
import { type BlockUses, placedUses, type UseKind, type Uses, usesIn } from './uses';

/** The finding for an unknown name of each kind; those left out are told with the declarations and the score. */
const codes: Readonly<Partial<Record<UseKind, FindingCode>>> = {
  option: 'unknown-label',
  limit: 'unknown-label',
  note: 'unknown-note',
  manual: 'unknown-manual',
  place: 'unknown-place',
  section: 'unknown-section',
};

const manualsOf = ({ statements }: Environment): string[] =>
  statements
    .flatMap(({ statement }) => statement.rows.filter((row) => row.kind === 'manual'))
    .flatMap((row) => firstOf(row.args, 'name')?.text ?? []);

function knownNames(environment: Environment, uses: Uses): Readonly<Partial<Record<UseKind, ReadonlySet<string>>>> {
  const { witnesses, layers, readings, notes } = declaredNames(environment);
  const labels = [...witnesses, ...layers, ...readings];
  return {
    option: new Set([...labels, 'sic', 'corr']),
    limit: new Set([...labels, 'written']),
    note: new Set(notes),
    manual: new Set(manualsOf(environment)),
    place: uses.places,
    section: uses.sections,
  };
}

type Known = ReturnType<typeof knownNames>;

const isUnknown = (known: Known, kind: UseKind, name: string): boolean =>
  codes[kind] !== undefined && known[kind]?.has(name) === false;

/** Most blocks cite nothing unknown: their names, which many have in common, are asked before their places are walked. */
function withUnknown(known: Known, blocks: readonly BlockUses[]): ReadonlySet<BlockUses['names']> {
  const distinct = new Set(blocks.map(({ names }) => names));
  const hasUnknown = (names: BlockUses['names']): boolean =>
    [...names].some(([kind, cited]) => [...cited].some((name) => isUnknown(known, kind, name)));
  return new Set([...distinct].filter(hasUnknown));
}

export const unknownNames = check('unknown-names', ['tree', 'environment'], ({ tree, environment }) => {
  const uses = usesIn(tree);
  const known = knownNames(environment, uses);
  const suspects = withUnknown(known, uses.blocks);
  if (suspects.size === 0) return [];
  return uses.blocks.flatMap((inBlock, block): PlacedProblem[] => {
    if (!suspects.has(inBlock.names)) return [];
    return placedUses(inBlock.contents).flatMap((use): PlacedProblem[] => {
      const [code, names] = [codes[use.kind], known[use.kind]];
      if (code === undefined || names === undefined || names.has(use.name)) return [];
      const slots = { name: use.name, known: namesListed(names) };
      return [problemAt(code, { ...use, block }, slots, nameInstead(use.name, use, names))];
    });
  });
});
