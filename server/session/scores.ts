/** The scores of the folders that are not open: read when somebody asks for all, never before. */
import { parseFile } from '../../grammar/parse';
import type { FileTree } from '../../grammar/tree';
import type { NamedTree } from '../document/absolute';
import { type Project, projectOf } from '../workspace/project';
import type { Files } from './files';

/** What is open. */
interface Open {
  readonly uris: readonly string[];
  /** The text of an open file; undefined of any other. */
  text(uri: string): string | undefined;
}

export class Scores {
  /** Trees as long as their text is the same. */
  private trees = new Map<string, { readonly text: string; readonly tree: FileTree }>();

  constructor(
    /** Addresses of all scores of the folders, open or not; undefined if nobody can tell. */
    private readonly list: () => Promise<readonly string[] | undefined>,
    private readonly files: Files,
    private readonly open: Open,
  ) {}

  /** Each that is not open, as it stands by itself. */
  async named(): Promise<NamedTree[]> {
    const texts = await this.texts();
    this.trees = new Map(
      [...(texts ?? [])].map(([file, text]) => {
        const known = this.trees.get(file);
        return [file, known?.text === text ? known : { text, tree: parseFile(text) }];
      }),
    );
    return [...this.trees].map(([file, { tree }]) => ({ file, tree }));
  }

  /** Each that is not open, with all that it includes, open files as they now stand; undefined if nobody can tell. */
  async projects(): Promise<Project[] | undefined> {
    const texts = await this.texts();
    const host = {
      resolve: (from: string, path: string) => this.files.resolve(from, path),
      read: (uri: string) => this.open.text(uri) ?? texts?.get(uri) ?? this.files.read(uri),
    };
    return texts && [...texts].map(([file, text]) => projectOf(host, file, text));
  }

  private async texts(): Promise<ReadonlyMap<string, string> | undefined> {
    const all = await this.list();
    const closed = all?.filter((uri) => !this.open.uris.includes(uri));
    const texts = closed?.map(async (uri) => [uri, await this.files.fetched(uri)] as const);
    return (
      texts && new Map((await Promise.all(texts)).flatMap(([uri, text]) => (text === undefined ? [] : [[uri, text]])))
    );
  }
}
