/** Names that lanes and statements cite and give, each with its place. */
import { finished } from '../../grammar/finished';
import { keeping } from '../../grammar/keeping';
import { type TellingItem, tellingItems } from '../../grammar/telling';
import type {
  Argument,
  BlockContents,
  ChangeItem,
  Clause,
  FileTree,
  LaneTree,
  OptionsItem,
  Readings,
  Span,
  StatementTree,
  Suffix,
} from '../../grammar/tree';
import type { NameRole } from '../../grammar/vocabulary/names';
import { labelText } from '../score/choice';
import type { Spot } from './check';

/**
 * - `option`: whose an option is; `limit`: a witness or reading after a colon, to which a mark, tie or span is limited;
 *   `taken`: what a reading takes; `witness`: of a witness lane;
 * - `lane`: the voice of a lane; `inPiece`: a section that must be in the piece where it is cited; the others as statements
 *   call them.
 */
export type UseKind =
  | 'option'
  | 'limit'
  | 'taken'
  | 'witness'
  | 'lane'
  | 'inPiece'
  | Exclude<NameRole, 'label' | 'layer' | 'instrument'>;

/** What statements and lanes give a name to. */
export type GivenKind = Exclude<NameRole, 'label' | 'shape'>;

export interface Given extends Span {
  readonly kind: GivenKind;
  readonly name: string;
}

export interface Cited extends Span {
  readonly kind: UseKind;
  readonly name: string;
}

export type Use = Cited & Spot;

/** What one lane or statement says; places count in its text. */
interface Said {
  readonly cited: Cited[];
  readonly given: Given[];
  /** A note or lane moves to another stave. */
  moves: boolean;
}

const nothingSaid = (): Said => ({ cited: [], given: [], moves: false });

// ─── lanes ───────────────────────────────────────────────────────────────────────────────────────────────────────

class LaneNames {
  readonly said = nothingSaid();

  constructor(private readonly text: string) {}

  private cite(kind: UseKind, name: string, pos: number): void {
    this.said.cited.push({ kind, name, pos, len: name.length });
  }

  private give(kind: GivenKind, { text, pos, len }: NameLike, from = 0): void {
    this.said.given.push({ kind, name: text, pos: from + pos, len });
  }

  /** The names after the colon with which a sign ends. */
  private limits(readings: Readings | undefined, end: number): void {
    if (readings === undefined) return;
    let pos = end - readings.names.join(',').length;
    for (const name of readings.names) {
      this.cite('limit', name, pos);
      pos += name.length + 1;
    }
  }

  private tie(tie: { readonly text: string; readonly readings?: Readings } | undefined, from: number): void {
    if (tie?.readings === undefined) return;
    this.limits(tie.readings, this.text.indexOf(tie.text, from) + tie.text.length);
  }

  suffixes(list: readonly Suffix[]): void {
    for (const suffix of list) {
      if (suffix.kind === 'mark') this.limits(suffix.form.readings, suffix.pos + suffix.form.text.length);
      else if (suffix.ref !== undefined) this.cite('note', suffix.ref, suffix.pos + '*'.length);
    }
  }

  item(item: TellingItem): void {
    switch (item.kind) {
      case 'event':
        this.tie(item.tie, item.pos);
        this.suffixes(item.suffixes);
        for (const member of item.members) {
          this.tie(member.tie, member.pos);
          this.suffixes(member.suffixes);
          if (member.stave !== undefined) this.said.moves = true;
        }
        break;
      case 'span':
        this.limits(item.head.readings, item.pos + item.head.text.length);
        this.suffixes(item.suffixes);
        break;
      case 'options':
        this.options(item);
        break;
      case 'barline':
        this.suffixes(item.suffixes);
        break;
      case 'change':
        this.change(item);
        break;
    }
  }

  private options(item: OptionsItem): void {
    if (item.place !== undefined) this.give('place', item.place);
    this.suffixes(item.reasons);
    for (const { labels } of item.options) {
      for (const label of labels) this.cite('option', labelText(label), label.pos);
    }
    this.suffixes(item.suffixes);
  }

