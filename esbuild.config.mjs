// Bundles the command line, the library and the language server. Each loads from one file: importing the parser unbundled costs
// a fifth of a second.
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
// The library of the protocol asks for Node's modules in the old way.
const requiring = "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);";
await build({
  ...common,
  entryPoints: { server: 'server/node.ts' },
  outdir: 'dist',
  banner: { js: requiring },
});
await build({
  ...common,
  entryPoints: { 'server.web': 'server/browser.ts' },
  outdir: 'dist',
  platform: 'browser',
  target: 'es2022',
  format: 'iife',
});
chmodSync('dist/cli.js', 0o755);
