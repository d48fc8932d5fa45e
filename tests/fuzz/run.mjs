// `npm run fuzz -- 200000 [first seed]`: edits texts at random and judges each, in two processes. A text that fails is kept in ./out/.
import { fork } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const [count = 20_000, first = 1] = process.argv.slice(2).map(Number);
if (!Number.isInteger(count) || count < 1 || !Number.isInteger(first)) {
  console.error('npm run fuzz -- HOW-MANY [FIRST-SEED]');
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
const findings = Array.from({ length: WORKERS }, () => 0);
let failures = 0;
const sum = (numbers) => numbers.reduce((a, b) => a + b, 0);

function hear(worker, told) {
  if (told.kind === 'progress') {
    done[worker] = told.done;
    findings[worker] = told.findings;
    process.stderr.write(`\r${sum(done)} of ${count} texts, ${failures} failures `);
    return;
  }
  failures++;
  mkdirSync('out', { recursive: true });
  const file = join('out', `fuzz-${told.seed}.bent`);
  writeFileSync(file, told.text);
  console.error(`\nseed ${told.seed}, kept in ${file}\n${told.why.split('\n').slice(0, 6).join('\n')}`);
}

function work(worker) {
  const share = Math.ceil(count / WORKERS);
  const from = first + worker * share;
  const to = Math.min(from + share, first + count) - 1;
  return new Promise((resolve) => {
    const child = fork(bundle, [String(from), String(to)]);
    child.on('message', (told) => hear(worker, told));
    child.on('exit', (code) => resolve(code ?? 1));
  });
}

const codes = await Promise.all(Array.from({ length: WORKERS }, (_, worker) => work(worker)));
rmSync(folder, { recursive: true });
process.stderr.write('\n');
console.log(`${sum(done)} texts, ${sum(findings)} findings, ${failures} failures`);
process.exit(failures > 0 || codes.some((code) => code !== 0) || sum(done) < count ? 1 : 0);
