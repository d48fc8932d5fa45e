// Bundles the command line, the library, the language server and the extension. Each loads from one file, or a few: importing
// the parser unbundled costs a fifth of a second.
import { chmodSync, copyFileSync, existsSync, mkdirSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { build } from 'esbuild';
import { buildFont, FONT_PACKAGE } from './server/engraving/font/build.mjs';

/** Whoever imports the engraver when it is wanted finds its bundle beside its own. */
const engraverApart = {
  name: 'engraver apart',
  setup: ({ onResolve }) =>
    onResolve({ filter: /\/engraving\/library$/ }, ({ kind }) =>
      kind === 'dynamic-import' ? { path: './engraving/engraver.js', external: true } : undefined,
    ),
};

/**
 * Packages that are imported when they are wanted are copied as they are, beside the bundle: the engraving library's licence asks
 * that it can be exchanged for another build of it.
 */
const packagesApart = {
  name: 'packages apart',
  setup: ({ onResolve, resolve, initialOptions }) =>
    onResolve({ filter: /^[^./]/ }, async ({ path, kind, resolveDir, pluginData }) => {
      if (kind !== 'dynamic-import' || pluginData === packagesApart) return undefined;
      const found = await resolve(path, { kind, resolveDir, pluginData: packagesApart });
      note(found.path);
      const copy = join(initialOptions.outdir, basename(found.path));
      mkdirSync(initialOptions.outdir, { recursive: true });
      // Somebody may be reading the copy: it is left alone as long as it is one.
      if (!existsSync(copy) || statSync(copy).size !== statSync(found.path).size) copyFileSync(found.path, copy);
      return { path: `./${basename(found.path)}`, external: true };
    }),
};

/** Packages that are in some bundle, beside one, or of which a file beside one is made. */
const packages = new Set([FONT_PACKAGE]);

function note(path) {
  const name = /node_modules\/((?:@[^/]+\/)?[^/]+)\/(?!.*node_modules\/)/.exec(path)?.[1];
  if (name !== undefined) packages.add(name);
}

/** Makes the bundle and names its files. */
async function bundle(options) {
  const { metafile } = await build({ ...options, metafile: true });
  for (const output of Object.values(metafile.outputs)) {
    for (const [path, { bytesInOutput }] of Object.entries(output.inputs)) if (bytesInOutput > 0) note(path);
  }
  return Object.keys(metafile.outputs);
}

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

/** A bundle whose parts are loaded when they are wanted. They lie beside the entry, where the engraver is looked for. */
async function inParts(name, entry) {
  const parts = await bundle({
    ...common,
    entryPoints: { [name]: entry },
    outdir: 'dist',
    splitting: true,
    chunkNames: `${name}-[name]-[hash]`,
  });
  for (const file of readdirSync('dist').filter((one) => one.startsWith(`${name}-`)))
    if (!parts.includes(`dist/${file}`)) rmSync(join('dist', file));
}

await inParts('cli', 'server/cli/main.ts');
await inParts('library', 'server/library.ts');
// The library of the protocol asks for Node's modules in the old way.
const requiring = "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);";
await bundle({
  ...common,
  entryPoints: { server: 'server/node.ts' },
  outdir: 'dist',
  banner: { js: requiring },
});
await bundle({
  ...common,
  entryPoints: { 'server.web': 'server/browser.ts' },
  outdir: 'dist',
  platform: 'browser',
  target: 'es2022',
  format: 'iife',
});
// The editor loads an extension in the old way, and itself gives what is called vscode.
const client = { ...common, external: ['vscode'], format: 'cjs', outdir: 'dist', outExtension: { '.js': '.cjs' } };
await bundle({ ...client, entryPoints: { client: 'client/node.ts' } });
await bundle({
  ...client,
  entryPoints: { 'client.web': 'client/browser.ts' },
  platform: 'browser',
  target: 'es2022',
});
await bundle({
  ...common,
  entryPoints: { panel: 'client/panel/page/main.ts', tuning: 'client/tuning/page/main.ts' },
  outdir: 'dist',
  platform: 'browser',
  target: 'es2022',
  format: 'iife',
});
copyFileSync('client/panel/page/panel.css', 'dist/panel.css');
copyFileSync('client/tuning/page/tuning.css', 'dist/tuning.css');
copyFileSync('client/frame/frame.css', 'dist/frame.css');
chmodSync('dist/cli.js', 0o755);

await bundle({
  ...common,
  platform: 'neutral',
  entryPoints: { engraver: 'server/engraving/library.ts' },
  sourcemap: false,
  outdir: 'dist/engraving',
  plugins: [packagesApart],
});
writeFileSync('dist/engraving/font.zip', await buildFont());
// Whoever hands the bundles on hands these packages' licences on.
writeFileSync('dist/packages.json', JSON.stringify([...packages].sort()));
