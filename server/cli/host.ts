/** The real file system, streams and terminal. */
import * as fs from 'node:fs';
import * as path from 'node:path';
import { fileURLToPath } from 'node:url';
import { decoded, isPlainFile, realPath } from '../disk';
import type { CannotDraw, Engraver } from '../engraving/engraver';
import { areChunks, type Chunks } from '../export/inChunks';
import type { Host } from '../workspace/host';
import type { CliHost, Reading } from './command';

export const nodeHost = (): CliHost => ({
  includes,
  find,
  read: (file) => reading(() => readBytes(file)),
  standardInput: () => reading(readStandardInput),
  absolute: (file) => slashes(path.resolve(file)),
  place: (file) => slashes(realPath(file)),
  write,
  engraver,
  samples,
  out: (text) => void process.stdout.write(text),
  say: (text) => void process.stderr.write(text),
  progress: (text) => void (process.stderr.isTTY && process.stderr.write(text)),
});

/** Paths have `/` between their parts in all messages and outputs. */
const slashes = (file: string): string => (path.sep === '/' ? file : file.replaceAll(path.sep, '/'));

// ─── reading ─────────────────────────────────────────────────────────────────────────────────────────────────────

function reading(bytes: () => Uint8Array): Reading {
  try {
    return { text: decoded(bytes()) };
  } catch (error) {
    return { failure: inWords(error, READING) };
  }
}

const readBytes = (file: string): Uint8Array => fs.readFileSync(file);

/** Standard input may be a pipe that has nothing to give yet. */
function readStandardInput(): Uint8Array {
  const chunks: Buffer[] = [];
  const chunk = Buffer.alloc(65_536);
  for (;;) {
    try {
      const count = fs.readSync(0, chunk);
      if (count === 0) return Buffer.concat(chunks);
      chunks.push(Buffer.from(chunk.subarray(0, count)));
    } catch (error) {
      if (codeOf(error) === 'EOF') return Buffer.concat(chunks);
      if (codeOf(error) !== 'EAGAIN') throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 10);
    }
  }
}

const PATTERN = /[*?[\]{}()!]/;

/** A file may have signs of a pattern in its name: what is there is taken as it is. */
async function find(pattern: string): Promise<readonly string[]> {
  if (!PATTERN.test(pattern) || fs.existsSync(pattern)) return [pattern];
  const { globSync } = await import('tinyglobby');
  const found = globSync([slashes(pattern)], {
    absolute: path.isAbsolute(pattern),
    expandDirectories: false,
    followSymbolicLinks: false,
    ignore: ['**/node_modules/**'],
  });
  // What is ignored counts from the current folder, which a full pattern need not be in.
  return found.filter((file) => !file.includes('/node_modules/')).sort();
}

// ─── includes ────────────────────────────────────────────────────────────────────────────────────────────────────

/** The files that a score may include: those below its own folder and below the current one. */
function includes(score: string): Host {
  const roots = [path.dirname(score), '.'].map(realPath);
  return {
    read: (file) => {
      const found = isPlainFile(file) ? reading(() => readBytes(file)) : { failure: '' };
      return 'text' in found ? found.text : undefined;
    },
    resolve: (from, wanted) => {
      if (path.isAbsolute(wanted) || path.win32.isAbsolute(wanted) || wanted.includes('\0')) return undefined;
      const file = path.join(path.dirname(from), wanted);
      // A link below the folder may lead out of it: where it leads counts.
      const real = realPath(file);
      return roots.some((root) => isBelow(root, real)) ? slashes(file) : undefined;
    },
  };
}

function isBelow(root: string, file: string): boolean {
  const way = path.relative(root, file);
  return way !== '' && way !== '..' && !way.startsWith(`..${path.sep}`) && !path.isAbsolute(way);
}

// ─── writing ─────────────────────────────────────────────────────────────────────────────────────────────────────