  private change({ change, pos }: ChangeItem): void {
    if (change.word === 'up' || change.word === 'down') this.said.moves = true;
    for (const arg of argumentsOf(change)) {
      if (arg.kind !== 'name') continue;
      if (isGiven(arg)) this.give(arg.role, arg, pos);
      else this.cite(kindInMusic(arg.role), arg.text, pos + arg.pos);
    }
  }
}

function saidInLane(tree: LaneTree): Said {
  const names = new LaneNames(tree.text);
  names.suffixes(tree.opening.suffixes);
  names.suffixes(tree.opening.again?.suffixes ?? []);
  for (const item of tellingItems(tree)) names.item(item);
  for (const { bar } of tree.segments) if (bar !== undefined) names.suffixes(bar.suffixes);
  return names.said;
}

// ─── statements ──────────────────────────────────────────────────────────────────────────────────────────────────

type NameLike = Span & { readonly text: string };
type NameArgument = Extract<Argument, { kind: 'name' }>;

const isGiven = (arg: NameArgument): arg is NameArgument & { role: GivenKind } => arg.declares;

/** Labels are what a reading takes; nothing cites an instrument or a layer by a part of its own. */
const kindOf = (role: NameRole): UseKind =>
  role === 'label' || role === 'layer' || role === 'instrument' ? 'taken' : role;

/** Statements that speak of the piece where they stand. */
const ofMusic: ReadonlySet<string> = new Set(['order', 'section']);

const kindInMusic = (role: NameRole): UseKind => (role === 'section' ? 'inPiece' : kindOf(role));

const argumentsOf = ({
  args,
  clauses,
}: {
  readonly args: readonly Argument[];
  readonly clauses: readonly Clause[];
}) => [...args, ...clauses.flatMap((clause) => clause.args)];

function saidInStatement({ statement }: StatementTree): Said {
  const { keyword, rows } = statement;
  const said = nothingSaid();
  const cite = (kind: UseKind, { text, pos, len }: NameLike): void => {
    said.cited.push({ kind, name: text, pos, len });
  };
  for (const arg of [...argumentsOf(statement), ...rows.flatMap(argumentsOf)]) {
    if (arg.kind === 'names') for (const name of arg.names) cite(kindOf(arg.role), name);
    else if (arg.kind !== 'name') continue;
    else if (isGiven(arg)) said.given.push({ kind: arg.role, name: arg.text, pos: arg.pos, len: arg.len });
    else cite(ofMusic.has(keyword) ? kindInMusic(arg.role) : kindOf(arg.role), arg);
  }
  return said;
}

// ─── the file ────────────────────────────────────────────────────────────────────────────────────────────────────

/** A name that a block cites or gives; `block` is told by the block's place in the tree. */
export type BlockUse = Omit<Use, 'block'>;
export type BlockGiven = Given & Omit<Spot, 'block'>;

/** All that a block cites, and what it gives. */
export interface BlockUses {
  readonly contents: BlockContents;
  /** The names cited, by what they are called. */
  readonly names: ReadonlyMap<UseKind, ReadonlySet<string>>;
  readonly given: readonly BlockGiven[];
  readonly moves: boolean;
}

/** All that a file cites, and what it gives. */
export interface Uses {
  /** By block. */
  readonly blocks: readonly BlockUses[];
  readonly names: ReadonlyMap<UseKind, ReadonlySet<string>>;
  readonly places: ReadonlySet<string>;
  readonly sections: ReadonlySet<string>;
  readonly moves: boolean;
}

const laneSaid = keeping(saidInLane);
const statementSaid = keeping(saidInStatement);

/** All names that a lane cites; places count in its text. */
export const citedInLane = (tree: LaneTree): readonly Cited[] => laneSaid(tree).cited;

