/** What a file includes. */
import { catalogue, type FindingCode } from '../../grammar/findings/catalogue';
import type { Finding, Slots } from '../../grammar/findings/finding';
import type { FileTree, Placed, Span, StatementTree } from '../../grammar/tree';
import { findingInHolder, type NamedTree } from '../document/absolute';
import { sourceText } from './encoding';
import type { Host } from './host';

/** So many files may be included by one, those of its includes counted. */
export const MOST_INCLUDED = 64;

/** An `include` statement and where it stands. */
interface Include {
  readonly path: string;
  /** The finding made of it, at the file that is being opened. */
  readonly finding: (code: FindingCode, slots: Slots) => Finding;
}

/** Walks the graph of includes, depth first; what is wrong deeper down is told at the include of the file opened. */
export class Includes {
  readonly files: NamedTree[] = [];
  readonly findings: Finding[] = [];
  /** The files that are included or would be if they were there. */
  readonly wanted: ReadonlySet<string>;
  private readonly seen = new Set<string>();
  /** By included file what it includes itself, directly or not. */
  private readonly reached = new Map<string, ReadonlySet<string>>();

  constructor(
    private readonly host: Host,
    private readonly treeOf: (file: string, text: string) => FileTree,
    /** How many errors a file has when it is read by itself, with what it includes. */
    private readonly errorsOf: (named: NamedTree, included: readonly NamedTree[]) => number,
    root: NamedTree,
  ) {
    this.wanted = this.seen;
    for (const include of includesOf(root)) this.follow(root.file, include, [root.file]);
  }

  private follow(from: string, include: Include, way: readonly string[]): void {
    const found = this.find(from, include.path, way);
    if (found === undefined) return;
    if ('code' in found) {
      this.findings.push(include.finding(found.code, found.slots));
      return;
    }
    const { text, problems } = sourceText(found.raw);
    const named: NamedTree = { file: found.file, tree: this.treeOf(found.file, text) };
    const reached = new Set<string>();
    for (const inner of includesOf(named)) {
      // A finding is shown where its reader can reach it: at the include of the file being opened.
      this.follow(found.file, { path: inner.path, finding: include.finding }, [...way, found.file]);
      const file = this.host.resolve(found.file, inner.path);
      for (const one of file === undefined ? [] : [file, ...(this.reached.get(file) ?? [])]) reached.add(one);
    }
    this.reached.set(found.file, reached);
    const brought = this.files.filter(({ file }) => reached.has(file));
    const count = this.errorsOf(named, brought) + problems.filter(isError).length;
    if (count > 0) this.findings.push(include.finding('include-unsound', { path: include.path, count }));
    this.files.push(named);
  }

  /** The file meant and its text, or why there is none; undefined if it is included already. */
  private find(from: string, path: string, way: readonly string[]): Found | Trouble | undefined {
    if (path.trim() === '') return { code: 'include-missing', slots: { path } };
    const file = this.host.resolve(from, path);
    if (file === undefined) return { code: 'include-refused', slots: { path } };
    if (way.includes(file)) return { code: 'include-circle', slots: { path, way: [...way, file].join(' → ') } };
    if (this.seen.has(file)) return undefined;
    if (this.seen.size >= MOST_INCLUDED) {
      return { code: 'include-too-many', slots: { path, most: MOST_INCLUDED } };
    }
    this.seen.add(file);
    const raw = this.host.read(file);
    return raw === undefined ? { code: 'include-missing', slots: { path } } : { file, raw };
  }
}

interface Found {
  readonly file: string;
  readonly raw: string;
}

interface Trouble {
  readonly code: FindingCode;
  readonly slots: Slots;
}

const isError = ({ code }: { readonly code: FindingCode }): boolean => catalogue[code].level === 'error';

function includesOf(named: NamedTree): Include[] {
  const found: Include[] = [];
  for (const block of named.tree.blocks) {
    for (const placed of block.statements) {
      const path = includedPath(placed);
      if (path === undefined) continue;
      const { text, pos, len } = path;
      found.push({
        path: text,
        finding: (code, slots) => findingInHolder(named, block, placed, { code, slots, pos, len }),
      });
    }
  }
  return found;
}

/** The path of an `include` statement; one without a path is a problem already. */
export function includedPath({ tree }: Placed<StatementTree>): (Span & { readonly text: string }) | undefined {
  if (tree.statement.keyword !== 'include') return undefined;
  const [path] = tree.statement.args;
  return path?.kind === 'string' ? path : undefined;
}
