/** Notes and the keys of the instrument (common practice: an instrument from C to c''' has no key below its C). */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/document/analysis';
import { passage } from '../helpers/music';

const CLEFS = 'system upper C1 lower F4 meter C\n';
const beyond = (music: string, before = ''): string[] =>
  told(passage(`${CLEFS} basse | ${music} |||\n`, `instrument harpsichord compass c2-c6\n${before}`));

const told = (analysis: Analysis): string[] =>
  analysis
    .findings()
    .filter((finding) => finding.code === 'outside-compass')
    .map((finding) => `${finding.level}: ${finding.message}`);

describe('a note outside the compass', () => {
  it('is a warning that names the lowest and the highest key', () => {
    expect(beyond('2 g1 c2')).toEqual(['warning: basse: g1 lies outside the compass c2 to c6 of the instrument.']);
    expect(beyond('2 c2 c6')).toEqual([]);
  });
  it('is judged by the key that sounds', () => {
    expect(beyond('2 cb2 b#5')).toEqual(['warning: basse: cb2 lies outside the compass c2 to c6 of the instrument.']);
    expect(beyond('2 c6 c#6')).toHaveLength(1);
  });
  it('is told once where it is tied', () => {
    expect(beyond('2 g1= g1')).toHaveLength(1);
  });
  it('is told of every note of a chord and of small notes', () => {
    expect(beyond('1 f1-g1-c2')).toHaveLength(2);
    expect(beyond('{small 8 b1} 1 c2')).toHaveLength(1);
  });
  it('is told of what only a witness has', () => {
    expect(beyond('<K: 1 c2 ; L: 1 g1>')).toHaveLength(1);
  });
  it('cannot be told where no compass is declared', () => {
    expect(told(passage(`${CLEFS} basse | 1 c0 |||\n`))).toEqual([]);
  });
});
