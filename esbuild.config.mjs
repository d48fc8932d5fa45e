// Bundles the command line and the library. Each loads from one file: importing the parser unbundled costs a fifth of a second.
import { chmodSync } from 'node:fs';
import { build } from 'esbuild';

const common = {
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'esm',
  // Half of the start is reading the bundle.
  minify: true,
  sourcemap: true,
  legalComments: 'linked',
};

await build({
  ...common,
  entryPoints: { cli: 'server/cli/main.ts' },
  outdir: 'dist',
  banner: { js: '#!/usr/bin/env node' },
});
await build({ ...common, entryPoints: { library: 'server/library.ts' }, outdir: 'dist' });
chmodSync('dist/cli.js', 0o755);
