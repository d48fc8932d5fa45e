/** Whether two texts say the same: what must hold before a text takes the place of another. */
import type { FindingCode } from '../findings/catalogue';
import type { Problem } from '../findings/finding';
import type { Block, FileTree, PlacedLane } from '../tree';
import { fileLines, isBlank } from './lines';

/** Keys that say where something stands, and nothing about what it is. */
const places: ReadonlySet<string> = new Set(['pos', 'len']);

/** Findings about white space, which laying out mends. */
const ofSpaces: ReadonlySet<FindingCode> = new Set<FindingCode>(['barline-glued']);

/** Whether two trees are equal apart from places. */
function alike(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    return (
      Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((element, i) => alike(element, b[i]))
    );
  }
  const keys = Object.keys(a).filter((key) => !places.has(key));
  const others = Object.keys(b).filter((key) => !places.has(key));
  return (
    keys.length === others.length &&
    keys.every((key) => Object.hasOwn(b, key) && alike(a[key as keyof typeof a], b[key as keyof typeof b]))
  );
}

const codes = (problems: readonly Problem[]): string[] =>
  problems.flatMap(({ code }) => (ofSpaces.has(code) ? [] : [code])).sort();

const laneSaid = ({ name, witness, open, tree, lines }: PlacedLane): unknown => [
  name.text,
  witness?.text,
  open,
  tree.opening,
  tree.kind,
  tree.segments,
  lines.length,
  codes(tree.problems),
];

const blockSaid = ({ kind, statements, lanes, problems }: Block): unknown => [
  kind,
  statements.map(({ tree, lines }) => [tree.statement, lines.length, codes(tree.problems)]),
  lanes.map(laneSaid),
  codes(problems),
];

const withoutSpaces = (text: string): string => text.replace(/\s+/g, '');

/** What stands on each line that is not blank, white space apart. */
const linesSaid = (tree: FileTree): string[] =>
  fileLines(tree).flatMap(({ text }) => (isBlank(text) ? [] : [withoutSpaces(text)]));

/** Strings and comments as they meet the eye, whatever the parser makes of their line: a second witness beside the tree. */
const literal = /\/\/.*|(?:"[^"\r\n]*")+/g;

function literalsOf({ text }: FileTree): { readonly comments: string[]; readonly strings: string[] } {
  const all = (text.match(literal) ?? []).map((one) => one.trimEnd());
  return {
    comments: all.filter((one) => one.startsWith('//')),
    strings: all.filter((one) => !one.startsWith('//')),
  };
}

/** What would be lost if `after` took the place of `before`; undefined if nothing. */
export function lost(before: FileTree, after: FileTree): string | undefined {
  if (withoutSpaces(before.text) !== withoutSpaces(after.text)) return 'a sign would be lost';
  const [given, kept] = [literalsOf(before), literalsOf(after)];
  if (!alike(given.comments, kept.comments)) return 'a comment would be lost';
  if (!alike(given.strings, kept.strings)) return 'a string would change';
  if (!alike(linesSaid(before), linesSaid(after))) return 'a line would be broken otherwise';
  if (before.blocks.length !== after.blocks.length) return 'a system would be lost';
  const same = before.blocks.every((block, i) => {
    const other = after.blocks[i];
    return other !== undefined && alike(blockSaid(block), blockSaid(other));
  });
  return same ? undefined : 'the music would read otherwise';
}
