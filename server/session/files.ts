/** Files that are not open: what includes need. Names of files are their addresses (URIs). */
import type { Host } from '../workspace/host';

/** What the platform knows of files; whatever it does not know the client is asked for. */
export interface Disk {
  /** The text of a file; null if there is none, undefined if this platform cannot tell. */
  read(uri: string): string | null | undefined;
  /** The address with links followed as far as it exists. */
  real(uri: string): string;
}

/** A platform without files of its own. */
export const noDisk: Disk = { read: () => undefined, real: (uri) => uri };

/** Files as the workspace asks for them: at once, from the disk or from what the client has told. */
export class Files implements Host {
  /** Folders of the work in hand; each ends with a slash. */
  folders: readonly string[] = [];
  private readonly told = new Map<string, string | undefined>();

  constructor(
    private readonly disk: Disk,
    /** Folders of the files that are open. */
    private readonly openFolders: () => Iterable<string>,
    /** Asks for a file that cannot be read at once; `tell` gives the answer before what is promised is kept. */
    private readonly ask: (uri: string) => Promise<void>,
  ) {}

  read(uri: string): string | undefined {
    const known = this.disk.read(uri);
    if (known !== undefined) return known ?? undefined;
    if (!this.told.has(uri)) {
      this.told.set(uri, undefined);
      void this.ask(uri);
    }
    return this.told.get(uri);
  }

  /** The same once whoever must be asked has answered. */
  async fetched(uri: string): Promise<string | undefined> {
    const known = this.disk.read(uri);
    if (known !== undefined) return known ?? undefined;
    if (this.told.get(uri) === undefined) await this.ask(uri);
    return this.told.get(uri);
  }

  resolve(from: string, path: string): string | undefined {
    const uri = joined(from, path);
    if (uri === undefined) return undefined;
    const real = this.disk.real(uri);
    const roots = [...this.folders, ...this.openFolders()];
    return roots.some((root) => isBelow(this.disk.real(root), real)) ? uri : undefined;
  }

  tell(uri: string, text: string | undefined): void {
    this.told.set(uri, text);
  }

  /** It may have changed, come or gone. */
  forget(uri: string): void {
    this.told.delete(uri);
  }
}

/** Everything before the last slash of an address, with it; an address without folders has none. */
export const folderOf = (uri: string): string => uri.slice(0, uri.lastIndexOf('/') + 1);

/** The address of a folder with the slash at its end, which the root of some file systems has of itself. */
export const asFolder = (uri: string): string => (uri.endsWith('/') ? uri : `${uri}/`);

const isBelow = (root: string, uri: string): boolean => {
  const folder = asFolder(root);
  return folder !== '/' && uri.startsWith(folder) && uri.length > folder.length;
};

/** Editors write the signs of a path so that only these stand for themselves. */
const encoded = (part: string): string =>
  encodeURIComponent(part).replace(/[!'()*]/g, (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`);

/** The address that a relative path means in a file; undefined if it is not relative or climbs out of the whole. */
export function joined(from: string, path: string): string | undefined {
  const folder = folderOf(from);
  // Addresses of file systems that are no computer's name none.
  const beginning = /^[a-z][\w+.-]*:(?:\/\/[^/]*)?\//i.exec(folder)?.[0];
  if (beginning === undefined || /^[\\/]|^[a-z][\w+.-]*:|\0/i.test(path)) return undefined;
  const parts = folder.slice(beginning.length).split('/').slice(0, -1);
  for (const part of path.split('/')) {
    if (part === '..') {
      if (parts.pop() === undefined) return undefined;
    } else if (part !== '.' && part !== '') parts.push(encoded(part));
  }
  return beginning + parts.join('/');
}
