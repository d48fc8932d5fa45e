/**
 * Leading notes at cadences (common practice of musica ficta: the step below the final of a close is made a semitone, save
 * where the bass falls a semitone).
 */
import { describe, expect, it } from 'vitest';
import { duet, findingOf, mended, messages, passage } from '../helpers/music';

const CODE = 'leading-note-unsigned';
const close = (dessus: string, basse: string, meter = 'C'): string[] => messages(duet(dessus, basse, meter), CODE);

describe('a leading note without a sign', () => {
  it('is told where the bass falls a fifth or rises a fourth', () => {
    const found = duet('2 a4 g | 1 a', '1 e3 | 1 a2');
    expect(findingOf(found, CODE).message).toBe(
      'At the cadence on a natural (bar 1) the leading note of dessus has no sign: the source shows g natural, the practice expects g sharp (editor’s).',
    );
    expect(findingOf(found, CODE).level).toBe('hint');
    expect(close('2 a4 g | 1 a', '1 e2 | 1 a2')).toHaveLength(1);
  });
  it('is told where the bass falls a whole tone', () => {
    expect(close('2 d5 c | 1 d', '1 e3 | 1 d')).toHaveLength(1);
  });
  it("is mended by the editor's sign", () => {
    expect(mended(duet('2 a4 g | 1 a', '1 e3 | 1 a2'), CODE)).toContain('2 a4 g[#] |');
    expect(mended(duet('2 c5 bb4 | 1 c5', '1 g3 | 1 c3'), CODE)).toContain('2 c5 bb[n]4 |');
  });
  it('is told at the end of the system before', () => {
    const broken =
      'system upper C1 lower F4 meter C\n dessus | 2 a4 g |\n basse | 1 e3 |\nsystem\n dessus | 1 a4 |||\n basse | 1 a2 |||\n';
    expect(mended(passage(broken), CODE)).toContain('2 a4 g[#] |\n');
  });
});

describe('a step to the final', () => {
  it('is let be where the sign is there, drawn or the editor’s', () => {
    expect(close('2 a4 g# | 1 a', '1 e3 | 1 a2')).toEqual([]);
    expect(close('2 a4 g[#] | 1 a', '1 e3 | 1 a2')).toEqual([]);
  });
  it('is let be where the bass falls a semitone', () => {
    expect(close('2 e5 d | 1 e', '1 f3 | 1 e')).toEqual([]);
  });
  it('is let be where the voice does not come from the final', () => {
    expect(close('2 e4 g | 1 a', '1 e3 | 1 a2')).toEqual([]);
    expect(close('4 a4 r 2 g | 1 a', '1 e3 | 1 a2')).toEqual([]);
  });
  it('is let be in the middle of a run, off the strong beats and on a short final', () => {
    expect(close('16 c5 b4 a g a b c5 d 2 e', '4 e3 a2 2 a')).toEqual([]);
    expect(close('4 r a4 g a', '2 r 4 e3 a2')).toEqual([]);
    expect(close('2 a4 g | 8 a b 4 c5 2 b4', '1 e3 | 8 a2 c3 4 e 2 e')).toEqual([]);
  });
  it('is let be where another voice has the raised note', () => {
    const cross =
      'system upper C1 lower F4 meter C\n dessus | 2 a4 g | 1 a |||\n taille | 1 g#4 | 1 e |||\n basse | 1 e3 | 1 a2 |||\n';
    expect(messages(passage(cross), CODE)).toEqual([]);
  });
  it('is let be where the bass goes on down the scale', () => {
    expect(close('2 a4 g | 2. a 4 a', '1 bn2 | 2. a2 4 g')).toEqual([]);
    expect(close('2 a4 g | 1 a', '1 bn2 | 1 a')).toHaveLength(1);
  });
  it('is let be over a double bar', () => {
    expect(close('2 a4 g || 1 a', '1 e3 || 1 a2')).toEqual([]);
  });
});
