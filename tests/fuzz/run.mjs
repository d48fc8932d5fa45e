// In two processes, with seeds that make a failure again; a text that fails is kept in ./out/:
// `npm run fuzz -- 200000 [first seed]` edits texts at random and judges each;
// `npm run law -- 500 [first seed]` runs as many edit scripts on documents and compares each step with a fresh analysis.
import { fork } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const kinds = {
  texts: { command: 'fuzz', usual: 20_000, tried: 'texts', counted: 'findings' },
  law: { command: 'law', usual: 500, tried: 'edit scripts', counted: 'edits' },
};
const [kind = '', ...numbers] = process.argv.slice(2);
const { command, usual, tried, counted } = kinds[kind] ?? kinds.texts;
const [count = usual, first = 1] = numbers.map(Number);
if (!Number.isInteger(count) || count < 1 || !Number.isInteger(first)) {
  console.error(`npm run ${command} -- HOW-MANY [FIRST-SEED]`);
  process.exit(2);
}

const folder = mkdtempSync(join(tmpdir(), 'bentside-fuzz-'));
const bundle = join(folder, 'main.mjs');
await build({
  entryPoints: [join(here, 'main.ts')],
  outfile: bundle,
  bundle: true,
  platform: 'node',
  format: 'esm',
  // Paths count from this folder, wherever the bundle lies.
  define: { 'import.meta.dirname': JSON.stringify(here) },
  logLevel: 'error',
});

const WORKERS = 2;
const done = Array.from({ length: WORKERS }, () => 0);
const counts = Array.from({ length: WORKERS }, () => 0);
let failures = 0;
const sum = (numbers) => numbers.reduce((a, b) => a + b, 0);

function hear(worker, told) {
  if (told.kind === 'progress') {
    done[worker] = told.done;
    counts[worker] = told.counted;
    process.stderr.write(`\r${sum(done)} of ${count} ${tried}, ${failures} failures `);
    return;
  }
  failures++;
  mkdirSync('out', { recursive: true });
  const file = join('out', `${command}-${told.seed}.bent`);
  writeFileSync(file, told.text);
  console.error(`\nseed ${told.seed}, kept in ${file}\n${told.why.split('\n').slice(0, 6).join('\n')}`);
}

function work(worker) {
  const share = Math.ceil(count / WORKERS);
  const from = first + worker * share;
  const to = Math.min(from + share, first + count) - 1;
  return new Promise((resolve) => {
    const child = fork(bundle, [kind, String(from), String(to)]);
    child.on('message', (told) => hear(worker, told));
    child.on('exit', (code) => resolve(code ?? 1));
  });
}

const codes = await Promise.all(Array.from({ length: WORKERS }, (_, worker) => work(worker)));
rmSync(folder, { recursive: true });
process.stderr.write('\n');
console.log(`${sum(done)} ${tried}, ${sum(counts)} ${counted}, ${failures} failures`);
process.exit(failures > 0 || codes.some((code) => code !== 0) || sum(done) < count ? 1 : 0);
