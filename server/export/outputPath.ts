/**
 * Where an output goes. This is the only place that makes an output path: the command line and the editor ask it alike.
 *
 * Paths have `/` between their parts, also where the system writes another sign.
 */

export interface Output {
  /** The file read; its name may have dots, spaces or no folder. */
  readonly input: string;
  /** `written`, or the reading or witness shown. */
  readonly reading: string;
  /** From 1, where there is a file a page and more pages than one. */
  readonly page?: number;
  /** Without a dot: `musicxml`. */
  readonly extension: string;
  /** Where outputs are wanted; beside the input if absent. */
  readonly into?: {
    readonly folder: string;
    /** The folder that all inputs of the batch share: what an input has below it is kept, so that no two meet. */
    readonly shared: string;
  };
}

/** Stands for the name of a score that has none but its ending. */
const NAMELESS = 'score';

/**
 * The path of an output: `Suite 1.2.bent` read as `written` gives `Suite 1.2.musicxml`, as `french` `Suite 1.2.french.musicxml`,
 * its second page `Suite 1.2.french.p2.svg`. A text of the notation always bears its reading, so that it is never its input.
 */
export function outputPath({ input, reading, page, extension, into }: Output): string {
  const { folder, name } = split(input);
  const stem = name.replace(/\.bent$/i, '') || NAMELESS;
  const parts = [
    stem,
    reading === 'written' && extension !== 'bent' ? undefined : reading,
    page === undefined ? undefined : `p${page}`,
    extension,
  ];
  const file = parts.filter((part) => part !== undefined).join('.');
  if (into === undefined) return join(folder, file);
  const below = folder.startsWith(into.shared) ? folder.slice(into.shared.length) : '';
  return join(join(into.folder, below.replace(/^\/+/, '')), file);
}

/** The folder that all files share; give their full names. */
export function sharedFolder(files: readonly string[]): string {
  const [first, ...others] = files.map((file) => split(file).folder.split('/'));
  if (first === undefined) return '';
  let count = first.length;
  for (const parts of others) {
    const differs = first.findIndex((part, i) => parts[i] !== part);
    if (differs >= 0) count = Math.min(count, differs);
  }
  return first.slice(0, count).join('/');
}

function split(path: string): { readonly folder: string; readonly name: string } {
  const slash = path.lastIndexOf('/');
  // The slash of a file at the root belongs to its folder.
  return { folder: path.slice(0, slash === 0 ? 1 : Math.max(slash, 0)), name: path.slice(slash + 1) };
}

const join = (folder: string, rest: string): string =>
  folder === '' || rest === ''
    ? `${folder}${rest}`
    : `${folder.replace(/(?<=.)\/+$/, '')}${folder === '/' ? '' : '/'}${rest}`;
