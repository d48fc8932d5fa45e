/** What a project asks of the place where it runs: files. */

export interface Host {
  /** The text of a file by the host's name of it; undefined if there is none that can be read. */
  read(file: string): string | undefined;
  /**
   * The host's name of the file that `path`, written in an include of the file `from`, means; undefined if the host does not
   * offer files there. Whether the file exists is not asked.
   */
  resolve(from: string, path: string): string | undefined;
}

/** A host without files: every include is refused. */
export const noFiles: Host = { read: () => undefined, resolve: () => undefined };
