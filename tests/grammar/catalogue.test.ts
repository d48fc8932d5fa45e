/** The catalogue of findings: one entry a code, worded, explained and really used. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../grammar/findings/catalogue';
import { checkFindings } from '../../grammar/findings/check';
import { counselFindings } from '../../grammar/findings/counsel';
import { declarationFindings } from '../../grammar/findings/declaration';
import { exportFindings } from '../../grammar/findings/export';
import { hostFindings } from '../../grammar/findings/host';
import { laneFindings } from '../../grammar/findings/lane';
import { meiFindings } from '../../grammar/findings/mei';
import { musicxmlFindings } from '../../grammar/findings/musicxml';
import { recipeFindings } from '../../grammar/findings/recipe';
import { rhythmFindings } from '../../grammar/findings/rhythm';
import { scoreFindings } from '../../grammar/findings/score';
import { signFindings } from '../../grammar/findings/signs';
import { statementFindings } from '../../grammar/findings/statement';
import { tuningFindings } from '../../grammar/findings/tuning';
import { analysed } from '../helpers/music';

const ROOT = join(import.meta.dirname, '../..');

const tables = [
  laneFindings,
  statementFindings,
  recipeFindings,
  declarationFindings,
  scoreFindings,
  checkFindings,
  counselFindings,
  tuningFindings,
  signFindings,
  rhythmFindings,
  exportFindings,
  musicxmlFindings,
  meiFindings,
  hostFindings,
];

/** Slips of every stage: statements, lanes, names, time, pitch. */
const SLIPS = `bentside 1
titel "Allemande"
source K "the Thornmere Keyboard Book"
source K "twice"
reading late from early
  takes M
  at run takes K
  order B
  practice overdot in C voice quinte
table house
  zigzagg "shake" : on beat, (1 0) repeatd
instrument harpsichord compass c2-c6
stave upper lines 12
stave lower
voice dessus uper
voice basse lower
note n1 by MK : "a blot"
link run walk
signs anglebert-1698
system uper C1 lower F7 meter C
  dessus | 4 c5 d | 8c5 e'zzz face C5 | 1 c5*n9 r' | 2 c5= d '. (manual great) (nwo C3) |
  basse  | <M: 2 c ; L: 4 c3> 2 d'. | 2. c1'u 4 e {overdo 4 c} | 1 {small c3} rbar |
  dessus M | 1 c5 | |
  quinte | 1 c4 |
    fig | 6 7 8 | x |
system
  dessus | {3in2 8 c5 d} = 2.... | (now key lowr bb) 1 <v5 K 4 c5 | lost |
`;

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
    expect(code).toMatch(/^[a-z]+(?:-[a-z0-9]+)*$/);
    expect(entry.sentence).toMatch(/^[A-Z“{`(][\s\S]*[.?]$/);
    expect(entry.help.trim().length).toBeGreaterThan(20);
    expect(sources).toContain(`'${code}'`);
  });
  it.each(Object.entries(catalogue))('%s leaves blanks for words only', (_, entry) => {
    const blanks = [...entry.sentence.matchAll(/\{([^{}]*)\}/g)].map(([, name = '']) => name);
    // What else stands between braces is notation, such as a span, and is shown as it is: {3in2 …}.
    const words = blanks.filter((name) => !/[\s…]/.test(name));
    expect(words.filter((name) => !/^[a-z][A-Za-z]*$/.test(name))).toEqual([]);
  });
  it('explains every finding of the checks with an example', () => {
    const bare = Object.entries({ ...checkFindings, ...counselFindings }).filter(
      ([, { help }]) => !/\n {4}\S/.test(help),
    );
    expect(bare.map(([code]) => code)).toEqual([]);
  });
  it('fills every blank of what it finds in a passage full of slips', () => {
    const messages = analysed(SLIPS)
      .findings()
      .map((finding) => finding.message);
    expect(messages.length).toBeGreaterThan(20);
    expect(messages.filter((message) => /\{[a-z]+\}/i.test(message))).toEqual([]);
  });
});
