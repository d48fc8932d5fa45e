/** What readings choose: options that none of them reaches, places of which one says two things (common practice of apparatus). */
import { describe, expect, it } from 'vitest';
import { codes, errors, lane, messages } from '../helpers/music';

const unreached = (music: string, before = ''): string[] => messages(lane(music, 'C', before), 'option-unreached');

describe('an option', () => {
  it('of every source is reached by that source', () => {
    expect(unreached('<K: 1 c5 ; L: 1 d5>')).toEqual([]);
  });

  it('that stands behind another of its label is reached by nobody', () => {
    expect(unreached('<K: 1 c5 ; L: 1 d5 ; L: 1 e5>')).toHaveLength(1);
  });

  it('without a label is told as such, and not as one that nobody takes', () => {
    expect(unreached('<K: 1 c5 ; 1 d5>')).toEqual([]);
    expect(errors(lane('<K: 1 c5 ; 1 d5>'))).toEqual(['option-without-label']);
  });

  it('of L within an option of K is reached only by a reading that takes L, and K there', () => {
    const nested = '<v1 K: <K: 2 c5 d ; L: 2 c5 e> ; L: 1 d5>';
    expect(unreached(nested)).toHaveLength(1);
    expect(unreached(nested, 'reading both\n  takes L\n  at v1 takes K\n')).toEqual([]);
  });
});

describe('places that are decided together', () => {
  const LINKED = 'link v1 v2\n';
  const music = '<v1 K: 1 c5 ; L: 1 d5> | <v2 K: 1 c5 ; L: 1 d5>';

  it('are decided once', () => {
    const once = lane(music, 'C', `${LINKED}reading plain\n  at v1 takes L\n`);
    expect(codes(once)).not.toContain('place-two-ways');
  });

  it('may be named twice for the same', () => {
    const alike = lane(music, 'C', `${LINKED}reading plain\n  at v1 takes L\n  at v2 takes L\n`);
    expect(codes(alike)).not.toContain('place-two-ways');
  });

  it('cannot be taken two ways', () => {
    const apart = lane(music, 'C', `${LINKED}reading plain\n  at v1 takes L\n  at v2 takes K\n`);
    expect(messages(apart, 'place-two-ways')).toEqual([
      'At `v2` this reading takes K, but it is decided together with `v1`, where it takes L.',
    ]);
    expect(errors(apart)).toEqual([]);
  });

  it('that no link joins can', () => {
    const apart = lane(music, 'C', 'reading plain\n  at v1 takes L\n  at v2 takes K\n');
    expect(codes(apart)).not.toContain('place-two-ways');
  });
});

describe('a ratio of unequal notes', () => {
  const told = (text: string): string[] => codes(text.includes('{') ? lane(text) : lane('1 c5', 'C', `${text}\n`));

  it.each(['practice inegal 8 3:2', 'practice inegal 8 1:1', '{inegal 3:1 8 c5 d} 2. e'])('%s is recorded', (text) => {
    expect(told(text)).not.toContain('inegal-ratio');
  });

  it.each([
    'practice inegal 8 2:3',
    'practice inegal 8 7:2',
    'reading x\n  practice inegal 8 4:1',
    '{inegal 2:3 8 c5 d} 2. e',
  ])('%s is not', (text) => expect(told(text)).toContain('inegal-ratio'));
});
