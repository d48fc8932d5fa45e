/**
 * The files that someone works on, each a document that is kept from version to version, and the files that they include.
 *
 * An included file is a document of its own. When it changes, the files that include it are read again with the text that
 * they have; as long as it still brings the same tables, people and sources, none of their systems is built.
 */
import { finished } from '../../grammar/finished';
import { areSame } from '../../grammar/keeping';
import type { FileTree } from '../../grammar/tree';
import { findingInFile, type NamedTree } from '../document/absolute';
import type { Analysis, AnalysisOptions } from '../document/analysis';
import { Document, type UpdateOptions } from '../document/document';
import { inTurns, type Turns } from '../document/turns';
import { type SourceText, sourceText } from './encoding';
import type { Host } from './host';
import { Includes } from './includes';
import type { Project } from './project';

/** A file that is open: its text is what the editor says, not what the host has. */
interface Opened {
  readonly raw: string;
  readonly options: AnalysisOptions;
  /** Undefined until its first version is made. */
  project?: Project;
  /** Files that it includes, or would if they were there; undefined until its text is parsed. */
  wanted?: ReadonlySet<string>;
}

export class Workspace {
  private readonly documents = new Map<string, Document>();
  private readonly opened = new Map<string, Opened>();
  /** What the host said of files that are not open. */
  private readonly texts = new Map<string, string | undefined>();
  /** How many errors an included file has, with the trees that it includes. */
  private readonly errors = new WeakMap<FileTree, { readonly included: readonly FileTree[]; readonly count: number }>();
  /** Texts as this workspace has them. */
  private readonly own: Host;

  constructor(host: Host) {
    this.own = {
      resolve: (from, path) => host.resolve(from, path),
      read: (file) => {
        const open = this.opened.get(file);
        if (open !== undefined) return open.raw;
        if (!this.texts.has(file)) this.texts.set(file, host.read(file));
        return this.texts.get(file);
      },
    };
  }

  /** The last whole version of an open file. */
  project(file: string): Project | undefined {
    return this.opened.get(file)?.project;
  }

  /** The document of a file, for those who want to know what an update did. */
  document(file: string): Document {
    const known = this.documents.get(file) ?? new Document(file);
    this.documents.set(file, known);
    return known;
  }

  /** Opens a file or gives an open one its next text. */
  update(file: string, raw: string, options: AnalysisOptions = {}): Project {
    return finished(this.updating(file, raw, options));
  }

  /** The same a piece at a time: see `Document.updating`. The text counts from the beginning, the project once it is whole. */
  *updating(file: string, raw: string, options: AnalysisOptions = {}): Generator<undefined, Project> {
    const opened: Opened = { ...this.opened.get(file), raw, options };
    this.opened.set(file, opened);
    const source = sourceText(raw);
    const found: { includes?: Includes } = {};
    const analysis = yield* this.document(file).updating(source.text, (tree) => {
      found.includes = this.includesOf({ file, tree });
      // At once: an included file may come while the version is in the making.
      opened.wanted = found.includes.wanted;
      return given(source, found.includes, { file, tree }, options);
    });
    opened.project = projectWith(analysis, found.includes?.files ?? []);
    return opened.project;
  }

  /**
   * The same with turns for others.
   * @param isOver whether nobody wants this version any more
   * @returns undefined if it was over before the version was made
   */
  updateInTurns(
    file: string,
    raw: string,
    turns: Turns,
    isOver: () => boolean,
    options: AnalysisOptions = {},
  ): Promise<Project | undefined> {
    return inTurns(this.updating(file, raw, options), turns, isOver);
  }

  /** The open files, other than this one, that what has become of this one reaches. */
  including(file: string): readonly string[] {
    return [...this.opened].flatMap(([name, { wanted }]) => (name !== file && wanted?.has(file) ? [name] : []));
  }

  /** An open file again, with the text that it has; for when a file changes that it includes. */
  refresh(file: string): Project | undefined {
    const opened = this.opened.get(file);
    return opened && this.update(file, opened.raw, opened.options);
  }

  /** Forgets what the host said of a file that is not open: it may have changed, come or gone. */
  changed(file: string): void {
    this.texts.delete(file);
  }

  /** Closes a file; from now on it is what the host has. Documents that no open file needs are dropped. */
  close(file: string): void {
    this.opened.delete(file);
    const needed = new Set([...this.opened].flatMap(([name, { wanted = [] }]) => [name, ...wanted]));
    for (const name of this.documents.keys()) if (!needed.has(name)) this.documents.delete(name);
    for (const name of this.texts.keys()) if (!needed.has(name)) this.texts.delete(name);
  }

  /** A text by itself, without opening it; its scores are built when they are asked for. */
  read(file: string, raw: string, options: AnalysisOptions = {}): Project {
    const source = sourceText(raw);
    const document = new Document(file);
    const named: NamedTree = { file, tree: document.treeOf(source.text) };
    const includes = this.includesOf(named);
    return projectWith(document.read(named.tree, given(source, includes, named, options)), includes.files);
  }

  private includesOf(named: NamedTree): Includes {
    const treeOf = (file: string, text: string): FileTree => this.document(file).treeOf(text);
    return new Includes(this.own, treeOf, (one, included) => this.errorsOf(one, included), named);
  }

  /** Counted anew only when the file or what it includes has changed. */
  private errorsOf({ file, tree }: NamedTree, included: readonly NamedTree[]): number {
    const trees = included.map((one) => one.tree);
    const known = this.errors.get(tree);
    if (known !== undefined && areSame(known.included, trees)) return known.count;
    const findings = new Document(file).read(tree, { included, counsel: false }).findings();
    const count = findings.filter(({ level }) => level === 'error').length;
    this.errors.set(tree, { included: trees, count });
    return count;
  }
}

const given = (
  { problems }: SourceText,
  { files, findings }: Includes,
  named: NamedTree,
  options: AnalysisOptions,
): UpdateOptions => ({
  ...options,
  included: files,
  also: [...problems.map((problem) => findingInFile(named, problem)), ...findings, ...(options.also ?? [])],
});

const projectWith = (analysis: Analysis, included: readonly NamedTree[]): Project => {
  const { file, tree, environment } = analysis;
  return { file, tree, included, environment, analysis };
};
