/** The Node-hosted editor in which the extension's file is tried, installed into a cache of its own: it is too big for `npm ci`. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, join } from 'node:path';

const NAME = 'code-server';
/** The newest that runs on Node 20. */
const VERSION = '4.100.3';

const CACHE = process.env.XDG_CACHE_HOME ?? join(homedir(), '.cache');
const FOLDER = join(CACHE, 'bentside', `${NAME}-${VERSION}`);
const DONE = join(FOLDER, 'installed');
const EDITOR = join(FOLDER, 'node_modules', NAME);

/** What is built for this machine; the editor starts without those that cannot be. */
const NATIVE: readonly (readonly [folder: string, packages: readonly string[]])[] = [
  [join(EDITOR, 'lib/vscode'), ['@vscode/spdlog', 'native-watchdog', 'node-pty']],
  [EDITOR, ['argon2']],
];

/** Scripts of packages are not run: the editor's own asks other hosts than the registry. */
const INSTALL = ['install', '--no-audit', '--no-fund', '--ignore-scripts'];
const UNREACHABLE = /ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH/;

/**
 * The file with which the editor is started; installed if it is not there yet.
 * @throws with one line where the registry cannot be reached
 */
export function installedEditor(): string {
  if (!existsSync(DONE)) install();
  return join(EDITOR, 'out/node/entry.js');
}

function install(): void {
  console.info(`${NAME} ${VERSION} is installed into ${FOLDER}: some 400 MB, a few minutes`);
  rmSync(FOLDER, { recursive: true, force: true });
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(join(FOLDER, 'package.json'), '{ "private": true }');
  npm(FOLDER, ...INSTALL, `${NAME}@${VERSION}`);
  const inside = join(EDITOR, 'lib/vscode');
  for (const folder of [inside, join(inside, 'extensions')]) npm(folder, ...INSTALL, '--omit=dev');
  for (const [folder, packages] of NATIVE) {
    // A package may lie further up than the folder that wants it.
    for (const name of packages) rebuild(above(folder, name), name);
  }
  const archive = join(inside, 'node_modules.asar');
  if (!existsSync(archive)) symlinkSync('node_modules', archive);
  writeFileSync(DONE, '');
}

function npm(folder: string, ...words: readonly string[]): void {
  try {
    execFileSync('npm', words, { cwd: folder, encoding: 'utf8', stdio: 'pipe' });
  } catch (error) {
    const { stderr = '' } = error as { stderr?: string };
    throw new Error(
      UNREACHABLE.test(stderr)
        ? `${NAME} ${VERSION} cannot be installed: the package registry cannot be reached`
        : `npm ${words.join(' ')}: ${stderr}`,
    );
  }
}

function rebuild(folder: string, name: string): void {
  try {
    npm(folder, 'rebuild', name);
  } catch {
    console.info(`${name} could not be built here; the editor does without`);
  }
}

/** The nearest folder at or above another in whose `node_modules` a package lies. */
function above(folder: string, name: string): string {
  return existsSync(join(folder, 'node_modules', name)) || folder === FOLDER ? folder : above(dirname(folder), name);
}
