import { describe, expect, it } from 'vitest';
import { bentside, memoryHost } from '../helpers/memoryHost';

const SCORE = `bentside 1
title "Menuet"
source K "the main text"
source L "a loose leaf"
voice dessus
system dessus G2 meter C
  dessus | 4. c5 8 d <K: 2 e ; L: 2 f> |||
`;
const host = (): ReturnType<typeof memoryHost> => memoryHost({ 'a.bent': SCORE, 'b.bent': SCORE });

describe('bentside report', () => {
  it('writes Markdown where nothing else is wished', async () => {
    const { code, out } = await bentside(host(), 'report', 'a.bent');
    expect(code).toBe(0);
    expect(out).toContain('# Menuet\n');
    expect(out).toContain('| 1, dessus, 3 | m e′′ (K) | L: m f′′ | pitch |');
  });

  it('writes a page, and one beside each of several files', async () => {
    expect((await bentside(host(), 'report', 'a.bent', '--as', 'html')).out).toMatch(/^<!doctype html>/);
    const files = host();
    const { code, say } = await bentside(files, 'report', 'a.bent', 'b.bent', '--as', 'html');
    expect([code, say]).toEqual([0, 'a.report.html: written\nb.report.html: written\n']);
    expect([...files.files.keys()]).toContain('/home/b.report.html');
  });

  it('puts reports into a folder', async () => {
    const files = host();
    await bentside(files, 'report', 'a.bent', '--out', 'out');
    expect([...files.files.keys()].some((name) => name.endsWith('out/a.report.md'))).toBe(true);
  });

  it('is written of a score with errors, which are told, and does not end as if all were sound', async () => {
    const files = memoryHost({ 'a.bent': SCORE.replace('2 e ;', '1 e ;') });
    const { code, out, say } = await bentside(files, 'report', 'a.bent');
    expect(code).toBe(1);
    expect(out).toContain('# Menuet\n');
    expect(say).toMatch(/^a\.bent: it has [12] errors?, so something may be wrong or missing here; bentside proof/);
  });

  it('says which file there is not', async () => {
    expect((await bentside(host(), 'report', 'c.bent')).code).toBe(2);
  });
});