/** With those above it. One after the other: Node's own way never ends where the system says that a folder it made is not there. */
function makeFolder(folder: string): void {
  if (fs.existsSync(folder)) return;
  makeFolder(path.dirname(folder));
  fs.mkdirSync(folder);
}

/** Writes beside the file and then gives it the name, so that nobody ever sees half of it. */
function write(file: string, content: string | Uint8Array | Chunks): { readonly failure: string } | undefined {
  // What a link leads to is written, not the link.
  const target = realPath(file);
  const folder = path.dirname(target);
  const temporary = path.join(folder, `.bentside-${process.pid}.tmp`);
  try {
    makeFolder(folder);
    const before = fs.statSync(target, { throwIfNoEntry: false });
    if (before?.isDirectory()) return { failure: 'not written; a folder has that name' };
    fs.rmSync(temporary, { force: true });
    writeNew(temporary, content);
    if (before !== undefined) fs.chmodSync(temporary, before.mode);
    fs.renameSync(temporary, target);
    return undefined;
  } catch (error) {
    removeIfThere(temporary);
    return { failure: unwritten(error) };
  }
}

function writeNew(file: string, content: string | Uint8Array | Chunks): void {
  if (!areChunks(content)) {
    fs.writeFileSync(file, content, { flag: 'wx' });
    return;
  }
  const opened = fs.openSync(file, 'wx');
  try {
    for (const chunk of content.chunks) fs.writeSync(opened, chunk);
  } finally {
    fs.closeSync(opened);
  }
}

function removeIfThere(file: string): void {
  try {
    fs.rmSync(file, { force: true });
  } catch {
    // Its folder is no folder, or may not be written: then there is no such file either.
  }
}

// ─── failures in words ───────────────────────────────────────────────────────────────────────────────────────────

type Words = Readonly<Record<string, string>>;

const READING: Words = {
  ENOENT: 'there is no such file',
  ENOTDIR: 'there is no such file',
  EISDIR: 'it is a folder; name the files in it, such as FOLDER/*.bent',
  EACCES: 'it may not be read',
  EPERM: 'it may not be read',
};

const WRITING: Words = {
  EEXIST: 'a file stands where its folder should be',
  ENOTDIR: 'a file stands where its folder should be',
  EACCES: 'its folder may not be written',
  EPERM: 'its folder may not be written',
  EROFS: 'its folder may not be written',
  ENOSPC: 'the disk is full',
  ENAMETOOLONG: 'its name is too long',
};

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';

const inWords = (error: unknown, words: Words): string =>
  words[codeOf(error)] ?? (error instanceof Error ? error.message : 'for an unknown reason');

/** That an output was not written, and why. */
export const unwritten = (error: unknown): string => `not written; ${inWords(error, WRITING)}`;

// ─── the engraver ────────────────────────────────────────────────────────────────────────────────────────────────

/** The engraver's bundle is a file of its own, as is its font. */
async function engraver(): Promise<Engraver | CannotDraw> {
  const file = path.join(packageFolder(), 'dist/engraving/font.zip');
  if (!isPlainFile(file)) return { failure: `cannot draw here: the font is missing (${slashes(file)})` };
  const { loadEngraver } = await import('../engraving/library');
  return loadEngraver(readBytes(file));
}

// ─── the package ─────────────────────────────────────────────────────────────────────────────────────────────────

function samples(): readonly string[] {
  const folder = path.join(packageFolder(), 'samples');
  if (!fs.existsSync(folder)) return [];
  return fs
    .readdirSync(folder)
    .filter((name) => name.endsWith('.bent'))
    .sort()
    .map((name) => slashes(path.join(folder, name)));
}

/** The folder of this package: the nearest above this file (a source or a bundle) that describes one. */
function packageFolder(): string {
  let folder = path.dirname(fileURLToPath(import.meta.url));
  while (!fs.existsSync(path.join(folder, 'package.json')) && path.dirname(folder) !== folder) {
    folder = path.dirname(folder);
  }
  return folder;
}
