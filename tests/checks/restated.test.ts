/** Clefs, signatures and metres that are drawn again (common practice: lines and strains begin with them). */
import { describe, expect, it } from 'vitest';
import { messages, passage } from '../helpers/music';

describe('a clef drawn within a line', () => {
  const restated = (music: string): string[] =>
    messages(passage(`system upper C1 lower F4 meter C\n basse | ${music} |||\n`), 'clef-restated');
  it('that is in force already changes nothing', () => {
    expect(restated('2 c3 (now F4) d')).toEqual(['Bar 1: stave lower bears F4 already; this changes nothing.']);
  });
  it('is let be where it changes, and where it comes back', () => {
    expect(restated('2 c3 (now C4) d')).toEqual([]);
    expect(restated('4 c3 (now C4) d (now F4) 2 e')).toEqual([]);
  });
  it('is let be at the head of each line, as scribes draw it', () => {
    const twice = passage(
      'system upper C1 lower F4 meter C\n basse | 1 c3 |\nsystem upper C1 lower F4\n basse | 1 c3 |||\n',
    );
    expect(messages(twice, 'clef-restated')).toEqual([]);
  });
});

describe('a signature or a metre drawn within a line', () => {
  const bass = (music: string, head = 'upper C1 lower F4 key bb meter 3/4') =>
    passage(`system ${head}\n basse | ${music} |||\n`);
  it('that is in force already changes nothing', () => {
    expect(messages(bass('2. c3 | (now key bb) d'), 'key-restated')).toEqual([
      'Bar 2: the signature bb holds already; this changes nothing.',
    ]);
    expect(messages(bass('2. c3 | (now key lower bb) d'), 'key-restated')).toHaveLength(1);
    expect(messages(bass('2. c3 | d | (now meter 3/4) e'), 'meter-restated')).toEqual([
      'Bar 3: the metre 3/4 holds already; this changes nothing.',
    ]);
    expect(messages(bass('2. c3 | (now key none) d', 'upper C1 lower F4 meter 3/4'), 'key-restated')).toEqual([
      'Bar 2: the signature none holds already; this changes nothing.',
    ]);
  });
  it('is let be where a section begins, be its barline a plain one', () => {
    expect(messages(bass('2. c3 | (section B) (now key bb meter 3/4) d'), 'key-restated')).toEqual([]);
    expect(messages(bass('2. c3 | (section B) (now key bb meter 3/4) d'), 'meter-restated')).toEqual([]);
    expect(messages(bass('2. c3 | (section B) 2 d (now key bb) 4 e'), 'key-restated')).toHaveLength(1);
  });
  it('is let be where it changes: naturals that are drawn, another length of the bar', () => {
    expect(messages(bass('2. c3 | (now key bn) d | (now key bb) e'), 'key-restated')).toEqual([]);
    expect(messages(bass('2. c3 | (now meter 3/4 = 3/2) 1. d'), 'meter-restated')).toEqual([]);
  });
  it('is let be beside a new clef, under which its signs stand on other lines', () => {
    expect(messages(bass('2. c3 | (now C4 key bb) d'), 'key-restated')).toEqual([]);
    expect(messages(bass('2. c3 | (now F4 key bb) d'), 'key-restated')).toHaveLength(1);
  });
  it('is let be where a line or a strain begins, as scribes draw it again', () => {
    for (const music of [
      '(now key bb meter 3/4) 2. c3',
      '2. c3 :|| (now key bb meter 3/4) d',
      '2. c3 || (now key bb) d',
    ]) {
      expect(messages(bass(music), 'key-restated')).toEqual([]);
      expect(messages(bass(music), 'meter-restated')).toEqual([]);
    }
  });
});
