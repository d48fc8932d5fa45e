/**
 * Published schemas and lists against which the tests check. No package registry has them, so they are looked for in the
 * folder that BENTSIDE_SCHEMAS names, then in `../shared/schemas` beside the repository.
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Where each folder of published files can be had, by the folder's name. */
const addresses: ReadonlyMap<string, string> = new Map([
  ['smufl', 'https://github.com/w3c/smufl'],
  ['musicxml-4.0', 'https://github.com/w3c/musicxml'],
  ['mei-5.1', 'https://github.com/music-encoding/music-encoding'],
]);

const folders = (): string[] =>
  [process.env.BENTSIDE_SCHEMAS, join(root, '../shared/schemas')].filter(
    (folder): folder is string => folder !== undefined && folder !== '',
  );

/** The full path of a published file such as `musicxml-4.0/musicxml.xsd`; undefined where it is not on this machine. */
export const schemaPath = (relative: string): string | undefined =>
  folders()
    .map((folder) => join(folder, relative))
    .find((path) => existsSync(path));

/** One line that says what is missing and where it can be had. */
export function missingSchema(relative: string): string {
  const address = addresses.get(relative.split('/')[0] ?? '') ?? 'no address on record';
  return `${relative} is not here: put it into a folder named by BENTSIDE_SCHEMAS (${address})`;
}

const told = new Set<string>();

function tellOnce(line: string): void {
  if (told.has(line)) return;
  told.add(line);
  console.warn(line);
}

/**
 * A test that reads a published file. Without the file it is skipped with one line that says so; where CI is `true` it
 * fails instead.
 */
export function testWithSchema(relative: string, name: string, check: (path: string) => void | Promise<void>): void {
  const path = schemaPath(relative);
  if (path !== undefined) {
    test(name, () => check(path));
  } else if (process.env.CI === 'true') {
    test(name, () => expect.fail(missingSchema(relative)));
  } else {
    tellOnce(missingSchema(relative));
    test.skip(name, () => undefined);
  }
}
