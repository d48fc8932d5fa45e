/** A command line without a computer: files in a map, output in strings. */
import { posix } from 'node:path';
import type { CliHost, Reading } from '../../server/cli/command';
import { run } from '../../server/cli/run';
import { areChunks, together } from '../../server/export/inChunks';
import { engraver } from './engraver';
import { memoryFiles } from './memoryFiles';

export interface MemoryHost extends CliHost {
  readonly files: Map<string, string | Uint8Array>;
  readonly printed: { out: string; say: string };
}

const FOLDER = '/home';

/** A host with these files, named from the folder where the command runs. */
export function memoryHost(files: Readonly<Record<string, string>> = {}, standardInput = ''): MemoryHost {
  const map = new Map<string, string | Uint8Array>(
    Object.entries(files).map(([name, text]) => [posix.resolve(FOLDER, name), text]),
  );
  const printed = { out: '', say: '' };
  const absolute = (file: string): string => posix.resolve(FOLDER, file);
  const read = (file: string): Reading => {
    const text = map.get(absolute(file));
    return typeof text === 'string' ? { text } : { failure: 'there is no such file' };
  };
  return {
    files: map,
    printed,
    includes: () =>
      memoryFiles(Object.fromEntries([...map].map(([name, text]) => [posix.relative(FOLDER, name), `${text}`]))),
    // One asterisk stands for any signs: enough to ask for several files.
    find: async (pattern) => {
      const [before = '', after] = pattern.split('*');
      const names = [...map.keys()].map((name) => posix.relative(FOLDER, name));
      const fits = (name: string) => name.startsWith(before) && after !== undefined && name.endsWith(after);
      return after === undefined ? [pattern] : names.filter(fits).sort();
    },
    read,
    standardInput: () => ({ text: standardInput }),
    absolute,
    place: absolute,
    write: (file, content) => {
      map.set(absolute(file), areChunks(content) ? together(content) : content);
      return undefined;
    },
    engraver,
    samples: () => [...map.keys()].filter((name) => name.startsWith(`${FOLDER}/samples/`)).sort(),
    out: (text) => {
      printed.out += text;
    },
    say: (text) => {
      printed.say += text;
    },
    progress: () => {},
  };
}

/** Runs `bentside` with these words. */
export async function bentside(
  host: MemoryHost,
  ...argv: readonly string[]
): Promise<{ code: number; out: string; say: string }> {
  host.printed.out = '';
  host.printed.say = '';
  const code = await run(host, argv);
  return { code, ...host.printed };
}
