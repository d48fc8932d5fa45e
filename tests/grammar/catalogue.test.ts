/** The catalogue of findings: one entry a code, worded, explained and really used. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../grammar/findings/catalogue';
import { checkFindings } from '../../grammar/findings/check';
import { exportFindings } from '../../grammar/findings/export';
import { hostFindings } from '../../grammar/findings/host';
import { laneFindings } from '../../grammar/findings/lane';
import { scoreFindings } from '../../grammar/findings/score';
import { statementFindings } from '../../grammar/findings/statement';

const ROOT = join(import.meta.dirname, '../..');

const tables = [laneFindings, statementFindings, scoreFindings, checkFindings, exportFindings, hostFindings];

const sources = ['grammar', 'server']
  .flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' }).map((name) => join(ROOT, folder, name)),
  )
  .filter((path) => path.endsWith('.ts') && !path.includes('findings'))
  .map((path) => readFileSync(path, 'utf8'))
  .join('\n');

describe('the catalogue', () => {
  it('has each code in one table only', () => {
    const codes = tables.flatMap((table) => Object.keys(table));
    expect(codes.filter((code, index) => codes.indexOf(code) !== index)).toEqual([]);
    expect(new Set(codes)).toEqual(new Set(Object.keys(catalogue)));
  });
  it.each(Object.entries(catalogue))('%s is a sentence with a help page, and something makes it', (code, entry) => {
    expect(entry.sentence).toMatch(/^[A-Z“{`(][\s\S]*[.?]$/);
    expect(entry.help.trim().length).toBeGreaterThan(20);
    expect(sources).toContain(`'${code}'`);
  });
});
