// `npm run look [-- FILES…]`: every page of the samples (or of other scores) as PNG in out/look/, to be looked at.

import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Resvg } from '@resvg/resvg-js';
import { globSync } from 'tinyglobby';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const folder = join(root, 'out/look');
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });

const [files, options] = split(process.argv.slice(2));
const scores = files.length > 0 ? files : globSync('samples/*.bent', { cwd: root, absolute: true }).sort();
const command = [join(root, 'dist/cli.js'), 'export', ...scores, '--as', 'svg', '--out', folder, ...options];
const { status } = spawnSync(process.execPath, command, { stdio: 'inherit' });

for (const svg of globSync('**/*.svg', { cwd: folder, absolute: true })) {
  const picture = new Resvg(readFileSync(svg, 'utf8'), {
    background: 'white',
    fitTo: { mode: 'width', value: 1800 },
    // As wide as the Times that the pictures ask for.
    font: { serifFamily: 'Liberation Serif', defaultFontFamily: 'Liberation Serif' },
  });
  writeFileSync(svg.replace(/svg$/, 'png'), picture.render().asPng());
}
console.log(`${folder}: the pages`);
process.exit(status ?? 1);

/** Files, then options of `bentside export`. */
function split(words) {
  const first = words.findIndex((word) => word.startsWith('--'));
  return first < 0 ? [words, []] : [words.slice(0, first), words.slice(first)];
}
