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
    expect(out).toMatch(/^ {2}9 {2}'ca +Pincé : on beat, 0 -1 0, hold {2}\(from memory; .*no\. 9\)$/m);
    expect(out).toMatch(/'cb +Cheute ou port de voix en montant, when rising : on beat, -1 leaned, 0 /);
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

  it('counts the signs of a book and where they stand, the most frequent first, beside all its notes', async () => {
    const host = memoryHost({ 'a.bent': SCORE, 'b.bent': SCORE });
    const { code, out } = await bentside(host, 'signs', '--use', 'a.bent', 'b.bent');
    expect(code).toBe(0);
    const lines = out.split('\n');
    expect(lines.filter((line) => line.startsWith("'"))).toEqual([
      "'zz: 8 times, 4 on dotted notes",
      "'ca: 2 times, 2 on the last note of a bar",
    ]);
    // Of six notes in each file two are dotted, and both bear the sign.
    expect(lines).toContain('  4 on dotted notes                        50 %, of all notes  33 %');
    expect(lines).toContain('  2 before a rest                          25 %, of all notes  17 %');
    expect(lines).toContain('  by voice: dessus 8');
    const counted = JSON.parse((await bentside(host, 'signs', '--use', '--json', 'a.bent', 'b.bent')).out);
    expect(counted.files[0].signs[0]).toMatchObject({ sign: 'zz', times: 4, where: { dotted: 2 } });
    expect(counted.together.notes).toMatchObject({ times: 12, where: { dotted: 4 }, voices: { dessus: 12 } });
  });

  it.each([
    ["4 c5 d'zz e g", 'after a step', 'by step'],
    ["4 c5 g'zz e g", 'after a leap', 'by leap'],
    ["4 c5 c'zz e g", 'repeated', 'on the same note again'],
    ["4 c5'zz d e f", 'downbeat', 'on the first beat'],
    ["4 c5 d e f'zz", 'upbeat', 'on the last note of the bar'],
    ["2. b4'zz 4 a | 1 g", 'dotted', 'on a dotted note'],
    ["2 c5 d'zz | 1 c", 'cadence', 'before the last note'],
    ["4 c5 d'zz e'fermata f", 'cadence', 'before a fermata'],
    ["2 c5 c-e'zz", 'chord', 'at a note of a chord'],
  ])('%s: it knows %s', async (music, context) => {
    const text = `bentside 1\nvoice dessus\nsystem dessus G2 meter C\n  dessus | ${music} |||\n`;
    const { out } = await bentside(memoryHost({ 'a.bent': text }), 'signs', '--use', '--json', 'a.bent');
    expect(JSON.parse(out).together.signs[0].where).toHaveProperty([context], 1);
  });

  it('knows a sign over a rest of another voice, and one that is not', async () => {
    const text = `bentside 1\nvoice dessus\nvoice basse\nsystem dessus G2 basse F4 meter C\n  dessus | 2 c5'zz d'ca |||\n  basse | 2 r c3 |||\n`;
    const { out } = await bentside(memoryHost({ 'a.bent': text }), 'signs', '--use', '--json', 'a.bent');
    const { signs } = JSON.parse(out).together;
    expect(signs.map(({ where }: { where: Record<string, number> }) => where['over a rest'])).toEqual([undefined, 1]);
  });

  // Versuch, 1752, ch. VIII.8, from memory.
  it('tells what a treatise says of all its small notes, too', async () => {
    const { out } = await bentside(memoryHost(), 'signs', '--table', 'quantz-1752');
    expect(out).toContain('Of a dotted note an appoggiatura has two of three parts.  (Versuch, VIII.8, from memory)\n');
  });

  it('asks for files, and for --use with them', async () => {
    expect(await bentside(memoryHost(), 'signs', '--use')).toMatchObject({ code: 2 });
    // Of a file that could not be read nothing is said but that.
    const unread = await bentside(memoryHost(), 'signs', '--use', 'a.bent');
    expect([unread.code, unread.out]).toEqual([2, '']);
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

  it.each([
    { asked: 'by itself', given: [] },
    { asked: 'with its decisions', given: ['--decisions'] },
  ])('tells what the readings cannot play, each once: $asked', async ({ given }) => {
    const other = PLAYED.replace('signs rameau-1724', 'signs chambonnieres-1670');
    const { out, code } = await bentside(memoryHost({ 'a.bent': other }), 'proof', 'a.bent', ...given);
    expect(code).toBe(0);
    expect(out.match(/sign-not-in-table: /g)).toHaveLength(3);
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
