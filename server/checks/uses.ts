/** Names that lanes and statements cite, each with its place, and those that they give to places and sections. */
import { keeping } from '../../grammar/keeping';
import { afterWord, allOf, clausesOf, firstOf } from '../../grammar/statements/read';
import type {
  Argument,
  BlockContents,
  ChangeItem,
  FileTree,
  Item,
  LaneTree,
  OptionsItem,
  Readings,
  Span,
  StatementTree,
  Suffix,
} from '../../grammar/tree';
import { labelText } from '../score/choice';
import type { Spot } from './check';

/**
 * - `option`: whose an option is; `limit`: a witness or reading after a colon, to which a mark, tie or span is limited;
 *   `taken`: what a reading takes; `witness`: of a witness lane;
 * - `lane`: the voice of a lane; `voice`, `section`, `note`, `manual`, `place`, `editor` as they are called.
 */
export type UseKind =
  | 'option'
  | 'limit'
  | 'taken'
  | 'witness'
  | 'lane'
  | 'voice'
  | 'section'
  | 'note'
  | 'manual'
  | 'place'
  | 'editor';

export interface Cited extends Span {
  readonly kind: UseKind;
  readonly name: string;
}

export type Use = Cited & Spot;

/** What one lane or statement says; places count in its text. */
interface Said {
  readonly cited: Cited[];
  /** Names that options bear. */
  readonly places: string[];
  readonly sections: string[];
  /** A note or lane moves to another stave. */
  moves: boolean;
}

const nothingSaid = (): Said => ({ cited: [], places: [], sections: [], moves: false });

// ─── lanes ───────────────────────────────────────────────────────────────────────────────────────────────────────

