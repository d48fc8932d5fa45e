/** Files that a text includes, without a computer and without what draws: the fuzzer bundles it. */
import { posix } from 'node:path';
import type { Host } from '../../server/workspace/host';

/** Files for includes: paths count from the including file's folder and may not climb out of the whole. */
export const memoryFiles = (files: Readonly<Record<string, string>>): Host => ({
  read: (file) => (Object.hasOwn(files, file) ? files[file] : undefined),
  resolve: (from, path) => {
    const file = posix.join(posix.dirname(from), path);
    return posix.isAbsolute(path) || file.startsWith('..') ? undefined : file;
  },
});
