/** Files of the computer, for whoever may read them. */
import * as fs from 'node:fs';
import * as path from 'node:path';

/** A pipe or a device would never end. */
export const isPlainFile = (file: string): boolean => fs.statSync(file, { throwIfNoEntry: false })?.isFile() ?? false;

/** The byte order mark is kept for whoever looks at the encoding. */
export const decoded = (bytes: Uint8Array): string => new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);

/** With links followed as far as the path exists. */
export function realPath(file: string): string {
  const full = path.resolve(file);
  try {
    return fs.realpathSync(full);
  } catch {
    const above = path.dirname(full);
    return above === full ? full : path.join(realPath(above), path.basename(full));
  }
}