/** What an event has if it cites something or moves to another stave. */
const citingSigns = /[:*(]/g;

class LaneNames {
  readonly said = nothingSaid();
  /** The first such sign that does not lie behind; it is kept, so that the text is gone over once. */
  private sign = -1;

  constructor(private readonly text: string) {}

  private cite(kind: UseKind, name: string, pos: number): void {
    this.said.cited.push({ kind, name, pos, len: name.length });
  }

  /** The names after the colon with which a sign ends. */
  private limits(readings: Readings | undefined, end: number): void {
    const names = readings?.names ?? [];
    let pos = end - names.join(',').length;
    for (const name of names) {
      this.cite('limit', name, pos);
      pos += name.length + 1;
    }
  }

  private tie(tie: { readonly text: string; readonly readings?: Readings } | undefined, from: number): void {
    if (tie?.readings === undefined) return;
    this.limits(tie.readings, this.text.indexOf(tie.text, from) + tie.text.length);
  }

  private mayCite({ pos, len }: Span): boolean {
    if (this.sign < pos) {
      citingSigns.lastIndex = pos;
      this.sign = citingSigns.exec(this.text)?.index ?? this.text.length;
    }
    return this.sign < pos + len;
  }

  suffixes(list: readonly Suffix[]): void {
    for (const suffix of list) {
      if (suffix.kind === 'mark') this.limits(suffix.form.readings, suffix.pos + suffix.form.text.length);
      else if (suffix.ref !== undefined) this.cite('note', suffix.ref, suffix.pos + '*'.length);
    }
  }

  items(items: readonly Item[]): void {
    for (const item of items) this.item(item);
  }

  private item(item: Item): void {
    switch (item.kind) {
      case 'event':
        if (!this.mayCite(item)) break;
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
        this.items(item.items);
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
    if (item.place !== undefined) this.said.places.push(item.place.text);
    this.suffixes(item.reasons);
    for (const option of item.options) {
      for (const label of option.labels) this.cite('option', labelText(label), label.pos);
      this.items(option.items);
    }
    this.suffixes(item.suffixes);
  }

  private change({ change, pos }: ChangeItem): void {
    const name = firstOf(change.args, 'name');
    if (change.word === 'up' || change.word === 'down') this.said.moves = true;
    if (name === undefined) return;
    if (change.word === 'manual') this.cite('manual', name.text, pos + name.pos);
    if (change.word === 'section') this.said.sections.push(name.text);
  }
}

function saidInLane(tree: LaneTree): Said {
  const names = new LaneNames(tree.text);
  names.suffixes(tree.opening.suffixes);
  names.suffixes(tree.opening.again?.suffixes ?? []);
  for (const segment of tree.segments) {
    names.items(segment.items);
    names.suffixes(segment.bar?.suffixes ?? []);
  }
  return names.said;
}

// ─── statements ──────────────────────────────────────────────────────────────────────────────────────────────────

type NameLike = Span & { readonly text: string };

const cited = (kind: UseKind, names: readonly (NameLike | undefined)[]): Cited[] =>
  names.flatMap((name) => (name === undefined ? [] : [{ kind, name: name.text, pos: name.pos, len: name.len }]));

const nameAfter = (args: readonly Argument[], word: string): NameLike | undefined => {
  const arg = afterWord(args, word);
  return arg?.kind === 'name' ? arg : undefined;
};

/** `… in SECTION`, `… voice V`. */
const citedInPractice = (args: readonly Argument[]): Cited[] => [
  ...cited('section', [nameAfter(args, 'in')]),
  ...cited('voice', [nameAfter(args, 'voice')]),
];

function citedIn({ keyword, args, ...holder }: StatementTree['statement']): Cited[] {
  const argsOf = (clause: string): (readonly Argument[])[] => clausesOf(holder, clause).map((one) => one.args);
  switch (keyword) {
    case 'link':
      return cited('place', allOf(args, 'name'));
    case 'practice':
      return citedInPractice(args);
    case 'note':
      return argsOf('by').flatMap((by) => cited('editor', allOf(by, 'name')));
    case 'reading':
      return [
        ...argsOf('practice').flatMap(citedInPractice),
        ...argsOf('order').flatMap((order) => cited('section', allOf(order, 'name'))),
        ...argsOf('takes').flatMap((takes) => allOf(takes, 'names').flatMap(({ names }) => cited('taken', names))),
        ...argsOf('at').flatMap((at) => {
          const [place, label] = allOf(at, 'name');
          return [...cited('place', [place]), ...cited('taken', [label])];
        }),
      ];
    default:
      return [];
  }
}

function saidInStatement({ statement }: StatementTree): Said {
  const section = statement.keyword === 'section' ? firstOf(statement.args, 'name')?.text : undefined;
  return { ...nothingSaid(), cited: citedIn(statement), sections: section === undefined ? [] : [section] };
}

// ─── the file ────────────────────────────────────────────────────────────────────────────────────────────────────

/** A name that a block cites; `block` is told by the block's place in the tree. */
export type BlockUse = Omit<Use, 'block'>;

/** All that a block cites, and what it gives. */
export interface BlockUses {
  readonly uses: readonly BlockUse[];
  /** The names cited, by what they are called. */
  readonly names: ReadonlyMap<UseKind, ReadonlySet<string>>;
  readonly places: readonly string[];
  readonly sections: readonly string[];
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
const citedBefore = ({ lanes }: BlockContents): Cited[] =>
  lanes
    .filter(({ tree }) => tree.kind === 'lane')
    .flatMap(({ name, witness }) => [
      { kind: 'lane', name: name.text, pos: name.pos, len: name.text.length } as const,
      ...(witness === undefined
        ? []
        : [{ kind: 'witness', name: witness.text, pos: witness.pos, len: witness.text.length } as const]),
    ]);

/** Names by what they are called. */
function named(uses: Iterable<readonly [UseKind, string]>): Map<UseKind, Set<string>> {
  const names = new Map<UseKind, Set<string>>();
  for (const [kind, name] of uses) {
    const known = names.get(kind);
    if (known === undefined) names.set(kind, new Set([name]));
    else known.add(name);
  }
  return names;
}

function* namesCited(lists: readonly (readonly Cited[])[]): Generator<readonly [UseKind, string]> {
  for (const list of lists) for (const { kind, name } of list) yield [kind, name];
}

function* namesOf(blocks: readonly BlockUses[]): Generator<readonly [UseKind, string]> {
  for (const { names } of blocks) for (const [kind, some] of names) for (const name of some) yield [kind, name];
}

/** The uses themselves, which few ask for: most blocks cite nothing that is unknown. */
const placedUses = keeping((contents: BlockContents): readonly BlockUse[] => [
  ...contents.statements.flatMap(({ tree }, statement) =>
    statementSaid(tree).cited.map(({ kind, name, pos, len }) => ({ kind, name, pos, len, statement })),
  ),
  ...contents.lanes.flatMap(({ tree }, lane) =>
    laneSaid(tree).cited.map(({ kind, name, pos, len }) => ({ kind, name, pos, len, lane })),
  ),
  ...citedBefore(contents),
]);

const usesInBlock = keeping((contents: BlockContents): BlockUses => {
  const said = [
    ...contents.statements.map(({ tree }) => statementSaid(tree)),
    ...contents.lanes.map(({ tree }) => laneSaid(tree)),
  ];
  return {
    get uses() {
      return placedUses(contents);
    },
    names: named(namesCited([...said.map(({ cited }) => cited), citedBefore(contents)])),
    places: said.flatMap((one) => one.places),
    sections: said.flatMap((one) => one.sections),
    moves: said.some((one) => one.moves),
  };
});

/** All names that a file cites. */
export const usesIn: (tree: FileTree) => Uses = keeping((tree: FileTree): Uses => {
  const blocks = tree.blocks.map(({ contents }) => usesInBlock(contents));
  return {
    blocks,
    names: named(namesOf(blocks)),
    places: new Set(blocks.flatMap(({ places }) => places)),
    sections: new Set(blocks.flatMap(({ sections }) => sections)),
    moves: blocks.some(({ moves }) => moves),
  };
});