/** Voice and witness before the opening barline; their places count from the block's start. */
function citedBefore({ lanes }: BlockContents): Cited[] {
  const cited: Cited[] = [];
  for (const { tree, name, witness } of lanes) {
    if (tree.kind !== 'lane') continue;
    cited.push({ kind: 'lane', name: name.text, pos: name.pos, len: name.text.length });
    if (witness !== undefined)
      cited.push({ kind: 'witness', name: witness.text, pos: witness.pos, len: witness.text.length });
  }
  return cited;
}

/** Names by what they are called. */
type Names = Map<UseKind, Set<string>>;

function addName(names: Names, kind: UseKind, name: string): void {
  const known = names.get(kind);
  if (known === undefined) names.set(kind, new Set([name]));
  else known.add(name);
}

function addNames(names: Names, cited: readonly Cited[]): void {
  for (const { kind, name } of cited) addName(names, kind, name);
}

function namesOf(blocks: readonly BlockUses[]): Names {
  const all: Names = new Map();
  const distinct = new Set(blocks.map(({ names }) => names));
  for (const names of distinct) for (const [kind, some] of names) for (const name of some) addName(all, kind, name);
  return all;
}

/** By what they say. Blocks of a file cite the same few names, so that many share one object and few have to be asked. */
const alike = new Map<string, Names>();
const MOST_ALIKE = 1000;

const inOneList = ([kind, some]: [UseKind, ReadonlySet<string>]): readonly string[] => [kind, ...some];

function sharedByAlike(names: Names): Names {
  const text = JSON.stringify(Array.from(names, inOneList));
  const known = alike.get(text);
  if (known !== undefined) return known;
  if (alike.size >= MOST_ALIKE) alike.clear();
  alike.set(text, names);
  return names;
}

interface SaidHere {
  readonly said: Said;
  readonly where: Omit<Spot, 'block' | keyof Span>;
}

/** What each statement and each lane of a block says. */
function saidIn({ statements, lanes }: BlockContents): readonly SaidHere[] {
  const all: SaidHere[] = [];
  for (const [statement, { tree }] of statements.entries())
    all.push({ said: statementSaid(tree), where: { statement } });
  for (const [lane, { tree }] of lanes.entries()) all.push({ said: laneSaid(tree), where: { lane } });
  return all;
}

/** The uses themselves, which few ask for: most blocks cite nothing that is unknown. */
export const placedUses = keeping((contents: BlockContents): readonly BlockUse[] => {
  const uses: BlockUse[] = [];
  for (const { said, where } of saidIn(contents)) for (const one of said.cited) uses.push({ ...one, ...where });
  return uses.concat(citedBefore(contents));
});

const usesInBlock = keeping((contents: BlockContents): BlockUses => {
  const names: Names = new Map();
  const given: BlockGiven[] = [];
  let moves = false;
  for (const { said, where } of saidIn(contents)) {
    addNames(names, said.cited);
    for (const one of said.given) given.push({ ...one, ...where });
    moves ||= said.moves;
  }
  addNames(names, citedBefore(contents));
  return { contents, names: sharedByAlike(names), given, moves };
});

function givenAs(kind: GivenKind, blocks: readonly BlockUses[]): Set<string> {
  const names = new Set<string>();
  for (const { given } of blocks) for (const one of given) if (one.kind === kind) names.add(one.name);
  return names;
}

const usesByTree = new WeakMap<FileTree, Uses>();

/** All names that a file cites. */
export const usesIn = (tree: FileTree): Uses => usesByTree.get(tree) ?? finished(findingUses(tree));

/** Between two blocks in so many others may have their turn. */
const BLOCKS_IN_STEP = 100;

/** Finds the names of one block after another; `usesIn` then has them. */
export function* findingUses(tree: FileTree): Generator<undefined, Uses> {
  const blocks: BlockUses[] = [];
  let moves = false;
  for (const { contents } of tree.blocks) {
    const uses = usesInBlock(contents);
    moves ||= uses.moves;
    if (blocks.push(uses) % BLOCKS_IN_STEP === 0) yield;
  }
  const [places, sections] = [givenAs('place', blocks), givenAs('section', blocks)];
  const uses = { blocks, names: namesOf(blocks), places, sections, moves };
  usesByTree.set(tree, uses);
  return uses;
}
