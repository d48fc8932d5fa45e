import { describe, expect, it } from 'vitest';
import { bentside, memoryHost } from '../helpers/memoryHost';

const SCORE = `bentside 1
source K "the main text"
source L "a loose leaf"
voice dessus
reading sharp "dots stretched"
  practice overdot
system dessus G2 meter C
  dessus | 4. c5 8 d <K: 2 e ; L: 2 f> |||
`;
const host = (): ReturnType<typeof memoryHost> => memoryHost({ 'piece.bent': SCORE });

describe('bentside compare', () => {
  it('sets all sources beside one another where none is named', async () => {
    const { code, out } = await bentside(host(), 'compare', 'piece.bent');
    expect(code).toBe(0);
    expect(out).toContain('bar 1, dessus, symbol 3 (pitch)\n    K: 2 e5  [1/1/dessus/1.3.K.1, 8:');
    expect(out).toMatch(/1 difference\nK against L: 1\n$/);
  });

  it('says what readings choose besides their notes', async () => {
    const { out } = await bentside(host(), 'compare', 'piece.bent', 'written', 'sharp');
    expect(out).toContain(
      'sharp: dots stretched; signs not played; dots stretched as by a second dot, the dot held; a written accidental holds for its note and the immediate repetitions of that pitch in its voice\n',
    );
    expect(out).toContain('written: c5 at 0 for 3/8, d5 at 3/8 for 1/8 of a semibreve  [');
    expect(out).toContain('sharp: c5 at 0 for 7/16, d5 at 7/16 for 1/16 of a semibreve  [');
  });

  it('gives data', async () => {
    const { out } = await bentside(host(), 'compare', 'piece.bent', 'K', 'L', '--json');
    expect(JSON.parse(out)).toMatchObject({
      schema: 'bentside.comparison/1',
      differences: [{ kind: 'pitch', bar: '1', voice: 'dessus', symbol: 3 }],
      agreements: [{ groups: [['K'], ['L']], places: 1 }],
    });
  });

  it('says in the trade’s words what differs, and to programs by its one word', async () => {
    const files = (): ReturnType<typeof memoryHost> =>
      memoryHost({ 'piece.bent': SCORE.replace('<K: 2 e ; L: 2 f>', '<K: 2 e ; L: 4 f f>') });
    expect((await bentside(files(), 'compare', 'piece.bent', 'K', 'L')).out).toContain('symbol 3 (pitch and rhythm)\n');
    const { out } = await bentside(files(), 'compare', 'piece.bent', 'K', 'L', '--json');
    expect(JSON.parse(out)).toMatchObject({ differences: [{ kind: 'reading' }] });
  });

  it('says what there is where a file has no two sources', async () => {
    const files = memoryHost({ 'a.bent': SCORE.replace(/source.*\n/g, '') });
    const { code, say } = await bentside(files, 'compare', 'a.bent');
    expect(code).toBe(2);
    expect(say).toContain(
      'a.bent has fewer than two sources. Name two or more of what it can be read as (written, sharp)',
    );
  });

  it('tells that the score has errors', async () => {
    const files = memoryHost({ 'a.bent': SCORE.replace('8 d', '4 d') });
    const { code, out, say } = await bentside(files, 'compare', 'a.bent', 'K', 'L');
    expect([code, out.includes('K against L'), say.includes('a.bent: it has ')]).toEqual([1, true, true]);
  });

  it('knows only what the file declares, and needs two', async () => {
    const unknown = await bentside(host(), 'compare', 'piece.bent', 'K', 'M');
    expect([unknown.code, unknown.say]).toEqual([2, expect.stringContaining('has no reading or source “M”')]);
    const alone = await bentside(host(), 'compare', 'piece.bent', 'K');
    expect([alone.code, alone.say]).toEqual([
      2,
      'Name two or more of what it can be read as (written, sharp, K, L): bentside compare FILE K L\n',
    ]);
  });
});
