// The part of `npm run generate` that draws: the page of all signs with its pictures. Bundles signsPage.ts beside the packages
// that it loads, and gives it the engraver with the font as it is now.
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { buildFont } from '../../server/engraving/font/build.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const bundle = join(root, 'out/signs-page.mjs');
await build({
  stdin: {
    contents: `export { signsPage } from './grammar/generate/signsPage'; export { loadEngraver } from './server/engraving/library';`,
    resolveDir: root,
  },
  bundle: true,
  outfile: bundle,
  platform: 'node',
  format: 'esm',
  packages: 'external',
  logLevel: 'error',
});
const { signsPage, loadEngraver } = await import(pathToFileURL(bundle).href);
rmSync(bundle);

const engraver = await loadEngraver(await buildFont());
if ('failure' in engraver) throw new Error(engraver.failure);
const files = signsPage(engraver);
const folder = join(root, 'grammar/signs');
mkdirSync(folder, { recursive: true });
const wanted = new Set(files.map(({ path }) => join(root, path)));
for (const name of readdirSync(folder)) if (!wanted.has(join(folder, name))) rmSync(join(folder, name));
let fresh = 0;
for (const { path, text } of files) {
  const was = read(join(root, path));
  if (was === text) continue;
  writeFileSync(join(root, path), text);
  fresh++;
}
console.log(`grammar/SIGNS.md and its pictures: ${fresh === 0 ? 'unchanged' : `${fresh} made anew`}`);

function read(path) {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
}
