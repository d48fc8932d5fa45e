import { describe, expect, it } from 'vitest';
import { bentside, memoryHost } from '../helpers/memoryHost';

const SCORE = `bentside 1
voice dessus
system dessus G2 meter C
  dessus | 4. c5'zz 8 d 4 e'zz r | 4. d5'zz 8 c 2 d'ca'zz |
`;

describe('bentside signs', () => {
  it('lists the seventeen tables by year', async () => {
    const { code, out } = await bentside(memoryHost(), 'signs');
    expect(code).toBe(0);
    expect(out.split('\n')[0]).toMatch(/^santa-maria-1565 +Santa María, 1565: 3 rows$/);
    expect(out).toMatch(/le-roux-1705 +Le Roux, 1705: 0 rows, and those of anglebert-1689/);
    expect(out.match(/^\S+ +\S.*: \d+ rows?/gm)).toHaveLength(17);
  });

  it('prints the 28 rows of 1689 that are placed, and says that one entry of the source is not', async () => {
    const { out } = await bentside(memoryHost(), 'signs', '--table', 'anglebert-1689');
    expect(out.match(/^ +\d+ {2}'/gm)).toHaveLength(28);
    expect(out).toMatch(/^ {2}9 {2}'ca +Pincé : on beat, 0 -1 0, hold {2}\(from memory; .*no\. 9, from memory\)$/m);
    expect(out.trimEnd()).toMatch(/One entry of the source, a further “Autre”, is not placed\.$/);
  });

  it('shows beneath a row the other readings and who speaks for them', async () => {
    const { out } = await bentside(memoryHost(), 'signs', '--table', 'english-strokes');
    expect(out).toMatch(/^ +or \(shake_upper\) : on beat, \+1 0 \+1 0, hold {2}\(Reincken/m);
  });

  it('gives the tables as data', async () => {
    const { out } = await bentside(memoryHost(), 'signs', '--table', 'rameau-1724', '--json');
    const { schema, tables } = JSON.parse(out);
    expect(schema).toBe('bentside.signs/1');
    expect(tables).toHaveLength(1);
    expect(tables[0].rows[0]).toMatchObject({ names: ['cadence'], shapes: ['zzz'], played: 'memory' });
    expect(JSON.parse((await bentside(memoryHost(), 'signs', '--json')).out).tables).toHaveLength(17);
  });

  it('counts the signs of a book and where they stand, the most frequent first', async () => {
    const host = memoryHost({ 'a.bent': SCORE, 'b.bent': SCORE });
    const { code, out } = await bentside(host, 'signs', '--use', 'a.bent', 'b.bent');
    expect(code).toBe(0);
    expect(out).toBe(
      "'zz: 8 times; dotted 4, rising 4, before higher 2, before lower 2, before rest 2\n'ca: 2 times; rising 2\n",
    );
    const counted = JSON.parse((await bentside(host, 'signs', '--use', '--json', 'a.bent')).out);
    expect(counted.files[0].signs[0]).toMatchObject({ sign: 'zz', times: 4 });
  });

  it('asks for files, and for --use with them', async () => {
    expect(await bentside(memoryHost(), 'signs', '--use')).toMatchObject({ code: 2 });
    expect((await bentside(memoryHost({ 'a.bent': SCORE }), 'signs', 'a.bent')).say).toContain('--use');
    expect(await bentside(memoryHost(), 'signs', '--use', 'none.bent')).toMatchObject({ code: 2 });
    expect((await bentside(memoryHost(), 'signs', '--table', 'anglebert-1688')).say).toContain('anglebert-1689');
  });
});

describe('bentside proof --decisions', () => {
  const PLAYED = `bentside 1
signs rameau-1724
tempo 4 at 60
voice dessus
reading french
system dessus G2 meter C
  dessus | 2 d5'zzz c'zl | 1 c5-e'ca |
`;

  it('lists what each reading decides at its signs, how sure that is, and what else could stand there', async () => {
    const { out } = await bentside(memoryHost({ 'a.bent': PLAYED }), 'proof', 'a.bent', '--decisions');
    const lines = out.split('\n').filter((line) => line.includes(' decision in '));
    expect(lines).toHaveLength(3);
    expect(lines[0]).toMatch(
      /^a\.bent:7:16 decision in french: 'zzz, Cadence of rameau-1724 \(from memory\): e5 d5 .*d5; or \(with_stop\)$/,
    );
    expect(lines[2]).toMatch(/'ca, Pincé of rameau-1724 \(likely\): e5 d5 .*e5; or \(single\)$/);
  });

  it('tells what the readings cannot play', async () => {
    const other = PLAYED.replace('signs rameau-1724', 'signs chambonnieres-1670');
    const { out, code } = await bentside(memoryHost({ 'a.bent': other }), 'proof', 'a.bent', '--decisions');
    expect(code).toBe(0);
    expect(out).toMatch(/info sign-not-in-table: In french: The table chambonnieres-1670 says nothing of “?`?'zzz/);
  });

  it('gives them as data', async () => {
    const host = memoryHost({ 'a.bent': PLAYED });
    const { decisions } = JSON.parse((await bentside(host, 'proof', 'a.bent', '--decisions', '--json')).out);
    expect(decisions[0]).toMatchObject({
      reading: 'french',
      address: '1/1/dessus/1.1',
      sign: 'zzz',
      table: 'rameau-1724',
      played: 'memory',
    });
    expect(JSON.parse((await bentside(host, 'proof', 'a.bent', '--json')).out).decisions).toBeUndefined();
  });
});
