/** The examples of the library in the reference run as they stand there, with the library as it is bundled. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');
const reference = readFileSync(join(ROOT, 'grammar/REFERENCE.md'), 'utf8');

/** A script of the reference and what it says it prints. */
const EXAMPLE = /\*\*([^*]+)\*\*:[^\n]*\n\n```js\n([\s\S]*?)```\n\n```text\n([\s\S]*?)```/g;

const run = (script: string): string =>
  execFileSync(process.execPath, ['--input-type=module', '--eval', script], { cwd: ROOT, encoding: 'utf8' });

const trimmed = (text: string): string => text.replace(/[ \t]+$/gm, '').trim();

describe('the library in the reference', () => {
  const examples = [...reference.matchAll(EXAMPLE)];
  it('has an example of each thing that it does', () => {
    expect(examples.map(([, title]) => title)).toEqual([
      'Proof',
      'Score',
      'Timeline',
      'Export',
      'Files',
      'Comparison',
      'Books',
      'Tuning',
      'Alignment',
      'Edits that keep all else',
    ]);
  });
  for (const [, title, script = '', printed = ''] of examples) {
    it(`prints what it says it prints: ${title}`, () => {
      expect(trimmed(run(script))).toBe(trimmed(printed));
    });
  }
});
