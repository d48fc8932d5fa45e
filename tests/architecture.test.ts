/** The order of the folders, as data: each knows only those above it. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { describe, expect, it } from 'vitest';

/** From the first to the last; what stands on one line does not know its neighbours. */
const ORDER: readonly (readonly string[])[] = [
  ['grammar/'],
  // What treatises say: data that names are looked up in long before a sign is played.
  ['server/signs/tables/'],
  ['server/score/'],
  ['server/signs/', 'server/practice/', 'server/instrument/', 'server/tuning/'],
  ['server/readings/'],
  ['server/checks/'],
  ['server/document/'],
  ['server/workspace/'],
  ['server/sound/'],
  ['server/export/'],
  ['server/engraving/'],
  ['server/pages/'],
  ['server/features/'],
  ['server/session/', 'server/disk.ts', 'server/asked.ts'],
  ['server/cli/', 'server/library.ts', 'server/node.ts', 'server/browser.ts'],
  ['client/'],
  // Makes files of the house's data when it is built.
  ['grammar/generate/'],
];

/** The edge: only these may ask the operating system for anything. */
const EDGE = ['server/cli/', 'server/disk.ts', 'server/node.ts', 'server/browser.ts', 'client/node.ts'];

/** What would make the same input give other bytes another day. */
const UNSTEADY = /\bDate\b|\bMath\.random\b|\bperformance\.now\b|\bprocess\.|\bcrypto\./;

const ROOT = join(import.meta.dirname, '..');

interface SourceFile {
  readonly path: string;
  readonly text: string;
  readonly imports: readonly string[];
}

const sourcesBelow = (folder: string): SourceFile[] =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => normalize(join(folder, name)).replaceAll('\\', '/'))
    .filter((path) => path.endsWith('.ts'))
    .map((path) => {
      const text = withoutComments(readFileSync(join(ROOT, path), 'utf8'));
      return { path, text, imports: importsOf(text) };
    });

const withoutComments = (text: string): string => text.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '');

const importsOf = (text: string): string[] =>
  [...text.matchAll(/(?:\bfrom|\bimport)\s*\(?\s*'([^']+)'/g)].map((match) => match[1] ?? '');

/** The nearest folder that has a place. */
const entryOf = (path: string): string | undefined =>
  ORDER.flat()
    .filter((entry) => path.startsWith(entry))
    .sort((a, b) => b.length - a.length)[0];
const rankOf = (entry: string): number => ORDER.findIndex((row) => row.includes(entry));

/** The file or folder that a relative import means, counted from the root. */
const meant = (path: string, wanted: string): string => join(dirname(path), wanted).replaceAll('\\', '/');

/** Why a file may not import another, or undefined if it may. */
function objection(path: string, imported: string): string | undefined {
  // A folder is imported by its name alone, a file without its ending.
  const entry = entryOf(`${imported}/`) ?? entryOf(`${imported}.ts`);
  if (entry === undefined)
    return /^(package\.json)$/.test(imported) ? undefined : `${path} imports ${imported}, which has no place`;
  const own = entryOf(path);
  if (own === undefined || entry === own) return undefined;
  return rankOf(entry) < rankOf(own) ? undefined : `${path} imports ${imported}, which stands below or beside it`;
}

const sources = ['grammar', 'server', 'client'].flatMap(sourcesBelow);

describe('the house', () => {
  it('has a place for every source file', () => {
    expect(sources.length).toBeGreaterThan(10);
    expect(sources.filter(({ path }) => entryOf(path) === undefined).map(({ path }) => path)).toEqual([]);
  });

  it('lets a folder import only from the folders above it', () => {
    const objections = sources.flatMap(({ path, imports }) =>
      imports
        .filter((wanted) => wanted.startsWith('.'))
        .flatMap((wanted) => objection(path, meant(path, wanted)) ?? []),
    );
    expect(objections).toEqual([]);
  });

  it('asks the operating system for something only at its edge', () => {
    const asking = sources
      .filter(({ path }) => !EDGE.some((edge) => path.startsWith(edge)))
      .filter(({ imports }) => imports.some((wanted) => wanted.startsWith('node:')));
    expect(asking.map(({ path }) => path)).toEqual([]);
  });

  it('knows neither the hour nor chance inside its edge', () => {
    const inside = sources.filter(
      ({ path }) => !EDGE.some((edge) => path.startsWith(edge)) && !path.startsWith('client/'),
    );
    expect(inside.filter(({ text }) => UNSTEADY.test(text)).map(({ path }) => path)).toEqual([]);
  });

  it('keeps the editor out of the core', () => {
    const knowing = sources.filter(({ path, imports }) => !path.startsWith('client/') && imports.includes('vscode'));
    expect(knowing.map(({ path }) => path)).toEqual([]);
  });

  it('would notice an import that climbs', () => {
    expect(objection('grammar/tree.ts', 'server/score/score')).toMatch(/below or beside/);
    expect(objection('server/signs/recipe.ts', 'server/practice/overdot')).toMatch(/below or beside/);
    expect(objection('server/score/walk.ts', 'grammar/place')).toBeUndefined();
    expect(objection('server/score/signs.ts', 'server/signs/tables')).toBeUndefined();
    expect(objection('server/score/signs.ts', 'server/signs/recipes')).toMatch(/below or beside/);
    expect(objection('server/score/walk.ts', 'elsewhere/thing')).toMatch(/no place/);
    expect(importsOf("import type { A } from './a';\nconst b = await import('./b');\nimport './c';")).toEqual([
      './a',
      './b',
      './c',
    ]);
  });
});
