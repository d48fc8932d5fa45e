// `npm run package`: makes the extension's file, out/bentside.vsix, from what the build has made, and prints its size. What the
// library alone needs stays out of it; the command line runs as a task.
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createVSIX } from '@vscode/vsce';

const STAGE = 'out/extension';
const FILE = 'out/bentside.vsix';

/** As they stand. */
const FILES = [
  'README.md',
  'CHANGELOG.md',
  'LICENSE',
  'NOTICE.md',
  'package.nls.json',
  'client/l10n',
  'syntaxes',
  'client/media',
  'client/walkthrough',
  'dist/cli.js',
  ...readdirSync('dist')
    .filter((name) => /^cli-.*\.js$/.test(name))
    .map((name) => `dist/${name}`),
  'dist/client.cjs',
  'dist/client.web.cjs',
  'dist/server.js',
  'dist/server.web.js',
  'dist/panel.js',
  'dist/panel.css',
  'dist/frame.css',
  'dist/tuning.js',
  'dist/tuning.css',
  'dist/engraving',
];

/** Of package.json, what an editor reads. */
const FIELDS = [
  ...[
    'name',
    'displayName',
    'publisher',
    'version',
    'description',
    'license',
    'icon',
    'categories',
    'keywords',
    'type',
  ],
  ...['main', 'browser', 'l10n', 'activationEvents', 'capabilities', 'contributes'],
];

function stage() {
  rmSync(STAGE, { recursive: true, force: true });
  mkdirSync(STAGE, { recursive: true });
  for (const file of FILES.filter((one) => existsSync(one))) cpSync(file, join(STAGE, file), { recursive: true });
  const whole = JSON.parse(readFileSync('package.json', 'utf8'));
  const fields = Object.fromEntries(FIELDS.map((field) => [field, whole[field]]));
  const manifest = { ...fields, engines: { vscode: whole.engines.vscode }, files: ['**'] };
  writeFileSync(join(STAGE, 'package.json'), JSON.stringify(manifest, undefined, 2));
  writeFileSync(join(STAGE, 'LICENCES.txt'), licences());
}

/** The licences of all bundled packages, in full. */
function licences() {
  const names = JSON.parse(readFileSync('dist/packages.json', 'utf8'));
  return names.map((name) => `${name}\n${'='.repeat(name.length)}\n\n${licenceOf(name)}\n`).join('\n\n');
}

/** Texts of licences that a package names and does not bring with it; the one is a supplement to the other. */
const TEXTS = {
  'LGPL-3.0-or-later': ['LGPL-3.0.txt', 'GPL-3.0.txt'].map((file) => join('server/engraving/licences', file)),
};

const text = (path) => readFileSync(path, 'utf8').trim();

function licenceOf(name) {
  const folder = join('node_modules', name);
  const files = readdirSync(folder).filter((file) => /^(licen[cs]e|copying|notice|ofl)/i.test(file));
  if (files.length > 0) return files.map((file) => text(join(folder, file))).join('\n\n');
  const { license, author } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  if (TEXTS[license] === undefined) throw new Error(`${name} has no text of its licence, ${license}`);
  const by = typeof author === 'object' ? author.name : (author ?? 'not named');
  return [`Licence: ${license}. Author: ${by}.`, ...TEXTS[license].map(text)].join('\n\n');
}

stage();
// README.md links to files of the repository, whose address the packer does not know.
const links = { allowMissingRepository: true, rewriteRelativeLinks: false };
await createVSIX({ cwd: STAGE, packagePath: FILE, dependencies: false, ...links });
console.log(`${FILE}: ${(statSync(FILE).size / 1024 / 1024).toFixed(2)} MB`);
