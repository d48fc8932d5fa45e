/**
 * What a tuning does to the music. Quarter-comma meantone has eleven fifths of 696.578 cents, a wolf of 737.637 and, of a
 * divided key, two notes 41.059 cents apart (from the definition).
 */
import { describe, expect, it } from 'vitest';
import { barsInWords } from '../../server/score/barsInWords';
import type { Bar } from '../../server/score/score';
import { duet, lane, messages } from '../helpers/music';
import { sampleAnalysis } from '../helpers/samples';

const MEANTONE = 'tuning meantone 1/4 wolf g#-eb\n';

describe('a note for which a tuning has no string', () => {
  const missing = (music: string, before = MEANTONE): string[] =>
    messages(lane(music, 'C', before), 'note-without-string');

  it('is named with its bars, those of the note on its key, and what would serve', () => {
    expect(missing('1 g#4 | g# | ab4 | ab | g#4')).toEqual([
      'No string of this tuning gives a flat, wanted in bars 3-4 (2 notes): its key sounds g sharp, wanted in bars 1-2, 5 (3 notes); tuned to a flat (41 cents higher) for bars 3-4 alone, the key serves both.',
    ]);
  });
  it('may have the key for itself', () => {
    expect(missing('2 c4 ab')).toEqual([
      'No string of this tuning gives a flat, wanted in bar 1 (1 note): its key sounds g sharp, wanted in no bar; the key can be tuned to a flat, 41 cents higher.',
    ]);
  });
  it('may be the more frequent one, but for a few bars', () => {
    expect(missing('1 ab4 | g# | ab | ab')[0]).toMatch(
      /; tuned to a flat \(41 cents higher\) save for bar 2, the key serves both\.$/,
    );
  });
  it('stands beside the other in one bar: then the place of the wolf decides', () => {
    expect(missing('2 ab4 g# | ab g# | 1 ab | ab')[0]).toMatch(
      /; with its notes from a flat to c sharp the tuning leaves 2 notes false instead of 4\.$/,
    );
    expect(missing('2 ab4 g# | g# ab | 1 g# | g#')[0]).toMatch(
      /; of all places for the wolf this one leaves fewest notes false, 2\.$/,
    );
  });
  it('is moved by a diesis also where the octave lies between', () => {
    // b sharp and c are one key; in quarter-comma meantone b sharp is 41 cents lower.
    expect(missing('1 b#4')[0]).toMatch(/gives b sharp, .* the key can be tuned to b sharp, 41 cents lower\.$/);
  });
  it('has a string where its key is divided', () => {
    expect(missing('2 ab4 g#', `${MEANTONE}instrument virginals compass c2-c6 split g#/ab\n`)).toEqual([]);
  });
  it('is none where the circle closes, or nothing is said of a tuning', () => {
    expect(missing('2 ab4 g#', 'tuning vallotti\n')).toEqual([]);
    expect(missing('2 ab4 g#', '')).toEqual([]);
  });
  it('is told in the readings whose tuning lacks it', () => {
    const two = lane('2 ab4 g#', 'C', `${MEANTONE}reading flat\n  tuning meantone 1/4 wolf c#-ab\n`);
    expect(messages(two, 'note-without-string')).toEqual([
      expect.stringMatching(/^In the main text, K, L: No string of this tuning gives a flat/),
      expect.stringMatching(/^In flat: No string of this tuning gives g sharp/),
    ]);
  });
  it('in the lamento is g sharp, and its strain lies between two of a flat', () => {
    const told = messages(sampleAnalysis('lamento.bent'), 'note-without-string');
    expect(told.find((message) => message.includes('In the main text, house'))).toMatch(
      /gives g sharp, wanted in bars 18, 20, 24, 28 \(5 notes\): its key sounds a flat, wanted in bars 1, 3, 7, 11, 15, 33, 35, 37 \(11 notes\); tuned to g sharp \(41 cents lower\) for bars 18-28 alone, the key serves both\.$/,
    );
  });
});

describe('bars in words', () => {
  const bars = Array.from({ length: 12 }, (_, index) => ({ number: index === 8 ? '8b' : `${index + 1}` })) as Bar[];
  it('are joined where they follow one another', () => {
    expect(barsInWords([4], bars)).toBe('bar 5');
    expect(barsInWords([4, 5], bars)).toBe('bars 5-6');
    expect(barsInWords([0, 2, 3, 4, 8], bars)).toBe('bars 1, 3-5, 8b');
  });
});

describe('a sour interval in a chord that lasts', () => {
  const sour = (dessus: string, basse: string, before = MEANTONE): string[] =>
    messages(duet(dessus, basse, 'C', before), 'sour-interval');

  it('is a wolf fifth or a very wide third, and asked about', () => {
    expect(sour('1 eb4', '1 ab3')).toEqual([
      'Bar 1: ab3 with eb4, a fifth 36 cents wide, sounds for 4 crotchets (the only one in this piece): meant?',
    ]);
    expect(sour('1 c5', '1 ab3')[0]).toMatch(/^Bar 1: ab3 with c5, a third 41 cents wide, sounds for 4 crotchets/);
    expect(sour('1 g4', '1 c4')).toEqual([]);
  });
  it('is not asked about where it passes, or is written as another interval', () => {
    expect(sour('8 eb4 f g f 2 g', '8 ab3 bb c4 bb3 2 c4')).toEqual([]);
    // A diminished fourth and an augmented fifth are meant to be what they are.
    expect(sour('1 eb5', '1 b3')).toEqual([]);
  });
  it('lasts as long as both notes sound', () => {
    expect(sour('2 r eb4', '1 ab3')[0]).toContain('sounds for 2 crotchets');
    expect(sour('1 eb4= | 2 eb r', '1 ab3= | 2 ab r')[0]).toContain('sounds for 6 crotchets');
  });
  it('ranks by width, length and place, and tells five of a piece', () => {
    const told = sour(
      '2 c5 4 c eb4 | 1 c5 | 1 c | 1 c | 1 c | 1 c',
      '2 ab3 4 ab ab | 1 ab | 1 ab | 1 ab | 1 ab | 1 ab',
    );
    expect(told).toHaveLength(5);
    expect(told[0]).toMatch(/^Bar 2: .*\(the sourest of 8 in this piece\)/);
  });
  it('hears the Pythagorean thirds of a circle that closes, and no others', () => {
    expect(sour('1 c#5-g#', '1 f#3-a#', 'tuning vallotti\n')).toEqual([
      'Bar 1: f#3 with a#3, a third 22 cents wide, sounds for 4 crotchets (the only one in this piece): meant?',
    ]);
    expect(sour('1 e5', '1 a3-c#4', 'tuning vallotti\n')).toEqual([]);
    expect(sour('1 e5', '1 a3-c#4', 'tuning equal\n')).toEqual([]);
  });
  it('is a remark, no more', () => {
    const found = duet('1 eb4', '1 ab3', 'C', MEANTONE)
      .findings()
      .find(({ code }) => code === 'sour-interval');
    expect(found?.level).toBe('info');
  });
});
