/** The names of a file and of what it includes: where they are given and where they are cited. */
import { blockAt, stretchIn } from '../../grammar/place';
import type { Block } from '../../grammar/tree';
import type { NameRole } from '../../grammar/vocabulary/names';
import { type BlockGiven, type BlockUse, type GivenKind, placedUses, type UseKind, usesIn } from '../checks/uses';
import type { NamedTree } from '../document/absolute';
import { brought } from '../score/environment';
import type { Project } from '../workspace/project';

/** Names of one space cannot be given twice; sources, layers and readings share one. */
export type Space =
  | 'stave'
  | 'voice'
  | 'label'
  | 'place'
  | 'note'
  | 'editor'
  | 'table'
  | 'temperament'
  | 'section'
  | 'instrument'
  | 'manual'
  | 'shape';

/** The space of a name by what it stands for. */
export const spaces: Readonly<Record<UseKind | NameRole, Space>> = {
  option: 'label',
  limit: 'label',
  taken: 'label',
  witness: 'label',
  label: 'label',
  reading: 'label',
  layer: 'label',
  lane: 'voice',
  voice: 'voice',
  stave: 'stave',
  place: 'place',
  note: 'note',
  editor: 'editor',
  table: 'table',
  temperament: 'temperament',
  section: 'section',
  inPiece: 'section',
  instrument: 'instrument',
  manual: 'manual',
  shape: 'shape',
};

/** A name at a place. */
export interface NameAt {
  readonly file: string;
  readonly space: Space;
  readonly name: string;
  readonly given: boolean;
  readonly kind: UseKind | GivenKind;
  /** Offsets in the file. */
  readonly start: number;
  readonly end: number;
}

function absolute(file: string, block: Block, use: BlockUse | BlockGiven, given: boolean): NameAt {
  const holder =
    use.statement !== undefined
      ? block.statements[use.statement]
      : use.lane === undefined
        ? undefined
        : block.lanes[use.lane];
  const from = block.offset + use.pos;
  const stretch = holder === undefined ? { start: from, end: from + use.len } : stretchIn(block, holder, use);
  return { file, space: spaces[use.kind], name: use.name, given, kind: use.kind, ...stretch };
}

/** A layer's name holds its source's: `K.2`. */
const withSource = (name: NameAt): NameAt[] => {
  const dot = name.space === 'label' ? name.name.indexOf('.') : -1;
  if (dot < 0) return [name];
  return [{ ...name, name: name.name.slice(0, dot), end: name.start + dot, given: false }, name];
};

function namesOfBlock({ file, tree }: NamedTree, index: number): NameAt[] {
  const block = tree.blocks[index];
  const said = usesIn(tree).blocks[index];
  if (block === undefined || said === undefined) return [];
  return [
    ...said.given.map((one) => absolute(file, block, one, true)),
    ...placedUses(said.contents).map((one) => absolute(file, block, one, false)),
  ].flatMap(withSource);
}

/** All names of a file in the order of their blocks. */
export const namesIn = (named: NamedTree): NameAt[] =>
  named.tree.blocks.flatMap((_, index) => namesOfBlock(named, index));

/** The name at an offset, or that ends there; of two around it the shorter one. */
export function nameAt(named: NamedTree, offset: number): NameAt | undefined {
  const touching = namesOfBlock(named, blockAt(named.tree, offset)).filter(
    ({ start, end }) => start <= offset && offset <= end,
  );
  const around = touching.filter(({ end }) => offset < end);
  return (around.length > 0 ? around : touching).sort((a, b) => a.end - a.start - (b.end - b.start))[0];
}

/** What a file brings to those that include it. */
const isBrought = ({ tree }: NamedTree, { start }: NameAt): boolean =>
  tree.blocks.some((block) =>
    block.statements.some((placed) => {
      const { start: from, end } = stretchIn(block, placed, { pos: 0, len: placed.tree.text.length });
      return from <= start && start < end && brought.has(placed.tree.statement.keyword);
    }),
  );

/** The spaces in which a name is one and the same thing: a voice that has a stave of its own gives that its name. */
export function spacesOf(project: Project, { space, name }: Pick<NameAt, 'space' | 'name'>): readonly Space[] {
  if (space !== 'stave' && space !== 'voice') return [space];
  const { staves, voices } = project.environment;
  const stave = staves.findIndex((one) => one.name === name);
  const isOwn = voices.some((one) => one.name === name && one.stave === stave);
  return isOwn && !isStaveGiven(project, name) ? ['voice', 'stave'] : [space];
}

const isStaveGiven = (project: Project, name: string): boolean =>
  [project, ...project.included].some((named) =>
    namesIn(named).some((one) => one.given && one.space === 'stave' && one.name === name),
  );

/** Names that are the same as one in a project: all in its own file, and in what it includes those that are brought. */
export function namesakes(project: Project, of: Pick<NameAt, 'space' | 'name'>): NameAt[] {
  const spaces = spacesOf(project, of);
  const same = (one: NameAt): boolean => one.name === of.name && spaces.includes(one.space);
  return [
    ...namesIn(project).filter(same),
    ...project.included.flatMap((named) => namesIn(named).filter((one) => same(one) && isBrought(named, one))),
  ];
}
