/** The leaves of statements and lanes, each with what it is. */
import { keeping } from '../../grammar/keeping';
import type {
  Argument,
  ChangeItem,
  Clause,
  EventItem,
  Item,
  LaneTree,
  Mark,
  MarkType,
  Member,
  OptionsItem,
  Span,
  StatementTree,
  Suffix,
} from '../../grammar/tree';
import type { NameRole } from '../../grammar/vocabulary/names';

export type TokenType =
  | 'keyword'
  | 'property'
  | 'enumMember'
  | 'string'
  | 'number'
  | 'variable'
  | 'class'
  | 'label'
  | 'decorator'
  | 'operator'
  | 'macro'
  | 'comment'
  | 'parameter';

/** A sign with what it is; its place counts in the joined text. */
export interface TokenLeaf extends Span {
  readonly type: TokenType;
  readonly isGiven?: boolean;
  readonly isEditors?: boolean;
}

// ─── statements ──────────────────────────────────────────────────────────────────────────────────────────────────

const nameTypes: Readonly<Record<NameRole, TokenType>> = {
  stave: 'class',
  voice: 'variable',
  witness: 'label',
  layer: 'label',
  reading: 'label',
  label: 'label',
  place: 'parameter',
  note: 'parameter',
  editor: 'parameter',
  table: 'class',
  temperament: 'class',
  section: 'parameter',
  instrument: 'class',
  manual: 'class',
  shape: 'decorator',
};

const argumentTypes: Readonly<Record<Exclude<Argument['kind'], 'name' | 'names'>, TokenType>> = {
  word: 'enumMember',
  string: 'string',
  number: 'number',
  value: 'number',
  pitch: 'variable',
  ratio: 'number',
  clef: 'enumMember',
  region: 'number',
  pair: 'variable',
};

const argumentLeaf = (arg: Argument): TokenLeaf[] => {
  if (arg.kind === 'names') return arg.names.map(({ pos, len }) => ({ pos, len, type: nameTypes[arg.role] }));
  if (arg.kind === 'name') return [{ pos: arg.pos, len: arg.len, type: nameTypes[arg.role], isGiven: arg.declares }];
  return [{ pos: arg.pos, len: arg.len, type: argumentTypes[arg.kind] }];
};

/** A clause without a word of its own begins with its first part. */
const clauseLeaves = ({ name, pos, args }: Clause): TokenLeaf[] => [
  ...((args[0]?.pos ?? pos + 1) > pos
    ? [{ pos, len: name === 'text' ? 1 : name.length, type: 'property' } as const]
    : []),
  ...args.flatMap(argumentLeaf),
];

export const leavesInStatement = keeping(({ statement, text }: StatementTree): readonly TokenLeaf[] => [
  { pos: 0, len: Math.min(statement.keyword.length, text.length), type: 'keyword' },
  ...statement.args.flatMap(argumentLeaf),
  ...statement.clauses.flatMap(clauseLeaves),
  ...statement.rows.flatMap(({ args, clauses, recipe }) => [
    ...args.flatMap(argumentLeaf),
    ...clauses.flatMap(clauseLeaves),
    ...(recipe?.phrases ?? []).flatMap(({ steps }) =>
      steps.map(({ pos, len }): TokenLeaf => ({ pos, len, type: 'number' })),
    ),
  ]),
]);

// ─── lanes ───────────────────────────────────────────────────────────────────────────────────────────────────────

const markTypes: Readonly<Record<MarkType, TokenType>> = {
  sign: 'decorator',
  finger: 'number',
  accidental: 'decorator',
  curveStart: 'operator',
  curveEnd: 'operator',
  other: 'decorator',
  weight: 'number',
};

const markLeaf = ({ pos, form }: Mark): TokenLeaf => ({
  pos,
  len: form.text.length,
  type: markTypes[form.type],
  isEditors: form.editors,
});

const suffixLeaf = (suffix: Suffix): TokenLeaf => {
  if (suffix.kind === 'mark') return markLeaf(suffix);
  return { pos: suffix.pos, len: suffix.len, type: suffix.ref === undefined ? 'comment' : 'parameter' };
};

