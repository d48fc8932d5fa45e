/**
 * Where accidentals end (facts of notation before about 1700, common practice: an accidental is valid for its note and the
 * immediate repetitions, and a different note in between cancels it).
 */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/document/analysis';
import { findingOf, lane, mended, messages, passage } from '../helpers/music';

const ENDS = 'accidental-ends';
const OTHER = 'accidental-other-voice';
const ends = (music: string, practice = ''): string[] => messages(lane(music, 'C', practice), ENDS);

describe('an accidental whose note comes again in the bar without a sign', () => {
  it('is told with both places', () => {
    const found = lane('4 c#5 d c d');
    expect(findingOf(found, ENDS).message).toBe(
      'Bar 1, dessus: the c sharp ends by the rule `note`; the next note on its line is c natural. A player will ask.',
    );
    expect(findingOf(found, ENDS).related.map(({ message }) => message)).toEqual(['c sharp']);
    expect(mended(found, ENDS)).toContain('4 c#5 d c[n] d');
  });
  it('is told by the rule of beams where the next stands under another', () => {
    expect(ends('8 c#5 d 2. c', 'accidentals group\n')).toHaveLength(1);
    expect(ends('8 c#5 d 8 c d 2 e', 'accidentals group\nbeaming 8 by 4\n')).toEqual([]);
  });
  it('is let be where the next is signed, the same or another octave', () => {
    expect(ends('4 c#5 d cn d')).toEqual([]);
    expect(ends('4 c#5 d c(n) d')).toEqual([]);
    expect(ends('4 c#5 d c# d')).toEqual([]);
    expect(ends('4 c#5 c d e')).toEqual([]);
    expect(ends('4 c#5 d c4 d5')).toEqual([]);
  });
  it('is let be further on than eight notes, as in music without bars', () => {
    const free = (between: string): string[] =>
      messages(passage(`system free upper C1\n dessus | b4 c#5 ${between} c5 |||\n`), ENDS);
    expect(free('d e d e d e d')).toHaveLength(1);
    expect(free('d e d e d e d e')).toEqual([]);
  });
  it('is let be in the next bar, and to the barline by the rule of bars', () => {
    expect(ends('2 c#5 d | 1 c')).toEqual([]);
    expect(ends('4 c#5 d c d', 'accidentals bar\n')).toEqual([]);
  });
});

const two = (dessus: string, taille: string, practice = ''): Analysis =>
  passage(`system upper C1 lower F4 meter C\n dessus | ${dessus} |||\n taille | ${taille} |||\n`, practice);

describe('another voice on the line of an accidental', () => {
  it('is told with both places while the accidental is in force', () => {
    const found = two('2 c#5 d', '4 e4 c5 2 d');
    expect(findingOf(found, OTHER).message).toBe(
      'Bar 1: taille strikes c natural on the line of c sharp in dessus, without a sign by the rule `note`. A player will ask.',
    );
    expect(findingOf(found, OTHER).related.map(({ message }) => message)).toEqual(['c sharp in dessus']);
    expect(mended(found, OTHER, 'editor’s #'.replace('’', "'"))).toContain('4 e4 c[#]5');
    // One place is told once.
    expect(messages(found, 'false-relation')).toEqual([]);
  });
  it('is told while the note is repeated', () => {
    expect(messages(two('4 c#5 c d e', '4 e4 c5 2 d'), OTHER)).toHaveLength(1);
  });
  it('is let be after it, in another octave, with a sign, and by the rule of bars', () => {
    expect(messages(two('4 c#5 d 2 e', '2 e4 c5'), OTHER)).toEqual([]);
    expect(messages(two('2 c#5 d', '4 e4 c4 2 d'), OTHER)).toEqual([]);
    expect(messages(two('2 c#5 d', '4 e4 cn5 2 d'), OTHER)).toEqual([]);
    expect(messages(two('2 c#5 d', '4 e4 c5 2 d', 'accidentals bar\n'), OTHER)).toEqual([]);
  });
});
