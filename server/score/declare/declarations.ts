/** The statements of a file and of those that it includes, with the means to say what is wrong with them. */
import { type Fix, type Problem, problemOf } from '../../../grammar/findings/finding';
import { nameInstead, nearest } from '../../../grammar/nearest';
import { firstOf } from '../../../grammar/statements/read';
import type { Argument, FileTree, Span, Statement } from '../../../grammar/tree';
import type { AccidentalPractice } from '../choice';
import type { Declared } from '../environment';
import type { FileSource, PlacedProblem } from '../score';

/** A statement and where it stands. */
export interface Found {
  readonly statement: Statement;
  readonly declared: Declared;
  /** It stands in the head: before the first system. */
  readonly head: boolean;
}

/** The statements of a file that stand in no system. @param file its name, if another includes it */
export function statementsOf(tree: FileTree, file: string | undefined): Found[] {
  const found: Found[] = [];
  for (const [block, { kind, statements }] of tree.blocks.entries()) {
    if (kind === 'system') continue;
    for (const [index, { tree: placed }] of statements.entries()) {
      const { statement } = placed;
      const { pos, len } = statement;
      found.push({ statement, declared: { file, block, statement: index, pos, len }, head: kind === 'head' });
    }
  }
  return found;
}

/** A name as it is typed somewhere. */
export type NameLike = Span & { readonly text: string };

/** What is being gathered, and the means to say what is wrong with it. */
export class Declarations {
  readonly problems: PlacedProblem[] = [];
  /** By name space, then by name. */
  private readonly names = new Map<string, Map<string, { found: Found; at: NameLike }>>();

  constructor(
    readonly all: readonly Found[],
    private readonly includes: readonly Found[],
  ) {}

  of(keyword: string): Found[] {
    const found: Found[] = [];
    for (const one of this.all) if (one.statement.keyword === keyword) found.push(one);
    return found;
  }

  first(keyword: string): Found | undefined {
    for (const one of this.all) if (one.statement.keyword === keyword && one.declared.file === undefined) return one;
    return undefined;
  }

  /** Reports what is wrong in the file itself; included files are proofed by themselves. */
  report(
    found: Found,
    at: Span,
    code: Problem['code'],
    slots: Problem['slots'],
    more: { readonly fixes?: readonly Fix[]; readonly related?: PlacedProblem['related'] } = {},
  ): void {
    const { file, block, statement } = found.declared;
    if (file !== undefined) return;
    this.problems.push({
      problem: problemOf(code, at, slots, more.fixes),
      block,
      lane: undefined,
      statement,
      ...(more.related === undefined ? {} : { related: more.related }),
    });
  }

  /** Gives a name in its name space; false, and a finding, where it is taken. */
  give(space: string, found: Found, at: NameLike): boolean {
    const given = this.names.get(space) ?? new Map<string, { found: Found; at: NameLike }>();
    this.names.set(space, given);
    const before = given.get(at.text);
    if (before === undefined) {
      given.set(at.text, { found, at });
      return true;
    }
    const source = this.sourceOf(before.found, before.at);
    const related = source === undefined ? [] : [{ message: `“${at.text}” is given here first`, source }];
    if (found.declared.file === undefined) this.report(found, at, 'name-used-twice', { name: at.text }, { related });
    else this.clash(found.declared.file, before.found, at.text);
    return false;
  }

  /** Two includes give one name: told at the include that came second. */
  private clash(file: string, before: Found, name: string): void {
    const include = this.includeOf(file);
    if (include === undefined || before.declared.file === file) return;
    this.report(include, include.statement, 'name-used-twice', { name });
  }

  /** The `include` that brings a file; for a file brought by another include the first one. */
  includeOf(file: string): Found | undefined {
    const brings = ({ statement }: Found): boolean => {
      const path = firstOf(statement.args, 'string')?.text.replace(/^(?:\.\/)+/, '');
      return path !== undefined && path !== '' && file.endsWith(path);
    };
    return this.includes.find(brings) ?? this.includes[0];
  }

  private sourceOf(found: Found, at: Span): FileSource | undefined {
    const { file, block, statement } = found.declared;
    if (file === undefined) return { block, lane: -1, statement, pos: at.pos, len: at.len };
    const include = this.includeOf(file);
    return include === undefined ? undefined : this.sourceOf(include, include.statement);
  }

  /** Reports a name that nothing bears; the nearest known one mends it. */
  unknown(found: Found, at: NameLike, code: Problem['code'], known: Iterable<string>): string | undefined {
    const meant = nearest(at.text, known);
    this.report(found, at, code, { name: at.text }, { fixes: nameInstead(at.text, at, known) });
    return meant;
  }
}

export const nameIn = (args: readonly Argument[]): NameLike | undefined => firstOf(args, 'name');
export const stringIn = (args: readonly Argument[]): string | undefined => firstOf(args, 'string')?.text;
export const wordIn = (args: readonly Argument[]): string | undefined => firstOf(args, 'word')?.text;
export const practiceIn = (args: readonly Argument[] | undefined): AccidentalPractice | undefined =>
  args && (wordIn(args) as AccidentalPractice | undefined);