export const leavesInLane = keeping(({ kind, opening, segments, text }: LaneTree): readonly TokenLeaf[] => {
  if (kind === 'text') return [];
  const leaves: TokenLeaf[] = opening.suffixes.map(suffixLeaf);
  for (const { items, bar } of segments) {
    for (const item of items) itemLeaves(leaves, item, text);
    for (const suffix of bar?.suffixes ?? []) leaves.push(suffixLeaf(suffix));
  }
  return leaves;
});

/** Items that are one leaf. */
const itemTypes: Readonly<Partial<Record<Item['kind'], TokenType>>> = {
  value: 'number',
  figures: 'number',
  words: 'string',
  lost: 'keyword',
  omit: 'keyword',
  beam: 'operator',
};

function itemLeaves(leaves: TokenLeaf[], item: Item, text: string): void {
  const { pos, len } = item;
  const type = itemTypes[item.kind];
  if (type !== undefined) leaves.push({ pos, len, type });
  switch (item.kind) {
    case 'event':
      eventLeaves(leaves, item);
      break;
    case 'span':
      leaves.push({ pos, len: item.head.text.length, type: 'macro' });
      for (const inner of item.items) itemLeaves(leaves, inner, text);
      leaves.push(...item.suffixes.map(suffixLeaf));
      break;
    case 'options':
      optionLeaves(leaves, item, text);
      break;
    case 'change':
      leaves.push(...changeLeaves(item, text));
      break;
    case 'barline':
      leaves.push(...item.suffixes.map(suffixLeaf));
      break;
    default:
  }
}

/** The places of what a change says count from its opening bracket. */
const changeLeaves = ({ pos, change }: ChangeItem, text: string): TokenLeaf[] => [
  { pos: text.indexOf(change.word, pos), len: change.word.length, type: 'keyword' },
  ...[...change.args.flatMap(argumentLeaf), ...change.clauses.flatMap(clauseLeaves)].map((leaf) => ({
    ...leaf,
    pos: pos + leaf.pos,
  })),
];

function optionLeaves(leaves: TokenLeaf[], { place, reasons, options, suffixes }: OptionsItem, text: string): void {
  if (place !== undefined) leaves.push({ pos: place.pos, len: place.len, type: 'parameter', isGiven: true });
  leaves.push(...reasons.map(suffixLeaf));
  for (const { labels, items } of options) {
    for (const { pos, len } of labels) leaves.push({ pos, len, type: 'label' });
    for (const item of items) itemLeaves(leaves, item, text);
  }
  leaves.push(...suffixes.map(suffixLeaf));
}

const SILENCES: Readonly<Partial<Record<EventItem['what'], number>>> = { rest: 1, barRest: 4, gap: 1, barGap: 2 };

function eventLeaves(leaves: TokenLeaf[], item: EventItem): void {
  const { pos, what, tie, members, suffixes } = item;
  const silence = SILENCES[what];
  if (silence !== undefined) leaves.push({ pos, len: silence, type: 'operator' });
  else if (what === 'repeat') leaves.push({ pos, len: tie?.text.length ?? 1, type: 'operator' });
  members.forEach((member, index) => {
    memberLeaves(leaves, member, index > 0);
  });
  for (const suffix of suffixes) leaves.push(suffixLeaf(suffix));
}

/** A member after the first begins with its hyphen, and perhaps with the stave to which it goes. */
function memberLeaves(leaves: TokenLeaf[], { pos, spelling, stave, tie, suffixes }: Member, isJoined: boolean): void {
  const start = pos + (isJoined ? 1 : 0) + (stave === undefined ? 0 : stave.length + '()'.length);
  const length = spelling.text.length;
  leaves.push({ pos: start, len: length, type: 'variable', isEditors: spelling.editors !== undefined });
  if (tie !== undefined)
    leaves.push({ pos: start + length, len: tie.text.length, type: 'operator', isEditors: tie.editors });
  for (const suffix of suffixes) leaves.push(suffixLeaf(suffix));
}
