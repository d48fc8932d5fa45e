// Bundles the command line, the library, the language server and the extension. Each loads from one file: importing the parser unbundled costs
// a fifth of a second.
import { chmodSync, writeFileSync } from 'node:fs';
import { build } from 'esbuild';
import { buildFont } from './server/engraving/font/build.mjs';

/** Whoever imports the engraver when it is wanted finds its bundle beside its own. */
const engraverApart = {
  name: 'engraver apart',
  setup: ({ onResolve }) =>
    onResolve({ filter: /\/engraving\/library$/ }, ({ kind }) =>
      kind === 'dynamic-import' ? { path: './engraving/engraver.js', external: true } : undefined,
    ),
};

const common = {
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'esm',
  // Half of the start is reading the bundle.
  minify: true,
  sourcemap: true,
  legalComments: 'linked',
  plugins: [engraverApart],
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
// The editor loads an extension in the old way, and itself gives what is called vscode.
const client = { ...common, external: ['vscode'], format: 'cjs', outdir: 'dist', outExtension: { '.js': '.cjs' } };
await build({ ...client, entryPoints: { client: 'client/node.ts' } });
await build({
  ...client,
  entryPoints: { 'client.web': 'client/browser.ts' },
  platform: 'browser',
  target: 'es2022',
});
chmodSync('dist/cli.js', 0o755);

// The engraving library's licence asks that it can be exchanged: each of its modules stays a file of its own, under its own
// name, which the engraver's bundle loads when it is wanted.
await build({
  ...common,
  platform: 'neutral',
  charset: 'utf8',
  entryPoints: { engraver: 'server/engraving/library.ts' },
  external: ['node:*'],
  splitting: true,
  chunkNames: '[name]',
  sourcemap: false,
  outdir: 'dist/engraving',
});
writeFileSync('dist/engraving/font.zip', await buildFont());
