// `npm run bench [-- PART,PART]`: bundles what is measured, since sources that are imported one by one start slower, and runs it.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'bentside-bench-'));
const common = { outdir: folder, bundle: true, platform: 'node', target: 'node20', logLevel: 'error' };
await build({
  ...common,
  entryPoints: { main: join(here, 'main.ts') },
  outExtension: { '.js': '.cjs' },
  format: 'cjs',
  mainFields: ['module', 'main'],
  // Tests load it by themselves; here it comes from the build.
  external: ['../helpers/engraver'],
});
await build({
  ...common,
  entryPoints: { parse: join(here, '../../grammar/parse.ts') },
  outExtension: { '.js': '.mjs' },
  format: 'esm',
  minify: true,
});
const { status } = spawnSync(
  process.execPath,
  ['--expose-gc', '--max-old-space-size=4096', join(folder, 'main.cjs'), ...process.argv.slice(2)],
  { stdio: 'inherit', env: { ...process.env, BENCH_FOLDER: folder } },
);
rmSync(folder, { recursive: true });
process.exit(status ?? 1);
