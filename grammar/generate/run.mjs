// `npm run generate`: makes the generated files anew. Bundles run.ts, which holds the list of them and no I/O.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const bundled = await build({
  entryPoints: [join(root, 'grammar/generate/run.ts')],
  bundle: true,
  write: false,
  platform: 'node',
  format: 'esm',
  logLevel: 'error',
});
const code = Buffer.from(bundled.outputFiles[0].contents).toString('base64');
const { generatedFiles } = await import(`data:text/javascript;base64,${code}`);

for (const { path, made } of generatedFiles) {
  const file = join(root, path);
  const was = existsSync(file) ? readFileSync(file, 'utf8') : '';
  const is = made(was);
  if (is !== was) writeFileSync(file, is);
  console.log(`${path}: ${is === was ? 'unchanged' : 'made anew'}`);
}
