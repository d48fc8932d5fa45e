/** Checks that look over a whole file (common practice of editing, unless said otherwise). */
import { describe, expect, it } from 'vitest';
import { analysed, codes, errors, findingOf, HEAD, lane, mended, passage } from '../helpers/music';

const bar = (music: string): string => `system upper C1 lower F4 meter C\n dessus | ${music} |||\n`;

describe('a name that nothing gives', () => {
  it('is told of options with the nearest witness as a fix', () => {
    const slip = passage(bar('1 c5 | <plaim: 1 d5 ; L: 1 e5>'), 'reading plain "at face value"\n');
    expect(errors(slip)).toEqual(['unknown-label']);
    expect(mended(slip, 'unknown-label')).toContain('<plain: 1 d5');
  });
  it('is told of marks, ties and spans limited to readings', () => {
    expect(errors(lane("1 c5'zz:french"))).toEqual(['unknown-label']);
    expect(errors(lane('2 c5=:french d'))).toEqual(['unknown-label']);
    expect(errors(lane('{overdot:french 4. c5 8 d} 2 e'))).toEqual(['unknown-label']);
  });
  it('is told of annotations, manuals and places', () => {
    expect(errors(lane('1 c5*n7'))).toEqual(['unknown-note']);
    expect(errors(lane('(manual great) 1 c5'))).toEqual(['unknown-manual']);
    expect(errors(passage(bar('1 c5'), 'reading one "at v3"\n at v3 takes L\n'))).toContain('unknown-place');
    expect(errors(passage(bar('1 c5'), 'link v1 v2\n'))).toEqual(['unknown-place', 'unknown-place']);
  });
  it('is told of sections in the order of a reading or in a practice', () => {
    expect(errors(passage(bar('1 c5'), 'reading one "twice"\n order A A\n'))).toContain('unknown-section');
    expect(errors(passage(bar('1 c5'), 'reading one "stretched"\n practice overdot in A\n'))).toContain(
      'unknown-section',
    );
  });
});

describe('a declaration that nothing uses', () => {
  const unused = (before: string, music = '1 c5'): string[] =>
    passage(bar(music), before)
      .findings()
      .filter((finding) => finding.code === 'unused-declaration')
      .map((finding) => finding.message);
  it('is worth knowing, not wrong', () => {
    expect(findingOf(passage(bar('1 c5'), 'stave third\n'), 'unused-declaration').level).toBe('info');
  });
  it('is told of staves, voices, further sources, notes and editors', () => {
    expect(unused('stave third\n')).toContain('The stave “third” is declared but never used.');
    expect(unused('')).toContain('The voice “basse” is declared but never used.');
    expect(unused('')).toContain('The source “L” is declared but never used.');
    expect(unused('note n1 : "a blot"\n')).toContain('The note “n1” is declared but never used.');
    expect(unused('editor MK "an editor"\n')).toContain('The editor “MK” is declared but never used.');
  });
  it('is not told where a layer or a witness lane cites a source', () => {
    expect(unused('', '1 c5 | <K: 1 d5 ; L: 1 e5>').join()).not.toContain('source');
  });
});

describe('a note outside the compass', () => {
  const low = analysed(
    `${HEAD}instrument harpsichord compass c2-c6\nsystem upper C1 lower F4 meter C\n basse | 2 g1 c2 |||\n`,
  );
  it('is told with the keys of the instrument', () => {
    expect(findingOf(low, 'outside-compass').message).toBe(
      'basse: g1 lies outside the compass c2 to c6 of the instrument.',
    );
    expect(codes(low).filter((code) => code === 'outside-compass')).toHaveLength(1);
  });
});
